"""Records of drawings that are data: an outline, named parts, proportions and materials, all in units of the body's length.

Built from files of the right shape (`keydata/drawings/<theme>/<form>.yaml`). `keytool.figures.drawn` draws them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from keytool.library.basis import Basis, bases
from keytool.library.eyepiece_records import Granules, Part, Section

Point = tuple[float, float]
Points = tuple[Point, ...]

CLOSED = ("closed", "shapes", "ovals")
"""What makes a part closed, so that it can hide, bound and be strewn."""
OUTLINE = "outline"
"""The part that every drawing has: the edge of its body."""


@dataclass(frozen=True, slots=True)
class Run:
    """Points joined by one smooth line, or by straight ones."""

    points: Points
    smooth: bool = True


@dataclass(frozen=True, slots=True)
class Trace:
    """A line as runs that follow on each other; `half`, (share of the way, half width), makes it the middle line of a long shape."""

    runs: tuple[Run, ...]
    half: Points = ()
    mirror: bool = False


@dataclass(frozen=True, slots=True)
class Row:
    """One small shape again and again along a line: its points are (outward, onward) from a foot on the line."""

    along: str | Trace
    shape: Points
    every: float
    start: float
    stop: float
    closed: bool
    inward: bool


@dataclass(frozen=True, slots=True)
class Stipple:
    """Dots strewn in a closed shape: `gap` pens apart, `dense` (0 to 1) at the start and at the end of the way that `toward` points."""

    within: str | Trace
    gap: float
    dense: tuple[float, float]
    toward: Point


@dataclass(frozen=True, slots=True)
class Piece:
    """One thing drawn, which belongs to the part `part`; several pieces may make one part.

    `what` is the shape: a Trace (closed, or an open line, or with `half` a limb), ovals (x, y, half width, half height,
    degrees), dots (points, `radius`), a Row or a Stipple. `weight` is in pens: one value after the other along a line; thin and thick
    of a closed one. `fill` is ink, faint or paper, or empty. `behind` names closed parts that hide it, `within` one beyond
    which it does not show. `only` says for which words of which proportions it is drawn, `outside` that it stands out from the body.
    """

    part: str
    what: Trace | Row | Stipple | tuple[tuple[float, ...], ...]
    closed: bool
    weight: tuple[float, ...]
    fill: str
    faint: bool
    mirror: bool
    radius: float
    behind: tuple[str, ...]
    within: str
    only: Mapping[str, tuple[str, ...]]
    outside: bool
    item: int
    """Which item of `parts` in the file it is of."""


@dataclass(frozen=True, slots=True)
class Proportion:
    """What an entry may set of a drawing: a number within `low` and `high`, or one of `choices` (word to what it means).

    A number `widens` the whole (its `unit` may be µm: then it is the width itself), `stretches` what lies between two shares of
    the length, or `scales` the named parts about their feet.
    """

    name: str
    about: str
    default: float | str | None
    low: float
    high: float
    unit: str
    choices: Mapping[str, str]
    widens: bool
    stretches: tuple[float, float] | None
    scales: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Form:
    """A drawing as data. Lengths are in units of the body's length, the head at `front`: top (y runs from head to rear) or left."""

    id: str
    theme: str
    name: str
    about: str
    front: str
    length: Proportion
    outline: Trace
    weight: tuple[float, float]
    tonal: bool
    proportions: tuple[Proportion, ...]
    pieces: tuple[Piece, ...]
    moves: Mapping[str, tuple[str, ...]]
    """How the script of the live field deforms it (`roll`, `bend`, `beat`, `stretch`), and the parts that this is about."""
    section: Section | None
    basis: tuple[Basis, ...] = field(default=())

    def __hash__(self) -> int:
        return hash(self.id)

    def parts(self) -> tuple[str, ...]:
        """The names of its parts, the outline first, each once."""
        return tuple(dict.fromkeys((OUTLINE, *(piece.part for piece in self.pieces))))


def points(text: str) -> Points:
    """The points of "x y, x y, ..."."""
    return tuple((float(x), float(y)) for x, y in (pair.split() for pair in text.split(",")))


def form(raw: Mapping[str, Any]) -> Form:
    """A drawing from the data of its file."""
    size = raw["length"]
    return Form(
        id=raw["id"],
        theme=raw["theme"],
        name=raw["name"],
        about=raw["about"],
        front=raw.get("front", "top"),
        length=Proportion("length", size["about"], size["default"], size["low"], size["high"], "µm", {}, False, None, ()),
        outline=_trace(raw["outline"]),
        weight=_pair(raw.get("weight", (1.2, 2.2))),
        tonal=raw.get("tonal", False),
        proportions=tuple(_proportion(name, each) for name, each in raw.get("proportions", {}).items()),
        pieces=tuple(piece for k, each in enumerate(raw.get("parts", ())) for piece in _pieces(each, k)),
        moves={name: tuple(parts) for name, parts in raw.get("moves", {}).items()},
        section=_section(raw) if "matter" in raw else None,
        basis=bases(raw["basis"]),
    )


def _pair(raw: Any) -> tuple[float, float]:
    return (raw[0], raw[1])


def _trace(raw: Any) -> Trace:
    if isinstance(raw, str):
        return Trace((Run(points(raw)),))
    if isinstance(raw, list):
        return Trace(tuple(_run(each) for each in raw))
    runs = tuple(_run(each) for each in raw["runs"]) if "runs" in raw else (_run(raw),)
    return Trace(runs, points(raw["half"]) if "half" in raw else (), raw.get("mirror", False))


def _run(raw: Mapping[str, Any]) -> Run:
    return Run(points(raw["smooth"]), True) if "smooth" in raw else Run(points(raw["straight"]), False)


def _named(raw: Any) -> str | Trace:
    return raw if isinstance(raw, str) and raw[0].isalpha() else _trace(raw)


def _pieces(raw: Mapping[str, Any], item: int) -> Iterator[Piece]:
    """One piece; of `lines` and `shapes` one each."""
    for many, one in (("lines", "line"), ("shapes", "closed")):
        if many in raw:
            for each in raw[many]:
                yield _piece({**raw, one: each}, item)
            return
    yield _piece(raw, item)


def _piece(raw: Mapping[str, Any], item: int) -> Piece:
    what: Trace | Row | Stipple | tuple[tuple[float, ...], ...]
    closed, weight = False, raw.get("weight", 1.2)
    if "line" in raw:
        what = _trace(raw["line"])
    elif "closed" in raw:
        what, closed = _trace(raw["closed"]), True
    elif "ovals" in raw:
        what, closed = tuple(tuple(float(each) for each in one.split()) for one in raw["ovals"].split(",")), True
    elif "dots" in raw:
        what = points(raw["dots"])
    elif "row" in raw:
        row = raw["row"]
        what = Row(
            _named(row["along"]),
            points(row["shape"]),
            row["every"],
            row.get("from", 0.0),
            row.get("to", 1.0),
            row.get("closed", False),
            row.get("inward", False),
        )
    else:
        strewn = raw["stipple"]
        dense = strewn.get("dense", 0.6)
        dense = _pair(dense) if isinstance(dense, list) else (dense, dense)
        what = Stipple(_named(strewn["within"]), strewn.get("gap", 3.2), dense, points(strewn.get("toward", "0.6 0.8"))[0])
    return Piece(
        part=raw["part"],
        what=what,
        closed=closed,
        weight=tuple(weight) if isinstance(weight, list) else (weight,),
        fill=raw.get("fill", ""),
        faint=raw.get("faint", False),
        mirror=raw.get("mirror", False),
        radius=raw.get("radius", 0.0),
        behind=tuple(raw.get("behind", ())),
        within=raw.get("inside", ""),
        only={name: tuple(words) for name, words in raw.get("only", {}).items()},
        outside=raw.get("outside", False),
        item=item,
    )


def _proportion(name: str, raw: Mapping[str, Any]) -> Proportion:
    choices = raw.get("choices", {})
    spans = raw.get("stretches")
    return Proportion(
        name,
        raw["about"],
        next(iter(choices)) if choices else raw.get("default"),
        raw.get("low", 0.0),
        raw.get("high", 0.0),
        raw.get("unit", "1"),
        choices,
        raw.get("widens", False),
        (spans["from"], spans["to"]) if spans else None,
        tuple(raw.get("scales", ())),
    )


def _section(raw: Mapping[str, Any]) -> Section:
    """What the drawing is made of: its body, and those parts that name a material."""
    matter = raw["matter"]
    wall, grains = matter.get("wall", {}), matter.get("granules")
    return Section(
        id=raw["id"],
        kind=raw["id"],
        forms=(),
        entries=(),
        body=matter["body"],
        inside=matter.get("inside", ""),
        flat=matter.get("flat", 1.0),
        thick=matter.get("thick", 0.0),
        wall=wall.get("of", ""),
        wall_thick=wall.get("thick", 0.0),
        granules=Granules(grains["of"], grains["per-volume"], grains["median"], grains["spread"], grains["most"]) if grains else None,
        parts=dict(_matter(raw)),
        across=matter.get("across", 0.0),
        focus=matter.get("focus", 1.0),
        basis=bases(raw["basis"]),
    )


def _matter(raw: Mapping[str, Any]) -> Iterator[tuple[str, Part]]:
    for each in raw.get("parts", ()):
        if "of" in each:
            usual = "grains" if "stipple" in each else "fill" if any(name in each for name in CLOSED) else "line"
            yield (
                each["part"],
                Part(each.get("as", usual), each["of"], each.get("radius-um", 0.0), each.get("flat", 1.0), each.get("outside", False)),
            )
