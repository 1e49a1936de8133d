"""Load the library from its folder: every file read, held against its schema, and built.

All that is wrong is found in one run. A file that cannot be used is left out, so that the
rest can still be checked; what names it is then not called unknown.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from keytool.library import build
from keytool.library.eyepiece_records import FOLDER as EYEPIECE
from keytool.library.finding import Finding, Place, Severity
from keytool.library.message import Message
from keytool.library.model import Library
from keytool.library.records import BY_KIND, MANY_FILES, ONE_FILE, OWN_FILES, key_of_file, kind_of_file
from keytool.library.schemas import Schemas
from keytool.library.yaml_file import DataPath, YamlFile, read_yaml

NEEDED = f"guides/{build.FIRST_GUIDE}.yaml"
TAKEN = Message("name", "'{id}' is also the id of {file}.", tip="Choose another id.")
PICTURES = (".page.jpg", ".card.png")
"""How the pictures of a photograph end that stand beside its record."""


@dataclass(frozen=True, eq=False)
class Files:
    """The files of a library by what they hold, and where each part of them stands."""

    by_id: Mapping[tuple[str, str], YamlFile]
    """(kind, id) such as ("entry", "plectus"), or (kind, part file) such as ("sources", "sources.yaml")."""
    broken: frozenset[str]
    """Ids of files that could not be used, and the ids those files give themselves."""

    def place(self, kind: str, id: str, path: DataPath = (), *, of_key: bool = False) -> Place:
        """The place of a part of a file that holds one character, entry, key, guide or set of look-alikes."""
        return self.by_id[kind, id].place(path, of_key=of_key)

    def place_of(self, kind: str, id: str, *path: str | int) -> Place:
        """The place of one item in the files that hold many: sources, terms, cautions, quantities."""
        for (each, _), file in self.by_id.items():
            if each == kind and isinstance(file.data, dict) and id in file.data:
                return file.place((id, *path), of_key=not path)
        return Place("keydata")


@dataclass(frozen=True)
class Loaded:
    """What loading gave: the library made from all usable files, those files, and what was wrong."""

    library: Library
    files: Files
    schemas: Schemas
    findings: tuple[Finding, ...] = field(default=())
    root: Path = Path()

    @property
    def problems(self) -> tuple[Finding, ...]:
        """The findings that must be mended."""
        return tuple(each for each in self.findings if each.severity is Severity.PROBLEM)


def load(root: Path) -> Loaded:
    """The library under `root` (the folder that holds `keydata/`). Never raises for what files hold."""
    keydata = root / "keydata"
    words, findings = _vocabulary(keydata)
    schemas = Schemas(keydata / "schema", words)
    if findings:  # every other file is held against the vocabulary, so that comes first
        return Loaded(build.library({}), Files({}, frozenset({"vocabulary"})), schemas, tuple(findings), root)
    findings = [] if (keydata / NEEDED).is_file() else [*read_yaml(keydata / NEEDED, f"keydata/{NEEDED}").findings]
    usable: dict[tuple[str, str], YamlFile] = {}
    taken: dict[tuple[str, str], str] = {}
    broken: set[str] = set()
    for path in sorted(keydata.rglob("*")):
        name = f"keydata/{path.relative_to(keydata).as_posix()}"
        kind = _kind(path, keydata)
        if path.is_symlink():
            tip = "Put the file itself there: a link may lead to what is not to be published."
            findings.append(Finding("place", Place(name), "This is a link to another place.", tip=tip))
            continue
        if kind is None:
            findings += _stray(path, name, keydata)
            continue
        file = read_yaml(path, name)
        wrong = [*file.findings, *(schemas.findings(kind, file) if file.data is not None else [])]
        if not wrong:
            wrong = [*_misnamed(kind, path, file), *taken_ids(kind, file, taken)]
        findings += _with_fitting_units(file, wrong, usable, words) if kind == "entry" and wrong else wrong
        if wrong:
            broken |= {path.stem, *_own_id(file)}
        else:
            usable[kind, key_of_file(kind, path.relative_to(keydata).as_posix())] = file
    files = Files(usable, frozenset(broken))
    return Loaded(build.library(usable), files, schemas, tuple(sorted(findings, key=lambda each: each.order)), root)


def _vocabulary(keydata: Path) -> tuple[Mapping[str, Any], list[Finding]]:
    """The closed lists, or what is wrong with them."""
    if not (keydata / "schema" / "vocabulary.schema.json").is_file():
        tip = "Put the folder back; it comes with the code."
        return {}, [Finding("place", Place("keydata/schema"), "The schemas are missing.", tip=tip)]
    file = read_yaml(keydata / "vocabulary.yaml", "keydata/vocabulary.yaml")
    wrong = [*file.findings, *(Schemas(keydata / "schema", {}).findings("vocabulary", file) if file.data is not None else [])]
    return ({}, wrong) if wrong else (file.data, [])


def _with_fitting_units(
    file: YamlFile, wrong: list[Finding], usable: Mapping[tuple[str, str], YamlFile], words: Mapping[str, Any]
) -> Iterator[Finding]:
    """The findings of an entry; where a unit is missing or unknown, only the units that measure the same as its character are allowed."""
    said = file.data.get("characters", {}) if isinstance(file.data, dict) else {}
    fitting: dict[Place, str] = {}
    for name in said if isinstance(said, dict) else ():
        character = usable.get(("character", name))
        if character and (own := character.data.get("unit")):
            units = words["unit"]
            allowed = ", ".join(id for id, each in units.items() if each.get("dimension") == units[own].get("dimension"))
            fitting[file.place(("characters", name, "unit"))] = allowed
            if isinstance(said[name], dict) and "unit" not in said[name]:
                fitting[file.place(("characters", name), of_key=True)] = allowed
    for each in wrong:
        is_unit = each.check == "shape" and "unit" in each.message
        yield replace(each, allowed=fitting[each.place]) if is_unit and each.place in fitting else each


def _own_id(file: YamlFile) -> Iterator[str]:
    if isinstance(file.data, dict) and isinstance(file.data.get("id"), str):
        yield file.data["id"]


def _kind(path: Path, keydata: Path) -> str | None:
    return kind_of_file(path.relative_to(keydata).as_posix()) if path.is_file() else None


def _stray(path: Path, name: str, keydata: Path) -> Iterator[Finding]:
    inside = path.relative_to(keydata)
    is_picture = (inside.parts[0] == "photos" and path.name.endswith(PICTURES)) or (inside.parts[0] == EYEPIECE and path.suffix == ".webp")
    if path.is_file() and inside.parts[0] != "schema" and not path.name.startswith(".") and not is_picture:
        yield Finding(
            "place",
            Place(name),
            "Nothing reads this file.",
            ", ".join(each.place for each in (*OWN_FILES, *MANY_FILES, *ONE_FILE)),
            "Move it to its place, and let its name end in .yaml.",
        )


def _misnamed(kind: str, path: Path, file: YamlFile) -> Iterator[Finding]:
    if not BY_KIND[kind].has_own_files:
        return
    if file.data["id"] != path.stem:
        yield Finding(
            "name",
            file.place(("id",)),
            f"The id is '{file.data['id']}', but the file is '{path.name}'.",
            tip="Give the file the name of its id. Ids are addresses: once published they stay.",
        )
    if kind in ("entry", "drawing") and file.data["theme"] != path.parent.name:
        yield Finding(
            "name",
            file.place(("theme",)),
            f"The theme is '{file.data['theme']}', but the folder is '{path.parent.name}'.",
            tip="Move the file to the folder of its theme.",
        )
    if kind == "photo" and file.data["entry"] != path.parent.name:
        yield Finding(
            "name",
            file.place(("entry",)),
            f"The entry is '{file.data['entry']}', but the folder is '{path.parent.name}'.",
            tip="Move the photograph, its record and both pictures, to the folder of the entry it shows.",
        )


def taken_ids(kind: str, file: YamlFile, taken: dict[tuple[str, str], str]) -> Iterator[Finding]:
    """Ids that stand in two files: two entries in different folders, an entry and a key, or anything else a link could mean."""
    record = BY_KIND[kind]
    whole = record.has_own_files
    ids = [file.data["id"]] if whole else list(file.data) if record.one else []
    for each in ids:
        space = "page" if record.is_linked else kind
        if (space, each) in taken:
            place = file.place(("id",)) if whole else file.place((each,), of_key=True)
            yield TAKEN.at(place, id=each, file=taken[space, each])
        taken.setdefault((space, each), file.name)
