"""The page that puts dates to a plan: one job worked out in full, which the reader's own takes the place of in the browser.

Twin: job on its page.
"""

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import groupby
from typing import Any

from generator.book.book import Book
from generator.book.records.practice import OPEN_SITE
from generator.files.job_text import left_open
from generator.files.job_values import job_values
from generator.formula import plain_sum
from generator.jobs.job import Job, JobStep, Request
from generator.jobs.job_sentences import SENTENCES, WHO
from generator.jobs.plans_for_grass import AskedJob, job_of, plans_for
from generator.jobs.price import CostLine
from generator.jobs.window_answer import next_day, stretches
from generator.season.season_cache import SeasonCache
from generator.site.frame.brand import letterhead_view
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.aftercare.view import MAKER
from generator.site.pages.guide.view import STAGES
from generator.site.pages.inspection.view import PATH as INSPECTION_PAGE
from generator.site.pages.inspection.view import SCRIPT as INSPECTION_RULES
from generator.site.pages.inspection.view import SPEC as INSPECTION_QUESTIONS
from generator.site.pages.job import job_words as words
from generator.site.pages.job.day_sheet import WORK_START, day_sheet
from generator.site.pages.job.job_scripts import BOOK_SCRIPT, INSPECTION_SCRIPT, job_scripts, main_results
from generator.site.pages.job.money_script import MONEY_SCRIPT, money_script
from generator.site.pages.job.moving_script import MOVING_SCRIPT, moving_script
from generator.site.shared.hold_view import hold_scripts
from generator.site.shared.lawn_pieces import CALCULATOR_SCRIPT
from generator.site.shared.seen_script import seen_view
from generator.site.year.site_years import site_words
from generator.words.reason_text import said, said_exactly, sentence

PATH, SCRIPT, CALENDAR = "jobs/index", "assets/job-planner.js", "assets/jobs/"
PARTS_SCRIPT, MOVE, MONEY = "assets/job-parts.js", "assets/job-move.js", "assets/job-money.js"
# The job that is shown before a reader says which: on this area, rates per 100 m2 are the quantities.
DEFAULT_AREA_M2 = 100.0
# The same for a reader of US units: a round figure, as labels there give rates.
DEFAULT_AREA_US = "1000 ft2"
DAYS_A_WEEK = 7
# What the script fills in for a step of the reader's own job.
BLANK_STEP = {
    **dict.fromkeys(("id", "date", "title", "moved", "who", "level", "how", "say", "why", "only_where", "open", "if_needed", "wait_for", "minutes", "gear"), ""),
    **dict.fromkeys(("cautions", "quantities", "warnings", "settings", "usual"), ()),
}
# The parts of the page: name in a link, what it is called, and the heading it begins with. The table of contents is the way between them.
PARTS = (
    ("when", "When", "when"), ("steps", "Steps", "steps"), ("buy", "Buy and book", "buy"), ("day", "The day", "day-sheet"), ("price", "Price", "price"),
    ("client", "Client", "client"),
)
SECTIONS = tuple(Section(heading, title) for _, title, heading in PARTS)


def has_jobs(book: Book) -> bool:
    """Whether the book's home grass may follow any plan."""
    return bool(plans_for(book, book.grasses[book.practice.home_grass]))


def job_page(seasons: SeasonCache, here: PageContext) -> Page:
    title, lead = "Plan a job", "Which lawn, which plan, which day: the steps with their dates, what to buy and book, and whether the day is a good one."
    context = {"title": title, "lead": lead, "planner": planner_view(seasons, here), "scripts": [
        here.links.file(each) for each in (CALCULATOR_SCRIPT, PARTS_SCRIPT, SCRIPT, BOOK_SCRIPT)
    ]}
    search = (
        "plan a job", "schedule", "when can I do it", "job sheet", "shopping list", "sheet for the day", "crew sheet", "book gear", "dates", "price a job",
        "quote a job",
    )
    return Page(PATH, title, "job", context, lead, search, sections=SECTIONS)


def default_day(seasons: SeasonCache, plan: str, grass: str, place: str, today: date) -> date:
    """The day of the job that is printed; where scripts run, the page asks the same of the reader's own today."""
    renovation = seasons.book.renovations[plan]
    ready = today + timedelta(max(0, -min(step.day for step in renovation.steps)))
    return next_day(stretches(seasons.season(grass, place), renovation.window)[0], ready)


def planner_view(seasons: SeasonCache, here: PageContext) -> dict[str, Any]:
    """The job-planner component's dict."""
    book, practice = seasons.book, seasons.book.practice
    grass, place = practice.home_grass, practice.home_place
    plan = plans_for(book, book.grasses[grass])[0]
    on = default_day(seasons, plan, grass, place, here.today)
    job = job_of(book, seasons, AskedJob(plan, grass, place, Request(DEFAULT_AREA_M2, on)))
    public = practice.public_address
    return {
        "id": "job", "letterhead": letterhead_view(book, here.links),
        "blank": BLANK_STEP, "parts": [{"id": name, "title": title, "at": heading} for name, title, heading in PARTS],
        "chosen": {"plan": plan, "grass": grass, "place": place, "site": OPEN_SITE, "area": f"{DEFAULT_AREA_M2:g} m2", "area_us": DEFAULT_AREA_US, "on": on.isoformat()},
        "grasses": [{"id": id, "name": each.name} for id, each in book.grasses.items()],
        "places": [{"id": id, "name": each.name, "region": each.region} for id, each in book.offered_places.items()],
        "plans": [{"id": id, "name": book.renovations[id].name} for id in plans_for(book, book.grasses[grass])],
        "site": site_words(OPEN_SITE), "start": WORK_START, "invented": practice.invented, "practice": practice.name,
        "choose": [each.text for each in book.renovations[plan].choose_when],
        "targets": {
            **worked_out_by(book, here),
            "calculator_pages": here.links.file("calculators/"), "cautions": here.links.file("cautions/"),
            "aftercare": here.links.file("aftercare/"), "maker": here.links.to(MAKER), "record": here.links.to("record") if book.record else "",
            "holds": hold_scripts(here) if book.holds else [],
            "inspection_page": here.links.to(INSPECTION_PAGE) if book.inspection else None,
            "moving": [here.links.file(each) for each in (MOVING_SCRIPT, MOVE)],
            "money": [here.links.file(each) for each in (MONEY_SCRIPT, MONEY)],
        },
        "address": f"{public}{PATH}.html" if public else None,
        "seen": {**seen_view(seasons, here, place, grass, "job"), "write_at": here.links.to("lawns")},
        "job": job_view(book, here, job, plan, grass, place),
    }


def worked_out_by(book: Book, here: PageContext) -> dict[str, Any]:
    """Where the data of a job are that is worked out in the browser: two folders, and the scripts of an inspection in order."""
    scripts = (INSPECTION_QUESTIONS, INSPECTION_RULES, INSPECTION_SCRIPT) if book.inspection else ()
    return {"jobs": here.links.file(CALENDAR), "calculators": here.links.file("assets/calculators/"), "inspection": [here.links.file(each) for each in scripts]}


def job_view(book: Book, here: PageContext, job: Job, plan: str, grass: str, place: str) -> dict[str, Any]:
    values = job_values(job)
    titles = {each.id: each.dated.step.step.title or "" for each in job.steps}
    aftercare = book.renovations[plan].aftercare
    return {
        "what": f"{book.renovations[plan].name}: {book.grasses[grass].name}, {book.places[place].name}, {words.day(job.request.on)}",
        "area": words.area(job.request.area_m2),
        "first": [sentence(said(each)) for each in job.first],
        "headline": words.headline(job.verdict), "inside": job.verdict.inside, "why": said(job.verdict.why),
        "exactly": said_exactly(job.verdict.why), "edges": words.edges(values["window"]),
        "frost": SENTENCES["frost"].format(chance=words.percent(values["window"]["frost_chance_four_weeks"])),
        "then": [each.text for each in job.what_then],
        "settling": [words.settles(each, titles[each.step]) for each in job.settling],
        "stages": [
            {"id": stage, "title": title, "steps": [_step(book, here, each, titles) for each in job.steps if each.dated.step.stage == stage]}
            for stage, title in STAGES
        ],
        "left_out": [f"{each.step.title}: {each.reason}" for each in job.left_out],
        "shopping": [
            {"name": words.bought(each), "amount": words.both(each.amount), "packs": words.packs(each), "cost": "" if each.cost is None else words.money(each.cost)}
            for each in job.shopping
        ],
        "gear": _gear(job), "looked_at": _looked_at(job), "spoil": words.spoil(job.spoil), "day_sheet": day_sheet(book, job),
        "water": _water(job), "price": _price(book, job),
        "handover": {
            "name": book.aftercare[aftercare].name, "url": here.links.aftercare(aftercare) + f"#v=1&on={job.request.on}&grass={grass}",
            "maker": here.links.to(MAKER) + f"#v=1&on={job.request.on}&sheet={aftercare}&grass={grass}&area={job.request.area_m2:g}",
        } if aftercare else None,
    }


def _step(book: Book, here: PageContext, each: JobStep, titles: dict[str, str]) -> dict[str, Any]:
    dated, step = each.dated, each.dated.step.step
    operation = dated.step.operation
    return {
        "id": each.id, "date": words.day(dated.date) + (f" to {words.day(dated.until)}" if dated.until and dated.until != dated.date else ""),
        "title": step.title, "moved": words.moved(each, titles), "who": WHO[step.who],
        "level": operation.level if operation else "", "how": operation.how if operation else "", "say": step.say, "why": step.why or "",
        "only_where": step.only_where or "", "open": "" if each.counted else SENTENCES["open"], "if_needed": "" if each.counted else SENTENCES["if_needed"],
        "settings": words.settings(book, each), "wait_for": step.wait_for or "", "minutes": words.spent(each.minutes),
        "usual": words.usual(each), "gear": ", ".join(gear.name for gear in step.gear),
        "cautions": [{"name": book.cautions[id].name, "url": here.links.caution(id)} for id in step.cautions],
        "quantities": [_quantity(book, here, worked) for worked in each.worked],
        "warnings": [said for worked in each.worked for said in worked.said],
    }


def _quantity(book: Book, here: PageContext, worked: Any) -> dict[str, Any]:
    id = worked.quantity.calculator
    calculator = book.calculators[id]
    asked = words.ask(worked)
    found = [] if asked else words.answers(worked, main_results(calculator))
    return {
        "name": calculator.name, "url": here.links.calculator(id), "ask": asked,
        "answers": [{"label": calculator.results[each["name"]].label, "quantity": {"metric": each["metric"], "us": each["us"]}} for each in found],
    }


def _gear(job: Job) -> list[dict[str, str]]:
    """What is booked, by the day on which that has to be done."""
    booked = [(each.book_by, position, each) for position, each in enumerate(job.gear) if each.book_by]
    return [
        {"name": each.name, "from": each.from_where, "book_by": words.day(book_by), "needed": words.day(each.needed)}
        for book_by, _, each in sorted(booked)
    ]


def _looked_at(job: Job) -> list[dict[str, str]]:
    """What is our own, and what is looked at before it is used, by day."""
    rows = [(each.check_by, position, each) for position, each in enumerate(job.gear) if each.check or not each.book_by]
    return [
        {"name": each.name, "check_by": words.day(check_by) if each.check else "", "check": each.check or "", "needed": words.day(each.needed)}
        for check_by, _, each in sorted(rows)
    ]


def _water(job: Job) -> list[dict[str, Any]]:
    """Waterings before the day, then week by week from it."""
    days = sorted(((each.day - job.request.on).days, each.litres) for step in job.steps for each in step.watering)
    rows = []
    for week, several in groupby(days, key=lambda item: -1 if item[0] < 0 else item[0] // DAYS_A_WEEK):
        listed = list(several)
        first = job.request.on + timedelta(max(week, 0) * DAYS_A_WEEK)
        label = SENTENCES["before"] if week < 0 else SENTENCES["week"].format(number=week + 1, day=words.day(first))
        rows.append({"label": label, "times": words.count(len({ahead for ahead, _ in listed}), "day"), "litres": words.litres(plain_sum(each for _, each in listed))})
    return rows


def _price(book: Book, job: Job) -> dict[str, Any] | None:
    cost, practice = job.cost, book.practice
    if cost is None:
        return None
    return {
        "currency": cost.currency, "rows": [
            {"name": _line_name(line), "amount": words.money(line.amount)} for line in cost.lines
        ],
        "before_tax": words.money(cost.before_tax), "tax_name": practice.tax_name or "Tax", "tax": words.money(cost.tax),
        "total": words.money(cost.total), "deposit": words.money(cost.deposit) if cost.deposit else "",
        "included": words.included(cost), "left_open": " ".join(left_open(job)),
    }


def _line_name(line: CostLine) -> str:
    return SENTENCES["times"].format(name=line.name, times=line.times) if line.kind == "work" and line.times > 1 else line.name


def pages(making: Making) -> Iterator[Page]:
    if has_jobs(making.book):
        yield job_page(making.seasons, making.here(PATH))


def files(making: Making) -> dict[str, str]:
    if not has_jobs(making.book):
        return {}
    return {**job_scripts(making.seasons), MOVING_SCRIPT: moving_script(making.book), MONEY_SCRIPT: money_script(making.book)}
