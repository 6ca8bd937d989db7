"""What the job page asks for only when a job is moved: how long what was done holds, whom to ring, and the message to the client."""

from typing import Any

from generator.book.book import Book
from generator.book.fields.sourced import OURS
from generator.book.records.step import Lasting
from generator.site.pages.client_link.view import MESSAGE, signature
from generator.site.pages.job.job_scripts import job_script

MOVING_SCRIPT = "assets/jobs/moving.js"


def moving_script(book: Book) -> str:
    """lasts: by plan and step. experts: the cautions of a step that asks for one. messages: by aftercare sheet, as the page that makes a client's link has them."""
    public = book.practice.public_address
    return job_script("moving", {
        "lasts": {id: {step.id: _lasting(book, step.lasts) for step in plan.steps if step.lasts} for id, plan in book.renovations.items()},
        "experts": {each.name: list(each.for_cautions) for each in book.experts.values() if each.for_cautions},
        "messages": {id: MESSAGE.format(job=sheet.job) for id, sheet in book.aftercare.items()},
        "signature": signature(book), "address": f"{public}aftercare/" if public else None,
    })


def _lasting(book: Book, lasts: Lasting) -> dict[str, Any]:
    """days; and whose figure it is, in words, nothing for a custom of the practice."""
    named = [book.sources[id].organisation if id in book.sources else id for id in lasts.sources if id != OURS]
    return {"days": lasts.days, "source": ", ".join(named), "note": lasts.note or ""}
