"""What was made from exactly these files is remembered, so that a walk or a second build starts at once.

It is kept in the user's cache folder under a hash of every file it was made from and of the
code that made it; a changed byte anywhere means another hash, and everything is made anew.
"""

from __future__ import annotations

import enum
import hashlib
import importlib
import io
import os
import pickle
from collections.abc import Iterable
from dataclasses import is_dataclass
from pathlib import Path
from typing import Any

from keytool.library.save import save

MOST_KEPT = 3
_DIGEST = hashlib.sha256().digest_size
LIBRARY_CODE = Path(__file__).parent


def recall(kind: str, key: str) -> Any:
    """What was remembered of a kind, such as "library", under this key; None where nothing is."""
    try:
        data = recall_bytes(kind, key)
        return None if data is None else _OwnTypes(io.BytesIO(data)).load()
    except Exception:  # whatever a strange file makes of the reader, nothing was remembered
        return None


def recall_bytes(kind: str, key: str) -> bytes | None:
    """The same for what was kept as bytes; None also where they were changed since."""
    file = _file(kind, key)
    try:
        if file is None or not _is_own(file.parent) or not _is_own(file):
            return None
        whole = memoryview(file.read_bytes())
        return bytes(whole[_DIGEST:]) if hashlib.sha256(whole[_DIGEST:]).digest() == whole[:_DIGEST] else None
    except OSError:
        return None


def remember(kind: str, key: str, made: Any) -> None:
    """Keep something under its key; only the newest few of a kind. Without a cache folder that can be written, nothing happens.

    It must be made of plain data and frozen types of this package alone, or it is not taken back.
    """
    remember_bytes(kind, key, pickle.dumps(made, protocol=5))


def remember_bytes(kind: str, key: str, data: bytes) -> None:
    """The same for bytes as they stand."""
    file = _file(kind, key)
    if file is None:
        return
    try:
        file.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        save(file, hashlib.sha256(data).digest() + data)
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
                whole.update(os.fsencode(path.relative_to(folder)) + b"\0")
                try:
                    whole.update(hashlib.sha256(path.read_bytes()).digest())
                except OSError as error:  # reading the library says so with its place
                    whole.update(f"unreadable: {error.errno}".encode())
    return whole.hexdigest()[:24]


class _OwnTypes(pickle.Unpickler):
    """Reads plain data and the frozen types of this package, and nothing else: no function can be named, so none can be run."""

    def find_class(self, module: str, name: str) -> Any:
        """A data class or a closed list of this package."""
        if module.partition(".")[0] == "keytool":
            found = getattr(importlib.import_module(module), name)
            if isinstance(found, type) and (is_dataclass(found) or issubclass(found, enum.Enum)):
                return found
        raise pickle.UnpicklingError(f"{module}.{name} is not of the library")


def _is_own(path: Path) -> bool:
    """Whether nobody else can have written there (where files have owners)."""
    if not hasattr(os, "getuid"):
        return True
    there = path.stat()
    return there.st_uid == os.getuid() and not there.st_mode & 0o022


def _file(kind: str, key: str) -> Path | None:
    """Where a thing is kept; None where there is no home to keep it in."""
    try:
        cache = os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache"
    except RuntimeError:
        return None
    return Path(cache) / "wetmount" / f"{key}.{kind}"
