"""Why no site was built."""

from collections.abc import Iterable


class BuildFailed(Exception):
    """The site could not be built; the message has a line for each reason."""


def failed(reasons: Iterable[object]) -> BuildFailed:
    return BuildFailed("\n".join(str(reason) for reason in reasons))
