"""Threads: even or tapering, cross-walled or not, branched, beaded or coiled, at their true width."""

from __future__ import annotations

from math import pi, sin

from .. import pen
from ..frame import Sketch, pen_for
from ..shapes import Shape
from . import tube
from .kind import Kind, Values, accent, choice, colour, flag, given, num, um, word
from .thread_parts import beads, branches, contents, cross_walls, helix, walls
from .tube import Strand

_THIN = 3.4
"""A thread narrower than this many pens has no room for two walls."""
_SPAN = 12.0
"""Unless told otherwise a thread is shown over this many of its widths: short enough to see its walls."""


def build(v: Values) -> Sketch:
    """The stretch of thread as shapes, running down the page."""
    width = num(v, "width")
    length = given(v, "length", _SPAN * width)
    form = word(v, "form")
    pen_um = pen_for(0.42 * length, length)
    tonal = word(v, "wall") in ("pigmented", "opaque")  # dark as such: it must not be seen as a negative
    if form == "helical":
        return Sketch(tuple(helix(width, length)), pen_um)
    if form == "beaded":
        return Sketch(tuple(beads(width, length)), pen_um)
    if width < _THIN * pen_um:
        return Sketch(tuple(_single_line(v, width, length, pen_um)), pen_um, tonal=tonal)
    whole = _strand(v, width, length)
    branch = word(v, "branch")
    pieces = [whole.upto(0.56) if branch == "fork" else whole, *branches(whole, width, branch)]
    if branch == "right-angle":  # the cross-wall stands just past the branch
        shapes_past = [pen.stroke(tube.across(pieces[1].axis, pieces[1].half, 0.24, share=0.97), 1.2, "cross-walls")]
    else:
        shapes_past = []
    rings = [piece.ring() for piece in pieces]
    shapes: list[Shape] = [*shapes_past]
    for k, piece in enumerate(pieces):
        shapes += walls(piece, [*rings[:k], *rings[k + 1 :]], word(v, "wall"), pen_um)
        shapes += contents(piece, word(v, "contents"), pen_um)
    if v["cross-walls"]:
        shapes += cross_walls(
            pieces[0], given(v, "wall-spacing", 3.6 * width), clamp=bool(v["clamp"]), lean=0.30 * width if v["slanting"] else 0.0
        )
        if branch != "right-angle":
            shapes += [pen.stroke(tube.across(arm.axis, arm.half, 0.30, share=0.95), 1.2, "cross-walls") for arm in pieces[1:2]]
    return Sketch(tuple(shapes), pen_um, tonal=tonal)


def _strand(v: Values, width: float, length: float) -> Strand:
    sweep = {"straight": 0.0, "gentle": 0.22, "wavy": 0.55}[word(v, "course")]
    taper = 0.85 if word(v, "form") == "tapering" else 0.0
    tip = width / 2 / length if v["tip"] else 0.0
    axis = tube.axis(length, lambda t: sweep * sin(2 * pi * (0.75 * t + 0.1)))
    knobs = 0.16 if word(v, "form") == "knobbly" else 0.0

    def half(t: float) -> float:
        uneven = 1 - knobs * (0.5 + 0.5 * sin(23 * t + 1.0) * sin(9.5 * t + 0.4))
        return width / 2 * uneven * (1 - taper * t) * tube.round_ends(t, 0.0, tip)

    return Strand(axis, length, half)


def _single_line(v: Values, width: float, length: float, pen_um: float) -> list[Shape]:
    """A thread so thin at this size that its walls would merge: one line of its true width, a light core where there is room."""
    strand = _strand(v, width, length)
    branch = word(v, "branch")
    out: list[Shape] = []
    for piece in [strand.upto(0.56) if branch == "fork" else strand, *branches(strand, width, branch)]:
        core = 0.0 if width < 1.6 * pen_um or word(v, "wall") == "pigmented" else 0.36
        outer = tube.sides(piece.axis, piece.half)
        inner = tube.sides(piece.axis, lambda t, piece=piece, core=core: core * piece.half(t))  # type: ignore[misc]
        out += [pen.filled((*o, *reversed(i)), piece.part) for o, i in zip(outer, inner, strict=True)]
    return out


def conflicts(v: Values) -> list[str]:
    """What cannot be true together of one thread."""
    out = ["clamp needs cross-walls: true"] if v["clamp"] and not v["cross-walls"] else []
    if v["slanting"] and not v["cross-walls"]:
        out.append("slanting needs cross-walls: true")
    width, length = num(v, "width"), given(v, "length", _SPAN * num(v, "width"))
    if length < 3 * width:
        out.append(f"length {length:g} µm is too short to show a thread {width:g} µm wide (at least {3 * width:g} µm)")
    return out


KIND = Kind(
    "thread",
    "a stretch of thread (hypha, filament, root hair, vessel spring) at its true width",
    (
        um("width", 4, 0.5, 100, "width of the strand"),
        um("length", None, 5, 3000, "length shown; twelve widths if left out"),
        choice("form", ("even", "tapering", "knobbly", "beaded", "helical"), "how the strand is built"),
        choice("course", ("gentle", "straight", "wavy"), "how it runs"),
        flag("cross-walls", "thin walls right across"),
        um("wall-spacing", None, 1, 500, "distance between cross-walls"),
        flag("slanting", "cross-walls at a slant"),
        flag("clamp", "a side loop bridging each cross-wall"),
        choice(
            "branch",
            ("none", "side", "fork", "right-angle", "bridge"),
            "branching; branches share the strand's wall; right-angle: with a waist and a cross-wall just past it; "
            "bridge: joined to a second strand",
        ),
        choice(
            "wall",
            ("single", "double", "pigmented", "opaque", "dyed"),
            "how the wall looks; opaque: dark right through; dyed: one even colour right through",
        ),
        choice("contents", ("clear", "granular", "drops"), "what is inside"),
        flag("tip", "ends in a rounded tip instead of running on"),
        accent("body", "cross-walls", "clamp", "branch", "contents"),
        colour(),
    ),
    build,
    conflicts,
)
