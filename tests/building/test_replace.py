"""A new site takes an earlier one's place: at once where the system can, and so that nothing is lost where it cannot."""

import os
import shutil
import sys
import time
from pathlib import Path

import pytest

from generator.building.aside import Aside
from generator.building.exchange import exchange
from generator.building.failed import BuildFailed
from generator.building.swap import replace_site
from generator.building.target import Target
from tests.building.small_sites import edition, everything, no_exchange, one_reason, write

BOTH_WAYS = pytest.mark.parametrize("exchanged", [exchange, no_exchange], ids=["one step", "two renames"])


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """The first edition, with nothing beside it."""
    folder = tmp_path / "public" / "site"
    replace_site(Target(folder), edition(1))
    return folder


def beside(site: Path) -> list[str]:
    return sorted(each.name for each in site.parent.iterdir() if each != site)


def text(site: Path) -> str:
    return (site / "index.html").read_text(encoding="utf-8")


def test_this_system_has_the_one_step(tmp_path: Path) -> None:
    """Where it has not, the tests of one step would pass by the two renames."""
    for name in ("one", "two"):
        write(tmp_path / name / name, "")
    assert exchange(tmp_path / "one", tmp_path / "two") is (sys.platform in ("linux", "darwin"))
    assert (tmp_path / "one" / "two").exists() and (tmp_path / "two" / "one").exists()


@BOTH_WAYS
def test_the_new_site_stands_and_nothing_else(site: Path, exchanged) -> None:
    target = Target(site)
    replace_site(target, edition(2), exchanged)
    assert "Edition 2" in text(site)
    assert target.stands() == "The new site is in place."
    assert beside(site) == []


@pytest.mark.parametrize("there", ["nothing", "an empty folder"])
def test_a_first_site_needs_no_earlier_one(tmp_path: Path, there: str) -> None:
    site = tmp_path / "deep" / "down" / "site"
    if there == "an empty folder":
        site.mkdir(parents=True)
    replace_site(Target(site), edition(1))
    assert "Edition 1" in text(site) and beside(site) == []


@BOTH_WAYS
def test_a_build_that_fails_leaves_the_earlier_site_byte_for_byte(site: Path, exchanged) -> None:
    def fails(folder: Path) -> None:
        edition(2)(folder)
        raise KeyboardInterrupt

    before, target = everything(site), Target(site)
    with pytest.raises(KeyboardInterrupt):
        replace_site(target, fails, exchanged)
    assert everything(site) == before and beside(site) == []
    assert target.stands() == "Nothing was built; the earlier site is as it was."


def test_a_first_build_that_fails_leaves_nothing(tmp_path: Path) -> None:
    target = Target(tmp_path / "deep" / "down" / "site")
    with pytest.raises(BuildFailed):
        replace_site(target, lambda folder: (folder / "no folder" / "page.html").touch())
    assert target.stands() == "Nothing was built."
    assert list(tmp_path.iterdir()) == []


def test_a_second_rename_that_fails_puts_the_earlier_site_back(site: Path) -> None:
    def loses_the_new_one(new: Path, _: Path) -> bool:
        shutil.rmtree(new)
        return False

    before, target = everything(site), Target(site)
    with pytest.raises(BuildFailed) as raised:
        replace_site(target, edition(2), loses_the_new_one)
    assert one_reason(raised).startswith(f"{site}: no site can be written here (No such file or directory);")
    assert everything(site) == before and beside(site) == []
    assert target.stands() == "Nothing was built; the earlier site is as it was."


def killed_between_two_renames(site: Path) -> Path:
    """What a kill leaves there, on a system that has no exchange: both sites aside, and none in its place."""
    aside = site.parent / ".site.building"
    aside.mkdir()
    write(aside / "lock", "")
    site.rename(aside / "old")
    edition(2)(aside / "site")
    return aside


def test_what_a_kill_left_aside_is_put_back_by_the_next_build_even_if_that_fails(site: Path) -> None:
    before = everything(site)
    killed_between_two_renames(site)
    assert not site.exists()
    target = Target(site)
    with pytest.raises(BuildFailed):
        replace_site(target, lambda folder: (folder / "no folder" / "page.html").touch())
    assert everything(site) == before and beside(site) == []
    assert target.stands() == "Nothing was built; the earlier site is as it was."


def test_what_a_kill_left_aside_is_finished_by_the_next_build(site: Path) -> None:
    write(site / "CNAME", "lawn.example")
    killed_between_two_renames(site)
    replace_site(Target(site), edition(3))
    assert "Edition 3" in text(site) and (site / "CNAME").read_text() == "lawn.example"
    assert beside(site) == []


def test_an_earlier_site_is_put_back_from_where_earlier_editions_laid_it(site: Path) -> None:
    before = everything(site)
    older = site.parent / ".site-ab12cd_9"
    older.mkdir()
    site.rename(older / "old")
    with pytest.raises(BuildFailed):
        replace_site(Target(site), lambda folder: (folder / "no folder" / "page.html").touch())
    assert everything(site) == before and beside(site) == []


def test_the_leftovers_of_dead_builds_are_swept_and_nothing_of_anyone_elses(site: Path) -> None:
    edition(2)(site.parent / ".site.building" / "site")
    write(site.parent / ".site.building" / "lock", "")
    edition(2)(site.parent / ".site-deadbeef" / "site")
    long_ago = time.time() - 7200
    for folder in (site.parent / ".site-deadbeef" / "site", site.parent / ".site-deadbeef"):
        os.utime(folder, (long_ago, long_ago))
    kept = [".site-holiday_", ".site-livenow1", ".site-photos"]
    write(site.parent / ".site-holiday_" / "old" / "lawn.jpg", "a lawn")
    edition(2)(site.parent / ".site-livenow1" / "site")
    write(site.parent / ".site-photos" / "site", "")
    replace_site(Target(site), edition(3))
    assert beside(site) == kept


def test_a_folder_of_that_name_that_no_build_made_is_left_alone(site: Path) -> None:
    write(site.parent / ".site.building" / "site" / "lawn.jpg", "a lawn")
    with pytest.raises(BuildFailed) as raised:
        replace_site(Target(site), edition(2))
    assert one_reason(raised) == f"{site.parent}/.site.building: is where the site is made, and no build made it; move it away"
    assert (site.parent / ".site.building/site/lawn.jpg").exists()


def test_of_two_builds_at_once_the_second_is_told_and_the_first_goes_on(site: Path) -> None:
    with Aside(site) as first:
        edition(2)(first.new)
        second = Target(site)
        with pytest.raises(BuildFailed) as raised:
            replace_site(second, edition(3))
        assert one_reason(raised) == f"{site}: another build of this site is running; wait until it has ended"
        assert second.stands() == "Nothing was built; the earlier site is as it was."
        first.move_in(exchange)
    assert "Edition 2" in text(site) and beside(site) == []


@BOTH_WAYS
def test_a_link_to_a_folder_stays_and_leads_to_the_new_site(site: Path, exchanged) -> None:
    link = site.parent / "www"
    link.symlink_to("site")
    replace_site(Target(link), edition(2), exchanged)
    assert link.is_symlink() and "Edition 2" in text(link) and "Edition 2" in text(site)
    assert beside(site) == ["www"]


@pytest.mark.parametrize("name", ["s" * 255, "ü" * 127, "two\nlines", "a'b\"c $d", "-site"])
def test_a_site_may_have_any_name(tmp_path: Path, name: str) -> None:
    for number in (1, 2):
        replace_site(Target(tmp_path / name), edition(number))
    assert "Edition 2" in text(tmp_path / name)
    assert [each.name for each in tmp_path.iterdir()] == [name]


def test_the_folder_keeps_its_permissions(site: Path) -> None:
    site.chmod(0o2711)
    replace_site(Target(site), edition(2))
    assert oct(site.stat().st_mode & 0o7777) == oct(0o2711)
