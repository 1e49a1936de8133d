"""The contact sheet: every drawing on PDF pages, each with its name and its own scale bar."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import UTC, date, datetime, time
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

from .contrast import contrast
from .pdf import to_pdf
from .sheet import Item

if TYPE_CHECKING:
    from fpdf import FPDF

_PAGE = (210.0, 297.0)
_MARGIN = 10.0
_COLUMNS = 6
_CELL = ((_PAGE[0] - 2 * _MARGIN) / _COLUMNS, 50.0)
_PLATE = (_CELL[0] - 3.0, _CELL[1] - 11.0)
_HEAD = 8.0
_FONT = "sheet"


def contact_sheet(items: Iterable[Item], font: Path, *, title: str, day: date) -> bytes:
    """The PDF, A4, six drawings to a row under the name of their group. `font` is a TrueType file; `day` is the document's date.

    Items without a drawing are listed by name at the end of their group, so that what is missing can be seen.
    """
    from fpdf import FPDF

    pdf = FPDF(unit="mm", format="A4")
    pdf.set_creation_date(datetime.combine(day, time(), tzinfo=UTC))
    pdf.set_title(title)
    pdf.set_auto_page_break(False)
    pdf.add_font(_FONT, "", str(font))
    pdf.set_font(_FONT, size=7)
    pdf.add_page()
    y = _heading(pdf, _MARGIN, title, 13)
    for group, members in groupby(items, key=lambda item: item.group):
        y = _group(pdf, group, list(members), y)
    return bytes(pdf.output())


def _group(pdf: FPDF, name: str, items: Sequence[Item], y: float) -> float:
    drawn = [item for item in items if item.drawing]
    missing = [item.name for item in items if not item.drawing]
    y = _heading(pdf, _room(pdf, y, _HEAD + (_CELL[1] if drawn else 0.0)), name, 9)
    for start in range(0, len(drawn), _COLUMNS):
        y = _room(pdf, y, _CELL[1])
        for column, item in enumerate(drawn[start : start + _COLUMNS]):
            _cell(pdf, item, _MARGIN + column * _CELL[0], y)
        y += _CELL[1]
    if missing:
        pdf.set_font_size(7)
        words = "No drawing: " + ", ".join(missing)
        y = _room(pdf, y, 3.2 * len(_folded(pdf, words)))
        for line in _folded(pdf, words):
            y = _room(pdf, y, 3.2)
            pdf.text(_MARGIN, y + 2.4, line)
            y += 3.2
        y += 2
    return y


def _cell(pdf: FPDF, item: Item, x: float, y: float) -> None:
    shown = contrast([item.drawing], *_PLATE, letter=1.9, pen=0.13)
    drawing, scale = shown.drawings[0], shown.scales[0]
    if drawing:
        to_pdf(pdf, drawing, x + (_CELL[0] - drawing.box.width * scale) / 2, y + _PLATE[1] - drawing.box.height * scale, scale)
    pdf.set_font_size(6.5)
    for k, line in enumerate(_folded(pdf, item.name, _CELL[0] - 3.0)[:3]):
        pdf.text(x + 1.5, y + _PLATE[1] + 3.4 + 2.8 * k, line)


def _heading(pdf: FPDF, y: float, text: str, size: float) -> float:
    pdf.set_font_size(size)
    pdf.text(_MARGIN, y + 5, text)
    return y + _HEAD


def _room(pdf: FPDF, y: float, height: float) -> float:
    """Where to go on: here, or at the top of a new page if so much does not fit."""
    if y + height <= _PAGE[1] - _MARGIN:
        return y
    pdf.add_page()
    return _MARGIN


def _folded(pdf: FPDF, text: str, width: float = _PAGE[0] - 2 * _MARGIN) -> list[str]:
    """The text in lines no wider than `width` mm."""
    lines = [""]
    for word in text.split():
        longer = f"{lines[-1]} {word}".strip()
        if pdf.get_string_width(longer) <= width or not lines[-1]:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
