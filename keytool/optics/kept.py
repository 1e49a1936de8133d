"""The computed pictures that are kept with the library: what is there, and what is stale. Needs no numpy."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from keytool.library.eyepiece_records import FOLDER, Section, Still
from keytool.library.finding import Finding, Severity
from keytool.library.load import Loaded
from keytool.library.model import Library

from .laid import laid, made_from
from .subject import subject

CHECK = "eyepiece"
INDEX = f"keydata/{FOLDER}/index.yaml"
REMAKE = "Make it anew: wetmount eyepiece {entry} (needs numpy and scipy: pip install 'wetmount[eyepiece]'); then look at it."
REMAKE_FIELDS = "Make them anew: wetmount eyepiece --fields (needs numpy and scipy); then look at them."
HEAD = (
    "# The computed pictures of this folder: what each was made from, and how it is focused. Written by `wetmount eyepiece`; do not edit.\n"
)


def findings(loaded: Loaded) -> Iterator[Finding]:
    """Materials that are not there; pictures whose file is not there, that no entry has, or that are stale (advice)."""
    library = loaded.library
    yield from _unknown(loaded)
    for still in library.eyepiece.stills.values():
        place = loaded.files.place_of("stills", still.entry)
        for file in _files(still):
            if not (loaded.root / "keydata" / FOLDER / file).is_file():
                yield Finding(CHECK, place, f"The picture '{file}' is not there.", tip=REMAKE.format(entry=still.entry))
        entry = library.entries.get(still.entry)
        if entry is None:
            yield Finding(CHECK, place, f"No entry is called '{still.entry}'.", tip="Take the picture out: wetmount eyepiece --tidy")
        elif is_stale(library, still):
            message = f"The computed picture of '{still.entry}' was made from another drawing, section or material than there is now."
            yield Finding(CHECK, place, message, tip=REMAKE.format(entry=still.entry), severity=Severity.ADVICE)

    for theme, still in library.eyepiece.fields.items():
        place = loaded.files.place_of("stills", still.entry)
        if not (loaded.root / "keydata" / FOLDER / still.file).is_file():
            yield Finding(CHECK, place, f"The picture '{still.file}' is not there.", tip=REMAKE_FIELDS)
        elif field_is_stale(library, still):
            message = f"The computed field of '{theme}' was made from other drawings or materials than there are now."
            yield Finding(CHECK, place, message, tip=REMAKE_FIELDS, severity=Severity.ADVICE)


def field_is_stale(library: Library, still: Still) -> bool:
    """Whether what lies in a whole field has changed."""
    bodies = [laid(library, library.entries[id]) for id in still.shows if id in library.entries]
    found = [each for each in bodies if each]
    return len(found) < len(still.shows) or made_from(found) != still.made_from


def is_stale(library: Library, still: Still) -> bool:
    """Whether what a picture was made from has changed."""
    now = subject(library.eyepiece.sections, library.eyepiece.materials, library.entries[still.entry])
    return now is None or now.made_from != still.made_from


def _files(still: Still) -> tuple[str, ...]:
    return (still.file, still.series.file) if still.series else (still.file,)


def _unknown(loaded: Loaded) -> Iterator[Finding]:
    eyepiece = loaded.library.eyepiece
    if loaded.files.broken:
        return
    allowed = ", ".join(eyepiece.materials)
    for section in eyepiece.sections.values():
        for path, id in _named(section):
            if id and id not in eyepiece.materials:
                place = loaded.files.place_of("sections", section.id, *path)
                yield Finding(CHECK, place, f"No material is called '{id}'.", allowed, "Name one of bench/materials.yaml, or add it there.")
        for number, entry in enumerate(section.entries):
            if entry not in loaded.library.entries:
                place = loaded.files.place_of("sections", section.id, "entries", number)
                yield Finding(CHECK, place, f"No entry is called '{entry}'.", tip="Name an entry of the library.")


def _named(section: Section) -> Iterator[tuple[tuple[str | int, ...], str]]:
    yield ("inside",), section.inside
    yield ("wall", "of"), section.wall
    if section.granules:
        yield ("granules", "of"), section.granules.of
    for name, part in section.parts.items():
        yield ("parts", name, "of"), part.of


def named_by_content(entry: str, content: bytes, ending: str = "webp") -> str:
    """A file name that changes with what the file holds."""
    return f"{entry}-{hashlib.sha256(content).hexdigest()[:8]}.{ending}"


def index_text(stills: Mapping[str, Still]) -> str:
    """The index as it is written, in the order of the entries."""
    return HEAD + "".join(f"{id}: {_flow(_record(stills[id]))}\n" for id in sorted(stills))


def _record(still: Still) -> dict[str, Any]:
    raw: dict[str, Any] = {
        "file": still.file,
        "made-from": f'"{still.made_from}"',
        "across": round(still.across, 1),
        "focus": still.focus,
        "iris": still.iris,
    }
    if still.theme:
        raw |= {"theme": still.theme, "shows": list(still.shows)}
    if still.series:
        raw["series"] = {
            "file": still.series.file,
            "size": still.series.size,
            "focus": list(still.series.focus),
            "irises": list(still.series.irises),
        }
    return raw


def _flow(value: Any) -> str:
    if isinstance(value, dict):
        return "{" + ", ".join(f"{name}: {_flow(each)}" for name, each in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(_flow(each) for each in value) + "]"
    return f"{value:g}" if isinstance(value, float) else str(value)


def tidy(root: Path, stills: Mapping[str, Still]) -> list[str]:
    """Take away pictures that the index does not name; their names."""
    wanted = {file for still in stills.values() for file in _files(still)}
    gone = [path for path in sorted((root / "keydata" / FOLDER).glob("*.webp")) if path.name not in wanted]
    for path in gone:
        path.unlink()
    return [path.name for path in gone]
