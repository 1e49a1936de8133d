"""A dome-shaped shell cut open through the middle of its mouth: the wall in its thickness, and how it ends there."""

from __future__ import annotations

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Points, Shape
from ..points import pts
from .walls import lumps_on

_OUTER = pts("0 0, .34 .04, .66 .22, .83 .5, .86 .78, .79 .96, .66 1, .5 1, .38 1")
_INNER = pts("0 .11, .3 .14, .57 .29, .72 .53, .745 .75, .68 .86, .58 .885, .48 .885, .4 .885")
"""Right half of the two faces of the wall, from the top to the foot."""
_FUNNEL = pts("0.38 1, .3 .97, .25 .85, .235 .6"), pts(".4 .885, .365 .85, .345 .76, .335 .6")
"""The two faces of a rim that is turned in, from the foot up into the shell."""


def cut_open(n: float, wall: str, *, turned: bool) -> Sketch:
    """The two halves of the wall; `n` is the breadth of the shell, the rim drawn a little larger than it is."""
    by = 0.5 * n / max(x for x, _ in _OUTER)
    outer, inner = (geometry.curve(geometry.scaled(side, by), per=8) for side in (_OUTER, _INNER))
    tip, root = (geometry.curve(geometry.scaled(side, by), per=8) for side in _FUNNEL)
    shapes: list[Shape] = []
    for flip in (False, True):
        shapes += _half(outer, inner, tip, root, turned=turned, flip=flip)
    if wall == "grains":
        shapes.append(lumps_on((*reversed(geometry.mirrored(outer)), *outer[1:]), n))
    return Sketch(tuple(shapes), pen_for(1.05 * n, 0.75 * n))


def _half(outer: Points, inner: Points, tip: Points, root: Points, *, turned: bool, flip: bool) -> list[Shape]:
    """One half of the wall and its end at the mouth."""

    def on(points: Points) -> Points:
        return geometry.mirrored(points) if flip else points

    end = (*tip, *reversed(root)) if turned else (outer[-9], *outer[-8:], *reversed(inner[-9:]))
    rim = (
        [pen.filled(on(end), "opening"), pen.line(on(end), (1.4,), "opening")]
        if turned
        else [pen.line(on((*outer[-9:], *reversed(inner[-9:]))), (2.4,), "opening")]
    )
    return [
        pen.filled(on((*outer, *reversed(inner))), "scales", role="faint"),
        pen.line(on(outer), (1.8,) if flip else (2.4,), "outline"),
        pen.line(on(inner), (1.0,), "wall"),
        *rim,
    ]
