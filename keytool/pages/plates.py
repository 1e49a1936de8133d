"""Drawings on a page: side by side at one scale, or a calm empty plate where there is none yet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from keytool.figures import common_scale, matched, to_svg
from keytool.figures.frame import with_shapes
from keytool.figures.shapes import Drawing
from keytool.pages.html import Html, el

SMALLEST = 0.2
"""A drawing whose longer side would come out smaller than this share of its room is not put to one scale with a giant."""
LETTERS = 11.0
"""The least height (px) of the lettering of a scale bar, to be read at a dim bench."""
PEN = 0.95
"""The least width (px) of one pen."""
TALL = 1.35
"""Drawings this much taller than wide stand better side by side than one below the other."""


@dataclass(frozen=True, slots=True)
class Row:
    """The plates of drawings shown together, in order, and whether they are all at one scale."""

    plates: tuple[Html, ...]
    one_scale: bool


def row(drawings: Sequence[Drawing | None], ids: Sequence[str], width: float, height: float, smallest: float = SMALLEST) -> Row:
    """The plates of drawings shown together, each within `width` by `height` px.

    They share one scale unless the smallest could then no longer be seen.
    """
    there = [each for each in drawings if each]
    if not there:
        return Row(tuple(empty() for _ in drawings), True)
    scale = common_scale(there, width, height)
    one = all(max(each.frame.width, each.frame.height) * scale >= smallest * max(width, height) for each in there)
    together = [matched(there) if len(there) > 1 else there] if one else [[each] for each in there]
    groups = [_inked(each, width, height) for each in together]
    scaled = iter([(drawing, scale) for group, scale in groups for drawing in group])
    return Row(tuple(plate(*next(scaled), id) if each else empty() for each, id in zip(drawings, ids, strict=True)), one)


def single(drawing: Drawing | None, id: str, width: float, height: float) -> Html:
    """One plate as large as fits in `width` by `height` px."""
    return row([drawing], [id], width, height).plates[0]


def are_tall(drawings: Sequence[Drawing | None]) -> bool:
    """Whether all that is drawn is taller than wide."""
    return all(each.frame.height >= TALL * each.frame.width for each in drawings if each)


def plate(drawing: Drawing, scale: float, id: str) -> Html:
    """A drawing at `scale` px to the micrometre; the page may zoom all plates of a row alike by `--zoom`.

    Where light and dark are what it shows, it lies on light paper in a dark room too.
    """
    size = f"--w:{drawing.box.width * scale:.1f}px;--h:{drawing.box.height * scale:.1f}px"
    looks = "wm-plate wm-lit" if drawing.tonal else "wm-plate"
    return el("span", Html(to_svg(drawing, scale, id_prefix=id)), class_=looks, style=size, data_search_exclude=True)


def empty() -> Html:
    """The plate of what is not drawn yet."""
    return el("span", el("span", "no drawing yet"), class_="wm-plate wm-plate-empty", data_search_exclude=True)


def _inked(drawings: Sequence[Drawing], width: float, height: float) -> tuple[list[Drawing], float]:
    """The drawings with lettering and lines heavy enough for this room, and the scale at which they then fit."""
    scale = common_scale(drawings, width, height)
    heavier = [_heavier(each, LETTERS / scale, PEN / scale) for each in drawings]
    return heavier, common_scale(heavier, width, height)


def _heavier(drawing: Drawing, letter: float, pen: float) -> Drawing:
    """The drawing with lettering and pen of at least these, in µm; framing anew costs time, so only where it must be."""
    if drawing.letter_um >= letter and drawing.pen_um >= pen:
        return drawing
    return with_shapes(replace(drawing, letter_um=max(drawing.letter_um, letter), pen_um=max(drawing.pen_um, pen)), drawing.shapes)
