"""The search for other people's sentences finds a copied one, however it is cut or marked, and lets names go."""

from tests.words.shared_with_sources import main, shared_runs
from tests.words.texts import Text

SOURCE = {"oak": "On the coast, rake the moss out in early spring, while the soil is damp, and burn nothing."}


def runs(text: str) -> list[str]:
    return [found.words for found in shared_runs([Text("README.md", 1, 1, "text", text)], SOURCE)]


def test_eight_words_in_a_row_are_found_with_their_place_and_source():
    [found] = shared_runs([Text("README.md", 1, 1, "text", "Rake the moss out in early spring, while you can.")], SOURCE)
    assert str(found) == "README.md:1: 'rake the moss out in early spring while' stands in oak too; say it in your own words"


def test_seven_are_free():
    assert runs("Rake the moss out in early spring, as long as you can.") == []


def test_a_run_is_told_once_and_whole_whatever_stands_between_its_words():
    assert runs("So RAKE the moss (out in early spring), while the soil is damp; go home.") == ["rake the moss out in early spring while the soil is damp"]


def test_a_name_inside_a_run_does_not_count():
    source = {"law": "Ask the Food and Agriculture Organization of the United Nations in Rome"}
    text = Text("README.md", 1, 1, "text", "Ask the Food and Agriculture Organization of the United Nations in Rome.")
    assert shared_runs([text], source) == []


def test_a_folder_is_read_and_counted(tmp_path, capsys):
    (tmp_path / "oak.txt").write_text(SOURCE["oak"], encoding="utf-8")
    assert main(str(tmp_path)) == 0
    assert "1 sources of 18 words; 0 runs" in capsys.readouterr().err
