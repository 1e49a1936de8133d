"""Spores in chains, on heads, in sacs and sporangia, and in the thread itself."""

from __future__ import annotations

from math import cos, pi, sin

from ... import geometry, pen
from ...frame import Sketch, pen_for
from ...shapes import Point, Points, Shape
from .. import tube
from ..points import pts
from ..round_contents import contents as fill
from ..round_shapes import outline
from .edges import across as across_of
from .edges import ring


def sac_of_eight(n: float, w: float) -> Sketch:
    """Eight spores in one long sac; the length and width are those of the sac."""
    edge = ring(pts(".3 .01, .46 .1, .5 .35, .48 .62, .3 .82, .16 .94, .13 .995"), n, w)
    spores = [
        geometry.ellipse(s * 0.10 * w, (0.10 + 0.094 * k) * n, 0.24 * w if k < 6 else 0.19 * w, 0.058 * n, turn=0.5 * s, count=32)
        for k, s in ((k, 1 if k % 2 else -1) for k in range(8))
    ]
    return Sketch((pen.contour(edge, 1.0, 1.8, "outline"), *(pen.contour(s, 1.1, 1.8, "spores") for s in spores)), pen_for(1.3 * w, n))


def chain(n: float, w: float) -> Sketch:
    """A dry chain of equal round spores; the length and width are those of one spore."""
    line = tube.axis(8.4 * n, lambda t: 0.5 * sin(2 * pi * t), steps=160)
    out: list[Shape] = []
    for k in range(8):
        x, y = tube.place(line, (k + 0.5) / 8)[:2]
        ring = geometry.ellipse(x, y, w / 2, 0.5 * n, turn=-0.5 * sin(2 * pi * (k + 0.5) / 8), count=40)
        out += [pen.contour(ring, 1.1, 2.0, "spores"), pen.ring(x + 0.10 * w, y + 0.06 * n, 0.13 * w, 0.7, "contents")]
    return Sketch(tuple(out), pen_for(3.6 * n, 8.4 * n))


def brush(n: float, w: float) -> Sketch:
    """A brush: a cross-walled stalk that forks into short arms, a tuft of flasks on each, a chain of small spores on each flask."""
    s = w
    out: list[Shape] = []
    out += [pen.line(((x * 0.8 * s, 8.8 * s), (x * 0.72 * s, 13.0 * s), (x * 0.75 * s, 20.0 * s)), (1.5,), "stalk") for x in (-1, 1)]
    out.append(pen.strokes([((-0.75 * s, y * s), (0.75 * s, y * s)) for y in (12.0, 16.6)], 1.3, "cross-walls"))
    for k, (lean, foot) in enumerate(((-0.40, -0.55), (0.04, 0.0), (0.46, 0.55))):
        arm = geometry.moved(_club(3.3 * s, 0.50 * s, 0.78 * s), foot * s, 8.9 * s, turn=lean)
        out.append(pen.line(arm, (1.3,), "stalk"))
        top = (foot * s + 3.3 * s * sin(lean), 8.9 * s - 3.3 * s * cos(lean))
        for j, spread in enumerate((-0.62, -0.20, 0.22, 0.64)):
            a = lean * 0.95 + spread * 0.34
            base = (top[0] + spread * 1.0 * s * cos(lean), top[1] + spread * 1.0 * s * sin(lean) + 0.08 * s)
            out.append(pen.line(geometry.moved(_flask(2.7 * s, 0.42 * s), *base, turn=a), (1.0,), "flasks"))
            x, y = base[0] + 2.75 * s * sin(a), base[1] - 2.75 * s * cos(a)
            for m in range(4 + (2 * k + j) % 3):
                b = a * (1 + 0.10 * m) + 0.05 * sin(2 * m + k)
                x, y = x + 0.49 * n * sin(b), y - 0.49 * n * cos(b)
                out.append(pen.ring(x, y, w / 2, 1.1, "spores", ry=n / 2))
                x, y = x + 0.49 * n * sin(b), y - 0.49 * n * cos(b)
    return Sketch(tuple(out), pen_for(13 * s, 24 * s))


def _club(long: float, foot: float, top: float) -> Points:
    """A short cell that widens upward, open at its foot, standing on (0, 0)."""
    return geometry.curve(
        [
            (-foot, 0),
            (-0.9 * foot, -0.3 * long),
            (-top, -0.86 * long),
            (-0.6 * top, -long),
            (0.6 * top, -long),
            (top, -0.86 * long),
            (0.9 * foot, -0.3 * long),
            (foot, 0),
        ],
        per=6,
    )


def _flask(long: float, wide: float) -> Points:
    """A flask with a swollen belly and a narrow neck, standing on (0, 0)."""
    half = [(0.5 * wide, 0.0), (wide, -0.32 * long), (0.92 * wide, -0.55 * long), (0.36 * wide, -0.82 * long), (0.34 * wide, -long)]
    return geometry.curve([*((-x, y) for x, y in half), *reversed(half)], per=5)


def many_ways(n: float, w: float) -> Sketch:
    """Spores of moulds as they are met: two on short pegs at the side of a hypha, a broken chain, one of three cells, loose ones."""
    h = 0.85 * w
    out: list[Shape] = []
    line = geometry.curve([(-3.6 * n, 2.9 * n), (-1.8 * n, 2.4 * n), (0.4 * n, 2.7 * n), (3.4 * n, 2.1 * n)], per=12)
    out += [pen.line(geometry.offset(line, [s * h / 2] * len(line)), (1.2 if s < 0 else 1.7,), "stalk") for s in (-1, 1)]
    across = geometry.normals(line)
    for k in (9, 25):
        (x, y), (nx, ny) = line[k], across[k]
        out.append(pen.stroke(((x - nx * h / 2, y - ny * h / 2), (x + nx * h / 2, y + ny * h / 2)), 1.2, "cross-walls"))
    for k in (5, 17):
        (x, y), (nx, ny) = line[k], across[k]
        x, y = x - nx * h / 2, y - ny * h / 2
        out += [pen.stroke(((x + s * 0.14 * w, y), (x + s * 0.09 * w, y - 0.42 * n)), 1.1, "stalk") for s in (-1, 1)]
        out.append(pen.contour(geometry.ellipse(x, y - 0.42 * n - 0.62 * n, 0.46 * w, 0.62 * n, count=48), 1.2, 2.2, "spores"))
    x, y = -3.0 * n, -2.2 * n
    for k in range(5):
        out.append(pen.contour(geometry.ellipse(x, y, w / 2, n / 2, count=40), 1.1, 2.0, "spores"))
        x, y = x + 0.93 * w, y + 0.36 * w * sin(1.3 * k + 0.4)
    long = ring(pts(".16 .01, .36 .12, .46 .34, .46 .66, .36 .88, .16 .99"), 2.9 * n, 0.95 * w)
    placed = geometry.moved(long, 3.0 * n, -2.5 * n, turn=0.5)
    walls = [geometry.moved(across_of(long, y * n), 3.0 * n, -2.5 * n, turn=0.5) for y in (0.97, 1.93)]
    out += [pen.contour(placed, 1.2, 2.2, "spores"), pen.strokes(walls, 1.3, "spores")]
    for u, v, turn in ((0.9, 0.5, 0.8), (-1.4, -0.4, 2.0)):
        out.append(pen.contour(geometry.ellipse(u * n, v * n, 0.42 * w, 0.62 * n, turn=turn, count=44), 1.2, 2.2, "spores"))
    return Sketch(tuple(out), pen_for(7.2 * n, 6.6 * n))


def head(n: float, w: float) -> Sketch:
    """A round head: a stalk without cross-walls swollen to a ball, flasks all over it, a chain of small spores on each."""
    s = w
    out: list[Shape] = []
    r = 3.6 * s
    out += [pen.line(((x * 1.0 * s, 0.97 * r), (x * 1.1 * s, 20.0 * s)), (1.5,), "stalk") for x in (-1, 1)]
    out.append(pen.line(geometry.arc(0, 0, r, 0.5 * pi + 0.28, 2.5 * pi - 0.28, count=60), (1.2, 2.0), "stalk"))
    for k in range(21):
        a = 0.5 * pi + 0.55 + (2 * pi - 1.1) * k / 20
        c, d = cos(a), sin(a)
        flask = [
            (r * c - 0.35 * s * d, r * d + 0.35 * s * c),
            (r * c * 1.36 - 0.42 * s * d, r * d * 1.36 + 0.42 * s * c),
            (r * c * 1.62, r * d * 1.62),
            (r * c * 1.36 + 0.42 * s * d, r * d * 1.36 - 0.42 * s * c),
            (r * c + 0.35 * s * d, r * d - 0.35 * s * c),
        ]
        out.append(pen.stroke(flask, 0.9, "flasks"))
        for m in range(2 + k % 3):
            reach = 1.62 * r + (m + 0.5) * 0.98 * n
            out.append(pen.ring(reach * c, reach * d, w / 2, 1.1, "spores", ry=n / 2))
    return Sketch(tuple(out), pen_for(21 * s, 32 * s))


def chlamydospore(n: float, w: float) -> Sketch:
    """A round thick-walled cell that is a swollen part of the thread; the size is that of the cell."""
    ring = geometry.ellipse(0, 0, w / 2, n / 2, count=96)
    inner = geometry.ellipse(0, 0, 0.39 * w, 0.39 * n, count=96)
    out: list[Shape] = [
        pen.contour(ring, 1.6, 2.6, "outline"),
        pen.stroke(inner, 1.0, "wall", closed=True),
        *fill("oil", inner, pen_for(w, 2 * n)),
    ]
    for way in (-1, 1):
        for s in (-1, 1):
            side = geometry.curve(
                [(s * 0.17 * w, way * 0.44 * n), (s * 0.15 * w, way * 0.80 * n), (s * 0.15 * w + 0.03 * w, way * 1.7 * n)], per=8
            )
            out += [pen.line(run, (1.3,), "thread") for run in geometry.runs(side, lambda p: not geometry.inside(ring, p))]
        out.append(pen.stroke(((-0.15 * w, way * 0.80 * n), (0.15 * w, way * 0.80 * n)), 1.1, "cross-walls"))
    return Sketch(tuple(out), pen_for(1.3 * w, 3.4 * n))


def sporangium(n: float, w: float) -> Sketch:
    """A ball on a stalk, thin-walled, full of hundreds of small spores round a dome; the size is that of the ball."""
    ring = geometry.ellipse(0, 0, w / 2, n / 2, count=96)
    room = geometry.ellipse(0, 0, 0.46 * w, 0.46 * n, count=96)
    pen_um = pen_for(1.1 * w, 2.0 * n)
    dome = geometry.curve(
        [
            (-0.10 * w, 0.47 * n),
            (-0.19 * w, 0.25 * n),
            (-0.10 * w, 0.06 * n),
            (0, 0.02 * n),
            (0.10 * w, 0.06 * n),
            (0.19 * w, 0.25 * n),
            (0.10 * w, 0.47 * n),
        ],
        per=8,
    )
    spores = fill("spores", room, pen_um)
    stalk = [((s * 0.085 * w, 0.485 * n), (s * 0.075 * w, 1.45 * n)) for s in (-1, 1)]
    kept = [
        pen.strokes([run for run in _lines(shape) if not any(geometry.inside(dome, p) for p in run)], 0.8, "spores") for shape in spores
    ]
    return Sketch(
        (
            pen.contour(ring, 0.9, 1.8, "outline"),
            *kept,
            pen.line(dome, (1.2, 1.6), "dome"),
            *(pen.line(s, (1.6, 1.4), "stalk") for s in stalk),
        ),
        pen_um,
    )


def _lines(shape: Shape) -> list[Points]:
    """The separate lines of a shape made of moves and straight steps."""
    out: list[list[Point]] = []
    for letter, at in getattr(shape, "steps", ()):
        if letter == "M":
            out.append([])
        if at:
            out[-1].append((at[0], at[1]))
    return [(*run, run[0]) for run in out]


def swarm_sac(n: float, w: float) -> Sketch:
    """A clear lemon on a thread, its contents parted into swimming spores that leave through the tip."""
    edge = outline("lemon", n, w)
    pen_um = pen_for(1.15 * w, 1.75 * n)
    top = geometry.around(edge).y
    cells = [
        (0.0, -0.26, 0.1),
        (-0.18, -0.08, 0.6),
        (0.18, -0.06, 2.2),
        (0.0, 0.06, 1.2),
        (-0.22, 0.16, 2.6),
        (0.21, 0.18, 0.3),
        (-0.02, 0.26, 0.9),
        (0.10, 0.37, 1.8),
        (-0.14, 0.36, 0.2),
    ]
    out: list[Shape] = []
    for x, y, turn in cells:
        bean = geometry.moved(geometry.scaled(outline("bean", 0.15, 0.10), n), x * w, y * n, turn=turn)
        out += [pen.stroke(bean, 0.9, "spores", closed=True), *pen.grain(bean, 2.4 * pen_um, "spores", lambda p: 0.5)]
    x, y = 0.16 * w, top - 0.20 * n
    bean = geometry.moved(geometry.scaled(outline("bean", 0.15, 0.10), n), x, y, turn=0.4)
    whips = [
        geometry.curve([(x - 0.03 * n, y), (x - 0.10 * n, y + s * 0.10 * n), (x - 0.07 * n, y + s * 0.20 * n)], per=8) for s in (-1, 1)
    ]
    stalk = [((s * 0.055 * w, 0.487 * n), (s * 0.05 * w, 0.80 * n)) for s in (-1, 1)]
    return Sketch(
        (
            pen.contour(edge, 1.1, 2.0, "outline"),
            *out,
            pen.stroke(bean, 1.0, "spores", closed=True),
            *(pen.line(one, (1.0, 0.6), "spores") for one in whips),
            *(pen.line(s, (1.3,), "stalk") for s in stalk),
        ),
        pen_um,
    )
