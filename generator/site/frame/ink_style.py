"""The papers of the pages and the practice's own colour on them, as the names that every style uses (`--sb-paper`, `--sb-accent`)."""

from generator.book.palette import DARK, LIGHT, PRINTED, Accent, Papers, accent_on_dark, accent_on_light, accent_printed

LIGHT_PAGES = ':root,[data-md-color-scheme="default"]'
DARK_PAGES = '[data-md-color-scheme="slate"]'


def ink_style(colour: str | None) -> str:
    """The style that follows the book's own colours. colour: '#rrggbb' of the practice; None leaves the accent as they have it."""
    return "\n".join([
        _rule(LIGHT_PAGES, LIGHT, colour and accent_on_light(colour)),
        _rule(DARK_PAGES, DARK, colour and accent_on_dark(colour)),
        f"@media print {{ {_rule(f'{LIGHT_PAGES},{DARK_PAGES}', PRINTED, colour and accent_printed(colour))} }}",
    ])


def _rule(pages: str, papers: Papers, accent: Accent | str | None) -> str:
    named = {f"--sb-{name.replace('_', '-')}": value for name, value in papers._asdict().items()}
    if isinstance(accent, Accent):
        named |= {"--sb-accent": accent.ink, "--sb-accent-tint": accent.tint, "--sb-on-accent": accent.on_ink}
    return f"{pages} {{ {' '.join(f'{name}: {value};' for name, value in named.items())} }}"
