"""What a push of the slide shows: how things lay before (faint), and how they lie after it."""

from __future__ import annotations

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .kind import Kind, Values, accent, choice, num, um, word
from .points import pts

_GRIT: tuple[tuple[float, float, float], ...] = (
    (-0.62, -0.30, 0.075),
    (-0.30, 0.55, 0.06),
    (-0.52, 0.22, 0.05),
    (0.02, -0.58, 0.065),
    (0.16, 0.24, 0.05),
)
"""Where grit lies before the push and how large it is, in shares of the field's radius."""
_THING = pts("-.44 -.06, -.32 -.2, -.16 -.14, -.04 .02, .1 .06, .2 -.06")
_PUSH = 0.34
"""How far the slide is pushed."""


def pushed(v: Values) -> Sketch:
    """A round field after the slide was pushed to the right: the grit has gone along; the thing has too, or has stayed."""
    d = num(v, "field")
    r = d / 2
    out: list[Shape] = [pen.ring(0, 0, r, 1.2, "field")]
    for k, (x, y, size) in enumerate(_GRIT):
        before = _speck(x * r, y * r, size * r, k)
        out += [pen.stroke(before, 0.8, "before", role="faint", closed=True), pen.filled(_shifted(before, r), "grit")]
    if word(v, "thing").startswith("dot"):
        x, y, size = -0.14 * r, -0.02 * r, 0.055 * r
        along = word(v, "thing") == "dot-along"
        out += (
            [pen.ring(x, y, size, 1.0, "before", role="faint"), pen.disc(x + _PUSH * r, y, size, "thing")]
            if along
            else [pen.disc(x, y, size, "thing")]
        )
        return Sketch((*out, *_arrow(r)), pen_for(d, d))
    thing = geometry.curve(geometry.scaled(_THING, r), per=8)
    if word(v, "thing") == "along":
        out += [pen.line(thing, (1.0, 1.6, 1.0), "before", role="faint"), pen.line(_shifted(thing, r), (2.6, 4.2, 2.6), "thing")]
    else:
        out.append(pen.line(thing, (2.6, 4.2, 2.6), "thing"))
    return Sketch((*out, *_arrow(r)), pen_for(d, d))


def _shifted(points: Points, r: float) -> Points:
    return geometry.moved(points, _PUSH * r, 0.0)


def _speck(x: float, y: float, size: float, salt: int) -> Points:
    return pen.wobble(geometry.ellipse(x, y, size, 0.8 * size, turn=salt, count=48), 0.15 * size, 2, salt)


def _arrow(r: float) -> list[Shape]:
    """Which way, and how far, the slide went."""
    y, start = 0.80 * r, -_PUSH * r / 2
    end = start + _PUSH * r
    head: list[Point] = [(end - 0.11 * r, y - 0.07 * r), (end, y), (end - 0.11 * r, y + 0.07 * r)]
    return [pen.stroke(((start, y), (end, y)), 1.6, "push"), pen.stroke(head, 1.6, "push")]


KIND = Kind(
    "pushed-slide",
    "a round field before (faint) and after the slide was pushed to the right",
    (
        choice(
            "thing",
            ("along", "stays", "dot-along", "dot-stays"),
            "whether the thing (a worm, or a dot) in question went along with the grit or stayed where it was",
        ),
        um("field", 450, 50, 6000, "diameter of the field of view"),
        accent("thing", "grit", "push"),
    ),
    pushed,
)
