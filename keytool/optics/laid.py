"""What lies in a whole field at 40×: entries of a theme that are met most, as whole bodies. Needs no numpy."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass

from keytool.figures.bounds import bounds
from keytool.figures.shapes import Drawing
from keytool.figures.whole_body import whole_of
from keytool.library.eyepiece_records import Material, Section, section_of
from keytool.library.model import Entry, Library

from . import MODEL

BODY = ("outline", "lip-region", "branch", "skin-outline", "root-skin", "strand")
"""Parts that together outline a thing."""
OFTEN = ("very-common", "common")
STRETCH = 1300.0
"""How much of a thread is laid into the field, µm."""
LEAST, LONGEST = 12.0, 1600.0
"""What is shorter cannot be told from a speck here, µm; what is longer would hide all else."""
MOST_KINDS = 6


@dataclass(frozen=True, slots=True)
class Laid:
    """One body in the field: its drawing, the matter it is made of (`long` at its longest, µm)."""

    entry: Entry
    drawing: Drawing
    inside: Material
    section: Section | None
    long: float


def met_in(library: Library, theme: str) -> list[Laid]:
    """What of a theme is laid into its field: single things that are met most, the largest first; too small ones are left out."""
    found, seen = [], set()
    for entry in library.entries.values():
        if entry.theme == theme and entry.commonness in OFTEN and (one := laid(library, entry)):
            shapes = repr(one.drawing.shapes)
            if LEAST <= one.long <= LONGEST and shapes not in seen:
                seen.add(shapes)
                found.append(one)
    found.sort(key=lambda each: (-each.long, each.entry.id))
    return found[:: max(1, len(found) // MOST_KINDS)][:MOST_KINDS]


def laid(library: Library, entry: Entry) -> Laid | None:
    """An entry as it lies in the field; None where it is not known what its drawing is made of."""
    drawing, section = whole_of(entry, STRETCH), section_of(library.eyepiece.sections, entry)
    worm = entry.figure is not None and str(entry.figure.draws).startswith("nematode")
    if drawing is None or not (section or worm):
        return None
    shapes = tuple(each for each in drawing.shapes if each.part in BODY)
    if not shapes:
        return None
    box = bounds(shapes, 0.0, 0.0)
    inside = library.eyepiece.materials[section.inside if section else "worm-tissue"]
    return Laid(entry, drawing, inside, section, max(box.width, box.height))


def made_from(laid: Sequence[Laid]) -> str:
    """A hash of everything a field is made from."""
    facts = [MODEL, [(one.entry.id, round(one.long, 2), len(one.drawing.shapes), one.inside.index, one.inside.absorbs) for one in laid]]
    return hashlib.sha256(repr(facts).encode()).hexdigest()[:16]
