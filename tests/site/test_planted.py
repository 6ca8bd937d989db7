"""Markup that somebody wrote into a text is shown as it was typed, on every page and in all that scripts put there; nothing of it runs.

The pages are opened without their policy, which would stop what got in: here nothing may get in.
"""

import html
import re
import shutil
from collections.abc import Iterable, Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner
from playwright.sync_api import Browser, Page

from generator.cli import main
from tests.book_folders import BOOKS, WHOLE
from tests.site.built_pages import loose_in
from tests.site.planting import NO_SPACES, PLANT, Planted, all_fields, plant
from tests.site.reader import Reader

ROOT = Path(__file__).resolve().parents[2]
NUMBER = re.compile(r"planted\((\d+)\)")
# Numbers of texts that stand outside the records, in a page written by hand.
PAGE_TITLE, PAGE_DESCRIPTION, PAGE_WORD, PAGE_HEADING = range(900001, 900005)

ALIGNED = "| Plot | Area |\n|---|--:|\n| A | 12 |\n"

WATCH = """() => {
  window.ran = [];
  window.planted = number => window.ran.push(number);
  window.print = () => {};
}"""
# Presses everything that can be pressed, opens everything that can be opened, and points at everything with a hint.
STIR = """async patience => {
  const wait = milliseconds => new Promise(done => setTimeout(done, milliseconds));
  const all = selector => [...document.querySelectorAll(selector)];
  const pressed = new Set();
  navigation.addEventListener('navigate', event => { if (!event.hashChange && event.cancelable) event.preventDefault(); });
  for (const field of all('select')) {
    field.selectedIndex = field.options.length - 1;
    field.dispatchEvent(new Event('input', {bubbles: true}));
    field.dispatchEvent(new Event('change', {bubbles: true}));
  }
  for (const field of all('.md-content input[type=text], .md-content input[type=number], .md-content input:not([type])')) {
    if (!field.value) field.value = '12';
    field.dispatchEvent(new Event('input', {bubbles: true}));
    field.dispatchEvent(new Event('change', {bubbles: true}));
  }
  for (let round = 0; round < 3; round += 1) {
    for (const each of all('button, summary, input[type=radio], input[type=checkbox], label[for]')) {
      if (!pressed.has(each) && !each.disabled && each.checkVisibility()) { pressed.add(each); each.click(); }
    }
    await wait(20);
  }
  all('details').forEach(each => { each.open = true; });
  for (const each of all('[title], .md-ellipsis, abbr')) {
    each.dispatchEvent(new MouseEvent('mouseenter'));
    each.dispatchEvent(new MouseEvent('mouseover', {bubbles: true}));
    each.dispatchEvent(new FocusEvent('focusin', {bubbles: true}));
  }
  await wait(patience);
}"""
# A hint comes up when a pointer has rested; the short run looks at what is there at once.
AT_ONCE, RESTED = 20, 300
FOUND = """() => {
  const wrong = [], texts = [document.title];
  const walk = document.createTreeWalker(document, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT | NodeFilter.SHOW_COMMENT);
  while (walk.nextNode()) {
    const node = walk.currentNode;
    if (node.nodeType !== Node.ELEMENT_NODE) { texts.push(node.data); continue; }
    for (const {name, value} of node.attributes) {
      texts.push(value);
      if (/^on/i.test(name)) wrong.push(`${node.localName} ${name}=${value}`);
      if (/["'<>]/.test(name)) wrong.push(`${node.localName} has an attribute called ${name}`);
      if (/^\\s*javascript:/i.test(value)) wrong.push(`${node.localName} ${name}=${value}`);
    }
    if (node.localName === 'img' && node.getAttribute('src') === 'x') wrong.push(`img in ${node.parentElement.outerHTML.slice(0, 200)}`);
    if (node.localName === 'script' && !node.src && node.type !== 'application/json') wrong.push(`script ${node.textContent.slice(0, 80)}`);
    if ('value' in node && typeof node.value === 'string') texts.push(node.value);
  }
  return {wrong: [...wrong, ...window.ran.map(number => `ran planted(${number})`)], texts};
}"""
TWICE = re.compile(r"&(?:amp|lt|gt|quot|#34|#39|#x27);")


def planted_whole(to: Path) -> tuple[Path, Planted]:
    """The whole book and all additions, planted; a page by hand too."""
    shutil.copytree(WHOLE, to)
    for folder in (BOOKS / "additions").iterdir():
        shutil.copytree(folder, to / "data" / folder.name, dirs_exist_ok=True)
    # The whole book's plan uses the step that plans share.
    plan = to / "data/renovations/plain-renovation.yml"
    plan.write_text(plan.read_text(encoding="utf-8").rstrip() + "\n  - use: look-again\n    day: 9\n", encoding="utf-8")
    made = plant(to)
    front = {"title": PAGE_TITLE, "description": PAGE_DESCRIPTION}
    written = "".join(f"{key}: '{typed(key, n)}'\n" for key, n in front.items())
    (to / "content/by-hand.md").write_text(f"---\n{written}words: ['{typed('word', PAGE_WORD)}']\n---\n# By hand\n\nA page.\n", encoding="utf-8")
    heading = html.escape(PLANT.format(n=PAGE_HEADING), quote=False)
    (to / "content/heading.md").write_text(f"# Tom & \"Jerry\" &lt;3 {heading}\n\n## Under *it* & {heading}\n\n{ALIGNED}", encoding="utf-8")
    return to, made


def typed(text: str, number: int) -> str:
    """A text with a plant, as it stands inside single quotes in YAML."""
    return f"{text}{PLANT.format(n=number)}".replace("'", "''")


def build(book: Path) -> Path:
    run = CliRunner().invoke(main, ["build", "--book", str(book)])
    assert run.exit_code == 0, run.output
    return book / "site"


@pytest.fixture(scope="module")
def planted(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Planted]:
    book, made = planted_whole(tmp_path_factory.mktemp("planted") / "book")
    return build(book), made


@pytest.fixture
def window(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(bypass_csp=True, offline=True)
    context.add_init_script(f"({WATCH})()")
    yield context.new_page()
    context.close()


def look(window: Page, site: Path, paths: Iterable[str], patience: int = RESTED) -> tuple[list[str], list[str]]:
    """What got in, and every text that was met, on those pages and in all that can be pressed there."""
    wrong, texts = [], []
    for path in paths:
        window.goto(f"{site.as_uri()}/{path}", wait_until="load")
        window.evaluate(STIR, patience)
        found = window.evaluate(FOUND)
        wrong += [f"{path}: {each}" for each in found["wrong"]]
        wrong += [f"{path}: escaped twice: {each.strip()[:120]}" for each in found["texts"] if TWICE.search(each)]
        texts += found["texts"]
    return wrong, texts


def shown(made: Planted, texts: list[str]) -> set[str]:
    """Fields of which at least one plant was met exactly as it was typed, whatever is quoted in the sentence before it."""
    together = "\n".join(texts)
    return {name for n, (name, _) in made.texts.items() if any(plant.format(n=n) in together for plant in (PLANT, NO_SPACES))}


# One page of each make, with what its scripts put there.
SAMPLE = (
    "grasses/plaingrass.html", "tasks/sweep.html", "problems/dust-patch.html", "calculators/sweeping.html", "jobs/index.html", "inspection.html",
    "aftercare/after-sweeping.html",
)


# A month and a day, a country's letters, a number to ring, and a figure for a field of a calculator: each has a form of its own.
PATTERNED = {
    "season-groups.published.first", "season-groups.published.last", "countries.key", "services.countries.*.lines.*.number",
    "calculators.published.fills.key", "calculators.published.fills.*",
}


def test_every_text_of_a_book_takes_markup_or_is_known_to_refuse_it(planted: tuple[Path, Planted]) -> None:
    _, made = planted
    assert len({name for name, _ in made.texts.values()}) > 200
    assert set(made.refused) == PATTERNED


def test_no_page_holds_what_was_planted(planted: tuple[Path, Planted]) -> None:
    """Read as text, all of them; the test below has a browser read some."""
    site, _ = planted
    pages = sorted(site.rglob("*.html"))
    assert len(pages) > 50
    assert not [f"{page.relative_to(site)}: {each}" for page in pages for each in loose_in(page)]


def test_markup_in_a_text_is_shown_and_never_runs(planted: tuple[Path, Planted], window: Page) -> None:
    site, made = planted
    wrong, texts = look(window, site, SAMPLE, AT_ONCE)
    assert not wrong
    assert {"grasses.name", "tasks.name", "problems.summary", "inspection.questions.ask", "calculators.inputs.*.question"} <= shown(made, texts)


def test_a_search_shows_titles_as_they_were_typed(planted: tuple[Path, Planted], window: Page) -> None:
    site, made = planted
    window.goto(f"{site.as_uri()}/about.html", wait_until="load")
    window.locator(".md-search input").press_sequentially("onerror planted sweep img")
    window.locator("#search-results a").nth(3).wait_for()
    found = window.evaluate(FOUND)
    assert not found["wrong"]
    titles = {name: text for name, text in made.texts.values() if name in ("tasks.name", "calculators.name")}
    assert set(titles.values()) & set(window.locator(".sb-search__title").all_inner_texts())


def test_a_page_by_hand_shows_its_heading_once_escaped(planted: tuple[Path, Planted], window: Page) -> None:
    site, made = planted
    heading = f"Tom & \"Jerry\" <3 {PLANT.format(n=PAGE_HEADING)}"
    name = next(text for name, text in made.texts.values() if name == "practice.book_title")
    window.goto(f"{site.as_uri()}/heading.html", wait_until="load")
    assert window.title() == f"{heading} - {name}"
    assert window.locator("h1").inner_text() == heading
    assert window.locator(".md-header__topic .md-ellipsis").all_text_contents() == [name, heading]
    assert window.locator(".md-nav--secondary .md-ellipsis").all_text_contents()[0].strip() == f"Under it & {PLANT.format(n=PAGE_HEADING)}"
    assert window.locator(".sb-jump a").all_text_contents() == [f"Under it & {PLANT.format(n=PAGE_HEADING)}"]
    assert [heading] == [each.strip() for each in window.locator(".md-tabs__link, .md-nav__link").all_text_contents() if "Tom" in each][:1]
    window.goto(f"{site.as_uri()}/by-hand.html", wait_until="load")
    assert window.title() == f"title{PLANT.format(n=PAGE_TITLE)} - {name}"
    assert window.locator("meta[name=description]").get_attribute("content") == f"description{PLANT.format(n=PAGE_DESCRIPTION)}"
    window.goto(f"{site.as_uri()}/index.html", wait_until="load")
    assert window.locator(".md-logo").first.get_attribute("title") == name


def test_a_table_by_hand_keeps_its_columns_aligned_under_the_policy(planted: tuple[Path, Planted], browser: Browser) -> None:
    site, _ = planted
    reader = Reader(browser, site)
    page = reader.open("heading.html")
    assert page.evaluate("() => getComputedStyle(document.querySelector('td:last-child')).textAlign") == "right"
    reader.close()
    assert not reader.wrong


@pytest.mark.soak
def test_markup_in_no_text_of_any_page_runs(planted: tuple[Path, Planted], window: Page, capsys: pytest.CaptureFixture[str]) -> None:
    site, made = planted
    pages = sorted(page.relative_to(site).as_posix() for page in site.rglob("*.html"))
    wrong, texts = look(window, site, pages)
    assert not wrong
    told = shown(made, texts)
    unseen = {name for name, _ in made.texts.values()} - told
    with capsys.disabled():
        print(f"\n{len(made.texts)} plants in {len(told | unseen)} fields on {len(pages)} pages; {len(unseen)} fields are shown on none")
    assert not (left := sorted(name for name in unseen if not name.endswith(FOR_DATA))), "\n".join(left)


# Said in the published data, in the search or on the command line, and on no page; a machine is named in a job with a day and an area.
FOR_DATA = (
    ".note", ".because", ".misspellings", ".asked_as", "places.normals.station_id", ".constants.*.meaning", "practice.machines.*.check",
    "practice.machines.*.name", "practice.short_name", "season-groups.published.explained", "season-groups.published.says",
)


@pytest.mark.soak
def test_markup_in_our_own_book_runs_on_none_of_its_pages(tmp_path: Path, window: Page, capsys: pytest.CaptureFixture[str]) -> None:
    """Every field of every record: what the small book has none of, ours has."""
    book = tmp_path / "book"
    for folder in ("data", "content"):
        shutil.copytree(ROOT / folder, book / folder)
    shutil.rmtree(book / "data/schema")
    shutil.copy(ROOT / "mkdocs.yml", book)
    made = plant(book)
    never = all_fields() - {name for name, _ in made.texts.values()} - made.looked_up - set(made.refused)
    assert not {name for name in never if not name.startswith("retired.") and ".others." not in name and not name.endswith(RARE)}
    assert set(made.refused) == PATTERNED | {"practice.currency", "key.questions.yes"}
    site = build(book)
    pages = sorted(page.relative_to(site).as_posix() for page in site.rglob("*.html"))
    wrong, texts = look(window, site, pages)
    with capsys.disabled():
        print(f"\n{len(made.texts)} plants in {len({name for name, _ in made.texts.values()})} fields on {len(pages)} pages")
    assert not wrong and len(shown(made, texts)) > 250


# A colour and pictures, names of results and products, and ids of before, that no record of ours happens to give.
RARE = (".colour", ".logo", ".favicon", ".buy.product", ".buy.result", ".spoil", ".settles", ".event_id")
