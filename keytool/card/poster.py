"""A poster of what is met most, all at one scale: what lies in the field at 40x, or at 400x. For the wall beside the microscope."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from math import sqrt
from typing import TYPE_CHECKING

from keytool.card.papers import Paper
from keytool.card.typeface import FAMILY, FILES
from keytool.figures import draw, to_pdf
from keytool.figures.frame import length_label, round_length, with_shapes
from keytool.figures.in_field import is_in_field
from keytool.figures.shapes import Drawing
from keytool.figures.whole_body import is_worm_part, params_of, whole_of
from keytool.library.model import Entry, Library

if TYPE_CHECKING:
    from fpdf import FPDF

POSTERS = {paper.name: paper for paper in (Paper("A3", 297, 420), Paper("A2", 420, 594))}
"""The papers a poster is made for (ISO 216)."""
_BAND = {40: (140.0, 3500.0), 400: (0.0, 260.0)}
"""What is shown at each power, by the longest side (µm): at 40x what is more than a dot, at 400x what fits well into the field."""
_NOT_ONE_THING = ("group", "cannot-be-told")
_MET = ("very-common", "common", "occasional")
_EDGE, _GAP, _HEAD, _FOOT, _PEN = 10.0, 3.0, 24.0, 9.0, 0.11


@dataclass(frozen=True, slots=True)
class _Cell:
    name: str
    drawing: Drawing
    width: float
    height: float
    """Of the drawing on paper, mm."""


@dataclass(frozen=True, slots=True)
class Poster:
    """A finished poster: the PDF, the scale (µm to the mm), and the names of what is shown."""

    data: bytes
    um_per_mm: float
    shown: tuple[str, ...]


def poster(library: Library, paper: Paper, power: int) -> Poster:
    """The poster of everything met at that power (40 or 400), upright on that paper, at the largest scale at which all of it has room."""
    things = _things(library, power)
    size = _type_size(paper)
    for um_per_mm in _scales():
        rows = _rows([_cell(name, drawing, um_per_mm, size) for name, drawing in things], paper, size)
        if sum(_tall(row, size) for row in rows) <= paper.height - _HEAD - _FOOT - 2 * _EDGE:
            break
    data = _document(library, paper, power, um_per_mm, rows, size)
    return Poster(data, um_per_mm, tuple(name for name, _ in things))


def _scales() -> list[float]:
    """From large to small, in steps that can be read: 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8 and their tens."""
    return [step * ten for ten in (1, 10, 100) for step in (1, 1.5, 2, 2.5, 3, 4, 5, 6, 8)]


def _type_size(paper: Paper) -> float:
    return 6.5 * sqrt(paper.width / 297)


def _things(library: Library, power: int) -> list[tuple[str, Drawing]]:
    """Name and whole drawing of every single thing that is met and fits, the tallest first; of twins in the drawing, the first."""
    low, high = _BAND[power]
    out: list[tuple[str, Drawing]] = []
    seen = []
    for entry in library.entries.values():
        if not _is_met(entry) or (drawing := _whole(entry)) is None or drawing.shapes in seen:
            continue
        if low <= max(drawing.frame.width, drawing.frame.height) <= high:
            seen.append(drawing.shapes)
            out.append((entry.name, drawing))
    return sorted(out, key=lambda each: (-each[1].frame.height, each[0]))


def _whole(entry: Entry) -> Drawing | None:
    """The worm of a head; else the entry's own plate with nothing asked about."""
    if entry.figure is None or is_worm_part(entry.figure):
        return whole_of(entry, 0.0)
    return draw(entry.figure.draws, params_of(entry.figure, entry), title=entry.name)


def _is_met(entry: Entry) -> bool:
    met = entry.commonness is not None and entry.commonness in _MET
    return met and is_in_field(entry) and entry.kind not in _NOT_ONE_THING


def _cell(name: str, drawing: Drawing, um_per_mm: float, size: float) -> _Cell:
    """The drawing with a pen that can be printed at this scale, held back where a small thing would drown in it."""
    pen = min(max(drawing.pen_um, _PEN * um_per_mm), 2.2 * drawing.pen_um)
    inked = with_shapes(replace(drawing, pen_um=pen), drawing.shapes) if pen > drawing.pen_um else drawing
    return _Cell(name, inked, inked.frame.width / um_per_mm, inked.frame.height / um_per_mm)


def _label(name: str, size: float) -> list[str]:
    """The name in lines short enough to stand under a small drawing."""
    lines = [""]
    for word in name.split():
        longer = f"{lines[-1]} {word}".strip()
        if len(longer) > 15 and lines[-1]:
            lines.append(word)
        else:
            lines[-1] = longer
    return lines


def _wide(cell: _Cell, size: float) -> float:
    letters = max(len(line) for line in _label(cell.name, size))
    return max(cell.width, 0.50 * size * 25.4 / 72 * letters) + _GAP


def _line(size: float) -> float:
    return 1.15 * size * 25.4 / 72


def _tall(row: Sequence[_Cell], size: float) -> float:
    lines = max(len(_label(cell.name, size)) for cell in row)
    return max(cell.height for cell in row) + lines * _line(size) + 1.2 + _GAP


def _rows(cells: Sequence[_Cell], paper: Paper, size: float) -> list[list[_Cell]]:
    """Shelves, filled from the left; a cell wider than the paper has a shelf of its own and makes the scale too large."""
    room = paper.width - 2 * _EDGE
    rows: list[list[_Cell]] = [[]]
    used = 0.0
    for cell in cells:
        wide = _wide(cell, size)
        if rows[-1] and used + wide > room:
            rows.append([])
            used = 0.0
        rows[-1].append(cell)
        used += wide if wide <= room else 1e6
    return rows


def _document(library: Library, paper: Paper, power: int, um_per_mm: float, rows: list[list[_Cell]], size: float) -> bytes:
    from fpdf import FPDF
    from fpdf.prefs import ViewerPreferences

    pdf = FPDF(unit="mm", format=(paper.width, paper.height))
    pdf.set_auto_page_break(False)
    pdf.set_margin(0)
    for bold, file in FILES.items():
        pdf.add_font(FAMILY, "B" if bold else "", file)
    newest = max((each.reviewed for each in library.entries.values()), default="2026-01-01")
    pdf.set_creation_date(datetime.fromisoformat(newest).replace(tzinfo=UTC))
    pdf.set_title(f"Met at {power}×, at one scale")
    pdf.set_lang("en")
    pdf.set_author("wetmount founders and contributors")
    pdf.set_subject("Poster. Content licensed CC BY 4.0.")
    pdf.viewer_preferences = ViewerPreferences(display_doc_title=True, print_scaling="None")
    pdf.add_page()
    _heading(pdf, paper, power, um_per_mm)
    y = _EDGE + _HEAD
    spare = paper.height - _HEAD - _FOOT - 2 * _EDGE - sum(_tall(row, size) for row in rows)
    for row in rows:
        _shelf(pdf, row, y, paper, um_per_mm, size)
        y += _tall(row, size) + max(0.0, spare) / len(rows)
    pdf.set_font(FAMILY, "", 7)
    pdf.text(
        _EDGE,
        paper.height - _EDGE + 3,
        "Drawn, not photographed; each at the middle of the sizes that wetmount "
        "gives for it, so the next one may be half or twice as large. "
        "CC BY 4.0, wetmount.",
    )
    return bytes(pdf.output())


def _heading(pdf: FPDF, paper: Paper, power: int, um_per_mm: float) -> None:
    pdf.set_font(FAMILY, "B", 26)
    pdf.text(_EDGE, _EDGE + 8, f"What is that?  Met at {power}×")
    pdf.set_font(FAMILY, "", 10)
    pdf.text(_EDGE, _EDGE + 15, f"All at one scale: 1 mm on this paper is {um_per_mm:g} µm. A larger thing is larger; a dot is a dot.")
    bar = round_length(50 * um_per_mm)
    long = bar / um_per_mm
    x, y = paper.width - _EDGE - long, _EDGE + 8
    pdf.set_line_width(0.8)
    pdf.line(x, y, x + long, y)
    pdf.set_font(FAMILY, "", 10)
    pdf.text(x, y + 5, f"{length_label(bar)} ({long:.0f} mm)")
    pdf.set_line_width(0.2)


def _shelf(pdf: FPDF, row: Sequence[_Cell], y: float, paper: Paper, um_per_mm: float, size: float) -> None:
    """One shelf: the drawings stand on a common floor, the names below; what is left of the width is shared out."""
    room = paper.width - 2 * _EDGE
    widths = [_wide(cell, size) for cell in row]
    extra = (room - sum(widths)) / len(row) if sum(widths) > 0.7 * room else 0.0
    floor = y + max(cell.height for cell in row)
    x, k = _EDGE, 1 / um_per_mm
    for cell, wide in zip(row, widths, strict=True):
        middle = x + (wide + extra) / 2
        box, frame = cell.drawing.box, cell.drawing.frame
        to_pdf(
            pdf, cell.drawing, middle - cell.width / 2 - (frame.x - box.x) * k, floor - cell.height - (frame.y - box.y) * k, k, bar=False
        )
        pdf.set_font(FAMILY, "", size)
        for number, line in enumerate(_label(cell.name, size)):
            pdf.text(middle - pdf.get_string_width(line) / 2, floor + 1.2 + (number + 0.8) * _line(size), line)
        x += wide + extra
