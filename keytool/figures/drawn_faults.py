"""What is wrong with the lines of a drawing that is data: an outline that crosses itself, parts that lie outside the body."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import dist, hypot

from keytool.library.drawing_records import Form, Piece, Row, Stipple
from keytool.library.yaml_file import DataPath

from . import geometry
from .drawn import lines_of_parts
from .kinds import KINDS
from .proportions import outline
from .shapes import Point, Points

Fault = tuple[DataPath, str, str, str]
"""Where in the file, what is wrong, what is allowed, and what to do."""

NEAR = 0.02
"""In body lengths: how far a line may run over the edge of the body before it counts as outside, a pen's width and a little more."""
LEAST_AREA = 0.002
"""Of an outline, in squares of the body's length: what is thinner is a line, not a body."""


def faults(form: Form) -> Iterator[Fault]:
    """All that is wrong with the lines of a drawing, as its file writes them."""
    if form.id in KINDS:
        yield ("id",), f"'{form.id}' is a kind of drawing already.", "a name that no kind has", "Choose another name."
    edge = outline(form.outline)
    if crossing := crosses(edge):
        (x, y) = crossing
        yield ("outline",), f"The outline crosses itself near {x:.3g} {y:.3g}.", "", "Put its points in order, once round the body."
        return
    if abs(geometry.twice_area(edge)) / 2 < LEAST_AREA:
        yield ("outline",), "The outline encloses nothing.", "", "Put its points in order, once round the body."
        return
    told: set[int] = set()
    unit, origin = _unit(form, edge)
    ring = next(points for part, _, points, piece in lines_of_parts(form) if piece is None)
    for part, _, points, piece in lines_of_parts(form):
        if piece is None or piece.item in told or not _is_inner(piece):
            continue
        far = [p for p in points if not geometry.inside(ring, p) and _gap(ring, p) > NEAR]
        if far:
            told.add(piece.item)
            x, y = far[0][0] / unit + origin[0], far[0][1] / unit + origin[1]
            message = f"'{part}' lies outside the body near {x:.3g} {y:.3g}."
            tip = "Move it in; or say outside: true where it stands out from the body, behind: [outline] where the body hides its foot."
            yield ("parts", piece.item), message, "", tip


def _unit(form: Form, edge: Points) -> tuple[float, Point]:
    """How the points of the file were scaled to a body of length 1, and where its head lies in them."""
    box = geometry.around(edge)
    if form.outline.half:
        return 1.0, (0.0, 0.0)
    return (1 / box.height, (0.0, box.y)) if form.front == "top" else (1 / box.width, (box.x, 0.0))


def _is_inner(piece: Piece) -> bool:
    """Whether a piece is meant to lie within the body."""
    return not (piece.outside or piece.behind or piece.within or isinstance(piece.what, Row | Stipple))


def crosses(ring: Points) -> Point | None:
    """Where a closed line crosses itself, if it does."""
    sides = list(pairwise((*ring, ring[0])))
    boxes = [(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])) for a, b in sides]
    order = sorted(range(len(sides)), key=lambda k: boxes[k][0])
    for n, i in enumerate(order):
        for j in order[n + 1 :]:
            if boxes[j][0] > boxes[i][2]:
                break
            if abs(i - j) in (0, 1, len(sides) - 1) or boxes[j][1] > boxes[i][3] or boxes[i][1] > boxes[j][3]:
                continue
            if found := meeting(*sides[i], *sides[j]):
                return found
    return None


def meeting(a: Point, b: Point, c: Point, d: Point) -> Point | None:
    """The point in which two straight pieces cross, if they do; pieces that only touch do not."""
    ux, uy, vx, vy = b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]
    turn = ux * vy - uy * vx
    if abs(turn) < 1e-15:
        return None
    s = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / turn
    t = ((c[0] - a[0]) * uy - (c[1] - a[1]) * ux) / turn
    return (a[0] + s * ux, a[1] + s * uy) if 1e-9 < s < 1 - 1e-9 and 1e-9 < t < 1 - 1e-9 else None


def _gap(ring: Points, p: Point) -> float:
    """How far a point lies from a closed line."""
    return min(_from(p, a, b) for a, b in pairwise((*ring, ring[0])))


def _from(p: Point, a: Point, b: Point) -> float:
    length = dist(a, b)
    if not length:
        return dist(p, a)
    along = min(1.0, max(0.0, ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length**2))
    return hypot(p[0] - a[0] - along * (b[0] - a[0]), p[1] - a[1] - along * (b[1] - a[1]))
