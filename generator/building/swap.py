"""A new site in an earlier one's place, in one step: made aside, with what a person put into the earlier one carried over."""

from collections.abc import Callable
from pathlib import Path

from generator.building.aside import Aside
from generator.building.exchange import exchange, undisturbed
from generator.building.kept import bring_newcomers, carry_over, write_list
from generator.building.target import Target


def replace_site(target: Target, make: Callable[[Path], None], exchange: Callable[[Path, Path], bool] = exchange) -> None:
    """Have a site made aside and move it in.

    make: makes the site in a folder that is not there yet. exchange: how two folders exchange their names.
    Raises BuildFailed with what to tell the author, and whatever `make` raises; `target.stands()` says what stands there then.
    """
    try:
        with Aside(target.real) as aside:
            make(aside.new)
            write_list(aside.new)
            if target.real.is_dir():
                carry_over(target.real, aside.new, target.path)
            target.expect(aside.new)
            with undisturbed():
                earlier = aside.move_in(exchange)
                if earlier is not None:
                    bring_newcomers(earlier, target.real)
    except OSError as error:
        raise target.unwritable(error) from error
