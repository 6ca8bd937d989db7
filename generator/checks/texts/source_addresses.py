"""A source is cited by the body that published it, by that body's own address."""

import re
from collections.abc import Iterator
from urllib.parse import urlsplit

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding

# Kind of place -> hosts of that kind, each with whatever stands in front of it. Not all there are: the kinds that crept in once.
REFUSED = {
    "a package registry": (
        "pypi.org", "pythonhosted.org", "cran.r-project.org", "r-universe.dev", "npmjs.com", "npmjs.org", "crates.io", "docs.rs", "rubygems.org",
        "packagist.org", "anaconda.org", "rdrr.io", "rdocumentation.org",
    ),
    "a place that copies documents": (
        "archive.org", "studylib.net", "docslib.org", "yumpu.com", "fdocuments.in", "fdocuments.net", "fdocuments.us", "vdocuments.net", "vdocuments.mx", "scribd.com",
        "slideshare.net", "slideplayer.com", "docplayer.net", "pdfcoffee.com", "issuu.com", "academia.edu", "researchgate.net", "coursehero.com",
        "acts.co.za", "elaws.us", "studocu.com", "pdfslide.net", "dokumen.tips", "silo.tips",
    ),
    "a service for conferences": ("confex.com",),
    "a citation service": ("scite.ai", "semanticscholar.org", "scholar.google.com", "core.ac.uk", "mendeley.com", "citeseerx.ist.psu.edu"),
    "a forum or a place for questions": (
        "theforumsa.co.za", "reddit.com", "quora.com", "stackexchange.com", "stackoverflow.com", "facebook.com", "houzz.com", "youtube.com",
    ),
    "a host of anybody's pages": ("blogspot.com", "wordpress.com", "medium.com", "tumblr.com", "weebly.com", "wixsite.com", "sites.google.com"),
    "a code host": ("github.com", "github.io", "githubusercontent.com", "gitlab.com", "bitbucket.org", "sourceforge.net", "readthedocs.io"),
    "a shop": ("amazon.com", "amazon.com.au", "ebay.com", "bunnings.com.au", "etsy.com"),
    "a server of identification keys": ("lucidcentral.org",),
}
# A page that is tried out or made for programs, not published: 'staging.' in front, '-test' in a name, or a content system's own name.
_TRIED_OUT = re.compile(r"(^|[.-])(staging|test|dev|developer|prod|uat|preprod|preview|sandbox)([.-]|$)|dotcms")


def refused(address: str) -> str | None:
    """The kind of place an address stands on, when no publishing body's own page is of that kind; else None."""
    host = (urlsplit(address).hostname or "").lower()
    for kind, hosts in REFUSED.items():
        if any(host == each or host.endswith(f".{each}") for each in hosts):
            return kind
    # The last two names are the body's own: only what stands before them says what the server is for.
    return "a server for trying out pages" if _TRIED_OUT.search(host) else None


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, source in book.sources.items():
        if source.address and (kind := refused(source.address)):
            yield Finding(
                book.where("sources", id, "address"),
                f"the address of source '{id}' is on {kind}", "cite the body that published, by its own address",
            )


CHECK = Check("source-addresses", "No source is cited by a registry, a copy, a forum or a server for trying out pages.", ("sources",), _check)
