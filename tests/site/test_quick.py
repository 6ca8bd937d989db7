"""Our own book is built within the time that we promise, on a machine that does nothing else."""

from pathlib import Path

import pytest

from tests.site.conftest import SLOWEST_BUILD_SECONDS, build


@pytest.mark.soak
@pytest.mark.alone
def test_a_build_alone_keeps_its_promise(tmp_path: Path) -> None:
    build(tmp_path / "site", SLOWEST_BUILD_SECONDS)
