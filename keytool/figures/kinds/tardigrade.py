"""The tardigrade, from above and from the side."""

from __future__ import annotations

from math import cos, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Box, Point, Shape
from .kind import Kind, Values, accent, choice, flag, num, um, word
from .points import cornered, pts

_BEAR = (  # right side, shares of length; stubby legs are part of the outline
    ((0, 0), (0.05, 0.006), (0.09, 0.035), (0.115, 0.085), (0.122, 0.135), (0.135, 0.165)),
    ((0.135, 0.165), (0.185, 0.155), (0.235, 0.170), (0.258, 0.200), (0.240, 0.228), (0.195, 0.240), (0.155, 0.265)),
    ((0.155, 0.265), (0.165, 0.315), (0.172, 0.365)),
    ((0.172, 0.365), (0.220, 0.370), (0.268, 0.390), (0.290, 0.425), (0.268, 0.452), (0.222, 0.458), (0.180, 0.475)),
    ((0.180, 0.475), (0.184, 0.525), (0.180, 0.575)),
    ((0.180, 0.575), (0.225, 0.595), (0.262, 0.625), (0.272, 0.662), (0.246, 0.684), (0.205, 0.678), (0.168, 0.680)),
    ((0.168, 0.680), (0.158, 0.750), (0.138, 0.820)),
    ((0.138, 0.820), (0.150, 0.875), (0.150, 0.940), (0.128, 0.980), (0.094, 0.978), (0.074, 0.935), (0.050, 0.895), (0.0, 0.885)),
)


_CLAWS = ((0.250, 0.205, -0.35), (0.282, 0.430, 0.15), (0.262, 0.668, 0.6), (0.115, 0.980, 1.45))


def bear(v: Values) -> Sketch:
    """A tardigrade as it is looked at: from above, or from the side."""
    return side_bear(v) if word(v, "view") == "side" else _from_above(v)


def _from_above(v: Values) -> Sketch:
    """A tardigrade from above, head at the top: four pairs of stubby legs with claws; smooth, or with plates on its back."""
    n = num(v, "length") / 0.981  # the outline ends at the tips of the last pair of legs
    side: list[Point] = []
    for stretch in _BEAR:
        side += geometry.curve([(x * n, y * n) for x, y in stretch], per=5)[:-1]
    side.append((0.0, _BEAR[-1][-1][1] * n))
    edge = (*side, *reversed(geometry.mirrored(side[1:-1])))
    pen_um = pen_for(0.62 * n, n)
    shapes: list[Shape] = [pen.contour(edge, 1.2, 2.3, "outline")]
    for x, y, lean in _CLAWS:
        hooks = []
        for k in (-1.5, -0.5, 0.5, 1.5):
            a = lean + 0.30 * k
            foot = (x * n + 0.008 * n * k * -sin(lean), y * n + 0.008 * n * k * cos(lean))
            mid = (foot[0] + 0.026 * n * cos(a), foot[1] + 0.026 * n * sin(a))
            tip = (mid[0] + 0.016 * n * cos(a + 0.7), mid[1] + 0.016 * n * sin(a + 0.7))
            hooks.append(geometry.curve([foot, mid, tip], per=5))
        shapes += [pen.line(h, (1.4, 0.6), "claws") for one in hooks for h in (one, geometry.mirrored(one))]
    folds = [
        geometry.curve([(-w * n, y * n), (0, (y + 0.014) * n), (w * n, y * n)], per=8)
        for w, y in ((0.105, 0.150), (0.135, 0.315), (0.150, 0.520), (0.135, 0.735))
    ]
    shapes.append(pen.strokes(folds, 0.6, "folds", role="faint"))
    shapes += _plates(n, pen_um) if v["plates"] else _bear_inside(n, pen_um, word(v, "throat"))
    return Sketch(tuple(shapes), pen_um)


_SIDE = (
    "-.012 -.045, -.004 -.105, .035 -.155, .10 -.188, .17 -.208, .24 -.225, "
    ".31 -.255, .42 -.285, .56 -.295, .70 -.28, .82 -.245, .91 -.18, .965 -.09, "
    ".985 .0, .985 .05; .995 .09, 1.0 .14, .985 .185, .945 .195, .905 .165, .88 .11; "
    ".80 .085, .765 .085; .775 .13, .765 .19, .73 .215, .69 .21, .665 .165, "
    ".655 .10; .585 .10, .555 .10; .56 .15, .545 .205, .51 .23, .47 .22, .45 .17, "
    ".44 .10; .375 .095, .345 .09; .345 .135, .33 .18, .30 .20, .26 .19, "
    ".24 .145, .235 .08; .17 .07, .09 .06, .03 .042, -.004 .005"
)
_FEET = ((0.285, 0.195, 1.75), (0.500, 0.225, 1.70), (0.722, 0.213, 1.45), (0.968, 0.190, 1.05))


def side_bear(v: Values) -> Sketch:
    """A tardigrade from the side, head to the left: plump, in soft folds, four short legs on the near side with two double claws each."""
    raw = cornered(_SIDE, 6)
    box = geometry.around(raw)
    n = num(v, "length")
    by = n / box.width
    edge = geometry.clockwise(tuple(((x - box.x) * by, y * by) for x, y in raw))
    pen_um = pen_for(n, 0.55 * n)
    claws: list[Shape] = []
    for x, y, lean in _FEET:
        for k in (-1.5, -0.6, 0.6, 1.5):
            a = lean - 0.34 * k
            foot = (x * n + 0.011 * n * k, y * n - 0.004 * n)
            mid = (foot[0] + 0.030 * n * cos(a), foot[1] + 0.030 * n * sin(a))
            tip = (mid[0] + 0.020 * n * cos(a + 0.9), mid[1] + 0.020 * n * sin(a + 0.9))
            claws.append(pen.line(geometry.curve([foot, mid, tip], per=5), (2.0, 0.7), "claws"))
    folds = [
        pen.line(run, (1.2, 0.9, 0.3), "folds")
        for one in (
            ".21 -.23, .200 -.12, .215 -.02", ".385 -.29, .372 -.16, .385 -.05",
            ".59 -.31, .585 -.17, .60 -.05", ".79 -.27, .80 -.14, .79 -.03",
            ".235 .08, .27 .03, .33 .04", ".44 .10, .48 .04, .55 .05", ".655 .10, .69 .045, .76 .05", ".88 .11, .89 .06, .94 .03",
        )
        for run in geometry.runs(geometry.curve(geometry.scaled(pts(one), n), per=10), lambda p: geometry.inside(edge, p))
    ]  # fmt: skip
    bowel = pts(".24 -.10, .34 -.18, .50 -.215, .66 -.20, .80 -.15, .88 -.06, .80 -.02, .64 .0, .46 .0, .32 -.02")
    gut = geometry.scaled(geometry.curve(bowel, closed=True, per=8), n)
    tube = [geometry.scaled(pts(one), n) for one in (".005 -.062, .115 -.082", ".010 -.040, .12 -.058")]
    bulb = geometry.ellipse(0.155 * n, -0.068 * n, 0.042 * n, 0.036 * n, turn=-0.2, count=40)
    rods = [((x * n, y * n), ((x + 0.012) * n, (y - 0.003) * n)) for y in (-0.080, -0.056) for x in (0.128, 0.150, 0.172)]
    return Sketch(
        (
            *claws,
            pen.contour(edge, 1.2, 2.3, "outline"),
            *folds,
            *(pen.stroke(one, 1.0, "mouth-tube") for one in tube),
            pen.stroke(bulb, 1.2, "mouth-tube", closed=True),
            pen.strokes(rods, 1.4, "mouth-tube"),
            pen.disc(0.085 * n, -0.118 * n, 0.011 * n, "eyes"),
            *pen.grain(gut, 2.7 * pen_um, "gut", lambda p: 0.75, sizes=(1.0, 1.7)),
        ),
        pen_um,
    )


def _plates(n: float, pen_um: float) -> list[Shape]:
    """Rows of plates across the back, some with long hairs."""
    out: list[Shape] = []
    for y0, y1, w0, w1 in (
        (0.03, 0.14, 0.09, 0.105),
        (0.16, 0.30, 0.125, 0.14),
        (0.32, 0.47, 0.145, 0.155),
        (0.49, 0.64, 0.155, 0.15),
        (0.66, 0.86, 0.14, 0.09),
    ):
        half: list[Point] = [(w0 * n, (y0 + 0.01) * n), (max(w0, w1) * n, (y0 + y1) / 2 * n), (w1 * n, (y1 - 0.01) * n)]
        plate = geometry.clockwise(
            geometry.curve([(0.0, y0 * n), *half, (0.0, y1 * n), *reversed(geometry.mirrored(half))], closed=True, per=6)
        )
        out += [pen.contour(plate, 1.2, 1.9, "plates"), *pen.grain(plate, 3.2 * pen_um, "plates", lambda p: 0.6)]
    hairs = [((s * 0.12 * n, y * n), (s * 0.30 * n, (y + 0.05) * n)) for s in (-1, 1) for y in (0.29, 0.56)]
    return [*out, *(pen.line(h, (1.3, 0.5), "hairs") for h in hairs)]


def _rods(n: float) -> list[Shape]:
    """A narrow mouth tube, and a round bulb with two rows of bright little rods."""
    side = ((0.010 * n, 0.020 * n), (0.010 * n, 0.105 * n))
    bars = [((s * 0.015 * n, (0.118 + 0.018 * k) * n), (s * 0.015 * n, (0.128 + 0.018 * k) * n)) for s in (-1, 1) for k in range(3)]
    return [
        *(pen.stroke(one, 0.9, "mouth-tube") for one in (side, geometry.mirrored(side))),
        pen.ring(0.0, 0.140 * n, 0.036 * n, 1.1, "mouth-tube", ry=0.042 * n),
        pen.strokes(bars, 1.3, "mouth-tube"),
    ]


def _wide(n: float) -> list[Shape]:
    """A ring of soft knobs round a wide mouth, a wide tube, and a pear-shaped bulb without rods."""
    side = geometry.scaled(((0.024, 0.012), (0.021, 0.120)), n)
    half: list[Point] = [(0.024 * n, 0.128 * n), (0.040 * n, 0.185 * n), (0.034 * n, 0.232 * n)]
    bulb = geometry.curve([(0.0, 0.120 * n), *half, (0.0, 0.250 * n), *reversed(geometry.mirrored(half))], closed=True, per=6)
    knobs = [geometry.ellipse(x * n, y * n, 0.009 * n, 0.015 * n, turn=8 * x, count=24) for x, y in _KNOBS]
    return [
        *(pen.stroke(one, 1.0, "mouth-tube") for one in (side, geometry.mirrored(side))),
        pen.stroke(((-0.024 * n, 0.012 * n), (0.024 * n, 0.012 * n)), 0.8, "mouth-tube"),
        pen.contour(geometry.clockwise(bulb), 1.0, 1.6, "mouth-tube"),
        pen.stroke(((0.0, 0.135 * n), (0.0, 0.235 * n)), 0.6, "mouth-tube"),
        *(pen.stroke(knob, 1.0, "mouth-tube", closed=True) for knob in knobs),
    ]


_KNOBS = ((-0.050, 0.000), (-0.030, -0.010), (-0.010, -0.014), (0.010, -0.014), (0.030, -0.010), (0.050, 0.000))


def _thin(n: float) -> list[Shape]:
    """A narrow tube that bends, with fine rings, and an oval bulb without rods."""
    middle = [(0.012 * n * sin(2.2 * pi * k / 24), (0.010 + 0.115 * k / 24) * n) for k in range(25)]
    walls = [[(x + s * 0.006 * n, y) for x, y in middle] for s in (-1, 1)]
    rings = [((x - 0.006 * n, y), (x + 0.006 * n, y)) for x, y in middle[2:-1:2]]
    bulb = pen.stroke(geometry.ellipse(0, 0.165 * n, 0.030 * n, 0.040 * n, count=48), 1.2, "mouth-tube", closed=True)
    return [*(pen.line(each, (1.0,), "mouth-tube") for each in walls), pen.strokes(rings, 0.5, "mouth-tube"), bulb]


def _bear_inside(n: float, pen_um: float, throat: str) -> list[Shape]:
    start = 0.27 if throat == "wide" else 0.21
    gut = geometry.curve(
        [(0.03 * n, start * n), (0.085 * n, 0.34 * n), (0.105 * n, 0.50 * n), (0.085 * n, 0.70 * n), (0.03 * n, 0.82 * n)], per=8
    )
    band = (*gut, *reversed(geometry.mirrored(gut)))

    def dark(p: Point) -> float:
        return 0.75 if geometry.inside(band, p) else 0.0

    return [
        *(_wide(n) if throat == "wide" else _thin(n) if throat == "thin" else _rods(n)),
        *(pen.disc(s * 0.072 * n, 0.070 * n, 0.010 * n, "eyes") for s in (-1, 1)),
        *pen.stipple(Box(-0.11 * n, 0.2 * n, 0.22 * n, 0.64 * n), dark, 3.4 * pen_um, "gut", sizes=(1.0, 1.6)),
    ]


KIND = Kind(
    "eight-legged",
    "a tardigrade: plump, four pairs of stubby legs with claws",
    (
        um("length", 300, 50, 1500, "length of the body"),
        choice("view", ("above", "side"), "from above, or from the side (then without plates, with a throat with rods)"),
        flag("plates", "plates on the back"),
        choice(
            "throat",
            ("rods", "wide", "thin"),
            "a bulb with rods behind a narrow mouth tube; a wide mouth with knobs and a bulb without rods; a thin bending tube and no rods",
        ),
        accent("body", "claws", "eyes", "gut", "mouth-tube", "plates"),
    ),
    bear,
)
