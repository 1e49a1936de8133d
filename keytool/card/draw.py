"""Measured sides as a PDF: vectors, embedded type and photographs, the same bytes for the same sides."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import UTC, datetime
from io import BytesIO
from typing import TYPE_CHECKING

from keytool.card.colours import FRAME, colour_of
from keytool.card.ink import BLACK, Bitmap, Heading, Mark, Panel, Picture, Rule, Turned, Words, marks
from keytool.card.inks import Ink
from keytool.card.plates import inked
from keytool.card.typeface import FAMILY, FILES
from keytool.figures import to_pdf

if TYPE_CHECKING:
    from fpdf import FPDF


def document(
    sides: Sequence[Iterable[Mark]], size: tuple[float, float], title: str, maker: str, date: str, ink: Ink, flip: str | None = None
) -> bytes:
    """The PDF with one page of exactly `size` mm for each side. `date` (YYYY-MM-DD) is written as the day it was made.

    `flip` is the edge the sheet is turned over between its sides, "long" or "short"; by default it is turned like a page.
    """
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
    # A viewer that shrinks to fit would make every scale bar a lie.
    edge = flip or ("short" if size[0] > size[1] else "long")
    pdf.viewer_preferences = ViewerPreferences(display_doc_title=True, print_scaling="None", duplex=f"DUPLEX_FLIP_{edge.upper()}_EDGE")
    outline = _Outline(pdf)
    for side in sides:
        pdf.add_page()
        pdf.set_font(FAMILY, "", 9)
        for mark in side:
            _put(pdf, mark, ink, outline)
    return bytes(pdf.output())


def _put(pdf: FPDF, mark: Mark, ink: Ink, outline: _Outline) -> None:
    match mark:
        case Words():
            pdf.set_font(FAMILY, "B" if mark.bold else "", mark.pt)
            pdf.set_text_color(colour_of(mark.colour, ink))
            pdf.text(mark.x, mark.y, mark.text)
        case Rule():
            pdf.set_draw_color(colour_of(mark.colour, ink))
            pdf.set_line_width(mark.weight if mark.exact else mark.weight * ink.rules)
            pdf.line(mark.x, mark.y, mark.x2, mark.y2)
        case Panel(reversed=True) if ink.framed:
            pdf.set_draw_color(BLACK)
            pdf.set_line_width(FRAME)
            half = FRAME / 2
            pdf.rect(mark.x + half, mark.y + half, mark.width - FRAME, mark.height - FRAME, "D", mark.radius > 0, mark.radius)
        case Panel():
            pdf.set_fill_color(BLACK)
            pdf.rect(mark.x, mark.y, mark.width, mark.height, "F", mark.radius > 0, mark.radius)
        case Turned():
            with pdf.rotation(180, mark.x + mark.width / 2, mark.y + mark.height / 2):
                for inside in marks(mark.pieces, mark.x, mark.y):
                    _put(pdf, inside, ink, outline)
        case Bitmap():
            # Without a description of its own: the words below it are the description, and with one fpdf2 would mark the
            # document as tagged although nothing else in it is, so that a screen reader would read nothing else.
            pdf.image(BytesIO(mark.file), mark.x, mark.y, mark.width, mark.height)
        case Heading():
            outline.add(mark)
        case Picture():
            to_pdf(pdf, inked(mark.drawing, ink, mark.mm_per_um), mark.x, mark.y, mark.mm_per_um, inks=ink.plates, bar=False)


class _Outline:
    """The document's outline, to jump by: what stands twice (a repeated card) is entered once."""

    def __init__(self, pdf: FPDF) -> None:
        self._pdf = pdf
        self._above = ""
        self._known: set[tuple[str, str]] = set()

    def add(self, heading: Heading) -> None:
        """Enter it with the page and height it stands at."""
        if heading.level == 0:
            self._above = heading.text
        entered = (self._above, heading.text)
        if entered in self._known:
            return
        self._known.add(entered)
        self._pdf.set_y(heading.y)
        self._pdf.start_section(heading.text, heading.level)
