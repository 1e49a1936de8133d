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


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each entry, key, character, caution or source that is named and does not exist."""
    by_kind: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for (kind, pattern), what in NAMED.items():
        by_kind.setdefault(kind, []).append((pattern, what))
    for part in parts(loaded):
        for pattern, what in by_kind.get(part.kind, ()):
            if _fits(part.path, pattern):
                yield from unknown(loaded, NAME, what, part.value, part.place)
    for part in bases(loaded):
        for number, source in enumerate(part.value.get("sources", ())):
            yield from unknown(loaded, NAME, "source", source, part.file.place((*part.path, "sources", number)))


def _fits(path: DataPath, pattern: tuple[str, ...]) -> bool:
    return len(path) == len(pattern) and all(wanted in (ANY, name) for name, wanted in zip(path, pattern, strict=True))
