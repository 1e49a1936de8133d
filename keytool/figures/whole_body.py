"""The whole of a thing, as the field holds it, where its plate shows a part: the worm of a head, a thread that runs on."""

from __future__ import annotations

from typing import Any

from keytool.library.drawing_records import Form
from keytool.library.model import Entry, Figure
from keytool.library.value import Interval, States

from . import Kind, draw, kinds, known_kind
from .library_figures import resolved
from .shapes import Drawing

WIDE = 10
"""An entry whose range is wider than this factor speaks for a group of many sizes."""
_SLENDER = 25.0
"""Length over width of a worm whose width neither its entry nor its plate says."""
_USUAL = 800.0
"""µm; about the length of many soil nematodes (memory), for an entry that says none or speaks of a group of many sizes."""


def whole_of(entry: Entry, field: float, posture: str = "") -> Drawing | None:
    """The entry's drawing as a whole thing: a head becomes the worm it belongs to, a stretch of thread runs through the field.

    `posture` is how a worm is to lie, where it is not to lie as it rests.
    """
    figure = entry.figure
    if figure is None:
        return None
    kind, params = figure.draws, params_of(figure, entry)
    if is_worm_part(figure):
        length = _middle(entry, "body-length", _USUAL)
        width = min(_middle(entry, "body-width", params.get("width", length / _SLENDER)), length / 6)
        kind, params = "nematode-body", {"length": length, "width": width, **_worm_of(entry, params)}
    known = {p.name: p for p in kind_named(kind).params}
    own = known.get("length")
    if kind in ("thread", "filament", "vessel", "hair") and own and "length" not in params and params.get("form") != "helical":
        params["length"] = min(own.high, 1.1 * field)
    if posture and kind == "nematode-body":
        params["posture"] = posture
    return draw(kind, _fitting(params, known), title=entry.name)


_TAILS = {"blunt": "conoid-blunt", "pointed": "conoid-sharp", "drawn-out": "filiform", "clear-tip": "clear-tip"}
_POSTURES = {"spiral": "spiral", "six": "six", "open-c": "arcuate", "straight": "straight"}
"""The drawing's word for each state of the characters tail and resting-posture; of several that an entry names, the one told first here."""


def _worm_of(entry: Entry, head: dict[str, Any]) -> dict[str, Any]:
    """What the whole worm of a head shows besides its size: the same gullet, its own tail, how it lies, rings that notch its edges."""
    own = {p.name: p.choices for p in kinds()["nematode-body"].params if p.choices}
    out: dict[str, Any] = {}
    if head.get("gullet") in own["gullet"]:
        out["gullet"] = head["gullet"]
    for character, words in (("tail", _TAILS), ("resting-posture", _POSTURES)):
        if shown := [word for state, word in words.items() if state in _states(entry, character)]:
            out["posture" if words is _POSTURES else "tail"] = shown[0]
    if head.get("rings") in ("coarse", "scaled"):
        out["rings"] = "coarse"
    return out


def _states(entry: Entry, character: str) -> frozenset[str]:
    """The states that the entry names of a character; none where it says nothing."""
    statement = entry.statements.get(character)
    return statement.showing.ids if statement is not None and isinstance(statement.showing, States) else frozenset()


def kind_named(what: str | Form) -> Kind:
    """The kind of a figure that was checked."""
    known = known_kind(what)
    assert known is not None
    return known


def is_worm_part(figure: Figure) -> bool:
    """Whether a figure shows the head or the tail of a worm."""
    return figure.kind == "nematode-head" or (figure.kind == "nematode-body" and figure.params.get("view") == "tail")


def params_of(figure: Figure, entry: Entry) -> dict[str, Any]:
    """The parameters of a figure without the accent and what measures it: in the field nothing is asked about."""
    out = {name: value for name, value in resolved(figure, entry).items() if name not in ("accent", "measure")}
    if out.get("form") == "dwarfs":  # drawn beside a rod, for measure
        out["form"] = "cocci"
    return out


def _fitting(params: dict[str, Any], known: dict[str, Any]) -> dict[str, Any]:
    """The same, every length drawn back into what the kind can draw."""
    return {k: min(max(v, known[k].low), known[k].high) if known[k].type == "um" and v is not None else v for k, v in params.items()}


def _middle(entry: Entry, character: str, otherwise: float) -> float:
    """The middle of what the entry says of a length, in µm; of a group of many sizes, the other length as far as it may be."""
    statement = entry.statements.get(character)
    if statement is None or not isinstance(statement.showing, Interval):
        return otherwise
    low, high = statement.showing.low, statement.showing.high
    return min(max(otherwise, low), high) if low <= 0 or high > WIDE * low else (low + high) / 2


def strewn(entry: Entry) -> int:
    """Of a drawing of small bodies that lie scattered: how many shapes make one body; else 0."""
    figure = entry.figure
    if figure is None or figure.kind != "dots" or figure.params.get("layout", "scattered") != "scattered":
        return 0
    return 2 if figure.params.get("form") in ("unresolved", "clubs", "spore-rods") else 1
