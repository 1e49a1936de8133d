"""Plates for a card: one pen and one scale where they are compared, and one scale bar, lettered large enough for the card."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import sqrt

from keytool.card.inks import Ink
from keytool.figures import Drawing
from keytool.figures.contrast import SMALLEST, contrast, without_twins
from keytool.figures.shapes import Leader, Path, Shape, Swell

CELL = (24.0, 36.0)
"""The room drawings are matched for, mm: about what a couplet gives them."""
MOST_HEAVIER = 2.0
"""A line is not made thicker than this to reach the thinnest that prints, or a small thing would drown in ink."""


def beside_each_other(drawings: Sequence[Drawing | None], size_tells: bool = False) -> tuple[list[Drawing | None], bool]:
    """The drawings without lettering, and whether one scale shows them all.

    Where the smallest would be a speck beside the largest they are not put to one scale, unless `size_tells` them apart.
    A lead without a drawing keeps None. Leads with the very same drawing lose it: the same picture twice is no contrast.
    """
    ready = contrast(without_twins(drawings), *CELL, smallest=0.0 if size_tells else SMALLEST)
    return [each and bare(each) for each in ready.drawings], ready.one_scale


def set_side_by_side(drawings: Sequence[Drawing | None]) -> tuple[tuple[Drawing | None, ...], bool]:
    """The drawings of things compared, without lettering, and whether one scale shows them all: a giant may leave no room."""
    ready = contrast(drawings, *CELL)
    return tuple(each and bare(each) for each in ready.drawings), ready.one_scale


def largest(drawings: Sequence[Drawing]) -> float:
    """The size (µm) of the largest drawing: the side of a square as large, so that slim plates may stand taller than broad ones."""
    return max(sqrt(each.box.width * each.box.height) for each in drawings)


def bare(drawing: Drawing) -> Drawing:
    """The picture alone: a plate's own lettering grows and shrinks with it, and would be too small to read on a card."""
    shapes = tuple(shape for shape in drawing.shapes if not isinstance(shape, Leader))
    return replace(drawing, shapes=shapes, box=drawing.frame)


def inked(drawing: Drawing, ink: Ink, mm_per_um: float) -> Drawing:
    """The picture as a version of the card draws it at this scale: no line too thin to print, the accent heavier than the rest."""
    pen = drawing.pen_um * ink.lines
    pen = min(max(pen, ink.finest / mm_per_um), MOST_HEAVIER * pen)
    shapes = tuple(_heavier(each, ink.accent) if each.role == "accent" else each for each in drawing.shapes)
    return replace(drawing, pen_um=pen, shapes=shapes)


def _heavier(shape: Shape, by: float) -> Shape:
    match shape:
        case Path():
            return replace(shape, weight=shape.weight * by)
        case Swell():
            return replace(shape, weights=tuple(each * by for each in shape.weights))
        case _:
            return shape
