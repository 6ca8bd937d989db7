"""What the pages may load and run: the policy that each page carries, and the header lines for whoever hosts the book.

No text of the book, however it is written, becomes a script, a style or a form that sends something: the browser itself refuses what is
not a file of the site. Both outputs come from here, so they cannot part.
"""

HEADERS_FILE = "book/headers.txt"

# A page opened from a folder has no host of its own: one browser lets 'self' stand for the files beside it, another for nothing at all.
# `file:` names them for every browser, and a hosted page can load nothing by it.
OWN = "'self' file:"
# A live preview puts its own script into each page, to show a change as soon as it is saved.
OWN_OR_WRITTEN_IN = f"{OWN} 'unsafe-inline'"

NO_REFERRER = "no-referrer"


def page_policy(previewing: bool = False) -> str:
    """The policy of a page as its meta tag holds it."""
    return "; ".join(f"{what} {whence}" for what, whence in _directives(previewing).items())


def header_lines() -> str:
    """The same policy and what only a header can say, as HTTP header lines."""
    lines = {
        # Nobody shows the book inside a page of their own, to have their buttons pressed for ours.
        "Content-Security-Policy": f"{page_policy()}; frame-ancestors 'none'",
        "Cross-Origin-Opener-Policy": "same-origin",
        "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
        "Referrer-Policy": NO_REFERRER,
        "X-Content-Type-Options": "nosniff",
    }
    return "".join(f"{name}: {value}\n" for name, value in lines.items())


def _directives(previewing: bool) -> dict[str, str]:
    return {
        "default-src": "'none'",
        "script-src": OWN_OR_WRITTEN_IN if previewing else OWN,
        "style-src": OWN,
        # The theme's icons stand in its style as data.
        "img-src": f"{OWN} data:",
        "font-src": OWN,
        "media-src": OWN,
        "connect-src": "'self'",
        "worker-src": "'self'",
        "manifest-src": "'self'",
        "base-uri": "'none'",
        "form-action": "'none'",
    }
