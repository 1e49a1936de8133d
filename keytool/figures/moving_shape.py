"""An entry's own drawing made ready to be moved: the same outlines by part, which the live field only turns, bends and stretches.

moving_shape(entry, {"cilia": "beat"})   # {"wide": 0.5, "reach": [0.56, 0.3], "grain": 1000, "marks": [...]}

Lengths are in shares of the body's length, the middle of the body at 0, 0, its head towards +x. A body made round a middle line
lies straight along it. A mark is a list, [how, moves, ink, weight, lines, feet]:

- how: "edge" closed, the body's own edge, which hides what lies under it; "ring" closed; "line"; "fill"; "cover" (with paper); "dots".
- moves: how the part moves of itself (`moving-part` of the vocabulary), or "".
- ink: "" for the pen's, "faint", or the colour of a wash. weight: in pens.
- lines: whole numbers, `grain` to the body's length; each line "x y dx dy dx dy ...", lines parted by ";".
- feet: of what steps, for each line the foot about which it swings and its place in the row of legs, else empty.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist, hypot
from statistics import median
from typing import Any

from keytool.library.drawing_records import Form
from keytool.library.model import Entry

from . import geometry
from .raster import flattened
from .shapes import WASHES, Dots, Drawing, Leader, Path, Point, Points, Role, Shape, Swell
from .whole_body import strewn, whole_of

Json = dict[str, Any]
BODY = "outline"
"""The part that is the edge of a body."""
ROUND_A_LINE = ("nematode-body", "nematode-head", "segmented-worm", "larva", "filament", "thread")
"""Kinds whose edge is made round a middle line: one side from head to tail, then the other back."""
LEFT_FIRST = ("springtail", "banded-springtail", "long-springtail", "globe-springtail")
"""Forms of a kind that are drawn from the side, head to the left."""
PIECE = 450.0
"""µm; how long a piece of a thread is taken that runs on: as wide as the field at high power."""
GRAINS = ((0.2, 1000), (0.03, 4000), (0.0, 10000))
"""How finely the points of a body are given, by its width over its length: a slim one finer."""
STRAY = 0.004
"""How far a line may stray where points are taken out, in shares of the lesser of the body's length and four times its width."""
NEAR = 0.012
"""In body lengths: pieces of a leg that come this close to each other are of one leg."""
MOST_DOTS = 70
"""Dots of one part that are kept: in a body that moves more are not seen."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a body, in µm on the plate, later in shares of its length."""

    how: str
    part: str
    ink: str
    weight: float
    points: Points


def moving_shape(entry: Entry, parts: Mapping[str, str]) -> Json | None:
    """The entry's drawing to be moved; `parts` says which parts move of themselves and how. None where the entry has no drawing."""
    plate = whole_of(entry, PIECE, "straight")
    figure = entry.figure
    if plate is None or figure is None:
        return None
    lines = list(_lines(plate, strewn(entry)))
    middle = middle_line(_edges(lines)) if figure.kind in ROUND_A_LINE else ()
    left = _head_left(figure.draws, figure.params)
    lines = _straightened(lines, middle) if middle else [_turned(each, left) for each in lines]
    box = geometry.around([p for each in _edges(lines) for p in each.points])
    length = box.width
    x, y = box.x + box.width / 2, box.y + box.height / 2
    lines = [_put(each, lambda p: ((p[0] - x) / length, (p[1] - y) / length)) for each in lines]
    told = _told(lines, box.height / length, parts)
    if middle:
        return {**told, "lined": True}
    if isinstance(figure.draws, Form) and left:
        hanging = [min(p[1] for p in each.points) for each in lines if parts.get(each.part) == "step"]
        return {**told, "belly": round(median(hanging), 3)} if hanging else told
    return told


def _edges(lines: Sequence[Line]) -> Sequence[Line]:
    """The lines that bound the body; of what has no edge of its own, all."""
    return [each for each in lines if each.part == BODY] or lines


def _head_left(what: str | Form, params: Mapping[str, Any]) -> bool:
    return what.front == "left" if isinstance(what, Form) else params.get("form") in LEFT_FIRST


def _put(line: Line, where: Callable[[Point], Point]) -> Line:
    return Line(line.how, line.part, line.ink, line.weight, tuple(where(p) for p in line.points))


def _turned(line: Line, head_left: bool) -> Line:
    """Head towards +x: what is drawn from above is turned, what is drawn from the side is seen from its other side."""
    return _put(line, lambda p: (-p[0], p[1]) if head_left else (-p[1], p[0]))


# ---------------------------------------------------------------- the lines of a plate


def _lines(plate: Drawing, body: int) -> Iterator[Line]:
    """Every line of the plate, in its order; of small bodies that lie strewn, those of one."""
    for shape in plate.shapes[:body] if body else plate.shapes:
        yield from _of_shape(shape)


def _of_shape(shape: Shape) -> Iterator[Line]:
    ink = _ink(shape.role)
    match shape:
        case Swell():
            weight = sum(shape.weights) / len(shape.weights)
            shuts = shape.closed or (shape.part == BODY and dist(shape.points[0], shape.points[-1]) < 0.4 * geometry.length(shape.points))
            how = ("edge" if shape.part == BODY else "ring") if shuts else "line"
            yield Line(how, shape.part, ink, weight, shape.points)
        case Dots():
            step = max(1, len(shape.points) // MOST_DOTS)
            yield Line("dots", shape.part, ink, shape.size, shape.points[::step])
        case Path():
            for points in flattened(shape.steps, 1.0):
                closed = len(points) > 2 and dist(points[0], points[-1]) < 1e-9
                how = ("cover" if shape.role == "paper" else "fill") if shape.fill else "ring" if closed else "line"
                if how == "ring" and shape.part == BODY:
                    how = "edge"
                yield Line(how, shape.part, ink, shape.weight, points[:-1] if closed and how != "line" else points)
        case Leader():
            return


def _ink(role: Role) -> str:
    return WASHES.get(role, "faint" if role == "faint" else "")


# ---------------------------------------------------------------- a body round a middle line


def middle_line(edges: Sequence[Line]) -> Points:
    """The middle line of an edge that runs down one side and back up the other; empty where it does not."""
    ring = max(edges, key=lambda each: len(each.points)).points
    half = len(ring) // 2
    middle = tuple(((p[0] + q[0]) / 2, (p[1] + q[1]) / 2) for p, q in zip(ring[:half], reversed(ring[half:]), strict=False))
    widths = [dist(p, q) for p, q in zip(ring[:half], reversed(ring[half:]), strict=False)]
    return middle if half > 20 and max(widths) < 0.5 * geometry.length(middle) else ()


def _straightened(lines: Iterable[Line], middle: Points) -> list[Line]:
    """The same lines with the middle line laid straight, head towards +x."""
    along = [0.0]
    for a, b in pairwise(middle):
        along.append(along[-1] + dist(a, b))
    across = geometry.normals(middle)

    def place(p: Point, near: int | None = None) -> tuple[Point, int]:
        span = range(len(middle)) if near is None else range(max(0, near - 12), min(len(middle), near + 13))
        k = min(span, key=lambda i: (middle[i][0] - p[0]) ** 2 + (middle[i][1] - p[1]) ** 2)
        nx, ny = across[k]
        dx, dy = p[0] - middle[k][0], p[1] - middle[k][1]
        return (-(along[k] + dx * ny - dy * nx), dx * nx + dy * ny), k

    out = []
    for each in lines:
        near: int | None = None
        points = []
        for p in each.points:
            at, near = place(p, near if each.how != "dots" else None)
            points.append(at)
        out.append(Line(each.how, each.part, each.ink, each.weight, tuple(points)))
    return out


# ---------------------------------------------------------------- as the page is told


def _told(lines: Sequence[Line], wide: float, parts: Mapping[str, str]) -> Json:
    grain = next(fine for least, fine in GRAINS if wide > least)
    limit = STRAY * min(1.0, 4 * wide)
    marks: list[list[Any]] = []
    feet = legs_of(lines, {part for part, how in parts.items() if how == "step"})
    for k, each in enumerate(lines):
        points = each.points if each.how == "dots" else _lean(each, limit / 4 if each.how == "edge" else limit)
        if len(points) < (1 if each.how == "dots" else 2):
            continue
        moves = parts.get(each.part, "")
        if moves in ("beat", "wave"):
            points = _from_its_foot(points)
        head = [each.how, moves, each.ink, round(each.weight, 1)]
        text, foot = _text(points, grain), feet.get(k, [])
        if marks and marks[-1][:4] == head and each.how != "edge":
            marks[-1][4] += ";" + text
            marks[-1][5] += foot
        else:
            marks.append([*head, text, foot])
    reach = geometry.around([p for each in lines for p in each.points])
    far = [max(abs(reach.x), abs(reach.right)), max(abs(reach.y), abs(reach.bottom))]
    return {"wide": round(wide, 4), "reach": [round(each, 3) for each in far], "grain": grain, "marks": marks}


def _lean(line: Line, limit: float) -> Points:
    if line.how == "line":
        return geometry.simplified(line.points, limit)
    return geometry.simplified((*line.points, line.points[0]), limit)[:-1] if len(line.points) > 2 else line.points


def _from_its_foot(points: Points) -> Points:
    """A hair begins where it stands on the body, which is the end nearer to the body's middle line."""
    first, last = points[0], points[-1]
    return points if hypot(first[0], first[1]) <= hypot(last[0], last[1]) else tuple(reversed(points))


def _text(points: Points, grain: int) -> str:
    whole = [(round(x * grain), round(y * grain)) for x, y in points]
    words = [f"{whole[0][0]} {whole[0][1]}"]
    words += [f"{b[0] - a[0]} {b[1] - a[1]}" for a, b in pairwise(whole) if a != b]
    return " ".join(words)


def legs_of(lines: Sequence[Line], stepping: set[str]) -> dict[int, list[float]]:
    """For each line of a leg its foot (x, y) and the leg's place in the step: lines that touch are one leg."""
    own = [k for k, each in enumerate(lines) if each.part in stepping]
    boxes = {k: geometry.around(lines[k].points) for k in own}
    group = {k: k for k in own}

    def root(k: int) -> int:
        while group[k] != k:
            k = group[k]
        return k

    for n, i in enumerate(own):
        for j in own[n + 1 :]:
            a, b = boxes[i], boxes[j]
            if a.x > b.right + NEAR or b.x > a.right + NEAR or a.y > b.bottom + NEAR or b.y > a.bottom + NEAR:
                continue
            ends_i, ends_j = lines[i].points, lines[j].points
            if (
                min(dist(p, q) for p in (ends_i[0], ends_i[-1]) for q in ends_j) < NEAR
                or min(dist(p, q) for p in (ends_j[0], ends_j[-1]) for q in ends_i) < NEAR
            ):
                group[root(i)] = root(j)
    legs: dict[int, list[int]] = {}
    for k in own:
        legs.setdefault(root(k), []).append(k)
    body = max((each.points for each in _edges(lines)), key=len)[::3]
    found = []
    for members in legs.values():
        points = [p for k in members for p in lines[k].points]
        foot = min(points, key=lambda p: min(dist(p, q) for q in body))
        found.append((foot, members))
    out: dict[int, list[float]] = {}
    for side in (-1, 1):
        row = sorted((each for each in found if (each[0][1] >= 0) == (side > 0)), key=lambda each: -each[0][0])
        for n, (foot, members) in enumerate(row):
            for k in members:
                out[k] = [round(foot[0], 3), round(foot[1], 3), n + (0 if side > 0 else 1)]
    return out
