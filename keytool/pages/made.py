"""The site of a library before a site builder has seen it: made now, or remembered from exactly the same files."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from keytool.library import Loaded, load
from keytool.library.remembered import key_of, recall, remember
from keytool.pages.extras import Extras
from keytool.pages.sound import sound
from keytool.pages.whole import Made, make

CODE = Path(__file__).parents[1]
"""The folder of the code; a site made by other code is another site."""

Adding = Callable[[Loaded], Extras]
"""What other faces add, made from the library as it was loaded."""


def made(root: Path, site: Path, extras: Adding, variant: str) -> Made:
    """The site of the library under `root`, with the hand-written pages of the folder `site`.

    `variant` tells apart sites of one library to which the same `extras` add different things.

    Raises:
        LibraryProblems: the library has problems.
    """
    key = key_of([root / "keydata", site, CODE], variant, f"{extras.__module__}.{extras.__qualname__}")
    known = recall("site", key)
    if isinstance(known, Made):
        return known
    loaded = sound(load(root))
    anew = make(loaded.library, site, extras(loaded))
    remember("site", key, anew)
    return anew
