"""The site of a library before a site builder has seen it: made now, or remembered from exactly the same files."""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from keytool.library import Loaded, load
from keytool.library.disk_cache import key_of, recall, remember
from keytool.pages.extras import Extras
from keytool.pages.valid import require_valid
from keytool.pages.whole_site import SiteContent, build_site

CODE = Path(__file__).parents[1]
"""The folder of the code; a site made by other code is another site."""

Adding = Callable[[Loaded], Extras]
"""What other faces add, made from the library as it was loaded."""


def cached_site(root: Path, site: Path, extras: Adding, variant: str) -> SiteContent:
    """The site of the library under `root`, with the hand-written pages of the folder `site`.

    `variant` tells apart sites of one library to which the same `extras` add different things.

    Raises:
        LibraryProblems: the library has problems.
    """
    key = key_of([root / "keydata", site, CODE], variant, f"{extras.__module__}.{extras.__qualname__}")
    known = recall("site", key)
    if isinstance(known, SiteContent):
        return known
    with _nothing_collected():
        loaded = require_valid(load(root))
        anew = build_site(loaded.library, site, extras(loaded))
    remember("site", key, anew)
    return anew


@contextmanager
def _nothing_collected() -> Iterator[None]:
    """Python's search for circular garbage put off: a site in the making holds millions of parts and drops next to none."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
