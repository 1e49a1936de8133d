"""Everything a file names by its id exists."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.file_parts import bases, parts
from keytool.library.checks.unknown_ids import unknown
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.yaml_file import DataPath

NAME = "names"
ANY = "*"
NAMED = {
    ("entry", ("within", ANY)): "entry",
    ("entry", ("cautions", ANY)): "caution",
    ("entry", ("mistaken-for", ANY, "entry")): "entry",
    ("entry", ("mistaken-for", ANY, "character")): "character",
    ("key", ("scope", ANY)): "entry",
    ("key", ("cautions", ANY)): "caution",
    ("key", ("couplets", ANY, "leads", ANY, "end")): "entry",
    ("key", ("couplets", ANY, "leads", ANY, "key")): "key",
    ("guide", ("steps", ANY, "caution")): "caution",
    ("guide", ("cautions", ANY)): "caution",
    ("look-alike", ("entries", ANY)): "entry",
    ("photo", ("entry",)): "entry",
    ("look-alike", ("characters", ANY)): "character",
    ("voices", (ANY, "entries", ANY)): "entry",
    ("voices", (ANY, "keys", ANY)): "key",
    ("shortcuts", (ANY, "key")): "key",
    ("shortcuts", (ANY, "fails", ANY, "entry")): "entry",
}
"""Where an id of another file stands, by the kind of file and the way to it, and what it is the id of."""

BY_SHAPE: dict[tuple[str | int, ...], list[tuple[tuple[str, ...], str]]] = {}
"""The same by the kind of file, the length of the way and its last step, so that most parts need be held against none."""
for (_kind, _pattern), _what in NAMED.items():
    BY_SHAPE.setdefault((_kind, len(_pattern), _pattern[-1]), []).append((_pattern, _what))


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each entry, key, character, caution or source that is named and does not exist."""
    for part in parts(loaded):
        for last in (part.path[-1:], (ANY,)):
            for pattern, what in BY_SHAPE.get((part.kind, len(part.path), *last), ()):
                if _fits(part.path, pattern):
                    yield from unknown(loaded, NAME, what, part.value, part.place)
    for part in bases(loaded):
        for number, source in enumerate(part.value.get("sources", ())):
            yield from unknown(loaded, NAME, "source", source, part.file.place((*part.path, "sources", number)))


def _fits(path: DataPath, pattern: tuple[str, ...]) -> bool:
    return len(path) == len(pattern) and all(wanted in (ANY, name) for name, wanted in zip(path, pattern, strict=True))
