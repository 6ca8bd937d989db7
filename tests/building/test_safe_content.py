"""In a safe build, the pages of a stranger lay out text, and nothing in content/ runs, fetches or leads out of the book."""

from pathlib import Path

import markdown
import pytest
from playwright.sync_api import Page

from generator.building.safe_content import safe_files, safe_page
from generator.building.safe_settings import EXTENSIONS
from tests.building.small_sites import write

ROOT = Path(__file__).parents[2]

# Ways in which a page has been made to run something, or to fetch it.
HOSTILE = [
    "<script>ran()</script>", "<ScRiPt src=x></sCrIpT>", "text <script>ran()</script> text", "<img src=x onerror=ran()>",
    "<IMG SRC=x OnErRoR=ran()>", "<a href='javascript:ran()'>x</a>", "<a href='java\tscript:ran()'>x</a>", "<a href='&#x6a;avascript:ran()'>x</a>",
    "[x](javascript:ran())", "[x](data:text/html;base64,PHNjcmlwdD4=)", "[x](vbscript:ran)", "![x](https://elsewhere.example/x.png)", "![x](//elsewhere.example/x.png)",
    "# A title {: onclick=ran() }", "[x](about.md){: onmouseover='ran()' }", "text\n{: style='background:url(//elsewhere.example)' }",
    "<svg onload=ran()></svg>", "<svg><script>ran()</script></svg>", "<math><mtext></mtext></math>", "<iframe src=x></iframe>", "<object data=x></object>", "<embed src=x>",
    "<form action=x><button>x</button></form>", "<input type=image src=x>", "<input autofocus onfocus=ran()>", "<style>@import '//elsewhere.example'</style>",
    "<link rel=stylesheet href=x>", "<meta http-equiv=refresh content='0;url=x'>", "<base href=//elsewhere.example>", "<template><script>ran()</script></template>",
    "<noscript><p title='</noscript><script>ran()</script>'></noscript>", "<details ontoggle=ran() open></details>", "<video src=x></video>", "<audio src=x></audio>",
    "<!--><script>ran()</script>-->", "<!---><img src=x onerror=ran()>-->", "<!-- x --!><script>ran()</script> -->", "<!DOCTYPE x>", "<?php ran() ?>", "<![CDATA[<script>ran()</script>]]>",
    "<div data-component='job-planner'></div>", "<a href=x ping=//elsewhere.example>x</a>", "<table background=//elsewhere.example></table>", "<p\nonclick=ran()>x</p>",
    "<div\x0conclick=ran()>x</div>", "<plaintext>", "<xmp><script>ran()</script></xmp>", "<textarea></textarea><script>ran()</script>",
    "<div><script", "<div><img src=x onerror=ran() ", "<x-y is=z></x-y>", "<a srcset=x>x</a>", "<img srcset='//elsewhere.example 1x'>", "<portal src=x>",
]  # fmt: skip
HARMLESS = [
    "# A title\n\nText with *stress*, `code < 3`, [a page](about.md), [the web](https://lawn.example/x?a=1&b=2), <https://lawn.example>, ![a lawn](lawn.jpg).",
    "| a | b |\n|:--|--:|\n| 1 | 2 |\n", "1. one\n2. two\n\n- [ ] to do\n- [x] done\n", "<!-- swardbook: printed-calendars -->", "<!-- a remark -->",
    "Less than 3 < 4, and a & b, <b>bold</b>, x<sup>2</sup>.", "!!! note\n    Take care.\n", "Text[^1].\n\n[^1]: A note.\n", "<details markdown><summary>More</summary>\n\nText\n</details>",
    "## A title {: #here .wide }", "++ctrl+c++ and ==marked== and ~~gone~~", "[mail](mailto:a@lawn.example) or [ring](tel:+61255501234)", "    <script>shown as code</script>",
    "<img/src=x/onerror=ran()>", "<a href=\"x\"onclick=ran()>x</a>", "`<script>ran()</script>`",
]  # fmt: skip


def refused(source: str, title: str = "A page", **front_matter: object) -> list[str]:
    html = markdown.markdown(source, extensions=[*EXTENSIONS])
    return [str(finding) for finding in safe_page("content/page.md", source, html, title, front_matter)]


@pytest.mark.parametrize("source", HOSTILE)
def test_a_page_that_could_run_or_fetch_something_is_refused(source: str) -> None:
    lines = refused(f"Two lines of text\nbefore it.\n\n{source}\n")
    assert lines and all(line.startswith("content/page.md:") and "\n" not in line for line in lines)


@pytest.mark.parametrize("source", HARMLESS)
def test_a_page_that_only_lays_out_text_is_taken(source: str) -> None:
    assert refused(source) == []


def test_nothing_runs_in_a_browser_of_what_is_taken(page: Page) -> None:
    ran = []
    page.expose_function("ran", lambda: ran.append("something"))
    for source in HARMLESS:
        page.set_content(markdown.markdown(source, extensions=[*EXTENSIONS]))
    page.set_content("<script>ran()</script>")  # It would be noticed.
    page.wait_for_function("true")
    assert ran == ["something"]


def test_a_finding_points_to_where_it_stands() -> None:
    assert refused("A title\n\nSome text, <script>ran()</script>\n") == [
        "content/page.md:3:12: the element 'script' could run something or fetch it; take it out, or read the book and build it without --safe"
    ]


def test_what_a_page_says_of_itself_is_on_a_list_too() -> None:
    assert refused("x", words=["a"], hide=["toc"], title="The \"king\" of grasses", description="Fish & chips") == []
    assert len(refused("x", template="main.html", icon="x")) == 2
    assert len(refused("x", description="<b>x</b>")) == 1
    assert len(refused("x", "&lt;script&gt;")) == 1


def test_our_own_pages_are_taken() -> None:
    for page in (ROOT / "content").glob("*.md"):
        source = page.read_text(encoding="utf-8").split("---", 2)[-1]
        assert refused(source) == [], page


def test_files_that_could_run_and_links_are_refused_and_others_are_taken(tmp_path: Path) -> None:
    for name in ("about.md", "lawn.JPG", "sub/lawn.png", "notes.txt", ".git/config"):
        write(tmp_path / "content" / name, "")
    assert safe_files(tmp_path, "content") == []
    for name in ("page.html", "sub/script.js", "drawing.svg", "style.css", "main.html.j2", "feed.xml", "run.py"):
        write(tmp_path / "content" / name, "")
    (tmp_path / "content/passwords.txt").symlink_to("/etc/passwd")
    (tmp_path / "content/up").symlink_to("..")
    found = [str(finding).split(":")[0] for finding in safe_files(tmp_path, "content")]
    assert found == [f"content/{name}" for name in ("drawing.svg", "feed.xml", "main.html.j2", "page.html", "passwords.txt", "run.py", "style.css", "sub/script.js", "up")]


def test_a_folder_of_pages_that_is_a_link_out_of_the_book_is_refused(tmp_path: Path) -> None:
    (tmp_path / "book").mkdir()
    (tmp_path / "book" / "content").symlink_to("/etc")
    (line,) = map(str, safe_files(tmp_path / "book", "content"))
    assert line == "content:1:1: the folder is a link that leads out of the book; put the pages themselves there"
