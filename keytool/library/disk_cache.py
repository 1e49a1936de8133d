"""What was made from exactly these files is remembered, so that a walk or a second build starts at once.

It is kept in the user's cache folder under a hash of every file it was made from and of the
code that made it; a changed byte anywhere means another hash, and everything is made anew.
"""

from __future__ import annotations

import hashlib
import os
import pickle
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from keytool.library.save import save

MOST_KEPT = 4
LIBRARY_CODE = Path(__file__).parent


def recall(kind: str, key: str) -> Any:
    """What was remembered of a kind, such as "library", under this key; None where nothing is."""
    try:
        return pickle.loads(_file(kind, key).read_bytes())
    except (OSError, pickle.UnpicklingError, AttributeError, EOFError, ImportError, IndexError, TypeError, ValueError):
        return None


def remember(kind: str, key: str, made: Any) -> None:
    """Keep something under its key; only the newest few of a kind. Without a cache folder that can be written, nothing happens."""
    file = _file(kind, key)
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        save(file, pickle.dumps(made))
        for old in sorted(file.parent.glob(f"*.{kind}"), key=lambda each: each.stat().st_mtime)[:-MOST_KEPT]:
            old.unlink(missing_ok=True)
    except OSError:
        return


def key_of(folders: Iterable[Path], *more: str) -> str:
    """The key of what is made from all files of some folders: a hash of their names and bytes, and of `more`."""
    whole = hashlib.sha256("\0".join(more).encode())
    for folder in folders:
        for path in sorted(folder.rglob("*")):
            if path.is_file() and "__pycache__" not in path.parts:
                whole.update(path.relative_to(folder).as_posix().encode() + b"\0")
                whole.update(hashlib.sha256(path.read_bytes()).digest())
    return whole.hexdigest()[:24]


def _file(kind: str, key: str) -> Path:
    cache = os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache"
    return Path(cache) / "wetmount" / f"{key}.{kind}"
