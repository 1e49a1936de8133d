"""Drawings that are to be told apart, made ready to stand side by side: the leads of a couplet, a look-alike pair."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from .frame import common_scale, matched, with_shapes
from .shapes import Drawing

SMALLEST = 0.2
"""A drawing whose longer side would come out smaller than this share of its room is not put to one scale with a giant."""


@dataclass(frozen=True, slots=True)
class Contrast:
    """Drawings to be shown together, in the order asked for; None where there is none.

    `scales` holds output units per µm, one for each drawing (0 where there is none); all are alike if `one_scale`.
    """

    drawings: tuple[Drawing | None, ...]
    scales: tuple[float, ...]
    one_scale: bool


def contrast(
    drawings: Sequence[Drawing | None], width: float, height: float, *, letter: float = 0.0, pen: float = 0.0, smallest: float = SMALLEST
) -> Contrast:
    """The drawings at one scale, with one pen, one size of lettering and one scale bar, each to fit `width` by `height`.

    Where the smallest would come out under `smallest` of its room, each is fitted by itself instead. Lettering is at
    least `letter` high and a pen at least `pen` wide, all in the output's own units.
    """
    there = [each for each in drawings if each]
    if not there:
        return Contrast(tuple(drawings), tuple(0.0 for _ in drawings), True)
    scale = common_scale(there, width, height)
    one = all(max(each.frame.width, each.frame.height) * scale >= smallest * max(width, height) for each in there)
    together = [matched(there) if len(there) > 1 else there] if one else [[each] for each in there]
    done = iter([pair for group in together for pair in _inked(group, width, height, letter, pen)])
    pairs = [next(done) if each else (None, 0.0) for each in drawings]
    return Contrast(tuple(each for each, _ in pairs), tuple(scale for _, scale in pairs), one)


def without_twins(drawings: Sequence[Drawing | None]) -> tuple[Drawing | None, ...]:
    """The drawings, but None for those that are the very same picture: twice the same is no contrast."""
    shown = [each.shapes for each in drawings if each]
    return tuple(each if each and shown.count(each.shapes) == 1 else None for each in drawings)


def _inked(drawings: Sequence[Drawing], width: float, height: float, letter: float, pen: float) -> list[tuple[Drawing, float]]:
    """The drawings with lettering and lines heavy enough for the room, each with the scale at which it then fits."""
    scale = common_scale(drawings, width, height)
    heavier = [_heavier(each, letter / scale, pen / scale) for each in drawings]
    scale = common_scale(heavier, width, height)
    return [(each, scale) for each in heavier]


def _heavier(drawing: Drawing, letter: float, pen: float) -> Drawing:
    """The drawing with lettering and pen of at least these, in µm; framing anew costs time, so only where it must be."""
    if drawing.letter_um >= letter and drawing.pen_um >= pen:
        return drawing
    return with_shapes(replace(drawing, letter_um=max(drawing.letter_um, letter), pen_um=max(drawing.pen_um, pen)), drawing.shapes)
