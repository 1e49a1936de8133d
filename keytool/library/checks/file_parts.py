"""Walk the parts of every usable file: all of them, the texts, and the bases."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from keytool.library.finding import Place
from keytool.library.load import Files, Loaded
from keytool.library.yaml_file import DataPath, YamlFile


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a file: what kind of file it is, where the part stands in it, and what it holds."""

    kind: str
    file: YamlFile
    path: DataPath
    value: Any

    @property
    def place(self) -> Place:
        """The place of what it holds."""
        return self.file.place(self.path)


def parts(loaded: Loaded) -> tuple[Part, ...]:
    """Every part of every usable file, the outer before the inner, in the order of the files."""
    return _parts(loaded.files)


@lru_cache(maxsize=1)
def _parts(files: Files) -> tuple[Part, ...]:
    return tuple(_walked(files))


def _walked(files: Files) -> Iterator[Part]:
    for (kind, _), file in files.by_id.items():
        waiting: list[tuple[DataPath, Any]] = [((), file.data)]
        while waiting:
            path, value = waiting.pop()
            yield Part(kind, file, path, value)
            inner: list[tuple[str | int, Any]] = []
            if isinstance(value, dict):
                inner = list(value.items())
            elif isinstance(value, list):
                inner = list(enumerate(value))
            waiting += [((*path, name), each) for name, each in reversed(inner)]


def texts(loaded: Loaded) -> Iterator[Part]:
    """Every text of every usable file; what is put into a sentence in braces is no quantity, so those are left to a rule of their own."""
    return (part for part in parts(loaded) if isinstance(part.value, str) and part.kind != "sentences")


def bases(loaded: Loaded) -> Iterator[Part]:
    """Every basis of every usable file, one by one where several join."""
    for part in parts(loaded):
        if isinstance(part.value, dict) and "kind" in part.value and "basis" in part.path[-2:]:
            names = [name for name in part.path[-2:] if not isinstance(name, int)]
            if names[-1:] == ["basis"]:
                yield part
