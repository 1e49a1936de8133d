"""Naked amoebae by the way they reach out: slugs, fans, lobes, cones, spikes, rays, nets, folds."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import cos, hypot, pi, sin

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .amoebae import amoeba
from .cell_parts import clear_of, vacuole
from .cell_parts import nucleus as draw_nucleus
from .kind import Kind, Values, accent, choice, num, um, word

Round = tuple[float, float, float]


def build(v: Values) -> Sketch:
    """The amoeba, creeping up the page."""
    return _FORMS[word(v, "form")](num(v, "length"))


def _edge(points: Sequence[Point], n: float) -> Points:
    return geometry.clockwise(geometry.tall(geometry.curve(points, closed=True, per=8), n))


def _inside(edge: Points, n: float, nucleus: Round, bubble: Round, clear: Callable[[Point], bool], pen_um: float) -> list[Shape]:
    """Grain but where the plasma is clear, a nucleus with a dark dot, and the bubble that fills and vanishes."""
    spots = tuple((x * n, y * n, r * n) for x, y, r in (nucleus, bubble))
    inner = geometry.offset(edge, [0.035 * n] * len(edge), closed=True)
    free = clear_of(*spots)

    def dense(p: Point) -> float:
        return 0.0 if clear((p[0] / n, p[1] / n)) else 1.5 * free(p)

    return [*pen.grain(inner, 3.0 * pen_um, "contents", dense), *draw_nucleus(*spots[0]), vacuole(*spots[1])]


_SLUG = [(0, 0), (0.10, 0.03), (0.145, 0.11), (0.15, 0.22), (0.125, 0.42), (0.13, 0.62), (0.105, 0.80), (0.05, 0.93), (0.01, 1.0)]
_SLUG += [(-0.05, 0.93), (-0.10, 0.82), (-0.13, 0.66), (-0.12, 0.46), (-0.145, 0.24), (-0.14, 0.11), (-0.10, 0.03)]


def _slug(n: float) -> Sketch:
    edge, pen_um = _edge(_SLUG, n), pen_for(0.36 * n, n)
    inside = _inside(edge, n, (0, 0.40, 0.055), (0.0, 0.82, 0.05), lambda p: p[1] < 0.13, pen_um)
    cap = geometry.curve(geometry.scaled([(-0.14, 0.15), (0, 0.115), (0.14, 0.15)], n), per=8)
    return Sketch((pen.contour(edge, 1.1, 2.0, "outline"), pen.stroke(cap, 0.5, "cap", role="faint"), *inside), pen_um)


def _eruptive(n: float) -> Sketch:
    """A slug on whose front a clear half-ball has just burst out to one side; the last one, on the other side, is filling."""
    body = [(0.02, 0.16), (0.06, 0.19), (0.13, 0.29), (0.15, 0.40), (0.13, 0.55), (0.13, 0.70), (0.09, 0.86), (0.03, 0.96), (0.01, 1.0)]
    body += [(-0.035, 0.95), (-0.09, 0.88), (-0.13, 0.74), (-0.14, 0.56), (-0.15, 0.46), (-0.22, 0.42), (-0.255, 0.33), (-0.215, 0.235)]
    body += [(-0.235, 0.17), (-0.21, 0.06), (-0.12, 0.0), (-0.02, 0.03), (0.03, 0.11)]
    edge, pen_um = _edge(body, n), pen_for(0.48 * n, n)
    inside = _inside(edge, n, (0.0, 0.47, 0.06), (0.0, 0.84, 0.055), lambda p: p[1] < 0.235 and p[0] < 0.04, pen_um)
    mouth = geometry.curve(geometry.scaled([(-0.21, 0.235), (-0.11, 0.20), (0.02, 0.165)], n), per=8)
    bulge = tuple(p for p in edge if p[1] < 0.232 * n and p[0] < 0.03 * n)
    start = max(range(len(bulge)), key=lambda k: hypot(bulge[k][0] - bulge[k - 1][0], bulge[k][1] - bulge[k - 1][1]))
    front = pen.line((*bulge[start:], *bulge[:start]), (1.1, 2.0, 1.4), "pseudopods")
    return Sketch((pen.contour(edge, 1.1, 2.0, "outline"), front, pen.stroke(mouth, 0.6, "cap", role="faint"), *inside), pen_um)


def _knob_slug(n: float) -> Sketch:
    """A stout cylinder full of crystals, a round knob at its rear."""
    half = [(0.09, 0.01), (0.165, 0.07), (0.19, 0.20), (0.18, 0.42), (0.185, 0.64), (0.16, 0.79), (0.085, 0.865), (0.075, 0.89)]
    half += [(0.105, 0.935), (0.07, 0.985)]
    edge = _edge([(0, 0), *half, (0, 1.0), *reversed(geometry.mirrored(half))], n)
    pen_um = pen_for(0.45 * n, n)
    inside = _inside(edge, n, (0.02, 0.42, 0.07), (-0.05, 0.68, 0.065), lambda p: p[1] < 0.12, pen_um)
    crystals = []
    for k in range(34):
        x, y = 0.145 * (2 * ((k * 0.7549) % 1) - 1) * n, (0.17 + 0.62 * ((k * 0.5698) % 1)) * n
        if clear_of((0.02 * n, 0.42 * n, 0.08 * n), (-0.05 * n, 0.68 * n, 0.075 * n))((x, y)):
            s = 0.012 * n
            crystals.append(pen.stroke(((x, y - s), (x + s, y), (x, y + s), (x - s, y)), 0.8, "crystals", closed=True))
    knob = tuple(p for p in edge if p[1] > 0.885 * n)
    return Sketch((pen.contour(edge, 1.1, 2.0, "outline"), pen.line(knob, (1.4, 2.4, 1.4), "knob"), *inside, *crystals), pen_um)


def _fan(n: float) -> Sketch:
    """A half-moon wider than long: clear front, grainy hump behind."""
    half = [(0.20, 0.01), (0.42, 0.09), (0.585, 0.27), (0.63, 0.48), (0.60, 0.66), (0.50, 0.73), (0.36, 0.77), (0.24, 0.88), (0.13, 0.975)]
    edge = _edge([(0, 0), *half, (0, 1.0), *reversed(geometry.mirrored(half))], n)
    pen_um = pen_for(1.3 * n, n)
    hump = geometry.curve(geometry.scaled([(-0.50, 0.68), (-0.34, 0.47), (0, 0.40), (0.34, 0.47), (0.50, 0.68)], n), per=8)

    def clear(p: Point) -> bool:
        return p[1] < 0.42 + 0.95 * p[0] ** 2

    inside = _inside(edge, n, (0.04, 0.63, 0.075), (-0.10, 0.83, 0.055), clear, pen_um)
    return Sketch((pen.contour(edge, 1.0, 2.0, "outline"), pen.stroke(hump, 0.5, "hump", role="faint"), *inside), pen_um)


def _wrinkled(n: float) -> Sketch:
    """A thick skin in lengthwise folds."""
    half = [(0.14, 0.02), (0.27, 0.12), (0.325, 0.30), (0.30, 0.44), (0.335, 0.60), (0.29, 0.80), (0.16, 0.95)]
    left = [(-0.16, 0.95), (-0.31, 0.78), (-0.30, 0.60), (-0.34, 0.44), (-0.30, 0.28), (-0.25, 0.12), (-0.13, 0.03)]
    edge, pen_um = _edge([(0, 0), *half, (0, 1.0), *left], n), pen_for(0.72 * n, n)
    folds = []
    for x, y0, y1, bow in ((-0.20, 0.16, 0.86, -0.05), (-0.10, 0.10, 0.70, 0.03), (0.02, 0.13, 0.50, 0.02), (0.13, 0.12, 0.78, 0.05), (0.23, 0.30, 0.88, 0.03)):
        fold = [(x * 0.7, y0), (x + bow, y0 + 0.3 * (y1 - y0)), (x - 0.3 * bow, y0 + 0.65 * (y1 - y0)), (x * 0.75, y1)]
        folds.append(pen.line(geometry.curve(geometry.scaled(fold, n), per=8), (0.4, 1.5, 0.5), "folds"))
    inside = _inside(edge, n, (0.0, 0.62, 0.085), (0.05, 0.86, 0.055), lambda p: p[1] < 0.10, pen_um)
    skin = geometry.offset(edge, [0.022 * n] * len(edge), closed=True)
    return Sketch((pen.contour(edge, 1.4, 2.4, "outline"), pen.stroke(skin, 0.5, "skin", closed=True, role="faint"), *folds, *inside), pen_um)


def _spikes(n: float) -> Sketch:
    """A flat grainy body with a broad clear front and many thin tapering spikes, some forked."""
    half = [(0.16, 0.015), (0.30, 0.09), (0.37, 0.24), (0.36, 0.42), (0.29, 0.62), (0.20, 0.80), (0.12, 0.93)]
    left = [(-0.13, 0.92), (-0.22, 0.78), (-0.31, 0.60), (-0.37, 0.40), (-0.36, 0.22), (-0.29, 0.09), (-0.15, 0.02)]
    edge, pen_um = _edge([(0, 0), *half, (0.02, 1.0), *left], n), pen_for(1.05 * n, 1.1 * n)
    spikes = []
    walk = geometry.spaced((*edge, edge[0]), 0.074 * n)[:-1]
    for k, ((x, y), (nx, ny)) in enumerate(zip(walk, geometry.normals(walk, closed=True), strict=True)):
        size = n * (0.10 + 0.075 * ((k * 0.618) % 1)) * (1.0 if y < 0.5 * n else 0.62)
        bend = 0.028 * n * sin(2.3 * k)
        tip = (x - nx * size - ny * bend, y - ny * size + nx * bend)
        mid = (x - nx * 0.5 * size, y - ny * 0.5 * size)
        spikes.append(pen.line(geometry.curve([(x, y), mid, tip], per=5), (2.2, 0.9, 0.5), "pseudopods"))
        if k % 4 == 1:
            fork = (x - nx * 0.9 * size + ny * 0.05 * n, y - ny * 0.9 * size - nx * 0.05 * n)
            spikes.append(pen.line((mid, fork), (0.9, 0.5), "pseudopods"))

    inside = _inside(edge, n, (0.03, 0.45, 0.08), (-0.06, 0.72, 0.10), lambda p: p[1] < 0.20 + 0.5 * p[0] ** 2, pen_um)
    return Sketch((pen.contour(edge, 1.0, 1.8, "outline"), *spikes, *inside), pen_um)


def _rays(n: float) -> Sketch:
    """A ball with hair-thin straight rays; the length is that of the ball."""
    edge = _edge([(0.5 * cos(a) * (1 + 0.05 * sin(3 * a)), 0.5 * sin(a)) for a in (2 * pi * k / 20 for k in range(20))], n)
    pen_um = pen_for(2.2 * n, 2.2 * n)
    rays = []
    for k in range(38):
        a = 2 * pi * (k + 0.3 * sin(5.0 * k)) / 38
        reach = n * (0.80 + 0.38 * ((k * 0.618) % 1))
        foot = (0.49 * n * cos(a), 0.5 * n + 0.49 * n * sin(a))
        rays.append(pen.line((foot, (reach * cos(a), 0.5 * n + reach * sin(a))), (0.9, 0.5), "pseudopods"))
    inside = _inside(edge, n, (0.06, 0.44, 0.11), (-0.16, 0.66, 0.09), lambda p: False, pen_um)
    return Sketch((*rays, pen.contour(edge, 1.1, 2.0, "outline"), *inside), pen_um)


def _cones(n: float) -> Sketch:
    """Several blunt clear cones in front of a body that flows on."""
    points = [(0.02, 0.0), (0.055, 0.03), (0.075, 0.15), (0.13, 0.17), (0.235, 0.06), (0.27, 0.075), (0.255, 0.19), (0.23, 0.27), (0.33, 0.27)]
    points += [(0.395, 0.285), (0.38, 0.335), (0.27, 0.40), (0.23, 0.55), (0.19, 0.74), (0.11, 0.91), (0.02, 1.0), (-0.07, 0.93), (-0.17, 0.77)]
    points += [(-0.22, 0.58), (-0.25, 0.44), (-0.37, 0.42), (-0.40, 0.375), (-0.35, 0.34), (-0.25, 0.32), (-0.25, 0.21), (-0.275, 0.095), (-0.24, 0.075)]
    points += [(-0.14, 0.19), (-0.08, 0.16), (-0.025, 0.03)]
    edge, pen_um = _edge(points, n), pen_for(0.85 * n, n)

    def clear(p: Point) -> bool:
        return (p[0] / 0.21) ** 2 + ((p[1] - 0.60) / 0.37) ** 2 > 1

    inside = _inside(edge, n, (0.02, 0.50, 0.07), (-0.02, 0.80, 0.065), clear, pen_um)
    rings = tuple(p for p in edge if p[1] < 0.42 * n)
    start = max(range(len(rings)), key=lambda k: hypot(rings[k][0] - rings[k - 1][0], rings[k][1] - rings[k - 1][1]))
    front = pen.line((*rings[start:], *rings[:start]), (1.2, 1.8, 1.2), "pseudopods")
    return Sketch((pen.contour(edge, 1.1, 2.0, "outline"), front, *inside), pen_um)


def _net(n: float) -> Sketch:
    """A thin sheet that parts into branches which join again: a flat net with holes."""
    outer = [(0.0, 0.0), (0.05, 0.10), (0.14, 0.13), (0.24, 0.05), (0.28, 0.08), (0.22, 0.19), (0.26, 0.28), (0.40, 0.25), (0.43, 0.29)]
    outer += [(0.31, 0.36), (0.30, 0.47), (0.36, 0.60), (0.46, 0.68), (0.43, 0.72), (0.30, 0.66), (0.24, 0.74), (0.25, 0.88), (0.21, 0.97)]
    outer += [(0.17, 0.86), (0.10, 0.80), (0.02, 0.86), (-0.02, 1.0), (-0.06, 0.86), (-0.14, 0.77), (-0.27, 0.80), (-0.36, 0.90), (-0.39, 0.86)]
    outer += [(-0.30, 0.72), (-0.28, 0.60), (-0.36, 0.50), (-0.47, 0.47), (-0.46, 0.43), (-0.33, 0.42), (-0.27, 0.34), (-0.30, 0.20), (-0.38, 0.09)]
    outer += [(-0.34, 0.07), (-0.22, 0.18), (-0.12, 0.15), (-0.05, 0.09)]
    edge, pen_um = _edge(outer, n), pen_for(0.95 * n, n)
    holes = []
    spots = ((0.02, 0.25, 0.085, 0.06), (-0.15, 0.30, 0.065, 0.085), (0.17, 0.32, 0.06, 0.05), (-0.03, 0.44, 0.08, 0.07), (0.15, 0.50, 0.075, 0.085))
    spots += ((-0.18, 0.52, 0.065, 0.06), (-0.10, 0.65, 0.09, 0.055), (0.07, 0.67, 0.06, 0.065), (0.20, 0.65, 0.045, 0.05), (0.0, 0.13, 0.025, 0.03))
    for k, (x, y, rx, ry) in enumerate(spots):
        ring = pen.wobble(geometry.ellipse(x * n, y * n, rx * n, ry * n, count=72), 0.012 * n, 2, k)
        holes.append(ring)

    def dense(p: Point) -> float:
        return 0.0 if any(geometry.inside(h, p) for h in holes) else 0.8

    rims: list[Shape] = [pen.stroke(h, 1.2, "pseudopods", closed=True) for h in holes]
    nuclei = [pen.ring(x * n, y * n, 0.013 * n, 0.9, "nucleus") for x, y in ((0.07, 0.36), (-0.08, 0.55), (0.10, 0.585), (-0.10, 0.21), (-0.20, 0.42), (0.24, 0.56))]
    grain = pen.grain(geometry.offset(edge, [0.008 * n] * len(edge), closed=True), 2.6 * pen_um, "contents", dense)
    return Sketch((pen.contour(edge, 1.0, 1.8, "outline"), *rims, *nuclei, *grain), pen_um)


def _disc(n: float) -> Sketch:
    """A flat disc with a clear rim all round."""
    edge = _edge([(0.5 * cos(a) * (1 + 0.03 * sin(3 * a + 1)), 0.5 * sin(a) * (1 + 0.03 * cos(2 * a))) for a in (2 * pi * k / 24 for k in range(24))], n)
    pen_um = pen_for(n, n)
    rim = geometry.ellipse(0.0, 0.5 * n, 0.36 * n, 0.36 * n)
    inside = _inside(edge, n, (0.05, 0.47, 0.085), (-0.12, 0.60, 0.075), lambda p: p[0] ** 2 + (p[1] - 0.5) ** 2 > 0.36**2, pen_um)
    return Sketch((pen.contour(edge, 0.9, 1.7, "outline"), pen.stroke(rim, 0.5, "hump", closed=True, role="faint"), *inside), pen_um)


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "lobes": amoeba,
    "slug": _slug,
    "eruptive": _eruptive,
    "knob-slug": _knob_slug,
    "fan": _fan,
    "wrinkled": _wrinkled,
    "spikes": _spikes,
    "rays": _rays,
    "cones": _cones,
    "net": _net,
    "disc": _disc,
}

KIND = Kind(
    "amoeba",
    "a naked amoeba by the way it reaches out",
    (
        choice(
            "form",
            tuple(_FORMS),
            "several broad lobes; steady slug; slug whose front bursts to the sides; slug with a rear knob; fan; bag in folds; "
            "thin spikes; hair-thin rays; cones; net; flat disc",
        ),
        um("length", 25, 2, 1000, "length in the direction of travel, without spikes and rays"),
        accent("body", "pseudopods", "nucleus", "vacuole", "contents", "folds", "knob", "crystals"),
    ),
    build,
)

