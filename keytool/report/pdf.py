"""The page as PDF: vectors only, one side, the same bytes for the same sheet."""

from __future__ import annotations

import datetime
import os
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from keytool.bench import special
from keytool.bench.counts import Interval
from keytool.bench.difference import Difference, differences
from keytool.bench.report_words import (
    answer,
    counted,
    good_to,
    most_counted,
    next_steps,
    precision_words,
    summary,
    twice_counted,
    units,
)
from keytool.bench.results import LineResult, SampleResult, results
from keytool.bench.sheet import Sample
from keytool.bench.verdict import Outcome, verdict
from keytool.bench.wording import between, estimate, figures, sooner
from keytool.card.typeface import FAMILY, FILES
from keytool.figures import to_pdf
from keytool.figures.library_figures import of_entry
from keytool.library.model import Library
from keytool.library.wording import plain
from keytool.report.plot import INK, RULE, Axis, decades, from_zero, interval_bar, precision_curve

if TYPE_CHECKING:
    from fpdf import FPDF

PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
"""Paper by name: width and height in mm."""
SIDE = 18.0
SOFT = (99, 87, 63)
UNIT = {"g": "gram of soil", "mL": "millilitre of soil", "g dry": "gram of dry soil"}
MOST_PICTURES = 4
PICTURE_MM = 19.0
"""Height kept for the drawings of what was met most."""
MOST_LINES = 16
"""More lines of the tally than this are not set; the rest is said by number."""


def report_pdf(library: Library, sample: Sample, paper: str = "A4", against: Sample | None = None) -> bytes:
    """The page for one sample, always one side: where all does not fit, drawings go first, then the curve, then lines of the tally.

    `against` is another date or place, drawn as a thin line below each thick one.
    """
    everything = Kept(pictures=True, curve=True, lines=MOST_LINES)
    without = replace(everything, pictures=False)
    for kept in (everything, without, replace(without, curve=False), Kept(False, False, 10), Kept(False, False, 6)):
        pdf, fits = _set(library, sample, PAPERS[paper], kept, against)
        if fits:
            break
    return bytes(pdf.output())


@dataclass(frozen=True, slots=True)
class Kept:
    """What is set of the parts that can be done without: drawings, the curve of precision, so many lines of the tally."""

    pictures: bool
    curve: bool
    lines: int


def _set(library: Library, sample: Sample, size: tuple[float, float], kept: Kept, against: Sample | None) -> tuple[FPDF, bool]:
    from fpdf import FPDF

    pdf = FPDF(unit="mm", format=size)
    pdf.set_auto_page_break(False)
    pdf.set_creation_date(datetime.datetime.fromtimestamp(int(os.environ.get("SOURCE_DATE_EPOCH", "0")), tz=datetime.UTC))
    pdf.set_title(f"{sample.name}: what was met in this soil")
    pdf.set_lang("en")
    for bold, file in FILES.items():
        pdf.add_font(FAMILY, "B" if bold else "", file)
    pdf.add_page()
    found, outcomes = results(library, sample), verdict(library, sample)
    page = _Page(pdf, *size)
    page.head(sample)
    page.words(summary(library, found) or ("No drop and no field is done yet.",))
    if kept.pictures:
        page.pictures(library, found)
    page.lines(found, kept.lines, against.name if against else "", differences(library, against, sample) if against else ())
    page.rules(outcomes)
    limits = [plain(library, each.text) for each in library.bench.cannot_say.values()]
    left_ends = page.columns("What to do next", next_steps(outcomes), "What this cannot say", limits)
    if kept.curve:
        page.precision(most_counted(found), left_ends)
    fits = page.y <= size[1] - 16
    page.foot(library, sample, found)
    return pdf, fits


def _before(difference: Difference | None, per_unit: bool) -> Interval | None:
    """The interval of the other sample, in the unit of the page."""
    if difference is None:
        return None
    return difference.first.per_unit if per_unit else difference.first.mean.per_field


class _Page:
    """Sets one part below the other."""

    def __init__(self, pdf: FPDF, width: float, height: float) -> None:
        self.pdf, self.height = pdf, height
        self.inner = width - 2 * SIDE
        self.y = 15.0

    def text(
        self,
        words: str,
        size: float,
        *,
        bold: bool = False,
        colour: tuple[int, int, int] = INK,
        x: float = SIDE,
        width: float = 0.0,
        gap: float = 0.0,
    ) -> None:
        """A paragraph from the current height on."""
        self.pdf.set_font(FAMILY, "B" if bold else "", size)
        self.pdf.set_text_color(*colour)
        self.pdf.set_xy(x, self.y)
        self.pdf.multi_cell(width or self.inner, size * 0.46, words, new_x="LEFT", new_y="NEXT", align="L")
        self.y = self.pdf.get_y() + gap

    def rule(self, gap: float = 2.0, weight: float = 0.15, colour: tuple[int, int, int] = RULE) -> None:
        """A line across."""
        self.pdf.set_draw_color(*colour)
        self.pdf.set_line_width(weight)
        self.pdf.line(SIDE, self.y, SIDE + self.inner, self.y)
        self.y += gap

    def head(self, sample: Sample) -> None:
        """What, where, when, by whom."""
        self.text("What was met in this soil", 10, colour=SOFT)
        self.text(sample.name or "A sample", 20, bold=True, gap=0.6)
        said = [
            sample.place,
            f"taken {sample.taken}" if sample.taken else "",
            f"{sample.depth_cm} cm deep" if sample.depth_cm else "",
            f"looked at {sample.looked}" if sample.looked else "",
            f"counted by {sample.by}" if sample.by else "",
        ]
        if any(said):
            self.text(", ".join(each for each in said if each) + ".", 8.5, colour=SOFT, gap=0.4)
        if sample.invented:
            self.text("An invented sample, to show the sheet.", 9, bold=True)
        self.y += 1.5
        self.rule(2.2, 0.35, INK)

    def words(self, sentences: tuple[str, ...]) -> None:
        """Paragraphs to be read."""
        for each in sentences:
            self.text(each, 10.5, gap=1.0)
        self.y += 1.5

    def pictures(self, library: Library, found: SampleResult) -> None:
        """What was met most, drawn, each with a bar of its own scale."""
        met = sorted(
            (each for each in found.lines if each.mean.total and each.id in library.bench.tally), key=lambda each: -each.mean.total
        )
        shown: dict[str, str] = {}
        for each in met:
            line = library.bench.tally[each.id]
            shown.setdefault(line.part_of or line.id, line.shows)
        places = list(shown.items())[:MOST_PICTURES]
        if not places:
            return
        step = self.inner / len(places)
        for n, (id, entry) in enumerate(places):
            drawing = of_entry(library, library.entries[entry])
            if drawing is None:
                continue
            scale = min(PICTURE_MM / drawing.box.height, (step - 6) / drawing.box.width)
            middle = SIDE + step * (n + 0.5)
            self.pdf.set_font(FAMILY, "", 7)
            to_pdf(self.pdf, drawing, middle - drawing.box.width * scale / 2, self.y + (PICTURE_MM - drawing.box.height * scale) / 2, scale)
            label = library.bench.tally[id].label
            self.pdf.set_font(FAMILY, "", 7.5)
            self.pdf.set_text_color(*SOFT)
            self.pdf.text(middle - self.pdf.get_string_width(label) / 2, self.y + PICTURE_MM + 3.5, label)
        self.y += PICTURE_MM + 7

    def lines(self, found: SampleResult, most: int, other: str, differ: tuple[Difference, ...]) -> None:
        """Each line of the tally with its interval, and below it that of the other sample where there is one."""
        if not found.lines:
            return
        per_unit = all(each.per_unit for each in found.lines)
        shown = found.lines[:most]
        intervals = [each.per_unit if per_unit and each.per_unit else each.mean.per_field for each in shown]
        before = {(each.second.id, each.second.at): each for each in differ if each.per_unit is per_unit}
        behind = [_before(before.get((each.id, each.at)), per_unit) for each in shown]
        axis = decades([*intervals, *(each for each in behind if each)])
        self.text(f"In one {UNIT[found.slip.unit]}" if per_unit else "In one drop or field", 12, bold=True, gap=0.8)
        x = (SIDE, SIDE + 42, SIDE + 71, SIDE + 99, SIDE + self.inner - 38)
        self._axis_labels(axis, x[3], x[4] - x[3] - 3)
        self.rule(0.4)
        tall = 6.0 if before else 5.2
        for each, interval, then in zip(shown, intervals, behind, strict=True):
            middle = self.y + tall / 2
            bar = middle - (1.1 if then else 0)
            self._cell(each.label, x[0], middle, 9.5)
            self._cell(f"{each.mean.total} in {units(each.mean.fields, each.at)}", x[1], middle, 8, SOFT)
            self._cell(estimate(interval), x[3] - 4, middle, 9.5, right=True)
            interval_bar(self.pdf, interval, axis, x[3], bar, x[4] - x[3] - 3)
            self._cell(between(interval), SIDE + self.inner, bar, 8, SOFT, right=True)
            if then:
                interval_bar(self.pdf, then, axis, x[3], middle + 1.6, x[4] - x[3] - 3, thin=True)
                self._cell(sooner(before[each.id, each.at].comparison.ratio), SIDE + self.inner, middle + 1.8, 7, SOFT, right=True)
            self.y += tall
            self.rule(0.2)
        rest = len(found.lines) - len(shown)
        said = [
            f"Thin lines below: {other}." if before else "",
            "A thick line holds the true number 95 times in 100; a broken one: none seen, so fewer than that.",
            "Each mark to the right is ten times more. Drop and spoon may be off as well: read the numbers as sizes, not as exact.",
            twice_counted(found),
            f"{rest} more lines are in the file." if rest else "",
        ]
        self.y += 1
        self.text(" ".join(each for each in said if each), 7.5, colour=SOFT, gap=3)

    def rules(self, outcomes: tuple[Outcome, ...]) -> None:
        """The rules of the bench, each held against its own axis."""
        self.text("Held against the rules of the bench", 12, bold=True, gap=0.8)
        self.rule(0.4)
        for each in outcomes:
            middle = self.y + 2.9
            self._cell(each.rule.asks, SIDE, middle, 8.4)
            self._cell(counted(each), SIDE + 84, middle, 6.8, SOFT)
            if each.answer != "not-looked":
                most = max(each.rule.value * 2.5, each.interval.high * 1.05 if each.interval.high < 1e12 else 0.0, 2.0)
                interval_bar(self.pdf, each.interval, from_zero(most), SIDE + 119, middle, 20, each.rule.value or None)
            self._mark(each, SIDE + 143.5, middle)
            self._cell(answer(each), SIDE + 146, middle, 8.2)
            self.y += 5.8
            self.rule(0.2)
        said = (
            "Common practice at the bench; no published source stands behind these rules. They are not added up: a soil has no single mark."
        )
        self.y += 1
        self.text(said, 7.5, colour=SOFT, gap=3)

    def columns(self, left: str, left_words: tuple[str, ...], right: str, right_words: list[str]) -> float:
        """Two parts beside each other. Gives the height at which the left one ends."""
        half, top = (self.inner - 8) / 2, self.y
        ends = []
        for title, words, x in ((left, left_words, SIDE), (right, right_words, SIDE + half + 8)):
            self.y = top
            self.text(title, 12, bold=True, x=x, width=half, gap=0.8)
            for each in words:
                self.text(each, 8.5, x=x, width=half, gap=0.6)
            ends.append(self.y)
        self.y = max(ends)
        return ends[0]

    def precision(self, line: LineResult | None, begin: float) -> None:
        """How far the number counted most is good to, against how many were looked at: below the left column."""
        if line is None:
            return
        deviate, ends = special.normal_quantile(0.975), self.y
        self.y = begin + 2
        half = (self.inner - 8) / 2
        self.text(precision_words(line, deviate), 8.5, width=half, gap=1.5)
        most = 4 * line.mean.fields
        box = (SIDE + 10, self.y, half - 14, 10.0)
        precision_curve(self.pdf, lambda n: good_to(line, deviate, n), line.mean.fields, most, box)
        for level, words in ((0.0, "± 100 %"), (0.5, "± 50 %"), (1.0, "exact")):
            self._cell(words, box[0] - 1, box[1] + box[3] * level, 6.5, SOFT, right=True)
        self._cell(str(line.mean.fields), box[0] + box[2] / 4 - 1, box[1] + box[3] + 2.2, 6.5, SOFT)
        self._cell(units(most, line.at), box[0] + box[2], box[1] + box[3] + 2.2, 6.5, SOFT, right=True)
        self.y = max(ends, box[1] + box[3] + 4)

    def foot(self, library: Library, sample: Sample, found: SampleResult) -> None:
        """How the slide was made, and which library it was named by."""
        setup, made = sample.setup, found.slip
        said = [
            f"{figures(setup.soil, 3)} {setup.soil_unit} made up to {figures(setup.total_ml, 3)} mL"
            if setup.soil and setup.total_ml
            else "",
            f"drop {figures(setup.drop_ml, 3)} mL" if setup.drop_ml else "",
            f"slip {figures(setup.slip_width_mm, 3)} × {figures(setup.slip_length_mm or 0, 3)} mm" if setup.slip_width_mm else "",
            f"field {figures(made.field_mm * 1000, 3)} µm" if made.field_mm else "",
            f"{units(len(sample.drops), 'drop')}, {units(len(sample.fields), 'field')}",
        ]
        self.y = max(self.y + 2, self.height - 15)
        self.rule(1.2, 0.25, INK)
        self.text(", ".join(each for each in said if each) + f".  wetmount {library.version}", 7, colour=SOFT)

    def _cell(self, words: str, x: float, middle: float, size: float, colour: tuple[int, int, int] = INK, *, right: bool = False) -> None:
        self.pdf.set_font(FAMILY, "", size)
        self.pdf.set_text_color(*colour)
        shift = self.pdf.get_string_width(words) if right else 0.0
        self.pdf.text(x - shift, middle + size * 0.125, words)

    def _axis_labels(self, axis: Axis, x: float, width: float) -> None:
        every = -(-len(axis.ticks) // 4)
        for n, tick in enumerate(axis.ticks):
            if n % every == 0:
                self.pdf.set_font(FAMILY, "", 7)
                self.pdf.set_text_color(*SOFT)
                words = figures(tick)
                self.pdf.text(x + width * axis.at(tick) - self.pdf.get_string_width(words) / 2, self.y - 1, words)

    def _mark(self, outcome: Outcome, x: float, middle: float) -> None:
        """A round mark: full when met or seen, half when open, crossed when not met, empty when none was seen."""
        self.pdf.set_draw_color(*INK)
        self.pdf.set_line_width(0.25)
        self.pdf.set_fill_color(*INK)
        full = outcome.answer in ("met", "seen")
        self.pdf.ellipse(x - 1.1, middle - 1.1, 2.2, 2.2, style="DF" if full else "D")
        if outcome.answer == "too-few":
            self.pdf.solid_arc(x - 1.1, middle - 1.1, 2.2, 90, 270, style="F")
        if outcome.answer == "not-met":
            self.pdf.line(x - 1.5, middle + 1.5, x + 1.5, middle - 1.5)
