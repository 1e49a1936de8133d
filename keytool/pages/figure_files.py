"""Drawings as files of their own: fetched when they come into sight, written once however many pages show them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from hashlib import sha256

from keytool.figures import contrast, to_svg
from keytool.figures.contrast import SMALLEST
from keytool.figures.frame import with_shapes
from keytool.figures.shapes import Drawing
from keytool.pages.html import Html, el
from keytool.pages.page import Asset
from keytool.pages.page_writer import Writer

FOLDER = "figures"
LETTERS = 11.0
"""The least height (px) of the lettering of a scale bar, to be read at a dim bench."""
PEN = 0.95
"""The least width (px) of one pen."""
INKS = "color:#2b241b;--wm-accent:#9a3a14;--wm-paper:#fdf9ee"
"""The inks of every drawing. No page recolours one: in the dark it lies on a plate of dimmed paper and multiplies with it."""
_LEFT_OUT = re.compile(r"<(title|desc)\b.*?</\1>\n?|\s(?:role|class|aria-labelledby|data-part)=\"[^\"]*\"", re.DOTALL)
"""What an `<img>` has no use for: words (they stand in its `alt`), and the names of parts."""
_ID = "f"


_WORDS = re.compile(r"<text\b.*?</text>\n?|<(g|path|polygon) [^>]*data-part=\"scale-[^>]*(?:/>|>.*?</\1>)\n?", re.DOTALL)
"""The lettering of a drawing and its scale bar."""


def bare(svg: str) -> str:
    """A drawing without its words, its scale bar and the names of its parts."""
    return _LEFT_OUT.sub("", _WORDS.sub("", svg))


def cut_to_frame(drawing: Drawing, scale: float, coarse: float = 1) -> str:
    """A drawing at `scale` px to the µm, bare and cut to its frame: as wide and high as what is drawn.

    With `coarse` points lie on a grid that many hundredths of a px wide: small pictures need no finer one, and weigh less.
    """
    frame, box, k = drawing.frame, drawing.box, scale / coarse
    view = " ".join(f"{each * k:.2f}" for each in (frame.x - box.x, frame.y - box.y, frame.width, frame.height))
    svg = re.sub(r'viewBox="[^"]*"', f'viewBox="{view}"', bare(to_svg(drawing, k, id_prefix=_ID)), count=1)
    size = f' width="{frame.width * scale:.1f}" height="{frame.height * scale:.1f}"'
    svg = re.sub(r' width="[^"]*" height="[^"]*"', size, svg, count=1)
    return re.sub(r"(?<![\d.])0\.(?=\d)", ".", svg) if coarse > 1 else svg


@dataclass(frozen=True, slots=True)
class Row:
    """The plates of drawings shown together, in order (None where there is no drawing), and whether they are all at one scale."""

    plates: tuple[Html | None, ...]
    one_scale: bool


@dataclass(frozen=True, slots=True)
class Bare:
    """A thing without its scale bar: its `<img>`, and how wide and high it is in µm."""

    image: Html
    width: float
    height: float


class FigureFiles:
    """Gathers the drawings that pages show, each as one file named after what is in it."""

    def __init__(self) -> None:
        self._files: dict[str, Asset] = {}

    @property
    def assets(self) -> list[Asset]:
        """Every file gathered so far, by name."""
        return [self._files[path] for path in sorted(self._files)]

    def path(self, drawing: Drawing, scale: float, *, cut: bool = False) -> str:
        """The path in the site of a drawing at `scale` px to the µm; the file is gathered. With `cut` it is without its scale bar."""
        svg = cut_to_frame(drawing, scale) if cut else _LEFT_OUT.sub("", to_svg(drawing, scale, id_prefix=_ID))
        content = svg.replace("<svg ", f'<svg style="{INKS}" ', 1).encode()
        path = f"{FOLDER}/{sha256(content).hexdigest()[:12]}.svg"
        self._files.setdefault(path, Asset(path, content, "keydata"))
        return path

    def true_size(self, writer: Writer, drawing: Drawing, scale: float, *, pen: float = PEN, now: bool = False) -> Bare:
        """The thing itself, without bar or lettering: `scale` px to the µm, no line finer than `pen` px."""
        inked = drawing
        if drawing.pen_um < pen / scale:
            inked = with_shapes(replace(drawing, pen_um=pen / scale), drawing.shapes)
        frame = inked.frame
        width, height = max(1.0, frame.width * scale), max(1.0, frame.height * scale)
        src = writer.href(self.path(inked, scale, cut=True))
        image = el("img", src=src, alt="", width=f"{width:.0f}", height=f"{height:.0f}", loading=None if now else "lazy")
        return Bare(image, frame.width, frame.height)

    def img(self, writer: Writer, drawing: Drawing, scale: float, *, alt: str = "", now: bool = False) -> Html:
        """The drawing as an `<img>` at `scale` px to the µm, fetched when it comes into sight, or at once where it is sure to be seen.

        `alt` is empty where words beside it say what is drawn.
        """
        return el(
            "img",
            src=writer.href(self.path(drawing, scale)),
            alt=alt,
            width=f"{drawing.box.width * scale:.0f}",
            height=f"{drawing.box.height * scale:.0f}",
            loading=None if now else "lazy",
            decoding=None if now else "async",
        )

    def plate(self, writer: Writer, drawing: Drawing, scale: float, *, alt: str = "", now: bool = False) -> Html:
        """The drawing on its paper; a page may zoom all plates of a row alike by `--zoom`."""
        size = f"--w:{drawing.box.width * scale:.1f}px;--h:{drawing.box.height * scale:.1f}px"
        return el("span", self.img(writer, drawing, scale, alt=alt, now=now), class_="plate drawn", style=size, data_search_exclude=True)

    def row(
        self,
        writer: Writer,
        drawings: Sequence[Drawing | None],
        width: float,
        height: float,
        *,
        smallest: float = SMALLEST,
        now: bool = False,
    ) -> Row:
        """The plates of drawings shown together, each within `width` by `height` px.

        They share one scale unless the smallest could then no longer be seen.
        """
        shown = contrast(drawings, width, height, letter=LETTERS, pen=PEN, smallest=smallest)
        plates = (
            self.plate(writer, each, scale, now=now) if each else None for each, scale in zip(shown.drawings, shown.scales, strict=True)
        )
        return Row(tuple(plates), shown.one_scale)
