"""Movement as data: what a live field needs to show an entry, a lead or everything at true size and speed.

A live field is drawn by `site/assets/live-field.js`; this module turns the manners of moving
(`keydata/bench/manners.yaml`) and what an entry says of its own size and speed into the plain JSON
that script reads. A page shows it with

    <div data-live-field><script type="application/json">{...}</script>
    <p>what it shows, in words, for a page without scripts</p></div>

and loads `live-field.css`, `live-field.js` and `live-field-page.js`. `data-live-field="whole"` adds
the fields in which people enter their own field number and objectives. The script replaces
everything in the element but the JSON.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from keytool.library.basis import Basis, weakest
from keytool.library.build import bases
from keytool.library.model import Entry, Library, Word
from keytool.library.show import basis_words, mark, number
from keytool.library.value import Interval, States

Json = dict[str, Any]

WATER = {"temperature": 20, "viscosity": 1.002}
"""°C, and mPa s: the viscosity of water at 20 °C in the CRC Handbook (recalled)."""

OPTICS = {"low": ("low-objective", "na-four"), "high": ("high-objective", "na-forty")}
"""The bench quantities that give the power and the numerical aperture of each objective."""

LONG = 150
"""µm; a body from this length on fills so much of the high-power field that its way of moving is better seen at low power."""

TAKEN_FROM_ENTRY = {"length": "body-length", "width": "body-width", "speed": "speed"}
"""Parameters that an entry narrows by what it says of these characters."""


@dataclass(frozen=True, slots=True)
class Measure:
    """One figure of a manner, from `low` to `high` in base units (µm, µm/s, s, a second, degrees)."""

    low: float
    high: float
    unit: str
    about: str
    basis: tuple[Basis, ...]


@dataclass(frozen=True, slots=True)
class Manner:
    """One manner of moving. `seen_in` maps entries to the body each is drawn with, `shows` are states of the character `manner`."""

    id: str
    label: str
    about: str
    basis: tuple[Basis, ...]
    motion: str
    example: str
    shows: frozenset[str]
    holds: bool
    seen_in: Mapping[str, str]
    together: Mapping[str, int]
    figures: Mapping[str, Measure]


Manners = Mapping[str, Manner]


def read_manners(raw: Mapping[str, Any], units: Mapping[str, Word]) -> Manners:
    """The manners of `manners.yaml`, which has the shape of its schema; `units` are those of the vocabulary."""
    return {id: _manner(id, each, units) for id, each in raw.items()}


def _manner(id: str, raw: Mapping[str, Any], units: Mapping[str, Word]) -> Manner:
    return Manner(
        id, raw["label"], raw["about"], bases(raw["basis"]), raw["motion"], raw["example"], frozenset(raw["shows"]), raw["holds"],
        raw["seen-in"], raw["together"], {name: _figure(each, units) for name, each in raw["parameters"].items()},
    )


def _figure(raw: Mapping[str, Any], units: Mapping[str, Word]) -> Measure:
    factor = float(units[raw["unit"]].get("factor", 1))
    low, high = (raw["value"], raw["value"]) if "value" in raw else (raw["low"], raw["high"])
    return Measure(low * factor, high * factor, raw["unit"], raw.get("about", ""), bases(raw["basis"]))


def manners_of(library: Library, manners: Manners, entry: Entry) -> tuple[tuple[Manner, str], ...]:
    """How an entry moves, each with the entry or nearest group that is named for it; empty where nothing is known.

    A manner whose state of the character `manner` the entry does not show is left out.
    """
    level = [entry.id]
    while level:
        found = tuple((manner, id) for id in level for manner in manners.values() if id in manner.seen_in and _fits(manner, entry, id))
        if found:
            return found
        level = list(dict.fromkeys(parent for id in level for parent in library.entries[id].within if parent in library.entries))
    return ()


def _fits(manner: Manner, entry: Entry, named: str) -> bool:
    shown = entry.statements.get("manner")
    if shown is None or not manner.shows or not isinstance(shown.showing, States):
        return True
    only_inherited = named == entry.id != shown.stated_by  # being named here is nearer than what a wider group says
    return only_inherited or bool(manner.shows & shown.showing.ids)


def entry_field(library: Library, manners: Manners, entry: Entry) -> Json | None:
    """The field of an entry's page: it in each of its manners, and a grain that lies still. None where no manner is known."""
    movers = [_mover(library, manner, entry, named) for manner, named in manners_of(library, manners, entry)]
    return _field(library, manners, f"{entry.name}, moving", [*movers, *_marks(library, manners, movers)]) if movers else None


def lead_field(library: Library, manners: Manners, title: str, shows: Iterable[str], entries: Iterable[Entry]) -> Json | None:
    """The field of one lead: how those of `entries` that the lead keeps move, if it `shows` one of these states.

    States are those of `manner` and `own-movement`. None where none of the entries has such a manner.
    """
    wanted = frozenset(shows)
    found: dict[str, Json] = {}
    for entry in entries:
        for manner, named in manners_of(library, manners, entry):
            if wanted & _states(manner) and manner.id not in found:
                found[manner.id] = _mover(library, manner, library.entries[named], named)
    movers = list(found.values())
    return _field(library, manners, title, [*movers, *_marks(library, manners, movers)]) if movers else None


def whole_field(library: Library, manners: Manners, on: Iterable[str]) -> Json:
    """The field of the own page: every manner, those in `on` to be seen at first."""
    first = frozenset(on)
    movers = [{**_mover(library, manner, None, ""), "on": manner.id in first} for manner in manners.values() if manner.motion != "drift"]
    return _field(library, manners, "A live field", movers)


def lines(field: Json) -> Iterator[str]:
    """What a field shows, one line for each thing, for a page without scripts."""
    for mover in field["movers"]:
        yield f"{mover['name']}: {mover['says']} ({mover['mark']} {mover['rests']}). It {mover['label']}."


def _states(manner: Manner) -> frozenset[str]:
    """The states of `manner` and of `own-movement` that a manner shows."""
    own = {"jiggle": "jiggles", "drift": "jiggles", "still": "still"}.get(manner.motion, "moves")
    return manner.shows | {own}


def _marks(library: Library, manners: Manners, movers: list[Json]) -> list[Json]:
    """The grain that lies still, by which drift is told from movement."""
    return [_mover(library, each, None, "") for each in manners.values()
            if each.motion == "still" and each.id not in [mover["id"] for mover in movers]]


def _field(library: Library, manners: Manners, title: str, movers: list[Json]) -> Json:
    optics = {power: {"objective": library.quantities[objective].low, "aperture": library.quantities[aperture].low}
              for power, (objective, aperture) in OPTICS.items()}
    return {
        "title": title, "seed": 1, "start": _start(movers),
        "optics": {"field-number": library.quantities["field-number-example"].low,
                   "eyepiece": library.quantities["eyepiece-power"].low, **optics},
        **WATER, "movers": movers,
        "drift": next(_mover(library, each, None, "") for each in manners.values() if each.motion == "drift"),
    }


def _start(movers: list[Json]) -> str:
    """The power to begin with: low where all that moves is too long for the high-power field."""
    lengths = [mover["parameters"]["length"] for mover in movers if mover["motion"] not in ("still", "jiggle")]
    return "low" if lengths and all(length[0] >= LONG for length in lengths if isinstance(length, list)) else "high"


def _mover(library: Library, manner: Manner, entry: Entry | None, named: str) -> Json:
    figures = {name: _narrowed(figure, entry, TAKEN_FROM_ENTRY.get(name, "")) for name, figure in manner.figures.items()}
    first = next(iter(manner.seen_in), "")
    own = entry is None or entry.id == named
    shown = [each for name, each in figures.items() if name in ("length", "speed", "waves")]
    return {
        "id": manner.id,
        "name": manner.example if entry is None or entry.id == first else entry.name,
        "label": manner.label, "about": manner.about, "motion": manner.motion, "holds": manner.holds, "on": True,
        "note": "" if own else f"Shown as for {library.entries[named].name}; nothing more is said of its own manner.",
        "body": manner.seen_in.get(named or first, ""), "together": dict(manner.together),
        "says": ", ".join(_says(name, each) for name, each in figures.items() if each in shown),
        **_rests(library, [basis for each in shown for basis in each.basis]),
        "basis": "; ".join(basis_words(library, basis) for basis in manner.basis),
        "parameters": {name: each.low if each.low == each.high else [each.low, each.high] for name, each in figures.items()},
        "figures": [{"name": name.replace("-", " "), "words": " ".join(filter(None, [_words(each), each.about and f"({each.about})"])),
                     "mark": mark(library, each.basis), "basis": "; ".join(basis_words(library, basis) for basis in each.basis)}
                    for name, each in figures.items()],
    }


def _narrowed(figure: Measure, entry: Entry | None, character: str) -> Measure:
    """A figure of the manner, narrowed to what the entry says; where the two do not meet, the entry's own."""
    statement = entry.statements.get(character) if entry else None
    if statement is None or not isinstance(statement.showing, Interval):
        return figure
    said, usual = statement.showing, Interval.closed(figure.low, figure.high)
    both = said.meet(usual)
    if both == usual:
        return figure
    kept = said if both.is_empty else both
    if not (math.isfinite(kept.low) and math.isfinite(kept.high)):
        return figure
    basis = statement.basis if kept == said else (*figure.basis, *statement.basis)
    return Measure(round(kept.low, 6), round(kept.high, 6), figure.unit, figure.about, basis)


def _rests(library: Library, on: Iterable[Basis]) -> Json:
    """The mark of the weakest basis, and the same in words."""
    basis = weakest(on)
    word = library.vocabulary["value"][basis.value] if basis.value else library.vocabulary["basis"][basis.kind]
    return {"mark": mark(library, [basis]), "rests": word.label}


def _words(figure: Measure) -> str:
    ends = number(figure.low) if figure.low == figure.high else f"{number(figure.low)} to {number(figure.high)}"
    unit = {"1": "", "1/s": " a second", "°": "°"}.get(figure.unit, f" {figure.unit}")
    return ends + unit


def _says(name: str, figure: Measure) -> str:
    if name == "length":
        return _words(figure) + (" across" if figure.about == "diameter" else " long")
    return f"{_words(figure)} {figure.about}" if name == "waves" else _words(figure)
