"""The library to take away: everything as JSON, entries and their statements as CSV, and the page that lists them."""

from __future__ import annotations

import csv
import io
import json
import math
from collections.abc import Iterable, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from keytool.library.basis import weakest
from keytool.library.model import Library
from keytool.library.value import Interval, States
from keytool.library.wording import plain
from keytool.pages.download_schema import schema
from keytool.pages.html import Html, el
from keytool.pages.page import Asset, Page, heading, page
from keytool.pages.page_writer import Writer

SCHEMA_VERSION = 1
"""Goes up when a field is renamed, removed or changes its meaning; a new field leaves it as it is."""
LICENCE = "CC-BY-4.0"
LEFT_OUT = ("files", "version", "sentences", "language")
"""Parts of the library that are said otherwise: where a thing is read from stands with the thing."""
ENTRY_COLUMNS = (
    "id",
    "kind",
    "theme",
    "name",
    "scientific",
    "also",
    "within",
    "summary",
    "commonness",
    "feeding",
    "cautions",
    "reviewed",
    "schema_version",
)
STATEMENT_COLUMNS = ("entry", "character", "states", "low", "high", "basis", "value", "sources", "stated_by", "schema_version")


def downloads(library: Library) -> tuple[Asset, ...]:
    """The files, the same for the same library. Lengths are in µm and speeds in µm/s whatever a file of the library uses."""
    return (
        Asset("downloads/library.json", as_json(library), "keydata"),
        Asset("downloads/library.schema.json", schema(SCHEMA_VERSION, LEFT_OUT), "keytool/library/model.py"),
        Asset("downloads/entries.csv", _table(ENTRY_COLUMNS, _entries(library)), "keydata/entries"),
        Asset("downloads/statements.csv", _table(STATEMENT_COLUMNS, _statements(library)), "keydata/entries"),
    )


def downloads_page(library: Library, files: Iterable[Asset]) -> Page:
    """What can be taken away, with its size, its columns and its licence."""
    writer = Writer(library, "downloads.md")
    size = {each.path: len(each.content) for each in files}
    says = {
        "downloads/library.json": "Everything: entries with what they inherit, keys, characters, look-alikes, guides, terms, cautions, "
        "sources, and the basis of every statement.",
        "downloads/library.schema.json": "The JSON Schema of library.json: every field with its type, and what each kind of thing is.",
        "downloads/entries.csv": f"One row for each entry. Columns: {', '.join(ENTRY_COLUMNS)}. Lists are joined by “; ”.",
        "downloads/statements.csv": f"One row for each thing an entry says of a character. Columns: {', '.join(STATEMENT_COLUMNS)}. "
        "An empty low or high is open; states are those that may be seen.",
    }
    lines = (
        el("li", el("a", path.rpartition("/")[2], href=writer.href(path), download=True), f", {_kilobytes(size[path])}. {words}")
        for path, words in says.items()
    )
    return page(
        "downloads.md",
        "keydata",
        "Downloads",
        [
            heading(1, "Downloads"),
            el("p", f"The whole library, wetmount {library.version}, to use elsewhere. Lengths are in µm, speeds in µm/s."),
            el("ul", *lines),
            el(
                "p",
                f"schema_version is {SCHEMA_VERSION}. It goes up when a field is renamed, removed or changes its meaning, never for a new "
                "field. Words of closed lists are the ids of the vocabulary in the JSON.",
            ),
            el(
                "p",
                "Every drawing on one PDF, each with its name and its own scale bar: ",
                el("code", "wetmount plate -o drawings.pdf"),
                ".",
            ),
            heading(2, "Licence", "licence"),
            el("p", *_licence(writer)),
        ],
        description="The library as JSON and CSV.",
    )


def _licence(writer: Writer) -> Iterable[Html | str]:
    return (
        "Texts, data and drawings are under CC BY 4.0: use them for anything, name wetmount and the contributors, and say what you "
        "changed. "
        "Keep the basis with a statement when you pass it on; without it an estimate looks like a measurement. ",
        el("a", "More on licences", href=writer.href("about.html", "licences")),
        ".",
    )


def _kilobytes(size: int) -> str:
    return f"{max(1, round(size / 1000))} kB"


def as_json(library: Library) -> bytes:
    """The whole library as JSON, with the version of its shape and its licence."""
    everything = {
        "schema_version": SCHEMA_VERSION,
        "version": library.version,
        "licence": LICENCE,
        **{part.name: _plain(getattr(library, part.name)) for part in fields(library) if part.name not in LEFT_OUT},
    }
    return (json.dumps(everything, ensure_ascii=False, separators=(",", ":")) + "\n").encode()


def _plain(value: Any) -> Any:
    """Anything of the library as plain data; an open end of a number is null, a pair that names a value is joined by a slash."""
    if isinstance(value, States):
        return {"states": sorted(value.ids)}
    if isinstance(value, Interval):
        return {"low": _end(value.low), "high": _end(value.high)}
    if is_dataclass(value):
        return {part.name: _plain(getattr(value, part.name)) for part in fields(value)}
    if isinstance(value, Mapping):
        return {"/".join(name) if isinstance(name, tuple) else name: _plain(each) for name, each in value.items()}
    if isinstance(value, frozenset):
        return sorted(value)
    if isinstance(value, tuple | list):
        return [_plain(each) for each in value]
    return value


def _end(value: float) -> float | None:
    return round(value, 6) if math.isfinite(value) else None


Row = tuple[str | float | None, ...]


def _entries(library: Library) -> Iterable[Row]:
    for each in library.entries.values():
        yield (
            *(each.id, each.kind, each.theme, each.name, each.scientific, "; ".join(each.also), "; ".join(each.within)),
            *(
                plain(library, each.summary),
                each.commonness,
                "; ".join(each.feeding),
                "; ".join(each.cautions),
                each.reviewed,
                SCHEMA_VERSION,
            ),
        )


def _statements(library: Library) -> Iterable[Row]:
    for entry in library.entries.values():
        for each in entry.statements.values():
            basis = weakest(each.basis)
            shown: Row
            if isinstance(each.showing, States):
                shown = ("; ".join(sorted(each.showing.ids)), None, None)
            else:
                assert isinstance(each.showing, Interval)
                shown = ("", _end(each.showing.low), _end(each.showing.high))
            sources = dict.fromkeys(source for one in each.basis for source in one.sources)
            yield (entry.id, each.character, *shown, basis.kind, basis.value, "; ".join(sources), each.stated_by, SCHEMA_VERSION)


def _table(columns: Iterable[str], rows: Iterable[Row]) -> bytes:
    """A CSV file as RFC 4180 has it, in UTF-8."""
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(columns)
    writer.writerows(rows)
    return out.getvalue().encode()
