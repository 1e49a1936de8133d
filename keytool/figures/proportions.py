"""From a drawing as data to its true proportions: where a point of the file comes to lie, in µm, once an entry has said its sizes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from keytool.library.drawing_records import Form, Run, Trace

from . import geometry
from .kinds import tube
from .shapes import Point, Points

PER = 10
"""Samples between two points of a smooth run."""
Values = Mapping[str, float | str | bool | None]


@dataclass(frozen=True, slots=True)
class Proportioned:
    """A drawing made ready: `place` puts a point (units of the body's length) on the plate (µm), `unit` is what a small length becomes."""

    place: Callable[[Points], Points]
    unit: float
    outline: Points
    """The edge of the body on the plate, closed, clockwise."""
    spine: Points
    """From the head to the rear, on the plate."""


def proportioned(form: Form, values: Values) -> Proportioned:
    """The drawing in the proportions that these values give; its body is exactly as long as they say."""
    length = float(values["length"])  # type: ignore[arg-type]
    edge, spine = outline(form.outline), middle_line(form)
    shaped = _shaping(form, values, edge)
    edge, spine = shaped(edge), shaped(spine)
    if form.outline.half:
        # a long body is as long as its middle line, however it lies
        top, by = (0.0, 0.0), length / geometry.length(spine)
    else:
        box = geometry.around(edge)
        top, by = ((0.0, box.y), length / box.height) if form.front == "top" else ((box.x, 0.0), length / box.width)

    def place(points: Points) -> Points:
        return tuple(((x - top[0]) * by, (y - top[1]) * by) for x, y in shaped(points))

    settled = geometry.clockwise(tuple(((x - top[0]) * by, (y - top[1]) * by) for x, y in edge))
    return Proportioned(place, by, settled, tuple(((x - top[0]) * by, (y - top[1]) * by) for x, y in spine))


def line(trace: Trace, *, closed: bool = False) -> Points:
    """A line through the points of its runs; a closed one that is one smooth run has no corner where it closes."""
    if closed and len(trace.runs) == 1 and trace.runs[0].smooth and not trace.mirror:
        return geometry.curve(trace.runs[0].points, closed=True, per=PER)
    out: list[Point] = []
    for run in trace.runs:
        points = _run(run)
        out += points[1:] if out and dist(out[-1], points[0]) < 1e-9 else points
    if not trace.mirror:
        return tuple(out)
    other = geometry.mirrored(reversed(out))
    return (*out, *(p for p in other if dist(p, out[-1]) > 1e-9 and dist(p, out[0]) > 1e-9))


def _run(run: Run) -> Points:
    return geometry.curve(run.points, per=PER) if run.smooth and len(run.points) > 2 else run.points


def outline(trace: Trace) -> Points:
    """The edge of what a trace encloses: round its points, mirrored where it says so, or round a middle line."""
    if trace.half:
        return limb(trace)
    if trace.mirror and len(trace.runs) == 1 and trace.runs[0].smooth:
        # one smooth run through both halves, so that no corner stands on the middle line
        half = trace.runs[0].points
        other = tuple(p for p in geometry.mirrored(reversed(half)) if abs(p[0]) > 1e-9)
        return geometry.curve((*half, *other), closed=True, per=PER)
    return line(trace, closed=True)


def limb(trace: Trace) -> Points:
    """The edge of a long shape round its middle line."""
    middle = geometry.spaced(line(Trace(trace.runs)), 0.01) if trace.runs[0].smooth else line(Trace(trace.runs))
    return tube.ring(middle, half_width(trace.half))


def half_width(knots: Points) -> Callable[[float], float]:
    """Half the width at each share of the way, through the knots without a swing beyond them (Fritsch and Carlson's slopes)."""
    rise = [(b[1] - a[1]) / (b[0] - a[0]) for a, b in pairwise(knots)]
    slope = [rise[0], *(0.0 if a * b <= 0 else 2 * a * b / (a + b) for a, b in pairwise(rise)), rise[-1]]

    def half(t: float) -> float:
        k = next((i for i, (_, b) in enumerate(pairwise(knots)) if t <= b[0]), len(knots) - 2)
        (t0, w0), (t1, w1) = knots[k], knots[k + 1]
        wide = t1 - t0
        u = min(1.0, max(0.0, (t - t0) / wide))
        left = 1 - u
        return max(
            0.0,
            left * left * ((1 + 2 * u) * w0 + u * wide * slope[k]) + u * u * ((1 + 2 * left) * w1 - left * wide * slope[k + 1]),
        )

    return half


def middle_line(form: Form) -> Points:
    """From the head to the rear: the middle line that an outline was made round, or straight through the body."""
    if form.outline.half:
        return line(Trace(form.outline.runs))
    box = geometry.around(outline(form.outline))
    if form.front == "left":
        return tuple((box.x + box.width * k / 24, box.y + box.height / 2) for k in range(25))
    return tuple((box.x + box.width / 2, box.y + box.height * k / 24) for k in range(25))


def _shaping(form: Form, values: Values, edge: Points) -> Callable[[Points], Points]:
    """What the numbers among the proportions do to every point: stretch what lies between two shares, widen the whole."""
    along = 1 if form.front == "top" else 0
    box = geometry.around(edge)
    start, length, wide = (box.y, box.height, box.width) if along else (box.x, box.width, box.height)
    stretches = [
        (start + each.stretches[0] * length, start + each.stretches[1] * length, float(values[each.name]))  # type: ignore[arg-type]
        for each in form.proportions
        if each.stretches and values[each.name] is not None
    ]
    wider = 1.0
    for each in form.proportions:
        value = values[each.name] if each.widens else None
        if value is not None:
            own = float(value)
            wider *= own / (wide / length * float(values["length"])) if each.unit == "µm" else own  # type: ignore[arg-type]

    def put(p: Point) -> Point:
        at, aside = (p[1], p[0]) if along else (p[0], p[1])
        longer = at + sum((by - 1) * (min(max(at, low), high) - low) for low, high, by in stretches)
        aside *= wider
        return (aside, longer) if along else (longer, aside)

    if not stretches and wider == 1.0:
        return lambda points: points
    return lambda points: tuple(put(p) for p in points)
