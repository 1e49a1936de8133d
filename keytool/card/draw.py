"""Measured sides as a PDF: vectors and embedded type only, the same bytes for the same sides."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from keytool.card.ink import Mark, Panel, Picture, Rule, Words
from keytool.card.plates import INKS
from keytool.card.typeface import FAMILY, FILES
from keytool.figures import to_pdf

if TYPE_CHECKING:
    from fpdf import FPDF


def document(sides: Sequence[Iterable[Mark]], size: tuple[float, float], title: str, maker: str, date: str) -> bytes:
    """The PDF with one page of exactly `size` mm for each side. `date` (YYYY-MM-DD) is written as the day it was made."""
    from fpdf import FPDF
    from fpdf.prefs import ViewerPreferences

    pdf = FPDF(unit="mm", format=size)
    pdf.set_auto_page_break(False)
    pdf.set_margin(0)
    for bold, file in FILES.items():
        pdf.add_font(FAMILY, "B" if bold else "", file)
    pdf.set_title(title)
    pdf.set_lang("en")
    pdf.set_author("wetmount founders and contributors")
    pdf.set_subject("Bench card. Content licensed CC BY 4.0.")
    pdf.set_creator(maker)
    pdf.set_producer(maker)
    pdf.set_creation_date(datetime.fromisoformat(date).replace(tzinfo=UTC))
    # A viewer that shrinks to fit would make every scale bar a lie. Turned like a page, the back stands upright.
    turned = "DUPLEX_FLIP_SHORT_EDGE" if size[0] > size[1] else "DUPLEX_FLIP_LONG_EDGE"
    pdf.viewer_preferences = ViewerPreferences(display_doc_title=True, print_scaling="None", duplex=turned)
    for side in sides:
        pdf.add_page()
        pdf.set_font(FAMILY, "", 9)
        for mark in side:
            _put(pdf, mark)
    return bytes(pdf.output())


def _put(pdf: FPDF, mark: Mark) -> None:
    match mark:
        case Words():
            pdf.set_font(FAMILY, "B" if mark.bold else "", mark.pt)
            pdf.set_text_color(mark.colour)
            pdf.text(mark.x, mark.y, mark.text)
        case Rule():
            pdf.set_draw_color(mark.colour)
            pdf.set_line_width(mark.weight)
            pdf.line(mark.x, mark.y, mark.x2, mark.y2)
        case Panel():
            pdf.set_fill_color(mark.colour)
            pdf.rect(mark.x, mark.y, mark.width, mark.height, "F", mark.radius > 0, mark.radius)
        case Picture():
            to_pdf(pdf, mark.drawing, mark.x, mark.y, mark.mm_per_um, inks=INKS)
