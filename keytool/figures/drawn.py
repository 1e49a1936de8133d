"""Drawings that are data, turned into ink: `keydata/drawings/<theme>/<form>.yaml` draws what a kind written in Python would.

kind_of(library.drawings["water-bear"])   # a Kind, with the parameters that its file declares
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from functools import lru_cache
from math import hypot, radians

from keytool.library.drawing_records import OUTLINE, Form, Piece, Proportion, Row, Stipple, Trace

from . import geometry, pen
from .frame import Sketch, pen_for
from .kinds.kind import Kind, Param, Values, accent, colour
from .proportions import PER, Proportioned, limb, line, outline, proportioned
from .shapes import Dots, Point, Points, Role, Shape

Keep = Callable[[Point], bool]


@lru_cache(maxsize=512)
def kind_of(form: Form) -> Kind:
    """The drawing as a kind: its length, its proportions, and each of its parts to be accented."""
    size = form.length
    params = (
        Param("length", "um", size.default, size.about, (), size.low, size.high),
        *(_param(each) for each in form.proportions),
        accent("body", *form.parts()[1:]),
        colour(),
    )
    return Kind(form.id, form.about, params, lambda values: sketch(form, values))


def _param(each: Proportion) -> Param:
    if each.choices:
        words = "; ".join(f"{word}: {means}" for word, means in each.choices.items())
        return Param(each.name, "choice", each.default, f"{each.about} ({words})", tuple(each.choices))
    return Param(each.name, "um" if each.unit == "µm" else "number", each.default, each.about, (), each.low, each.high)


def sketch(form: Form, values: Values) -> Sketch:
    """The drawing at the size and in the proportions that `values` gives."""
    return _Plate(form, values, proportioned(form, values)).sketch()


def lines_of_parts(form: Form) -> list[tuple[str, bool, Points, Piece | None]]:
    """Every line of a drawing in its own proportions, in units of its length: part, whether closed, points, and the piece it is of."""
    kind = kind_of(form)
    plate = _Plate(form, kind.filled({"length": 1.0}), proportioned(form, kind.filled({"length": 1.0})))
    out: list[tuple[str, bool, Points, Piece | None]] = [(OUTLINE, True, plate.at.outline, None)]
    for piece in plate.shown():
        out += [(piece.part, closed, points, piece) for closed, points in plate.raw(piece)]
    return out


@dataclass(slots=True)
class _Plate:
    form: Form
    values: Values
    at: Proportioned
    rings: dict[str, list[Points]] = field(default_factory=dict)
    """The closed shapes so far by part: what hides, bounds and is stippled."""

    def __post_init__(self) -> None:
        self.rings[OUTLINE] = [self.at.outline]

    def sketch(self) -> Sketch:
        raws = [(piece, self.raw(piece)) for piece in self.shown()]
        reach = geometry.around([p for _, lines in raws for _, points in lines for p in points] + list(self.at.outline))
        nib = pen_for(reach.width, reach.height)
        shapes: list[Shape] = [pen.contour(self.at.outline, *self.form.weight, OUTLINE)]
        for piece, lines in raws:
            shapes += self._inked(piece, lines, nib)
        return Sketch(tuple(shapes), nib, self.form.tonal)

    def shown(self) -> list[Piece]:
        """The pieces that these words of the proportions ask for."""
        return [each for each in self.form.pieces if all(self.values[name] in words for name, words in each.only.items())]

    # ------------------------------------------------------------- points on the plate

    def raw(self, piece: Piece) -> list[tuple[bool, Points]]:
        """The lines of a piece on the plate: whether closed, and its points; of stipple the shape it lies in."""
        made = [(closed, each) for closed, points in self._raw(piece) for each in self._both(piece, points)]
        if piece.closed:
            self.rings.setdefault(piece.part, []).extend(each for closed, each in made if closed)
        return made

    def _both(self, piece: Piece, points: Points) -> Iterable[Points]:
        return (points, geometry.mirrored(points)) if piece.mirror else (points,)

    def _raw(self, piece: Piece) -> list[tuple[bool, Points]]:
        what = piece.what
        match what:
            case Trace():
                if what.half:
                    return [(piece.closed, self.at.place(limb(what)))]
                return [(piece.closed, self.at.place(outline(what) if piece.closed else line(what)))]
            case Row():
                return [(what.closed, each) for each in self._row(piece, what)]
            case Stipple():
                return []
            case _ if piece.closed:
                return [(True, self.at.place(_oval(*each))) for each in what]
            case _:
                r = piece.radius * self.at.unit * self._larger(piece.part)
                return [(True, geometry.ellipse(x, y, r, r, count=24)) for x, y in self.at.place(what)]  # type: ignore[arg-type]

    def _larger(self, part: str) -> float:
        """How much larger the proportions make the dots and rows of a part."""
        by = 1.0
        for each in self.form.proportions:
            if part in each.scales:
                by *= float(self.values[each.name])  # type: ignore[arg-type]
        return by

    def _row(self, piece: Piece, row: Row) -> list[Points]:
        named = isinstance(row.along, str)
        closed = named or (isinstance(row.along, Trace) and bool(row.along.half))
        edges = self.rings[row.along] if isinstance(row.along, str) else [self.at.place(limb(row.along) if closed else line(row.along))]
        size = self.at.unit * self._larger(piece.part) * (-1 if row.inward else 1)
        out: list[Points] = []
        for edge in edges:
            way = (*edge, edge[0]) if closed else edge
            feet = geometry.spaced(way, row.every * self.at.unit)
            feet = feet[:-1] if closed else feet
            for k, ((x, y), (nx, ny)) in enumerate(zip(feet, geometry.normals(feet, closed=closed), strict=True)):
                share = k / max(1, len(feet) - (0 if closed else 1))
                if not (row.start <= share <= row.stop if row.start <= row.stop else share >= row.start or share <= row.stop):
                    continue
                # right of a clockwise edge is inward, so outward is the other way; onward is toward the rear on both sides
                ox, oy = -nx, -ny
                tx, ty = (ny, -nx) if not closed else _rearward(ny, -nx, self.form.front)
                shape = tuple(
                    (x + size * out_ * ox + abs(size) * on * tx, y + size * out_ * oy + abs(size) * on * ty) for out_, on in row.shape
                )
                smooth = geometry.curve(shape, closed=row.closed, per=4) if len(shape) > 2 else shape
                out.append(smooth)
        return out

    # ------------------------------------------------------------- ink

    def _inked(self, piece: Piece, lines: list[tuple[bool, Points]], nib: float) -> list[Shape]:
        role: Role = "faint" if piece.faint else "ink"
        what, keep = piece.what, self._keep(piece)
        if isinstance(what, Stipple):
            return [dots for ring in self._within(piece, what) for dots in self._strewn(piece, what, ring, nib, role)]
        if isinstance(what, Row) and not what.closed:
            kept = [points for _, points in lines if keep is None or keep(points[0])]
            return [pen.strokes(kept, piece.weight[0], piece.part, role=role)] if kept else []
        if piece.radius:
            return [_disc(points, piece.part, role) for _, points in lines]
        out: list[Shape] = []
        for closed, points in lines:
            out += self._drawn_line(piece, points, closed, keep, role)
        return out

    def _drawn_line(self, piece: Piece, points: Points, closed: bool, keep: Keep | None, role: Role) -> list[Shape]:
        if closed and keep is None:
            return self._closed(piece, points, role)
        way = (*points, points[0]) if closed else points
        runs = geometry.runs(way, keep) if keep else [way]
        at = {p: k / (len(way) - 1) for k, p in reversed(list(enumerate(way)))}
        out: list[Shape] = []
        for run in runs:
            shares = [at[p] for p in run if p in at]
            if len(run) > 1 and shares:
                out.append(pen.line(run, _part_of(piece.weight, min(shares), max(shares)), piece.part, role=role))
        return out

    def _closed(self, piece: Piece, points: Points, role: Role) -> list[Shape]:
        if piece.fill == "ink":
            return [pen.filled(points, piece.part, role=role)]
        bed: list[Shape] = [pen.filled(points, piece.part, role="paper" if piece.fill == "paper" else "faint")] if piece.fill else []
        thin, thick = piece.weight[0], piece.weight[-1]
        if thin == thick:
            return [*bed, pen.stroke(points, thin, piece.part, role=role, closed=True)]
        return [*bed, pen.contour(points, thin, thick, piece.part, role=role)]

    def _keep(self, piece: Piece) -> Keep | None:
        hide = [ring for name in piece.behind for ring in self.rings.get(name, ())]
        room = self.rings.get(piece.within, []) if piece.within else []
        if not hide and not room:
            return None
        return lambda p: not any(geometry.inside(ring, p) for ring in hide) and (not room or any(geometry.inside(ring, p) for ring in room))

    def _within(self, piece: Piece, what: Stipple) -> list[Points]:
        if isinstance(what.within, str):
            return self.rings.get(what.within, [])
        return list(self._both(piece, self.at.place(outline(what.within))))

    def _strewn(self, piece: Piece, what: Stipple, ring: Points, nib: float, role: Role) -> Iterable[Dots]:
        inner = geometry.offset(ring, [1.6 * nib] * len(ring), closed=True) if what.within == OUTLINE else ring
        box, keep = geometry.around(inner), self._keep(piece)
        size = hypot(*what.toward)
        ux, uy = what.toward[0] / size, what.toward[1] / size
        reach = (abs(ux) * box.width + abs(uy) * box.height) / 2 or 1.0
        middle = (box.x + box.width / 2, box.y + box.height / 2)
        low, high = what.dense

        def dense(p: Point) -> float:
            if keep and not keep(p):
                return 0.0
            share = 0.5 + ((p[0] - middle[0]) * ux + (p[1] - middle[1]) * uy) / (2 * reach)
            return low + (high - low) * min(1.0, max(0.0, share))

        return pen.grain(inner, what.gap * nib, piece.part, dense, role=role)


def _oval(x: float, y: float, rx: float, ry: float, turn: float = 0.0) -> Points:
    return geometry.ellipse(x, y, rx, ry, turn=radians(turn), count=4 * PER)


def _disc(ring: Points, part: str, role: Role) -> Shape:
    box = geometry.around(ring)
    return pen.disc(box.x + box.width / 2, box.y + box.height / 2, box.width / 2, part, role=role)


def _rearward(x: float, y: float, front: str) -> Point:
    """The way along an edge that leads toward the rear."""
    return (x, y) if (y if front == "top" else x) >= 0 else (-x, -y)


def _part_of(weights: tuple[float, ...], start: float, stop: float) -> tuple[float, ...]:
    """The weights along a piece of a line, so that what hides its foot does not move where it swells."""
    if len(weights) == 1:
        return weights
    line = pen.line(((0.0, 0.0),) * 33, weights, "")
    return tuple(line.weights[round(32 * (start + (stop - start) * k / 4))] for k in range(5))
