"""What is set under the objective: the entry's own drawing, its section, and what its picture was made from. Needs no numpy."""

from __future__ import annotations

import hashlib
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from keytool.figures import draw
from keytool.figures.shapes import Drawing
from keytool.figures.whole_body import kind_named, params_of
from keytool.library.eyepiece_records import Material, Section, section_of
from keytool.library.model import Entry

from . import MODEL

_STRANDS = ("thread", "filament", "hair", "vessel", "fibre")
"""Kinds that run through the picture, and whose plates show a stretch."""
_SHOWN = 1.9
"""How much longer than the picture a strand is drawn, so that its cut ends lie outside."""
_LEAST_SLENDER = 5.2
"""Widths of a strand that its plate needs at least."""
_LEAST_ACROSS = 40.0


@dataclass(frozen=True, slots=True)
class Subject:
    """A drawing and its section, as they are computed; `seed` settles all that is strewn by chance."""

    entry: Entry
    drawing: Drawing
    section: Section
    materials: Mapping[str, Material]
    seed: int

    @property
    def made_from(self) -> str:
        """A hash of everything the picture is made from: shapes, section, materials, and the model itself."""
        drawn = {each.part for each in self.drawing.shapes}
        used = [self.materials[each] for each in sorted(_used(self.section, drawn)) if each in self.materials]
        facts = [
            MODEL,
            self.drawing.shapes,
            self.drawing.pen_um,
            _plain(self.section, drawn),
            [(m.id, m.index, m.low, m.high, m.absorbs) for m in used],
        ]
        return hashlib.sha256(repr(_rounded(facts)).encode()).hexdigest()[:16]


def subject(sections: Mapping[str, Section], materials: Mapping[str, Material], entry: Entry) -> Subject | None:
    """What is computed of an entry; None where no section fits its drawing, or it has none."""
    section = section_of(sections, entry)
    if section is None or entry.figure is None:
        return None
    kind, params = entry.figure.draws, params_of(entry.figure, entry)
    known = {each.name: each for each in kind_named(kind).params}
    own = known.get("length")
    if kind in _STRANDS and own and params.get("form") != "helical":
        wide = section.across or max(_LEAST_ACROSS, 4.0 * float(params.get("width", 4.0)))
        params["length"] = min(own.high, max(_SHOWN * wide, _LEAST_SLENDER * float(params.get("width", 4.0)), own.low))
    drawing = draw(kind, params, title=entry.name)
    return Subject(entry, drawing, section, materials, zlib.crc32(entry.id.encode()))


def _used(section: Section, drawn: set[str]) -> set[str]:
    parts = {part.of for name, part in section.parts.items() if name in drawn}
    extra = {section.granules.of} if section.granules else set()
    return {section.inside, section.wall, *parts, *extra, "clay", "bacterium", "humus", "charcoal"} - {""}


def _plain(section: Section, drawn: set[str]) -> list[Any]:
    """The section without what this drawing has no part of."""
    return [
        section.body,
        section.inside,
        section.flat,
        section.thick,
        section.wall,
        section.wall_thick,
        section.granules,
        sorted((name, part) for name, part in section.parts.items() if name in drawn),
        section.across,
        section.focus,
    ]


def _rounded(value: Any) -> Any:
    """The same with every length to a ten-thousandth of a µm, so that the last digit of a machine's sums does not matter."""
    if isinstance(value, float):
        return round(value, 4)
    if isinstance(value, list | tuple):
        return [_rounded(each) for each in value]
    if hasattr(value, "__dataclass_fields__"):
        return [_rounded(getattr(value, name)) for name in value.__dataclass_fields__]
    return value
