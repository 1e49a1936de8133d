"""A count sheet: samples, their slides, what was tallied in each whole drop and each field, and how the slide was made.

The same record is made by the page (`site/assets/bench/sheet.js`) and read and written here; it loses nothing on the way.
A count is by id: a line of the tally, an entry of the library, or `other:` and a name for what is in neither.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

VERSION = 1
"""Version of the record, in its JSON."""
OTHER = "other:"
"""How the id of something that is not in the library begins; its name follows."""
SoilUnit = Literal["g", "mL"]
Tally = Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Setup:
    """Microscope and slide. A number that is not known is None, and what needs it is not worked out.

    `soil` (in `soil_unit`) was made up to `total_ml`; `moisture` is g water per g dry soil; `bulk_density` is g of the soil
    as taken in a mL of it; `line_um` is the length of the eyepiece scale that hyphae were seen to cross.
    """

    field_number_mm: float | None = None
    low: float | None = None
    high: float | None = None
    soil: float | None = None
    soil_unit: SoilUnit = "g"
    total_ml: float | None = None
    drop_ml: float | None = None
    slip_width_mm: float | None = None
    slip_length_mm: float | None = None
    moisture: float | None = None
    bulk_density: float | None = None
    line_um: float | None = None


@dataclass(frozen=True, slots=True)
class Slide:
    """One drop under a coverslip: what was met in all of it at low power (None: not looked through), and field by field at high power."""

    name: str
    drop: Tally | None = None
    fields: tuple[Tally, ...] = ()


@dataclass(frozen=True, slots=True)
class Sample:
    """One sample of soil on one day. Dates are as typed, ISO 8601 where possible; `invented` marks a demonstration.

    `at_drop` and `at_field` are the ids looked for there: one that was looked for and never met is none seen, any other is not told.
    """

    name: str
    place: str = ""
    kind: str = ""
    taken: str = ""
    looked: str = ""
    by: str = ""
    depth_cm: str = ""
    note: str = ""
    invented: bool = False
    setup: Setup = field(default_factory=Setup)
    at_drop: tuple[str, ...] = ()
    at_field: tuple[str, ...] = ()
    slides: tuple[Slide, ...] = ()

    @property
    def drops(self) -> tuple[Tally, ...]:
        """The tallies of whole drops."""
        return tuple(each.drop for each in self.slides if each.drop is not None)

    @property
    def fields(self) -> tuple[Tally, ...]:
        """The tallies of all fields."""
        return tuple(one for each in self.slides for one in each.fields)


def tidy(sample: Sample) -> Sample:
    """The same sample in the one form that is kept: no zeros in a tally, everything met among what was looked for, one order."""
    at_drop = tuple(dict.fromkeys([*sample.at_drop, *(id for tally in sample.drops for id in tally)]))
    at_field = tuple(dict.fromkeys([*sample.at_field, *(id for tally in sample.fields for id in tally)]))

    def tidied(tally: Tally, order: tuple[str, ...]) -> Tally:
        return {id: tally[id] for id in order if tally.get(id)}

    slides = (
        replace(
            each,
            drop=None if each.drop is None else tidied(each.drop, at_drop),
            fields=tuple(tidied(one, at_field) for one in each.fields),
        )
        for each in sample.slides
    )
    return replace(sample, at_drop=at_drop, at_field=at_field, slides=tuple(slides))


@dataclass(frozen=True, slots=True)
class Record:
    """All samples of a sheet."""

    samples: tuple[Sample, ...]


class NotASheet(Exception):
    """A file is no count sheet; the message says where, what is allowed, and what to do."""
