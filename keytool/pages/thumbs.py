"""The small picture of an entry, for rows and drawers: the drawing without its scale bar, its pen heavy enough for the size."""

from __future__ import annotations

from keytool.figures import contrast
from keytool.figures.library_figures import of_entry
from keytool.figures.shapes import Drawing
from keytool.library.model import Entry
from keytool.library.wording import number
from keytool.pages.figure_files import INKS, cut_to_frame
from keytool.pages.html import Html, el
from keytool.pages.page import Asset
from keytool.pages.page_writer import Writer

FOLDER = "drawings/small"
ROOM = (72.0, 84.0)
"""What a small picture is drawn for, px."""
PEN = 0.8
"""The least width (px) of one pen at that size."""
COARSE = 8
"""Its points lie on a grid of so many hundredths of a px."""


def small_path(entry: str) -> str:
    """Where the small picture of an entry lies."""
    return f"{FOLDER}/{entry}.svg"


def small_asset(entry: Entry, drawing: Drawing, source: str) -> Asset:
    """Its file."""
    shown = contrast([drawing], *ROOM, pen=PEN)
    svg = cut_to_frame(shown.drawings[0] or drawing, shown.scales[0], COARSE)
    return Asset(small_path(entry.id), svg.replace("<svg ", f'<svg style="{INKS}" ', 1).encode(), source)


def picture(writer: Writer, entry: Entry, *, alt: str = "") -> Html | None:
    """The small picture as an image, fetched when it comes into sight; None where there is none."""
    if entry.figure is None:
        return None
    return el("img", src=writer.href(small_path(entry.id)), alt=alt, loading="lazy", decoding="async")


def thumb(writer: Writer, entry: Entry) -> Html:
    """The small picture on its plate, for a row; a plain plate where there is no drawing."""
    return el("span", picture(writer, entry), class_="thumb")


PAIR = (50.0, 76.0)
"""Room for one of two that are shown as a pair, px on a phone."""
SPECK = 20.0
"""A picture whose longer side would come out shorter than this, px, is not put to one scale with a giant."""


def pair(writer: Writer, one: Entry, other: Entry) -> Html:
    """An entry and its double side by side, at one scale unless that makes one of them a speck; each with its size as drawn."""
    both = [(each, of_entry(writer.library, each)) for each in (one, other)]
    scales = [min(PAIR[0] / each.frame.width, PAIR[1] / each.frame.height) for _, each in both if each]
    common = min(scales, default=1.0)
    alike = len(scales) == 2 and all(common * max(each.frame.width, each.frame.height) >= SPECK for _, each in both if each)
    return el("span", *(_half(writer, entry, drawing, common if alike else None) for entry, drawing in both), class_="plate")


def _half(writer: Writer, entry: Entry, drawing: Drawing | None, scale: float | None) -> Html:
    if drawing is None:
        return el("span", el("em", "no drawing"))
    frame = drawing.frame
    at = scale or min(PAIR[0] / frame.width, PAIR[1] / frame.height)
    size = f"--w:{frame.width * at:.1f}px;--h:{frame.height * at:.1f}px"
    image = el("img", src=writer.href(small_path(entry.id)), alt=entry.name, loading="lazy", decoding="async", style=size)
    return el("span", image, el("em", length_words(max(frame.width, frame.height))))


def length_words(um: float) -> str:
    """A length to two figures: `240 µm`, `1.2 mm`."""
    value, unit = (um / 1000, "mm") if um >= 1000 else (um, "µm")
    return f"{number(float(f'{value:.2g}'))}\u00a0{unit}"
