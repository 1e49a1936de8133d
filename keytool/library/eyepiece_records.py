"""Records of the eyepiece view: materials, what drawings are made of, and the pictures kept. Built from files of the right shape."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from keytool.library.basis import Basis, bases

if TYPE_CHECKING:
    from keytool.library.model import Entry

FOLDER = "eyepiece"
"""Where in `keydata/` the pictures lie."""
NOTHING = "none"
"""The body of what is left out, since a computed picture of it would mislead."""


@dataclass(frozen=True, slots=True)
class Material:
    """Refractive index (green light) and its range; what it takes of red, green and blue, share per µm (natural logarithm)."""

    id: str
    name: str
    index: float
    low: float
    high: float
    absorbs: tuple[float, float, float]
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class Granules:
    """Balls strewn through a body: how many per µm³, and their radius by a log-normal law (median, spread of the logarithm, most)."""

    of: str
    per_volume: float
    median: float
    spread: float
    most: float


@dataclass(frozen=True, slots=True)
class Part:
    """What one part of a drawing becomes: `shape` is fill, line, or grains; `radius` (µm) that of a line."""

    shape: str
    of: str
    radius: float
    flat: float
    outside: bool


@dataclass(frozen=True, slots=True)
class Section:
    """How a kind of drawing becomes matter.

    `body` says the section: tube, round, flat (with `thick`, µm), each, grain, ball or crumb. `flat` is height over the
    round section's; `wall` a material and its thickness;
    `parts` those parts of the drawing that are matter: all others are the pen's manner.
    """

    id: str
    kind: str
    forms: tuple[str, ...]
    entries: tuple[str, ...]
    body: str
    inside: str
    flat: float
    thick: float
    wall: str
    wall_thick: float
    granules: Granules | None
    parts: Mapping[str, Part]
    across: float
    focus: float
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class Series:
    """One picture of many planes: those of focus (µm above the middle of the thing) from left to right, irises from top to bottom."""

    file: str
    size: int
    focus: tuple[float, ...]
    irises: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Still:
    """A computed picture that is kept: its file, what it was made from (a hash), how wide it is (µm), how it is focused, and its series.

    That of a whole field at 40× has the `theme` it belongs to, and the entries it `shows`.
    """

    entry: str
    file: str
    made_from: str
    across: float
    focus: float
    iris: float
    series: Series | None
    theme: str = ""
    shows: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Eyepiece:
    """All that the eyepiece view rests on, and the pictures that are kept."""

    materials: Mapping[str, Material] = field(default_factory=dict)
    sections: Mapping[str, Section] = field(default_factory=dict)
    stills: Mapping[str, Still] = field(default_factory=dict)
    fields: Mapping[str, Still] = field(default_factory=dict)
    """Whole fields at 40×, by theme."""


def eyepiece(files: Mapping[str, Mapping[str, Any]]) -> Eyepiece:
    """The records, from the data of each kind of file; a kind without a file is empty."""
    return Eyepiece(
        materials(files.get("materials", {})),
        sections(files.get("sections", {})),
        {id: _still(id, raw) for id, raw in files.get("stills", {}).items() if "theme" not in raw},
        {raw["theme"]: _still(id, raw) for id, raw in files.get("stills", {}).items() if "theme" in raw},
    )


def _still(id: str, raw: Mapping[str, Any]) -> Still:
    series = raw.get("series")
    return Still(
        id,
        raw["file"],
        raw["made-from"],
        raw["across"],
        raw["focus"],
        raw["iris"],
        Series(series["file"], series["size"], tuple(series["focus"]), tuple(series["irises"])) if series else None,
        raw.get("theme", ""),
        tuple(raw.get("shows", ())),
    )


def materials(raw: Mapping[str, Any]) -> dict[str, Material]:
    """The materials of the file by id."""
    return {
        id: Material(
            id,
            each["name"],
            each["index"],
            each["low"],
            each["high"],
            (*each.get("absorbs", (0.0, 0.0, 0.0)),),
            bases(each["basis"]),
        )
        for id, each in raw.items()
    }


def sections(raw: Mapping[str, Any]) -> dict[str, Section]:
    """The sections of the file by id."""
    return {id: _section(id, each) for id, each in raw.items()}


def _section(id: str, raw: Mapping[str, Any]) -> Section:
    wall, grains = raw.get("wall", {}), raw.get("granules")
    return Section(
        id=id,
        kind=raw.get("kind", ""),
        forms=tuple(raw.get("forms", ())),
        entries=tuple(raw.get("entries", ())),
        body=raw["body"],
        inside=raw.get("inside", ""),
        flat=raw.get("flat", 1.0),
        thick=raw.get("thick", 0.0),
        wall=wall.get("of", ""),
        wall_thick=wall.get("thick", 0.0),
        granules=Granules(grains["of"], grains["per-volume"], grains["median"], grains["spread"], grains["most"]) if grains else None,
        parts={
            name: Part(each["as"], each["of"], each.get("radius", 0.0), each.get("flat", 1.0), each.get("outside", False))
            for name, each in raw.get("parts", {}).items()
        },
        across=raw.get("across", 0.0),
        focus=raw.get("focus", 1.0),
        basis=bases(raw["basis"]),
    )


def section_of(all_sections: Mapping[str, Section], entry: Entry) -> Section | None:
    """The section that fits an entry's drawing best: one that names the entry, else its form, else its kind; None where none does."""
    figure = entry.figure
    if figure is None:
        return None
    if any(each.body == NOTHING and entry.id in each.entries for each in all_sections.values()):
        return None
    if figure.form:  # a drawing that is data says itself what it is made of
        own = figure.form.section
        return own if own and own.body != NOTHING else None
    form = str(figure.params.get("form", ""))
    fitting = [each for each in all_sections.values() if each.kind == figure.kind and each.body != NOTHING]
    for fits in (
        [each for each in fitting if entry.id in each.entries],
        [each for each in fitting if not each.entries and form in each.forms],
        [each for each in fitting if not each.entries and not each.forms],
    ):
        if fits:
            return fits[0]
    return None
