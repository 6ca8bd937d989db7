"""Home with lawns kept on the device: what falls due, what is late and what to book, with one form for the weather of the day."""

from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.site.reader import Reader
from tests.site.test_kept_work import KEPT_JOB, LAWN

BARE = {name: each for name, each in LAWN.items() if name != "programme"}
LAWNS = [{**BARE, "code": "TL-1", "grass": "couch"}, {**BARE, "code": "TL-2", "grass": "kikuyu"}, {**BARE, "code": "TL-3"}]
# On the day of one job, the other is six weeks ahead: its soil test is due then. A third job is of nobody's lawn.
JOBS = [
    {**KEPT_JOB, "name": "TL-1", "on": "2026-12-16", "done": {}, "site": "open"},
    {**KEPT_JOB, "name": "TL-2", "grass": "kikuyu", "on": "2027-02-03", "done": {}},
    {**KEPT_JOB, "name": "OLD-9", "on": "2026-12-16", "done": {}},
]
KEEP = """([lawns, jobs]) => {
    lawns.forEach(each => Swardbook.kept('lawns').add(each));
    jobs.forEach(each => Swardbook.kept('jobs').add(each));
}"""


# Walked in a second engine as well: engines differ in how they sort what is equal.
@pytest.mark.walk
def test_the_day_of_every_lawn_stands_on_the_first_page(reader: Callable[..., Reader]) -> None:
    opened = reader(viewport={"width": 360, "height": 640})
    page = opened.open("names.html")
    page.clock.install(time="2026-12-16T06:30:00")
    home = page.url.replace("names.html", "index.html")
    page.goto(home)
    expect(page.locator(".sb-today")).to_be_hidden()
    page.evaluate(KEEP, [LAWNS, JOBS])
    page.goto(home)
    today = page.locator(".sb-today")
    due, late, book = (today.locator(f"[data-part={name}-list]") for name in ("due", "late", "book"))
    expect(today.locator("h2")).to_contain_text("16")
    cut = due.locator("li", has_text="TL-1 Cut down in stages")
    expect(cut).to_contain_text("Not known yet.")
    # Everything of the job's own preparation is overdue, the first of it on top; a job without a lawn is nobody's day.
    expect(late.locator("li").first).to_contain_text("TL-1")
    assert "OLD-9" not in today.inner_text()
    expect(today.locator("[data-part=without]")).to_have_text("No job is planned for TL-3.")
    expect(book).to_contain_text("overdue")
    # One answer about the leaf is an answer for every step that minds it, and says how soon to ask again.
    today.locator("summary", has_text="What the day is like").click()
    today.locator("input[value=wet]").first.check()
    expect(cut).to_contain_text("Hold: mowing wet grass. Ask again later today.")
    page.reload()
    expect(cut).to_contain_text("Ask again later today.")
    # A step that is ticked is no longer due; the line leads to its job and chooses its lawn.
    cut.get_by_role("link").click()
    expect(page.locator("[data-part=what]")).to_contain_text("Couch, Canberra")
    expect(page.locator("[data-component=lawn-bar] select")).to_have_value(page.evaluate("Swardbook.lawns.byCode('TL-1').id"))
    page.evaluate("() => { const job = Swardbook.kept('jobs').all()[0]; Swardbook.kept('jobs').change(job.id, job.row, {...job.row, done: {'cut-down': '2026-12-16'}}); }")
    page.goto(home)
    expect(due.locator("li").first).to_be_visible()
    expect(cut).to_have_count(0)
