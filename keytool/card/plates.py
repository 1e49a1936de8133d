"""Plates for a couplet: one pen, one scale, and one scale bar for all of them, lettered large enough for the card."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import sqrt

from keytool.figures import Drawing, Inks, matched
from keytool.figures.shapes import Leader, recoloured

INKS = Inks({"paper": "#000000", "accent": "#b0401c", "faint": "#6a6762"})
"""The writer leaves out a role that has no ink. Plates for the card give up `ink`, which their own bar is drawn in."""


def beside_each_other(drawings: Sequence[Drawing | None]) -> list[Drawing | None]:
    """The drawings with lines equally heavy in all and without lettering, to be drawn with `INKS`.

    A lead without a drawing keeps None. Leads with the very same drawing lose it: the same picture twice is no contrast.
    """
    shown = [each.shapes for each in drawings if each]
    drawings = [each if each and shown.count(each.shapes) == 1 else None for each in drawings]
    drawn = [each for each in drawings if each]
    inked = iter([_bare(each) for each in matched(drawn)] if drawn else [])
    return [next(inked) if each else None for each in drawings]


def largest(drawings: Sequence[Drawing]) -> float:
    """The size (µm) of the largest drawing: the side of a square as large, so that slim plates may stand taller than broad ones."""
    return max(sqrt(each.box.width * each.box.height) for each in drawings)


def _bare(drawing: Drawing) -> Drawing:
    """The picture alone: a plate's own lettering grows and shrinks with it, and would be too small to read on a card."""
    kept = (shape for shape in drawing.shapes if shape.role != "paper" and not isinstance(shape, Leader))
    shapes = tuple(recoloured(shape, "paper") if shape.role == "ink" else shape for shape in kept)
    return replace(drawing, shapes=shapes, box=drawing.frame)
