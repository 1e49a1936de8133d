"""Every kind of file of the library in one table: where it stands, what its records are called, where the site shows them.

To add a kind of file, add its row here and its schema, and read it in `build` into a type of `model`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Any

from keytool.library.model import Library


@dataclass(frozen=True, slots=True)
class Record:
    """One kind of file.

    `kind` names its schema; `place` is where it stands in `keydata/`, with `<id>` where each record has a file of its own and `*`
    where many files hold records together. `held` is the field of `Library` with the records by id, and `one` what a message calls
    one of them, where other files name them by id. `title` is the field that names one, where a [[link]] may lead to it, and `page` the
    address where the site shows it; `written` says where to write a new one.
    """

    kind: str
    place: str
    held: str = ""
    one: str = ""
    title: str = ""
    page: str = ""
    written: str = ""

    @property
    def has_own_files(self) -> bool:
        """Whether each record is a file of its own, named by its id."""
        return "<id>" in self.place

    @property
    def is_linked(self) -> bool:
        """Whether a [[link]] may lead to one. No two such things share an id, or the link would have two meanings."""
        return bool(self.title)

    def of(self, library: Library) -> dict[str, Any]:
        """The records of a library by id."""
        found: dict[str, Any] = getattr(library, self.held)
        return found

    def takes(self, place: str) -> bool:
        """Whether a file at a place in `keydata/` is of this kind."""
        return _pattern(self.place).fullmatch(place) is not None


@cache
def _pattern(place: str) -> re.Pattern[str]:
    return re.compile(re.sub(r"<\w+>", "[^/]+", re.escape(place)).replace(r"\*", "[^/]*"))


RECORDS: tuple[Record, ...] = (
    Record(
        "entry",
        "entries/<theme>/<id>.yaml",
        "entries",
        "entry",
        "name",
        "entries/{id}.html",
        "entries/<theme>/<id>.yaml ('wetmount new entry')",
    ),
    Record("character", "characters/<id>.yaml", "characters", "character", "name", "characters/index.html#{id}", "characters/<id>.yaml"),
    Record("key", "keys/<id>.yaml", "keys", "key", "title", "keys/{id}.html"),
    Record("look-alike", "look-alikes/<id>.yaml", "look_alikes", "set of look-alikes", "title", "look-alikes/{id}.html"),
    Record("guide", "guides/<id>.yaml", "guides", "guide", "title", "guides/{id}.html"),
    Record("drawing", "drawings/<theme>/<id>.yaml", "drawings"),
    Record("photo", "photos/<entry>/<id>.yaml", "photos", "photograph"),
    Record(
        "sources",
        "sources*.yaml",
        "sources",
        "source",
        page="sources.html#{id}",
        written="sources.yaml (or the sources-*.yaml of its theme)",
    ),
    Record("terms", "terms.yaml", "terms", "term", "term", "terms.html#{id}", "terms.yaml"),
    Record("cautions", "cautions.yaml", "cautions", "caution", "title", "cautions.html#{id}", "cautions.yaml"),
    Record(
        "quantities",
        "bench/quantities*.yaml",
        "quantities",
        "quantity",
        written="bench/quantities.yaml (or the quantities-*.yaml of its theme)",
    ),
    Record("shortcuts", "bench/shortcuts.yaml"),
    Record("manners", "bench/manners.yaml"),
    Record("voices", "bench/voices.yaml"),
    Record("state-words", "words/states*.yaml"),
    Record("name-words", "words/names*.yaml"),
    Record("question-words", "words/questions*.yaml"),
    Record("number-words", "words/numbers.yaml"),
    Record("several-words", "words/several.yaml"),
    Record("spelling", "words/spelling.yaml"),
    Record("sentences", "sentences/<language>/*.yaml"),
    Record("constants", "bench/constants.yaml"),
    Record("tally", "bench/tally.yaml"),
    Record("bench-rules", "bench/bench-rules.yaml"),
    Record("cannot-say", "bench/cannot-say.yaml"),
    Record("chambers", "bench/chambers.yaml"),
    Record("densities", "bench/densities.yaml"),
    Record("demo-sheet", "bench/demo-sheet.yaml"),
    Record("pictures", "bench/pictures.yaml"),
    Record("samples", "bench/samples.yaml"),
    Record("short-card", "bench/short-card.yaml"),
    Record("materials", "bench/materials.yaml"),
    Record("sections", "bench/sections.yaml"),
    Record("stills", "eyepiece/index.yaml"),
    Record("vocabulary", "vocabulary.yaml"),
)
"""Every kind of file; the first are what people write most."""
BY_KIND = {each.kind: each for each in RECORDS}
BY_NAME = {each.one: each for each in RECORDS if each.one}
"""The kinds whose records are named by their id elsewhere, by what one of them is called."""
LINKED = tuple(each for each in RECORDS if each.is_linked)
ONE_FILE = tuple(each for each in RECORDS if not each.has_own_files and "*" not in each.place)
MANY_FILES = tuple(each for each in RECORDS if "*" in each.place)
OWN_FILES = tuple(each for each in RECORDS if each.has_own_files)


def key_of_file(kind: str, place: str) -> str:
    """What a file is found under among those of its kind: the id of its record, else its place within the folder of the kind."""
    folder = BY_KIND[kind].place.partition("<")[0] if "<" in BY_KIND[kind].place else place.rpartition("/")[0] + "/"
    return place.rpartition("/")[2].removesuffix(".yaml") if BY_KIND[kind].has_own_files else place.removeprefix(folder)


def kind_of_file(place: str) -> str | None:
    """The kind of a file by its place in `keydata/`, or None where nothing reads it."""
    return next((each.kind for each in RECORDS if each.takes(place)), None)


def record_of(library: Library, id: str) -> Record | None:
    """What a linked id belongs to."""
    return next((each for each in LINKED if id in each.of(library)), None)
