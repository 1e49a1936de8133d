"""Skins without an animal: a plate of insect or mite skin, a flake of human skin, a whole empty skin with legs."""

from __future__ import annotations

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .dots import fitted
from .limbs import leg
from .points import pts


def plate_of_skin(n: float) -> Sketch:
    """A broken piece of hard skin: a joint with a thick rim on one side, torn on the others; sockets, some with their hair; a fine net."""
    joint = geometry.curve(pts("-.40 .16, -.45 -.06, -.36 -.26, -.14 -.36, .14 -.36, .36 -.26"), per=8)
    torn = geometry.spaced(pts(".36 -.26, .45 -.10, .36 .02, .42 .16, .24 .20, .14 .34, -.02 .27, -.18 .37, -.26 .24, -.40 .16"), 0.05)
    rest = geometry.offset(torn, [0.0, *(0.024 * pen.seed("torn", k) - 0.012 for k in range(len(torn) - 2)), 0.0])[1:-1]
    ring = geometry.clockwise(fitted((*joint, *rest), n))
    by = geometry.around(ring).width / geometry.around((*joint, *rest)).width
    rim = geometry.scaled(joint, by)
    sockets = geometry.scaled(pts("-.28 -.02, -.17 -.17, .02 -.22, .22 -.17, -.08 .04, .13 -.02, -.20 .16, .28 .06"), by)
    out: list[Shape] = [
        pen.stroke(ring, 1.1, "outline", closed=True),
        pen.line(geometry.offset(rim, [0.030 * n] * len(rim)), (2.2, 3.6, 2.2), "joint"),
        pen.line(geometry.offset(rim, [0.058 * n] * len(rim)), (0.5, 0.9, 0.5), "joint"),
    ]
    for k, (x, y) in enumerate(sockets):
        out += [
            pen.disc(x, y, 0.034 * n, "socket-floor", role="paper"),
            pen.ring(x, y, 0.020 * n, 1.4, "sockets"),
            pen.ring(x, y, 0.034 * n, 0.7, "sockets"),
        ]
        if k % 3 != 1:
            hair = geometry.curve([(x, y), (x + 0.035 * n, y - 0.12 * n), (x + 0.11 * n, y - 0.21 * n)], per=8)
            out.append(pen.line(hair, (2.2, 1.4, 0.5), "hairs"))
        else:
            out.append(pen.disc(x, y, 0.008 * n, "sockets"))
    return Sketch((*_net(ring, sockets, n), *out), pen_for(n, 0.95 * n))


def _net(ring: Points, sockets: Points, n: float) -> list[Shape]:
    """A fine net of six-sided meshes all over the plate, fading toward the joint, clear of the sockets."""
    r = 0.030 * n
    meshes = []
    for row in range(-10, 12):
        for col in range(-12, 13):
            x, y = (col + 0.5 * (row % 2)) * 1.732 * r, row * 1.5 * r
            mesh = geometry.arc(x, y, r, 0.5236, 0.5236 + 6.2832, count=6)
            near = any((x - sx) ** 2 + (y - sy) ** 2 < (0.062 * n) ** 2 for sx, sy in sockets)
            fades = pen.seed(row, col) > (y + 0.30 * n + 0.25 * (x + 0.4 * n)) / (0.42 * n)
            if not near and not fades and all(geometry.inside(ring, (1.04 * px, 1.04 * py)) for px, py in mesh):
                meshes.append(mesh)
    return [pen.strokes(meshes, 0.35, "net", role="faint")]


def skin_flake(n: float) -> Sketch:
    """A raft of thin clear flakes, five or six blunt corners to each, creased; where they overlap both edges show; a corner is folded."""
    corners = pts("-.37 -.08, -.06 -.395, .10 -.42, .40 -.20, .42 .14, .16 .38, -.20 .36, -.42 .06")
    ring = geometry.clockwise(fitted(_blunt(corners), n))
    others = [
        geometry.clockwise(geometry.moved(geometry.scaled(_blunt(pts(one)), size * n), x * n, y * n, turn=turn))
        for one, size, x, y, turn in (
            ("-.32 -.30, .06 -.42, .40 -.22, .38 .22, .04 .42, -.40 .20", 0.86, 0.52, 0.30, 0.4),
            ("-.36 -.20, -.04 -.42, .38 -.26, .42 .16, .10 .40, -.30 .34", 0.72, -0.18, 0.60, 1.5),
        )
    ]
    fold = geometry.scaled(pts("-.37 -.08, -.06 -.395, -.10 -.15, -.15 -.09"), n)
    out: list[Shape] = []
    for k, one in enumerate(others):
        free = (ring, *others[:k])
        seen = lambda p, free=free: not any(geometry.inside(each, p) for each in free)  # noqa: E731
        walk = (*one, one[0])
        out += [pen.stroke(run, 0.9, "under") for run in geometry.runs(walk, seen)]
        out += [pen.stroke(run, 0.6, "under", role="faint") for run in geometry.runs(walk, lambda p, seen=seen: not seen(p))]  # type: ignore[misc]
        out += [
            pen.line(run, (0.3, 0.7, 0.3), "creases", role="faint")
            for run in geometry.runs(geometry.moved(_crease(0.5 * n), *_middle(one), turn=0.7 + k), seen)
        ]
    lines = (
        "-.30 .04, -.08 -.02, .06 .08, .10 .30",
        ".02 -.22, .14 -.08, .32 -.02",
        "-.28 .14, -.14 .12, -.06 .22, -.08 .32",
        ".20 .06, .30 .16",
    )
    creases = [geometry.curve(geometry.scaled(pts(one), n), per=8) for one in lines]
    return Sketch(
        (
            *out,
            pen.stroke(ring, 1.1, "outline", closed=True),
            pen.filled(fold, "folds", role="paper"),
            pen.stroke(fold, 1.1, "folds", closed=True),
            *(pen.line(crease, (0.3, 0.9, 0.3), "folds") for crease in creases),
        ),
        pen_for(1.3 * n, 1.3 * n),
    )


def _blunt(corners: Points) -> Points:
    """The polygon with its corners rounded a little."""
    out: list[Point] = []
    for before, here, after in zip((corners[-1], *corners[:-1]), corners, (*corners[1:], corners[0]), strict=True):
        a, b = ((here[0] + 0.22 * (p[0] - here[0]), here[1] + 0.22 * (p[1] - here[1])) for p in (before, after))
        out += [geometry.bezier(a, here, here, b, t / 5) for t in range(6)]
    return tuple(out)


def _crease(long: float) -> Points:
    return geometry.curve(geometry.scaled(pts("-.5 .0, -.2 .10, .1 -.02, .5 .06"), long), per=8)


def _middle(ring: Points) -> Point:
    box = geometry.around(ring)
    return (box.x + box.width / 2, box.y + box.height / 2)


def hollow_skin(n: float) -> Sketch:
    """The empty skin of a mite: split along the back, folded, the jointed legs still on it but slack and empty."""
    half = pts(".1 .02, .2 .16, .27 .38, .27 .62, .2 .84, .08 .97")
    edge = geometry.clockwise(
        geometry.tall(geometry.curve([(0.0, 0.0), *half, (0.0, 1.0), *reversed(geometry.mirrored(half))], closed=True), n)
    )
    right = (
        ".14 .12, .24 .0, .34 -.05, .42 .03",
        ".21 .26, .34 .2, .46 .24, .5 .36",
        ".25 .58, .38 .6, .46 .72, .42 .86",
        ".2 .74, .3 .84, .3 .98, .4 1.06",
    )
    left = (
        "-.14 .12, -.2 -.02, -.3 -.1, -.42 -.08",
        "-.21 .26, -.33 .16, -.46 .14, -.56 .22",
        "-.25 .58, -.38 .54, -.5 .6, -.54 .74",
        "-.2 .74, -.32 .78, -.4 .9, -.36 1.04",
    )
    legs = [shape for way in (*right, *left) for shape in leg(list(geometry.scaled(pts(way), n)), 0.080 * n, edge, "legs")]
    split = _gap(("0 .06, -.05 .22, -.02 .4, -.04 .56, .0 .68", "0 .06, .03 .2, .05 .38, .02 .55, .0 .68"), n)
    folds = [
        geometry.curve(geometry.scaled(pts(one), n), per=8)
        for one in ("-.2 .3, -.12 .37, -.14 .48", ".2 .46, .12 .56, .16 .7", "-.18 .72, -.06 .8, .08 .76", "-.1 .9, .0 .88, .1 .92")
    ]
    return Sketch(
        (
            *legs,
            pen.contour(edge, 0.9, 1.5, "outline"),
            *split,
            *(pen.line(fold, (0.4, 1.0, 0.4), "folds") for fold in folds),
        ),
        pen_for(1.15 * n, 1.25 * n),
    )


def _gap(sides: tuple[str, str], n: float) -> list[Shape]:
    """A tear with two lips."""
    lips: list[tuple[Point, ...]] = [geometry.curve(geometry.scaled(pts(side), n), per=8) for side in sides]
    return [pen.line(lips[0], (0.6, 1.2, 0.6), "split"), pen.line(lips[1], (0.6, 2.0, 0.6), "split")]
