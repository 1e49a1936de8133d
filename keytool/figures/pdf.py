"""Plates as vectors on a PDF page, through fpdf2's own drawing calls (no SVG import, no bitmaps)."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from .marks import SCALE_BAR, Lettering, Mark, marks
from .shapes import WASHES, Drawing, Role

if TYPE_CHECKING:
    from fpdf import FPDF
    from fpdf.drawing import PaintedPath

_POINTS_PER_MM = 72 / 25.4


@dataclass(frozen=True, slots=True)
class Inks:
    """The colours a role is printed in, as `#rrggbb`; a role that is missing is left out."""

    colours: dict[Role, str] = field(default_factory=lambda: {"ink": "#1a1816", "accent": "#b0401c", "faint": "#7d7a75", **WASHES})


def to_pdf(pdf: FPDF, drawing: Drawing, x_mm: float, y_mm: float, mm_per_um: float, *, inks: Inks | None = None, bar: bool = True) -> None:
    """Draw the plate with the top left of its box at (x_mm, y_mm), `mm_per_um` to scale; without `bar` the scale bar is left out.

    The document must count in millimetres. Lettering is set in the font the caller has chosen; font size and text
    colour are put back afterwards.
    """
    colours = (inks or Inks()).colours
    x0, y0 = x_mm - drawing.box.x * mm_per_um, y_mm - drawing.box.y * mm_per_um
    letters: list[Lettering] = []
    with pdf.drawing_context() as page:
        for mark in marks(drawing):
            if mark.role not in colours or (not bar and mark.part in SCALE_BAR):
                continue
            if isinstance(mark, Lettering):
                letters.append(mark)
            else:
                page.add_item(_path(mark, x0, y0, mm_per_um, colours[mark.role]), clone=False)
    for text in letters:
        _letter(pdf, text, x0, y0, mm_per_um, colours[text.role])


def _path(mark: Mark, x0: float, y0: float, k: float, colour: str) -> PaintedPath:
    from fpdf.drawing import PaintedPath

    path = PaintedPath()
    style = path.style
    style.fill_color = None if mark.width else colour
    style.stroke_color = colour if mark.width else None
    style.stroke_width = mark.width * k
    style.stroke_cap_style = "round"
    style.stroke_join_style = "round"
    style.auto_close = False  # a line that is open on the page stays open on paper
    for letter, values in mark.steps:
        at = [(y0 if i % 2 else x0) + v * k for i, v in enumerate(values)]
        match letter:
            case "M":
                path.move_to(*at)
            case "L":
                path.line_to(*at)
            case "C":
                path.curve_to(*at)
            case "Z":
                path.close()
    return path


def _letter(pdf: FPDF, text: Lettering, x0: float, y0: float, k: float, colour: str) -> None:
    size, before = pdf.font_size_pt, pdf.text_color
    pdf.set_font_size(text.size * k * _POINTS_PER_MM)
    pdf.set_text_color(*(int(colour[i : i + 2], 16) for i in (1, 3, 5)))
    shift = pdf.get_string_width(text.text) if text.anchor == "end" else 0.0
    pdf.text(x0 + text.x * k - shift, y0 + text.y * k, text.text)
    pdf.set_font_size(size)
    pdf.text_color = before
