"""Disks that are full, mounted in the way or not to be written on: in a mount namespace of its own, which only some machines allow."""

import ctypes
import subprocess
import sys
from pathlib import Path

import pytest

from tests.building.small_sites import write

ROOT = Path(__file__).parents[2]
PR_CAPBSET_DROP, CAP_DAC_OVERRIDE, CAP_DAC_READ_SEARCH = 24, 1, 2  # linux/prctl.h, linux/capability.h
INSIDE = "is another disk or folder, mounted inside the site; mount it elsewhere, or name another folder with --to"
PUT = """
import sys
from pathlib import Path
from generator.building.failed import BuildFailed
from generator.building.swap import replace_site
from generator.building.target import Target
from tests.building.small_sites import edition
target = Target(Path(sys.argv[1]))
try:
    target.must_take_a_site(Path("/nowhere/book"))
    replace_site(target, edition(int(sys.argv[2]), {"large.txt": "x" * int(sys.argv[3])}))
except BuildFailed as error:
    print(error)
print(target.stands())
"""


def put(site: Path, number: int, size: int = 0, before: str = "true", **how) -> list[str]:
    """What is said of a site that is put there after a command of the shell, and what lies beside it then."""
    shell = f'{before} && "$0" -c "$1" "$2" {number} {size}; cd "$2/.." && ls -A1'
    run = subprocess.run(["unshare", "--map-root-user", "--mount", "sh", "-c", shell, sys.executable, PUT, site], capture_output=True, text=True, cwd=ROOT, **how)
    assert run.stderr == ""
    return run.stdout.splitlines()


@pytest.mark.soak
def test_a_disk_that_is_full_keeps_the_earlier_site(tmp_path: Path) -> None:
    there = f"mount -t tmpfs -o size=300k none {tmp_path}"
    assert put(tmp_path / "site", 1, before=there) == ["The new site is in place.", "site"]
    first = f'{there} && "$0" -c "$1" "$2" 1 0 >/dev/null'
    lines = put(tmp_path / "site", 2, 1_000_000, before=first)
    assert lines == [f"{tmp_path}/site: no site can be written here (No space left on device); name another folder with --to", "Nothing was built; the earlier site is as it was.", "site"]


@pytest.mark.soak
def test_disks_that_are_mounted_in_the_way_are_told_and_lose_nothing(tmp_path: Path) -> None:
    site = tmp_path / "site"
    assert put(site, 1)[0] == "The new site is in place."
    (line, *_) = put(site, 2, before=f"mount -t tmpfs none {site}")
    assert line == f"{site}: is where a disk is mounted, so no new site can take its place; name a folder inside it"
    write(site / "photographs/mine.jpg", "mine")
    (line, *_) = put(site, 2, before=f"mount -t tmpfs none {site}/photographs")
    assert line == f"{site}/photographs: {INSIDE}"
    write(tmp_path / "elsewhere/only.jpg", "the only one")
    (site / "two words").mkdir()
    (line, *_) = put(site, 2, before=f"mount --bind {tmp_path}/elsewhere '{site}/two words'")
    assert line == f"{site}/two words: {INSIDE}" and (tmp_path / "elsewhere/only.jpg").read_text() == "the only one"
    (line, *_) = put(site, 2, before=f"mount --bind {site} {site}")
    assert line == f"{site}: is where a disk is mounted, so no new site can take its place; name a folder inside it"
    (line, *_) = put(site, 2, before=f"mount -t tmpfs none {tmp_path} && mount -o remount,ro {tmp_path}")
    assert line == f"{site}: no site can be written here (Read-only file system); name another folder with --to"


def without_a_roots_rights() -> None:
    """Permissions hold for everyone, also where the tests run as root: two of its rights go from what a program may be given."""
    for right in (CAP_DAC_OVERRIDE, CAP_DAC_READ_SEARCH):
        ctypes.CDLL(None).prctl(PR_CAPBSET_DROP, right, 0, 0, 0)


def put_without_rights(site: Path, number: int) -> list[str]:
    run = subprocess.run([sys.executable, "-c", PUT, site, str(number), "0"], capture_output=True, text=True, cwd=ROOT, preexec_fn=without_a_roots_rights)
    assert run.stderr == ""
    return run.stdout.splitlines()


def test_folders_that_may_not_be_written_are_told_and_keep_what_they_hold(tmp_path: Path) -> None:
    site = tmp_path / "public/site"
    assert put_without_rights(site, 1) == ["The new site is in place."]
    site.parent.chmod(0o555)
    assert put_without_rights(site, 2) == [f"{site}: no site can be written here (Permission denied); name another folder with --to", "Nothing was built; the earlier site is as it was."]
    site.parent.chmod(0o755)
    site.chmod(0o555)
    assert put_without_rights(site, 2) == [f"{site}: may not be changed by you; give yourself its permissions, or name another folder with --to", "Nothing was built; the earlier site is as it was."]
    site.chmod(0o755)
    write(site / "closed/mine.txt", "mine")
    (site / "closed").chmod(0)
    try:
        lines = put_without_rights(site, 2)
        assert lines[0].startswith(f"{site}: ") and "Permission denied" in lines[0] and len(lines) == 2
    finally:
        (site / "closed").chmod(0o755)
    assert (site / "closed/mine.txt").read_text() == "mine" and [each.name for each in site.parent.iterdir()] == ["site"]
