"""Movement as data: what a live field needs to show an entry, a lead or everything at true size and speed.

A live field is drawn by the scripts in `site/assets/live-field`; this module turns the manners of moving
(`keydata/bench/manners.yaml`) and what an entry says of its own size and speed into the plain JSON
they read. A page shows it with

    <div data-live-field><script type="application/json">{...}</script>
    <p>what it shows, in words, for a page without scripts</p></div>

and loads them with `live-field.css`. `data-live-field="whole"` adds
the fields in which people enter their own field number and objectives. The script replaces
everything in the element but the JSON.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Any

from keytool.library.basis import Basis, weakest
from keytool.library.model import Entry, Figure, Library, Manner, Quantity
from keytool.library.value import Interval
from keytool.library.wording import basis_words, mark, number

from .moving_shape import moving_shape
from .whole_body import WIDE

Json = dict[str, Any]

WATER = {"temperature": 20, "viscosity": 1.002}
"""°C, and mPa s: the viscosity of water at 20 °C in the CRC Handbook (recalled)."""

OPTICS = {"low": ("low-objective", "na-four"), "high": ("high-objective", "na-forty")}
"""The bench quantities that give the power and the numerical aperture of each objective."""

LONG = 150
"""µm; a body from this length on fills so much of the high-power field that its way of moving is better seen at low power."""

OWN = "own"
"""The body of what is moved in its entry's own drawing."""

UNSHOWN = "unshown"
"""The motion of manners that say why the movement of an entry is not shown."""

TAKEN_FROM_ENTRY = {"length": "body-length", "width": "body-width", "speed": "speed"}
"""Parameters that an entry narrows by what it says of these characters."""


def manners_of(library: Library, entry: Entry) -> tuple[Manner, ...]:
    """The manners that name an entry. What only a group of it is named for is not said of it: kin move in different ways."""
    return tuple(manner for manner in library.manners.values() if entry.id in manner.seen_in and manner.motion != UNSHOWN)


def why_unshown(library: Library, entry: Entry) -> Manner | None:
    """The manner that says why an entry that moves is not shown moving; None where it is shown, or nothing is said."""
    return next((manner for manner in library.manners.values() if manner.motion == UNSHOWN and entry.id in manner.seen_in), None)


def entry_field(library: Library, entry: Entry) -> Json | None:
    """The field of an entry's page: it in each of its manners, and a grain that lies still. None where no manner names it."""
    movers = [_mover(library, manner, entry, one_of_several=len(manners_of(library, entry)) > 1) for manner in manners_of(library, entry)]
    return _field(library, f"{entry.name}, moving", [*movers, *_marks(library, movers)]) if movers else None


def lead_field(library: Library, title: str, shows: Iterable[str], entries: Iterable[Entry]) -> Json | None:
    """The field of one lead: how those of `entries` that the lead keeps move, if it `shows` one of these states.

    States are those of `manner` and `own-movement`. None where none of the entries has such a manner.
    """
    wanted = frozenset(shows)
    found: dict[str, Json] = {}
    for entry in entries:
        for manner in manners_of(library, entry):
            if wanted & {*manner.shows, _own(manner)} and manner.id not in found:
                found[manner.id] = _mover(library, manner, entry, one_of_several=True)
    movers = list(found.values())
    return _field(library, title, [*movers, *_marks(library, movers)]) if movers else None


def whole_field(library: Library, on: Iterable[str]) -> Json:
    """The field of the own page: every manner, those in `on` to be seen at first."""
    first = frozenset(on)
    movers = [
        {**_mover(library, manner), "on": manner.id in first}
        for manner in library.manners.values()
        if manner.motion not in ("drift", UNSHOWN)
    ]
    return _field(library, "A live field", movers)


def lines(field: Json) -> Iterator[str]:
    """What a field shows, one line for each thing, for a page without scripts."""
    for mover in field["movers"]:
        yield f"{mover['name']}: {mover['says']} ({mover['mark']} {mover['rests']}). It {mover['label']}."


def _own(manner: Manner) -> str:
    """The state of `own-movement` that a manner shows."""
    return {"jiggle": "jiggles", "drift": "jiggles", "still": "still"}.get(manner.motion, "moves")


def _marks(library: Library, movers: list[Json]) -> list[Json]:
    """The grain that lies still, by which drift is told from movement."""
    return [
        _mover(library, each)
        for each in library.manners.values()
        if each.motion == "still" and each.id not in [mover["id"] for mover in movers]
    ]


def _field(library: Library, title: str, movers: list[Json]) -> Json:
    optics = {
        power: {"objective": library.quantities[objective].low, "aperture": library.quantities[aperture].low}
        for power, (objective, aperture) in OPTICS.items()
    }
    return {
        "title": title,
        "seed": 1,
        "start": _start(movers),
        "optics": {
            "field-number": library.quantities["field-number-example"].low,
            "eyepiece": library.quantities["eyepiece-power"].low,
            **optics,
        },
        **WATER,
        "movers": movers,
        "drift": next(_mover(library, each) for each in library.manners.values() if each.motion == "drift"),
    }


def _start(movers: list[Json]) -> str:
    """The power to begin with: low where all that moves is, by its middle length, too long for the high-power field, or not in it."""
    move = [mover for mover in movers if mover["motion"] not in ("still", "jiggle")]
    long = all(math.sqrt(each[0] * each[1]) >= LONG for mover in move if isinstance(each := mover["parameters"]["length"], list))
    return "low" if move and (long or not any(mover["together"]["high"] for mover in move)) else "high"


def _mover(library: Library, manner: Manner, entry: Entry | None = None, *, one_of_several: bool = True) -> Json:
    usual = {name: _in_base(library, figure) for name, figure in manner.parameters.items()}
    figures = {name: _of_entry(figure, entry, TAKEN_FROM_ENTRY.get(name, "")) for name, figure in usual.items()}
    if "width" in figures and entry and not _tells(entry, "body-length"):
        figures["width"] = usual["width"]  # of the example, as its length is
    elif "width" in figures and not _tells(entry, "body-width") and figures["length"] not in (usual["length"], usual["width"]):
        figures["width"] = _in_proportion(usual["width"], usual["length"], figures["length"])
    shown = {name: each for name, each in figures.items() if name in ("length", "speed", "waves")}
    return {
        "id": manner.id,
        "name": manner.example if entry is None or one_of_several else entry.name,
        "among": _among(library, manner),
        "label": manner.label,
        "about": manner.about,
        "motion": manner.motion,
        "holds": manner.holds,
        "on": True,
        **_body(library, manner, entry),
        "together": dict(zip(("low", "high"), manner.together, strict=True)),
        "says": ", ".join(_says(name, each) for name, each in shown.items()),
        **_rests(library, [basis for each in shown.values() for basis in each.basis]),
        "basis": "; ".join(basis_words(library, basis) for basis in manner.basis),
        "parameters": {name: each.low if each.low == each.high else [each.low, each.high] for name, each in figures.items()},
        "figures": [
            {
                "name": name.replace("-", " "),
                "words": " ".join(filter(None, [_words(each), each.about and f"({each.about})"])),
                "mark": mark(library, each.basis),
                "basis": "; ".join(basis_words(library, basis) for basis in each.basis),
            }
            for name, each in figures.items()
        ],
    }


def _body(library: Library, manner: Manner, entry: Entry | None) -> Json:
    """What is moved: the shape of a drawing and what the motion does to it, or the name of a body that the script draws."""
    first = next(iter(manner.seen_in), None)
    if first is None:
        return {"body": ""}
    whose = entry if entry and entry.id in manner.seen_in else library.entries[first]
    named = manner.seen_in[whose.id]
    if isinstance(named, str) and named in library.vocabulary["body"] and named != OWN:
        return {"body": named}
    shape = shape_of(library, whose, named)
    return {"deforms": library.vocabulary["motion"][manner.motion].get("deforms"), "shape": shape}


def lacking(library: Library, manner: Manner, id: str) -> Iterator[str]:
    """What a motion needs of the drawing that it moves and does not find there: legs that step, a middle line that bends."""
    deforms, named = library.vocabulary["motion"][manner.motion].get("deforms"), manner.seen_in[id]
    if deforms not in ("step", "bend"):
        return
    shape = shape_of(library, library.entries[id], named)
    if deforms == "step" and shape and not any(mark[1] == "step" for mark in shape["marks"]):
        yield f"The drawing of '{id}' has no legs, which the motion '{manner.motion}' moves."
    if deforms == "bend" and shape and not shape.get("lined"):
        yield f"The drawing of '{id}' is not made round a middle line, along which the motion '{manner.motion}' bends it."


def shape_of(library: Library, entry: Entry, named: str | Figure) -> Json | None:
    """The shape an entry is moved in: that of its own drawing, of the entry named, or of the figure given."""
    own = entry if named == OWN else library.entries.get(str(named), entry)
    drawn = replace(entry, figure=named) if isinstance(named, Figure) else own
    return moving_shape(drawn, {part: word.get("moves") for part, word in library.vocabulary["moving-part"].items()})


def _among(library: Library, manner: Manner) -> str:
    """The theme of the first entry that moves like this, under which it is chosen; empty for drift."""
    first = next(iter(manner.seen_in), None)
    return library.vocabulary["theme"][library.entries[first].theme].label if first else ""


def _in_base(library: Library, figure: Quantity) -> Quantity:
    """The same figure in the base unit of its dimension, such as µm for mm."""
    units = library.vocabulary["unit"]
    written = units[figure.unit]
    base = next(id for id, unit in units.items() if unit.get("dimension") == written.get("dimension") and unit.get("factor") == 1)
    factor = float(written.get("factor"))
    return replace(figure, low=figure.low * factor, high=figure.high * factor, unit=base)


def _of_entry(figure: Quantity, entry: Entry | None, character: str) -> Quantity:
    """A figure as the entry says it. One over a very wide range is that of a group: then the manner's own narrows it."""
    statement = entry.statements.get(character) if entry else None
    if statement is None or not isinstance(statement.showing, Interval):
        return figure
    said, usual = statement.showing, Interval.closed(figure.low, figure.high)
    wide = not _tells(entry, character)
    kept = said.meet(usual) if wide and not said.meet(usual).is_empty else said
    if kept == usual or not (math.isfinite(kept.low) and math.isfinite(kept.high)):
        return figure
    basis = statement.basis if kept == said else tuple(dict.fromkeys((*figure.basis, *statement.basis)))
    return replace(figure, low=round(kept.low, 6), high=round(kept.high, 6), basis=basis)


def _tells(entry: Entry | None, character: str) -> bool:
    """Whether an entry gives a range of its own for this character, and not that of a group of many sizes."""
    statement = entry.statements.get(character) if entry else None
    said = statement.showing if statement else None
    return isinstance(said, Interval) and math.isfinite(said.high) and round(said.high, 6) <= WIDE * said.low


def _in_proportion(width: Quantity, length: Quantity, own: Quantity) -> Quantity:
    """The width of the manner's example, scaled to the entry's own length, where the entry says nothing of its width."""
    low, high = width.low * own.low / length.low, width.high * own.high / length.high
    basis = (*width.basis, Basis("computed", how="width of the example in proportion to the length"))
    return replace(width, low=round(low, 1), high=round(high, 1), basis=basis)


def _rests(library: Library, on: Iterable[Basis]) -> Json:
    """The mark of the weakest basis, and the same in words."""
    basis = weakest(on)
    word = library.vocabulary["value"][basis.value] if basis.value else library.vocabulary["basis"][basis.kind]
    return {"mark": mark(library, [basis]), "rests": word.label}


def _words(figure: Quantity) -> str:
    unit = {"1": "", "1/s": " a second", "°": "°"}.get(figure.unit, f" {figure.unit}")
    return _numbers(figure) + unit


def _numbers(figure: Quantity) -> str:
    return number(figure.low) if figure.low == figure.high else f"{number(figure.low)} to {number(figure.high)}"


def _says(name: str, figure: Quantity) -> str:
    if name == "length":
        return _words(figure) + (" across" if figure.about == "diameter" else " long")
    return f"{_numbers(figure)} {figure.about} a second" if name == "waves" else _words(figure)
