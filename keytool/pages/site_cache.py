"""The site of a library, before a site builder has seen it and when it is finished: made now, or remembered from the same files."""

from __future__ import annotations

import gc
import json
import os
import platform
import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from importlib.metadata import version
from pathlib import Path

from keytool.library import Loaded, load
from keytool.library.disk_cache import key_of, recall, recall_bytes, remember, remember_bytes
from keytool.pages.extras import Extras
from keytool.pages.valid import require_valid
from keytool.pages.whole_site import SiteContent, build_site

CODE = Path(__file__).parents[1]
"""The folder of the code; a site made by other code is another site."""

BUILDERS = ("mkdocs", "mkdocs-material", "jinja2", "markdown", "pillow", "fpdf2", "segno")
"""The programs whose version may show in the site."""

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


def finished_key(root: Path, written: Path, extras: Adding, variant: str) -> str:
    """The key of the finished site: of the library and the pages, and of whatever else decides what the builder writes.

    That is `mkdocs.yml` of the folder `written` with every variable it asks for, the day it is dated with, and the version of
    each program that has a hand in it.
    """
    config = (written / "mkdocs.yml").read_text("utf-8")
    asked = sorted({"SOURCE_DATE_EPOCH", *re.findall(r"!ENV \[?\s*(\w+)", config)} - {"WETMOUNT_ROOT"})
    about = [config, *(f"{name}={os.environ.get(name)}" for name in asked), *(f"{name} {version(name)}" for name in BUILDERS)]
    about += [platform.python_version()]
    return key_of([root / "keydata", written / "site", CODE], variant, f"{extras.__module__}.{extras.__qualname__}", *about)


def recall_finished(key: str, folder: Path) -> bool:
    """Write the finished site that was remembered under a key into a new folder; whether there was one."""
    whole = recall_bytes("finished", key)
    if whole is None:
        return False
    length = int.from_bytes(whole[:8])
    at = 8 + length
    made: set[Path] = set()
    for name, size in json.loads(whole[8:at]):
        path = folder / name
        if path.parent not in made:
            path.parent.mkdir(parents=True, exist_ok=True)
            made.add(path.parent)
        path.write_bytes(whole[at : at + size])
        at += size
    return True


def remember_finished(key: str, folder: Path) -> None:
    """Keep the finished site that stands in a folder."""
    contents = {path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}
    names = json.dumps([(name, len(content)) for name, content in contents.items()]).encode()
    remember_bytes("finished", key, b"".join([len(names).to_bytes(8), names, *contents.values()]))


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
