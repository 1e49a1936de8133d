"""Drawings on a page: side by side at one scale, or a calm empty plate where there is none yet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from keytool.figures import contrast, to_svg
from keytool.figures.contrast import SMALLEST
from keytool.figures.shapes import Drawing
from keytool.pages.html import Html, el

LETTERS = 11.0
"""The least height (px) of the lettering of a scale bar, to be read at a dim bench."""
PORTRAIT = (300.0, 300.0)
"""Room for the drawing of an entry on its own page, px."""
FOLDER = "drawings"
"""Where drawings lie that are files of their own."""
FIXED = "color:#2b241b;--wm-accent:#9a3a14;--wm-paper:#fdf9ee"
"""The inks of a drawing in a file of its own, where the page's colours do not reach it; a page turns them over in a dim room."""
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
    shown = contrast(drawings, width, height, letter=LETTERS, pen=PEN, smallest=smallest)
    plates = (plate(each, scale, id) if each else empty() for each, scale, id in zip(shown.drawings, shown.scales, ids, strict=True))
    return Row(tuple(plates), shown.one_scale)


def single(drawing: Drawing | None, id: str, width: float, height: float) -> Html:
    """One plate as large as fits in `width` by `height` px."""
    return row([drawing], [id], width, height).plates[0]


@dataclass(frozen=True, slots=True)
class Portrait:
    """The drawing of an entry as its page and the sheet of all drawings show it: an `<svg>` element, and `scale` px to the µm."""

    svg: str
    drawing: Drawing
    scale: float

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in px."""
        return self.drawing.box.width * self.scale, self.drawing.box.height * self.scale


def portrait_path(entry: str) -> str:
    """Where the portrait of an entry lies."""
    return f"{FOLDER}/{entry}.svg"


@lru_cache(maxsize=1024)
def portrait(drawing: Drawing) -> Portrait:
    """The portrait of an entry. Two pages show it; it is written once."""
    shown = contrast([drawing], *PORTRAIT, letter=LETTERS, pen=PEN)
    inked, scale = shown.drawings[0] or drawing, shown.scales[0]
    return Portrait(to_svg(inked, scale, id_prefix="plate"), inked, scale)


def grouped(svg: str, id: str) -> tuple[str, str]:
    """An `<svg>` element as what stands before its marks, and its marks in a group that `<use>` can name."""
    start, end = svg.index("<g"), svg.rindex("</svg>")
    return svg[:start], f'<g id="{id}">\n{svg[start:end]}</g>'


def are_tall(drawings: Sequence[Drawing | None]) -> bool:
    """Whether all that is drawn is taller than wide."""
    return all(each.frame.height >= TALL * each.frame.width for each in drawings if each)


def plate(drawing: Drawing, scale: float, id: str) -> Html:
    """A drawing at `scale` px to the micrometre; the page may zoom all plates of a row alike by `--zoom`.

    Where light and dark are what it shows, it lies on light paper in a dark room too.
    """
    return _plate(to_svg(drawing, scale, id_prefix=id), drawing, scale)


def as_file(svg: str) -> bytes:
    """A drawing as a file of its own, in fixed inks."""
    return svg.replace("<svg ", f'<svg style="{FIXED}" ', 1).encode()


def lazy(drawing: Drawing, scale: float, src: str) -> Html:
    """A plate whose drawing lies in a file and is fetched when it comes into sight."""
    return _plate(el("img", src=src, alt=drawing.title, loading="lazy", decoding="async"), drawing, scale)


def empty() -> Html:
    """The plate of what is not drawn yet."""
    return el("span", el("span", "no drawing yet"), class_="wm-plate wm-plate-empty", data_search_exclude=True)


def _plate(svg: str, drawing: Drawing, scale: float) -> Html:
    size = f"--w:{drawing.box.width * scale:.1f}px;--h:{drawing.box.height * scale:.1f}px"
    return el("span", Html(svg), class_="wm-plate wm-lit" if drawing.tonal else "wm-plate", style=size, data_search_exclude=True)
