"""A newcomer's way: the package is installed from its wheel, a book is begun, and its site stands; nothing of the invented practice is in it."""

import os
import re
import subprocess
import sys
import sysconfig
import venv
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
GRASSES = "perennial-ryegrass,fine-fescue,bentgrass,tall-fescue,kentucky-bluegrass"
# What nobody would say of the lawns of this book, but a name of another grass.
UNHEARD = re.compile(r"(?<!english )(?<![-/])\b(kikuyu|couch|bermuda(grass)?|zoysia|buffalo|st\.? augustine|centipede|bahia|carpet ?grass)\b(?!-|\.html)", re.IGNORECASE)
READ = {".html", ".js", ".json", ".xml", ".txt", ".ics", ".csv", ".webmanifest"}


@pytest.fixture(scope="module")
def swardbook(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The command as the wheel installs it, beside the libraries that are here already."""
    made = tmp_path_factory.mktemp("installed")
    subprocess.run(
        [sys.executable, "-m", "pip", "wheel", ROOT, "--no-deps", "--no-build-isolation", "--quiet", "--disable-pip-version-check", "--wheel-dir", made],
        check=True, cwd=made,
    )
    wheel = next(made.glob("swardbook-*.whl"))
    venv.create(made / "env", with_pip=False)
    site_packages = Path(sysconfig.get_path("purelib", vars={"base": str(made / "env"), "platbase": str(made / "env")}))
    (site_packages / "libraries.pth").write_text(sysconfig.get_path("purelib"))
    python = made / "env" / "bin" / "python"
    subprocess.run(
        [sys.executable, "-m", "pip", "--python", python, "install", wheel, "--no-deps", "--force-reinstall", "--no-compile", "--quiet", "--disable-pip-version-check"],
        check=True, cwd=made, env={**os.environ, "PYTHONPATH": ""},
    )
    return made / "env" / "bin" / "swardbook"


def run(command: Path, *said: str, cwd: Path) -> str:
    done = subprocess.run([command, *said], capture_output=True, text=True, cwd=cwd, env={**os.environ, "PYTHONPATH": "", "PYTHONIOENCODING": "utf-8"})
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def words_of(file: Path) -> str:
    """What a reader or a program finds in a file of the site: the words of a page, with its source titles, which are others' words, left out."""
    text = file.read_text(encoding="utf-8")
    return re.sub(r"<[^>]+>", "\n", text) if file.suffix == ".html" else text


def test_a_newcomer_has_a_book_of_their_own_in_two_commands(swardbook: Path, tmp_path: Path) -> None:
    assert subprocess.run([swardbook.with_name("python"), "-c", "import generator"], capture_output=True, env={**os.environ, "PYTHONPATH": ""}, cwd=tmp_path).returncode, (
        "the package is called swardbook where it is installed, and can collide with nobody's generator"
    )
    said = run(
        swardbook, "init", "lawns", "--name", "Kererū Lawn Care", "--place", "invercargill", "--places", "christchurch,wellington", "--grasses", GRASSES,
        "--public-address", "https://kereru.example/lawns/", cwd=tmp_path,
    )
    assert "Made lawns: 5 grasses, 3 places." in said
    assert "in order" in run(swardbook, "check", "--book", "lawns", cwd=tmp_path)
    run(swardbook, "build", "--book", "lawns", cwd=tmp_path)
    site = tmp_path / "lawns" / "site"
    files = {file.relative_to(site).as_posix(): words_of(file) for file in sorted(site.rglob("*")) if file.suffix in READ}
    assert len(files) > 300
    assert {path.split("/")[-1].removesuffix(".html") for path in files if path.startswith("renovate/")} >= set(GRASSES.split(","))
    assert [path for path, text in files.items() if re.search("Tussock Lane|tussocklane", text)] == []
    said_of = {
        path: sorted({found[0] for found in UNHEARD.finditer(text)})
        for path, text in files.items() if path not in ("sources.html", "book/sources.json") and "/vendor/" not in path
    }
    assert {path: names for path, names in said_of.items() if names} == {}
    assert "Kererū Lawn Care" in files["index.html"]
