"""A library that was found clean is remembered, so that a walk starts at once.

It is kept in the user's cache folder under the hash of every file it was made from and of the
code that made it; a changed byte anywhere means another hash, and everything is read anew.
"""

from __future__ import annotations

import hashlib
import os
import pickle
from pathlib import Path

from keytool.library.model import Library
from keytool.library.save import save

MOST_KEPT = 4


def recall(root: Path) -> Library | None:
    """The library as it was found clean with exactly these files, or None."""
    try:
        library = pickle.loads(_file(root).read_bytes())
    except (OSError, pickle.UnpicklingError, AttributeError, EOFError, ImportError, TypeError):
        return None
    return library if isinstance(library, Library) else None


def remember(root: Path, library: Library) -> None:
    """Keep a library that was found clean. Without a cache folder that can be written, nothing happens."""
    file = _file(root)
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        save(file, pickle.dumps(library))
        for old in sorted(file.parent.glob("*.library"), key=lambda each: each.stat().st_mtime)[:-MOST_KEPT]:
            old.unlink(missing_ok=True)
    except OSError:
        return


def _file(root: Path) -> Path:
    cache = os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache"
    return Path(cache) / "wetmount" / f"{_hash(root)}.library"


def _hash(root: Path) -> str:
    """Of the names and bytes of all files of the library and of the code that reads them."""
    whole = hashlib.sha256()
    for folder in (root / "keydata", Path(__file__).parent):
        for path in sorted(folder.rglob("*")):
            if path.suffix in (".yaml", ".json", ".py"):
                whole.update(path.relative_to(folder).as_posix().encode() + b"\0")
                whole.update(hashlib.sha256(path.read_bytes()).digest())
    return whole.hexdigest()[:24]
