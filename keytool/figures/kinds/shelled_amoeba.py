"""Shelled amoebae by shell: wall, shape, the mouth and where it lies, spines, and what reaches out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import cos, pi, sin
from random import Random

from .. import geometry, pen
from ..frame import Sketch, pen_for
from ..shapes import Point, Points, Shape
from .kind import Kind, Values, accent, choice, flag, num, um, word

Free = Callable[[Point], bool]

_SIDES: dict[str, Sequence[Point]] = {  # right half, closed end up, length 1, mouth at the foot
    "flask": ((0, 0), (0.16, 0.03), (0.29, 0.17), (0.325, 0.40), (0.275, 0.66), (0.175, 0.88), (0.145, 1.0)),
    "pear": ((0, 0), (0.20, 0.03), (0.34, 0.18), (0.37, 0.40), (0.31, 0.64), (0.20, 0.83), (0.165, 0.93), (0.185, 1.0)),
    "egg": ((0, 0), (0.20, 0.03), (0.36, 0.20), (0.40, 0.46), (0.34, 0.74), (0.22, 0.93), (0.17, 1.0)),
    "lens": ((0, 0), (0.22, 0.03), (0.40, 0.20), (0.45, 0.44), (0.36, 0.70), (0.19, 0.90), (0.10, 1.0)),
    "dome": ((0, 0), (0.34, 0.04), (0.66, 0.24), (0.82, 0.55), (0.84, 0.82), (0.78, 0.97), (0.70, 1.0), (0.50, 1.0), (0.30, 1.0)),
    "cap": ((0, 0), (0.34, 0.04), (0.74, 0.26), (0.98, 0.62), (1.06, 0.86), (1.02, 0.98), (0.92, 1.0), (0.60, 0.97), (0.34, 0.97)),
}


def build(v: Values) -> Sketch:
    """The shell: from the side with its mouth at the foot, or seen from below."""
    return (_from_below if word(v, "view") == "below" else _from_the_side)(v)


def _from_the_side(v: Values) -> Sketch:
    n, form, wall = num(v, "length"), word(v, "form"), word(v, "wall")
    side = geometry.curve(geometry.scaled(_SIDES[_side_form(form)], n), per=10)
    if form in ("dome", "cap"):  # here the length is the breadth, as it is seen from below
        side = geometry.scaled(side, 0.5 * n / max(x for x, _ in side))
    edge = (*reversed(geometry.mirrored(side)), *side[1:])
    box = geometry.around(edge)
    pen_um = pen_for(1.05 * box.width, 1.3 * box.height)
    lip, foot = side[-1]
    shapes: list[Shape] = [pen.contour(edge, 1.3, 2.4, "outline", closed=False), *_wall(edge, wall, n, pen_um)]
    shapes += _rim(word(v, "rim"), lip, foot, n)
    shapes += _cell(edge, lip, foot, n, pen_um) if wall in ("smooth", "tinted") else []
    if v["spines"]:
        shapes += _spines(edge, n)
    return Sketch((*_arms(word(v, "pseudopods"), lip, foot, n), *shapes), pen_um)


def _side_form(form: str) -> str:
    return form if form in _SIDES else "egg"


def _from_below(v: Values) -> Sketch:
    n, form, wall = num(v, "length"), word(v, "form"), word(v, "wall")
    slanted = form in ("slanted-round", "slanted-oval")
    if slanted:
        half = [(0, 0), (0.13, 0.02), (0.21, 0.10), (0.26, 0.28), (0.33, 0.52), (0.345, 0.70), (0.27, 0.89), (0.13, 0.985)]
        ring = geometry.curve([*half, (0, 1.0), *reversed(geometry.mirrored(half[1:]))], closed=True, per=8)
    else:
        ring = geometry.ellipse(0, 0.5, 0.5, 0.5 if form != "hidden-slit" else 0.46, count=96)
    edge = geometry.clockwise(geometry.tall(ring, n))
    pen_um = pen_for(1.05 * n, 1.05 * n)
    mouth = _mouth_ring(form, n)
    shapes: list[Shape] = [pen.contour(edge, 1.3, 2.5, "outline"), *_wall(edge, wall, n, pen_um, mouth)]
    shapes += _mouth(form, mouth, n, turned=word(v, "rim") == "turned-in")
    if v["spines"]:
        shapes += _spines(edge, n)
    return Sketch((*_arms_round(word(v, "pseudopods"), edge, n), *shapes), pen_um)


def _mouth_ring(form: str, n: float) -> Points:
    match form:
        case "off-centre":
            return geometry.ellipse(0, 0.27 * n, 0.19 * n, 0.155 * n)
        case "slanted-round":
            return geometry.ellipse(0, 0.18 * n, 0.085 * n, 0.085 * n)
        case "slanted-oval":
            return geometry.ellipse(0, 0.18 * n, 0.115 * n, 0.062 * n)
        case "hidden-slit":
            top = geometry.curve(geometry.scaled([(-0.26, 0.40), (-0.14, 0.31), (0, 0.285), (0.14, 0.31), (0.26, 0.40)], n), per=8)
            under = geometry.curve(geometry.scaled([(0.26, 0.40), (0.13, 0.345), (0, 0.325), (-0.13, 0.345), (-0.26, 0.40)], n), per=8)
            return (*top, *under)
        case _:
            return geometry.ellipse(0, 0.5 * n, 0.185 * n, 0.185 * n)


def _mouth(form: str, ring: Points, n: float, *, turned: bool) -> list[Shape]:
    if form == "hidden-slit":
        lip = geometry.curve(geometry.scaled([(-0.33, 0.45), (-0.18, 0.35), (0, 0.325), (0.18, 0.35), (0.33, 0.45)], n), per=8)
        return [pen.filled(ring, "opening", role="faint"), pen.line(lip, (0.8, 2.2, 0.8), "opening")]
    out: list[Shape] = [pen.contour(ring, 1.4, 2.0, "opening")]
    if turned:
        box = geometry.around(ring)
        wide = geometry.ellipse(box.x + box.width / 2, box.y + box.height / 2, 0.66 * box.width, 0.66 * box.height)
        out.append(pen.stroke(wide, 0.8, "opening", closed=True))
    return out


def _wall(edge: Points, wall: str, n: float, pen_um: float, hole: Points = ()) -> list[Shape]:
    """What the shell is made of, left out over the mouth."""
    box = geometry.around(edge)
    middle = box.y + box.height / 2

    def free(p: Point) -> bool:
        x, y = p
        return geometry.inside(edge, (x * 1.04, (y - middle) * 1.04 + middle)) and not (hole and geometry.inside(hole, p))

    match wall:
        case "plates":
            return [_plates(free, n)]
        case "mixed":
            return [_mixed(free, n)]
        case "grains":
            return _grains(edge, free, n)
        case _:
            inner = geometry.offset(geometry.clockwise(edge), [0.03 * n] * len(edge), closed=True)
            spacing, sizes = (2.0, (0.9, 1.2)) if wall == "tinted" else (5.0, (0.6, 0.8))
            return list(pen.grain(inner, spacing * pen_um, "scales", lambda p: 0.55 * free(p), sizes=sizes))


def _plates(free: Free, n: float) -> Shape:
    """Rounded plates overlapping like tiles, their free edges toward the mouth, in a diamond pattern."""
    rise, wide = 0.080 * n, 0.098 * n
    arches = []
    for row in range(13):
        y = 0.02 * n + row * rise
        for k in range(-6, 7):
            arch = geometry.arc(k * wide + (0.5 * wide if row % 2 else 0.0), y, 0.5 * wide, 0.06 * pi, 0.94 * pi, count=10)
            arches += geometry.runs(arch, free)
    return pen.strokes(arches, 0.6, "scales")


def _mixed(free: Free, n: float) -> Shape:
    """Round and oval plates of many sizes side by side, as taken over from smaller shells."""
    chance, rings, spots = Random("mixed plates"), [], []
    for r in (*([0.052] * 400), *([0.034] * 700), *([0.020] * 900)):
        x, y = chance.uniform(-0.45, 0.45), chance.uniform(0, 1)
        if all((x - a) ** 2 + (y - b) ** 2 > (r + c + 0.006) ** 2 for a, b, c in spots):
            ring = geometry.ellipse(x * n, y * n, r * n, chance.choice((1.0, 0.72)) * r * n, turn=chance.uniform(0, pi), count=18)
            if all(free(p) for p in ring):
                spots.append((x, y, r))
                rings.append((*ring, ring[0]))
    return pen.strokes(rings, 0.6, "scales")


def _grains(edge: Points, free: Free, n: float) -> list[Shape]:
    """Sand grains stuck on: angular, of many sizes, close together, and standing out from the rim."""
    chance, out, spots = Random("grains"), [], []
    box = geometry.around(edge)
    for r in (*([0.058] * 300), *([0.036] * 700), *([0.022] * 900)):
        x, y = chance.uniform(box.x, box.right) / n, chance.uniform(box.y, box.bottom) / n
        if all((x - a) ** 2 + (y - b) ** 2 > (0.92 * (r + c)) ** 2 for a, b, c in spots) and free((x * n, y * n)):
            spots.append((x, y, r))
            count = chance.choice((4, 5, 6))
            start = chance.uniform(0, 2 * pi)
            ring = [
                ((x + r * s * cos(start + a)) * n, (y + r * s * sin(start + a)) * n)
                for a, s in ((2 * pi * k / count, chance.uniform(0.72, 1.0)) for k in range(count))
            ]
            out.append((*ring, ring[0]))
    lumps = []
    walk = geometry.spaced((*edge, edge[0]), 0.075 * n)[:-1]
    for k, ((x, y), (nx, ny)) in enumerate(zip(walk, geometry.normals(walk, closed=True), strict=True)):
        s = (0.018 + 0.014 * ((k * 0.618) % 1)) * n
        lumps.append(((x - ny * 1.3 * s, y + nx * 1.3 * s), (x - nx * s - ny * 0.5 * s, y - ny * s + nx * 0.5 * s),
                      (x - nx * 0.9 * s + ny * 0.6 * s, y - ny * 0.9 * s - nx * 0.6 * s), (x + ny * 1.3 * s, y - nx * 1.3 * s)))
    return [pen.strokes(out, 0.7, "scales"), pen.strokes(lumps, 1.0, "scales")]


def _rim(rim: str, lip: float, foot: float, n: float) -> list[Shape]:
    out: list[Shape] = [pen.stroke(((-lip, foot), (lip, foot)), 1.1, "opening")]
    if rim == "toothed":
        count = max(6, 2 * round(lip / (0.022 * n)))
        step = 2 * lip / count
        teeth = [((-lip + k * step, foot), (-lip + (k + 0.5) * step, foot + 0.028 * n), (-lip + (k + 1) * step, foot)) for k in range(count)]
        out.append(pen.strokes(teeth, 1.0, "opening"))
    if rim == "turned-in":
        funnel = geometry.curve([(lip, foot), (0.86 * lip, foot - 0.06 * n), (0.62 * lip, foot - 0.13 * n)], per=6)
        out += [pen.line(s, (1.8, 1.0), "opening") for s in (funnel, geometry.mirrored(funnel))]
    return out


def _cell(edge: Points, lip: float, foot: float, n: float, pen_um: float) -> list[Shape]:
    """The cell within a shell clear enough to see it."""
    box = geometry.around(edge)
    r = 0.30 * min(box.width, box.height)
    body = geometry.ellipse(0, box.y + 0.52 * box.height, 1.15 * r, r)
    threads = [((s * 0.86 * box.width / 2, box.y + 0.62 * box.height), (s * 0.9 * r, box.y + 0.55 * box.height)) for s in (-1, 1)]
    return [
        pen.stroke(body, 0.8, "contents", closed=True),
        pen.strokes([t for t in threads if abs(t[0][0]) > abs(t[1][0])], 0.5, "contents"),
        *pen.grain(body, 3.4 * pen_um, "contents", lambda p: 0.7),
    ]


def _spines(edge: Points, n: float) -> list[Shape]:
    """A few long tapering spines from the closed end."""
    out = []
    box = geometry.around(edge)
    closed = [p for p in edge if p[1] < box.y + 0.55 * box.height]
    for x, y in (geometry.walked(closed, k / 6) for k in range(7)):
        dx, dy = x, y - (box.y + 0.5 * box.height)
        size = (dx * dx + dy * dy) ** 0.5
        tip = (x + 0.17 * n * dx / size, y + 0.17 * n * dy / size)
        out.append(pen.line(((x, y), tip), (2.4, 0.5), "spines"))
    return out


def _arms(style: str, lip: float, foot: float, n: float) -> list[Shape]:
    if style == "threads":
        lines = [
            geometry.curve(
                [(s * lip, foot), (s * (lip + 0.05 * n), foot + 0.10 * n), (s * (lip + 0.13 * n) + 0.02 * n, foot + (0.30 - 0.09 * abs(s)) * n)], per=6
            )
            for s in (-0.85, -0.4, 0.05, 0.45, 0.9)
        ]
        return [pen.line(one, (1.0, 0.5), "pseudopods") for one in lines]
    if style == "fingers":
        out: list[Shape] = []
        for s, size in ((-0.55, 0.20), (0.05, 0.28), (0.62, 0.17)):
            w = max(0.036 * n, 0.16 * lip)
            x = s * lip * 0.9
            lean = s * 0.10 * n
            finger = geometry.curve(
                [(x - w, foot), (x - 0.9 * w + 0.6 * lean, foot + 0.6 * size * n), (x - 0.4 * w + lean, foot + 0.96 * size * n), (x + lean, foot + size * n),
                 (x + 0.5 * w + lean, foot + 0.95 * size * n), (x + 0.9 * w + 0.6 * lean, foot + 0.55 * size * n), (x + w, foot)], per=6)
            out.append(pen.line(finger, (1.2, 1.6, 1.4), "pseudopods"))
        return out
    return []


def _arms_round(style: str, edge: Points, n: float) -> list[Shape]:
    """What reaches out from under a shell seen from below."""
    if style == "none":
        return []
    out: list[Shape] = []
    for a, size in ((0.3, 0.17), (1.2, 0.12), (2.3, 0.20), (3.6, 0.14), (5.0, 0.18)):
        x, y = 0.48 * n * cos(a), 0.5 * n + 0.48 * n * sin(a)
        c, s = cos(a), sin(a)
        if style == "threads":
            out.append(pen.line(((x, y), (x + c * 1.4 * size * n, y + s * 1.4 * size * n)), (1.0, 0.5), "pseudopods"))
            continue
        w = 0.035 * n
        path = [(x - s * w, y + c * w), (x - s * w + 0.7 * c * size * n, y + c * w + 0.7 * s * size * n), (x + c * size * n, y + s * size * n),
                (x + s * w + 0.7 * c * size * n, y - c * w + 0.7 * s * size * n), (x + s * w, y - c * w)]
        for run in geometry.runs(geometry.curve(path, per=6), lambda p: not geometry.inside(edge, p)):
            out.append(pen.line(run, (1.2, 1.5), "pseudopods"))
    return out


BELOW = ("central", "off-centre", "slanted-round", "slanted-oval", "hidden-slit")

KIND = Kind(
    "shelled-amoeba",
    "a shelled amoeba by its shell: from the side, mouth at the foot, or from below, looking at the mouth",
    (
        choice("view", ("side", "below"), "from the side, or onto the mouth"),
        choice(
            "form",
            (*_SIDES, *BELOW),
            "side: flask, pear or urn, egg, lens, high dome, low cap; below: mouth in the middle, off the middle, "
            "slanted near the narrow end (round or oval), hidden under a lip",
        ),
        um("length", 50, 5, 500, "length of the shell; of a dome or cap its breadth"),
        choice("wall", ("plates", "mixed", "grains", "smooth", "tinted"), "own plates, plates of many sizes, sand grains, smooth and clear, or brown skin"),
        choice("rim", ("plain", "toothed", "turned-in"), "rim of the mouth"),
        choice("pseudopods", ("none", "threads", "fingers"), "what reaches out"),
        flag("spines", "spines at the closed end"),
        accent("body", "opening", "scales", "spines", "pseudopods", "contents"),
    ),
    build,
    lambda v: [] if (word(v, "form") in BELOW) == (word(v, "view") == "below") else [f"form {word(v, 'form')} is for the view from {'below' if word(v, 'form') in BELOW else 'the side'}"],
)
