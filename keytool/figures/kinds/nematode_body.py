"""A nematode's body: true length along its axis, true width, resting posture and tail."""

from __future__ import annotations

from math import pi, sin

from .. import geometry, pen
from ..frame import Sketch
from ..shapes import Shape
from . import tube
from .kind import Kind, Values, accent, choice, flag, num, um, word
from .tube import Strand
from .worm_organs import GULLETS, female, gullet
from .worm_shape import BELLY, TAILS, heading, profile, tail_heading


def build(v: Values) -> Sketch:
    """The worm, or its rear end, as shapes."""
    length, width, tail = num(v, "length"), num(v, "width"), word(v, "tail")
    share = min(0.35, TAILS[tail] * 0.62 * width / length)
    half = profile(length, width, tail, share)
    if word(v, "view") == "tail":
        seen = min(0.9, share + 2.6 * width / length)
        line = tube.axis(seen * length, tail_heading(share / seen, hooked=tail == "hooked"))
        worm = Strand(line, seen * length, lambda u: half(1 - seen + u * seen))
        return _drawn(v, worm, 1 - share / seen, whole=False)
    line = tube.axis(length, heading(word(v, "posture"), tail == "hooked", share, length / width), steps=480)
    return _drawn(v, Strand(line, length, half), 1 - share, whole=True)


def _drawn(v: Values, worm: Strand, anus: float, *, whole: bool) -> Sketch:
    width = num(v, "width")
    edge = worm.ring()
    # A thin worm is not drowned by its own outline.
    pen_um = min(tube.pen_of(edge), width / 13)
    shapes: list[Shape] = [
        *_outline(worm, pen_um, whole=whole),
        *_tail(worm, anus, pen_um),
        *(_organs(v, worm, anus, pen_um) if whole else _gut(worm, anus, pen_um, dark=bool(v["opaque-gut"]))),
    ]
    if word(v, "rings") == "coarse":
        shapes.append(_rings(worm, width))
    if word(v, "rings") == "warts":
        shapes += _warts(worm, width)
    if word(v, "rings") == "lengthwise":
        shapes += _ridges(worm)
    if word(v, "tail") == "clear-tip":
        shapes += _clear_tip(worm, anus, pen_um)
    elif not whole:
        shapes += _grainy_tail(worm, anus, pen_um)
    if v["sheath"]:
        shapes.append(_sheath(worm, max(0.10 * width, 2.2 * pen_um), whole=whole))
    return Sketch(tuple(shapes), pen_um)


def _outline(worm: Strand, pen_um: float, *, whole: bool) -> list[Shape]:
    if whole:
        return [tube.hull(worm, 1.0, 2.0, "outline", pen_um)]
    front = 2 * worm.half(0)
    cut = tuple((x, y + 0.03 * front * sin(2 * pi * k / 8)) for k, (x, y) in enumerate(tube.across(worm.axis, worm.half, 0.0)))
    skin = [
        tuple(p for k, p in enumerate(s) if k < 0.86 * len(s))
        for s in tube.sides(worm.axis, lambda t: max(0.0, worm.half(t) - 0.04 * front))
    ]
    return [
        tube.hull(worm, 1.2, 2.2, "outline", pen_um, closed=False),
        *(pen.stroke(s, 0.55, "cuticle") for s in skin),
        pen.stroke(geometry.curve(cut, per=3), 0.5, "cut", role="faint"),
    ]


def _tail(worm: Strand, anus: float, pen_um: float) -> list[Shape]:
    """The tail drawn again a little heavier, so that it can be picked out; and the anus."""
    slit = (
        tube.beside(worm.axis, worm.half, anus, 0.98 * BELLY),
        tube.beside(worm.axis, worm.half, anus, 0.30 * BELLY, -0.35 * worm.half(anus)),
    )
    return [tube.hull(worm, 1.7, 2.5, "tail", pen_um, first=anus, closed=False), pen.stroke(slit, 0.8, "tail")]


def _organs(v: Values, worm: Strand, anus: float, pen_um: float) -> list[Shape]:
    """Gullet, gut and female organs of a whole worm: clear in front, grainy behind."""
    # Of a long worm the gullet takes a lesser share.
    end = min(0.24, max(0.12, 4.6 * 2 * worm.half(0.5) / worm.length))
    out = gullet(worm, word(v, "gullet"), end)
    inside, aside = female(worm, word(v, "female"), end, anus) if word(v, "female") != "none" else ([], lambda t: 0.0)
    steps = [end + 0.004 + (anus - end - 0.004) * k / 200 for k in range(201)]
    ends = [min(1.0, 14 * k / 200, 10 * (200 - k) / 200) ** 0.5 for k in range(201)]
    belly = [tube.beside(worm.axis, worm.half, t, BELLY * e * (0.66 - 0.72 * aside(t))) for t, e in zip(steps, ends, strict=True)]
    back = [tube.beside(worm.axis, worm.half, t, -BELLY * 0.66 * e) for t, e in zip(steps, ends, strict=True)]
    edge = (*belly, *reversed(back))
    dark = bool(v["opaque-gut"])
    bed = pen.filled(edge, "gut", role="faint") if dark else pen.stroke(edge, 0.5, "gut", role="faint", closed=True)
    grains = pen.grain(edge, (2.4 if dark else 2.1) * pen_um, "gut", lambda p: 0.9 if dark else 0.75, sizes=(1.0, 1.5))
    return [*out, bed, *grains, *inside]


def _gut(worm: Strand, anus: float, pen_um: float, *, dark: bool) -> list[Shape]:
    """The end of the gut in a rear end close up: a thin tube, or a grainy band where it is opaque."""
    last = len(worm.axis) - 1
    middle = tuple(p for k, p in enumerate(worm.axis) if k / last <= anus)
    edge = tube.ring(middle, lambda u: worm.half(u * anus) * 0.66 * tube.round_ends(u, 0.0, 0.3))
    if not dark:
        return [pen.stroke(edge, 0.5, "gut", role="faint", closed=True)]
    return [pen.filled(edge, "gut", role="faint"), *pen.grain(edge, 2.4 * pen_um, "gut", lambda p: 0.9, sizes=(1.0, 1.5))]


def _rings(worm: Strand, width: float) -> Shape:
    count = round(worm.length / (width / 9))
    return pen.strokes([tube.across(worm.axis, worm.half, k / count, share=0.96, bow=0.10) for k in range(2, count)], 0.6, "rings")


def _warts(worm: Strand, width: float) -> list[Shape]:
    """Round warts in two rows along one side only: one row stands out over the edge, the other is seen from above."""
    count = round(0.76 * worm.length / (0.46 * width))
    out: list[Shape] = []
    for k in range(count):
        t = 0.09 + 0.76 * (k + 0.5) / count
        r = 0.17 * width * min(1.0, worm.half(t) / (0.42 * width))
        knob = [tube.beside(worm.axis, worm.half, t, 0.90 + 2.0 * r / worm.half(t) * h, a * r) for a, h in _KNOB]
        out.append(pen.line(geometry.curve(knob, per=5), (1.2, 1.6, 1.2), "rings"))
        x, y = tube.beside(worm.axis, worm.half, t, 0.38)
        out.append(pen.ring(x, y, 0.8 * r, 0.9, "rings"))
    return out


_KNOB = ((-0.9, 0.0), (-0.95, 0.55), (-0.5, 0.95), (0.0, 1.05), (0.5, 0.95), (0.95, 0.55), (0.9, 0.0))
"""A wart from the side: along the body, and outward, in shares of its radius."""


def _ridges(worm: Strand) -> list[Shape]:
    """Ridges of the skin from end to end, closer together toward the edge."""
    lines = [
        [tube.beside(worm.axis, worm.half, 0.03 + 0.92 * k / 160, u) for k in range(161)]
        for u in (-0.86, -0.66, -0.38, -0.06, 0.28, 0.58, 0.82)
    ]
    return [pen.stroke(one, 0.6, "rings") for one in lines]


def _clear_tip(worm: Strand, anus: float, pen_um: float) -> list[Shape]:
    """Grain fills the tail but for its last part, which is clear as glass behind a sharp border."""
    border = anus + 0.60 * (1 - anus)
    count = len(worm.axis) - 1
    grainy = tuple(p for k, p in enumerate(worm.axis) if anus <= k / count <= border)
    edge = tube.ring(grainy, lambda u: max(0.0, worm.half(anus + u * (border - anus)) - 2.4 * pen_um))
    return [
        *pen.grain(edge, 2.2 * pen_um, "cuticle", lambda p: 0.7),
        pen.stroke(tube.across(worm.axis, worm.half, border, share=0.94, bow=-0.5), 0.9, "clear-tip"),
        tube.hull(worm, 1.8, 2.6, "clear-tip", pen_um, first=border, closed=False),
    ]


def _grainy_tail(worm: Strand, anus: float, pen_um: float) -> list[Shape]:
    """Grain that fills the tail right to its tip."""
    count = len(worm.axis) - 1
    inside = tuple(p for k, p in enumerate(worm.axis) if anus <= k / count <= 0.985)
    edge = tube.ring(inside, lambda u: max(0.0, worm.half(anus + u * (0.985 - anus)) - 2.2 * pen_um))
    return list(pen.grain(edge, 2.4 * pen_um, "cuticle", lambda p: 0.7))


def _sheath(worm: Strand, gap: float, *, whole: bool) -> Shape:
    def loose(t: float) -> float:
        return worm.half(t) + gap * (1.0 + 0.25 * sin(23 * t))

    right, left = tube.sides(worm.axis, loose)
    around = (*right, *reversed(left))
    return pen.stroke(geometry.curve(around[::6], closed=whole, per=4), 0.8, "sheath", closed=whole)


KIND = Kind(
    "nematode-body",
    "a nematode's body at its true length and width: the whole worm, head at the top, or its tail close up",
    (
        um("length", 800, 100, 12000, "length along the body"),
        um("width", 32, 4, 400, "greatest width"),
        choice("view", ("whole", "tail"), "the whole worm, or its rear end close up"),
        choice("posture", ("wave", "straight", "arcuate", "C", "spiral", "six", "coiled"), "how it lies (whole view)"),
        choice(
            "rings",
            ("none", "coarse", "lengthwise", "warts"),
            "rings of the skin seen at low power, ridges along the body, or warts on one side only",
        ),
        choice("tail", tuple(TAILS), "end of the body"),
        choice("gullet", tuple(GULLETS), "build of the gullet (whole view)", "cylindrical"),
        choice("female", ("none", "middle", "rear"), "female organs: with the vulva at mid body, or far back (whole view)"),
        flag("sheath", "a second, loose skin"),
        flag("opaque-gut", "gut dark and grainy"),
        accent("body", "tail", "clear-tip", "rings", "gullet", "gut", "gonad", "vulva", "sheath"),
    ),
    build,
    lambda v: (
        [f"width {num(v, 'width'):g} µm is too much for a worm {num(v, 'length'):g} µm long (at most a sixth of it)"]
        if num(v, "width") > num(v, "length") / 6
        else []
    ),
)
