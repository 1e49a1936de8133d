"""Several single cells side by side, each in its own size, for names that stand for many kinds."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import pi

from ..frame import Sketch, pen_for
from ..shapes import Dots, Shape
from .amoebae import amoeba
from .ciliates import ciliate
from .flagellate.euglenids import stiff_ahead
from .flagellate.gliders import bean, roundish, sausage
from .flagellate.parts import Drawn
from .flagellate.swimmers import equal
from .kind import Kind, Values, accent, choice, num, um, word
from .naked_amoeba.slugs import eruptive, plain, slug
from .together import beside, shifted, turned

_Shapes = tuple[Shape, ...]


def _row(groups: list[_Shapes], gap: float, wide: float, tall: float) -> Sketch:
    return Sketch(tuple(_finer(one) for one in beside(groups, gap)), pen_for(wide, tall))


def _finer(shape: Shape) -> Shape:
    """The grain of a small cell in a large picture, in smaller dots, so that it does not run together."""
    return replace(shape, size=0.55 * shape.size) if isinstance(shape, Dots) else shape


def _movers(n: float) -> Sketch:
    """A ciliate, a naked amoeba, a flagellate: the three ways of moving."""
    small, _, _ = bean(0.30 * n)
    return _row([ciliate(n).shapes, amoeba(0.85 * n).shapes, tuple(small)], 0.10 * n, 2.1 * n, 1.15 * n)


def _flagellates(n: float) -> Sketch:
    """One whip straight ahead, one trailing, two in front, one round with a whip each way: no two alike in build."""
    drawn: list[Drawn] = [stiff_ahead(n), sausage(0.65 * n), equal(0.8 * n), roundish(0.55 * n)]
    return _row([tuple(shapes) for shapes, _, _ in drawn], 0.16 * n, 3.6 * n, 2.2 * n)


def _two_whipped(n: float) -> Sketch:
    """A bean and a roundish one, each with a short whip in front and a long one trailing."""
    return _row([tuple(bean(n)[0]), tuple(roundish(0.7 * n)[0])], 0.2 * n, 2.2 * n, 1.8 * n)


def _slugs(n: float) -> Sketch:
    """The two ways a slug's front moves on: a steady clear cap; a bulge that bursts out to one side."""
    return _row([slug(n).shapes, eruptive(0.95 * n).shapes], 0.30 * n, 1.0 * n, n)


_CELLS = "-1.0 -1.7 .35, .1 -1.9 -.1, 1.1 -1.6 -.5, -.62 -.55 .42, .30 -.7 -.25, -.22 .55 .30, .42 .42 -.30, .06 1.6 .05"


def _stream(n: float) -> Sketch:
    """Small plain amoebae drawn out in one direction, all heading for one point, the foremost nose to tail."""
    out: list[Shape] = []
    for one in _CELLS.split(", "):
        x, y, turn = (float(each) for each in one.split())
        flat = tuple(one for one in plain(n).shapes if not isinstance(one, Dots) and one.part != "food")
        out += turned(shifted(flat, 0.0, -0.5 * n), turn + pi, 1.15 * x * n, 1.0 * y * n)
    return Sketch(tuple(out), pen_for(3.2 * n, 4.6 * n))


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "movers": _movers,
    "flagellates": _flagellates,
    "two-whipped": _two_whipped,
    "slugs": _slugs,
    "stream": _stream,
}


def build(v: Values) -> Sketch:
    """The cells in a row, or in a stream."""
    return _FORMS[word(v, "form")](num(v, "length"))


KIND = Kind(
    "cell-lot",
    "several single cells side by side, for a name that stands for many kinds",
    (
        choice(
            "form",
            tuple(_FORMS),
            "ciliate, amoeba and flagellate; four builds of flagellate; two with a short and a long whip; two ways a slug flows on; "
            "amoebae streaming to one point",
        ),
        um("length", 40, 2, 400, "length of the largest, of a stream that of each"),
        accent("body", "flagella", "pseudopods", "cilia", "nucleus"),
    ),
    build,
)
