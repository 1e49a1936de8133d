"""A count sheet as CSV: one row for each thing looked for in each drop or field, with zeros; and back without loss.

Files of spreadsheets are read as they come: with or without a byte order mark, with comma, semicolon or tab between cells, and
in a semicolon file with comma decimals. What cannot be read is said with its row and column, and nothing of the file is taken.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from keytool.bench.lines import is_known, label
from keytool.bench.sheet import NotASheet, Record, Sample, Setup, Slide, tidy
from keytool.bench.sheet_json import MOST_BYTES, TEXTS
from keytool.library.messages import did_you_mean
from keytool.library.model import Library

NUMBERS = {
    "field-number-mm": "field_number_mm",
    "low-objective": "low",
    "high-objective": "high",
    "soil-g": "soil",
    "soil-mL": "soil",
    "total-mL": "total_ml",
    "drop-mL": "drop_ml",
    "slip-width-mm": "slip_width_mm",
    "slip-length-mm": "slip_length_mm",
    "moisture-g-per-g": "moisture",
    "bulk-density-g-per-mL": "bulk_density",
    "eyepiece-line-um": "line_um",
}
"""Columns with a number, the unit in their name, and what of the set-up they give. Of soil-g and soil-mL one is filled."""
NEEDED = ("sample", "slide", "at", "field", "count-of", "count")
COLUMNS = ("sample", *TEXTS[1:], "invented", *NUMBERS, "slide", "at", "field", "count-of", "name", "count")
STARTS_FORMULA = ("=", "+", "-", "@", "\t", "\r")
MOST_COUNT = 1_000_000
SHOWN = 8
"""So many faults of one file are said at once."""


def as_csv(record: Record, library: Library) -> str:
    """The sheet as CSV. A text that a spreadsheet would take for a formula gets an apostrophe in front, taken off again when read."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    for sample in map(tidy, record.samples):
        ahead = [safe(getattr(sample, name.replace("-", "_"))) for name in TEXTS]
        ahead += ["yes" if sample.invented else "", *_setup_cells(sample.setup)]
        for slide, at, number, tally in _units(sample):
            listed = {"drop": sample.at_drop, "field": sample.at_field, "": ()}[at]
            for id in listed or ("",):
                cells = [safe(id), safe(label(library, id)), tally.get(id, 0)] if id else ["", "", ""]
                writer.writerow([*ahead, safe(slide), at, number, *cells])
        unsaid = [(at, listed) for at, units, listed in _lists(sample) if not units]
        for at, listed in unsaid:  # looked for, though no drop or field has been ended yet
            for id in listed:
                writer.writerow([*ahead, "", at, "", safe(id), safe(label(library, id)), ""])
        if not any(True for _ in _units(sample)) and not any(listed for _, listed in unsaid):
            writer.writerow([*ahead, "", "", "", "", "", ""])
    return out.getvalue()


def _lists(sample: Sample) -> tuple[tuple[str, int, tuple[str, ...]], ...]:
    return ("drop", len(sample.drops), sample.at_drop), ("field", len(sample.fields), sample.at_field)


def _units(sample: Sample) -> Iterator[tuple[str, str, str, Mapping[str, int]]]:
    for slide in sample.slides:
        if slide.drop is not None:
            yield slide.name, "drop", "", slide.drop
        for n, each in enumerate(slide.fields, 1):
            yield slide.name, "field", str(n), each
        if slide.drop is None and not slide.fields:
            yield slide.name, "", "", {}


def _setup_cells(setup: Setup) -> list[str]:
    cells = []
    for column, name in NUMBERS.items():
        value = getattr(setup, name)
        other = column.startswith("soil-") and column != f"soil-{setup.soil_unit}"
        cells.append("" if value is None or other else repr(value).removesuffix(".0"))
    return cells


def safe(text: str) -> str:
    """A text that no spreadsheet takes for a formula."""
    return f"'{text}" if text.startswith((*STARTS_FORMULA, "'")) else text


def _plain(text: str) -> str:
    return text[1:] if text.startswith("'") and text[1:2] in (*STARTS_FORMULA, "'") else text


def from_csv(raw: bytes, library: Library) -> Record:
    """The record of a CSV file. Raises NotASheet with up to eight faults, each with its row and column."""
    rows, header, semicolons = _rows(raw)
    reading = _Reading(library, header, semicolons)
    for number, row in rows:
        reading.take(number, row)
    if reading.faults:
        more = len(reading.faults) - SHOWN
        said = "\n".join(reading.faults[:SHOWN]) + (f"\nand {more} more." if more > 0 else "")
        raise NotASheet(said)
    return reading.record()


def _rows(raw: bytes) -> tuple[Iterator[tuple[int, list[str]]], list[str], bool]:
    if len(raw) > MOST_BYTES:
        raise NotASheet(f"The file has {len(raw) / 1e6:.0f} MB. Allowed: up to {MOST_BYTES / 1e6:.0f} MB. Split it by sample.")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        raise NotASheet(f"row {line}: this is not UTF-8 text. Save the sheet as 'CSV UTF-8'.") from None
    if "\0" in text:
        raise NotASheet("This is not text but something else, such as a spreadsheet file. Save the sheet as CSV.")
    text = re.sub(r"\Asep=(.)\r?\n", r"", text)  # a line some spreadsheets put first
    first = text.split("\n", 1)[0]
    between = max(",;\t", key=first.count)
    csv.field_size_limit(MOST_BYTES)
    reader = csv.reader(io.StringIO(text), delimiter=between)
    header = [each.strip() for each in next(reader, [])]
    missing = [each for each in NEEDED if each not in header]
    if missing:
        near = [did_you_mean(each, header) for each in missing]
        tip = next((each.replace("Did you mean", "Rename the column") for each in near if each), "")
        raise NotASheet(
            f"row 1: the column '{missing[0]}' is missing. Needed: {', '.join(NEEDED)}. {tip}".rstrip()
            + " 'wetmount count --empty' prints a sheet to fill in."
        )
    twice = [each for n, each in enumerate(header) if each and each in header[:n]]
    if twice:
        raise NotASheet(f"row 1: the column '{twice[0]}' stands twice. Keep one of the two.")
    unknown = [each for each in header if each and each not in COLUMNS]
    if unknown:
        tip = did_you_mean(unknown[0], COLUMNS) or f"Allowed: {', '.join(COLUMNS)}."
        raise NotASheet(f"row 1, column {header.index(unknown[0]) + 1}: '{unknown[0]}' is no column of a count sheet. {tip}")
    return ((n, row) for n, row in enumerate(reader, 2) if any(cell.strip() for cell in row)), header, between == ";"


@dataclass
class _Growing:
    """One sample while its rows come in."""

    row: int
    texts: dict[str, str]
    invented: bool
    numbers: dict[str, Any]
    at_drop: dict[str, None] = field(default_factory=dict)
    at_field: dict[str, None] = field(default_factory=dict)
    drops: dict[str, dict[str, int] | None] = field(default_factory=dict)
    fields: dict[str, dict[int, dict[str, int]]] = field(default_factory=dict)


class _Reading:
    """Takes rows and gathers what is wrong with them."""

    def __init__(self, library: Library, header: list[str], semicolons: bool) -> None:
        self.library, self.semicolons = library, semicolons
        self.columns = {name: n for n, name in enumerate(header)}
        self.samples: dict[str, _Growing] = {}
        self.faults: list[str] = []

    def fault(self, row: int, column: str, message: str) -> None:
        """Notes what is wrong with one cell."""
        self.faults.append(f"row {row}, column {self.columns.get(column, 0) + 1} ({column}): {message}")

    def cell(self, row: list[str], column: str) -> str:
        """One cell as it was before it was made safe."""
        n = self.columns.get(column)
        return _plain(row[n].strip(" ")) if n is not None and n < len(row) else ""

    def take(self, number: int, row: list[str]) -> None:
        """One row."""
        if len(row) > len(self.columns):
            said = f"row {number}: {len(row)} cells, but {len(self.columns)} columns. A text with a comma in it needs quotes."
            self.faults.append(said)
            return
        sample = self.sample(number, row)
        slide, at, id = self.cell(row, "slide"), self.cell(row, "at"), self.cell(row, "count-of")
        if at not in ("drop", "field", ""):
            self.fault(number, "at", f"'{at}' is not allowed. Allowed: drop (all of it, at low power), field (at high power).")
            return
        count = self.count(number, row)
        if id and not is_known(self.library, id):
            known = [*self.library.bench.tally, *self.library.entries]
            tip = did_you_mean(id, known) or "For what is not in the library write other: and a name."
            self.fault(number, "count-of", f"nothing is called '{id[:40]}'. {tip}")
            return
        if not at:
            if slide:
                sample.drops.setdefault(slide, None)
            if id:
                self.fault(number, "at", "is empty. Allowed: drop, field.")
            return
        listed = sample.at_drop if at == "drop" else sample.at_field
        if id:
            listed.setdefault(id)
        into = self.unit(number, row, sample, slide, at)
        if into is None or not id or count is None:
            if into is not None and id and not self.cell(row, "count").strip():
                self.fault(number, "count", "is empty. Write 0 for none seen; take the row out where it was not looked for.")
            return
        if id in into:
            self.fault(number, "count-of", f"'{id}' stands twice in this {at}. Keep one of the two rows, or give the field another number.")
            return
        into[id] = count

    def unit(self, number: int, row: list[str], sample: _Growing, slide: str, at: str) -> dict[str, int] | None:
        """The tally a row belongs to. None for a row that only says what is looked for."""
        text = self.cell(row, "field")
        if at == "drop":
            if text:
                self.fault(number, "field", "a whole drop has no field number. Leave it empty.")
                return None
            if not slide and not self.cell(row, "count"):
                return None
            drop = sample.drops.get(slide)
            if drop is None:
                drop = sample.drops[slide] = {}
            return drop
        if not text and not self.cell(row, "count"):
            return None
        if not re.fullmatch(r"[1-9][0-9]{0,4}", text):
            self.fault(number, "field", f"'{text}' is no field number. Allowed: 1, 2, 3 and so on, in the order they were looked at.")
            return None
        sample.drops.setdefault(slide, None)
        return sample.fields.setdefault(slide, {}).setdefault(int(text), {})

    def count(self, number: int, row: list[str]) -> int | None:
        """The count of a row; None where it is empty or wrong."""
        text = self.cell(row, "count").strip()
        if not text:
            return None
        whole = re.sub(r"[.,]0+$", "", text)  # some programs write 3 as 3.0
        if re.fullmatch(r"[0-9]{1,7}", whole) and int(whole) <= MOST_COUNT:
            return int(whole)
        tip = "Allowed: whole numbers from 0 to a million. None seen is 0; what was not looked for is left empty."
        if re.fullmatch(r"-[0-9.,]+", text):
            self.fault(number, "count", f"{text} is below none. {tip}")
        elif re.fullmatch(r"[0-9]+[.,][0-9]+", text):
            self.fault(number, "count", f"{text} is not whole; half a thing is counted or it is not. {tip}")
        else:
            self.fault(number, "count", f"'{text[:40]}' is no count. {tip}")
        return None

    def sample(self, number: int, row: list[str]) -> _Growing:
        """The sample of a row, which must say the same of it as the rows before."""
        name = self.cell(row, "sample")
        texts = {each: self.cell(row, each) for each in TEXTS[1:]}
        invented = self.cell(row, "invented")
        if invented not in ("", "yes", "no"):
            self.fault(number, "invented", f"'{invented}' is not allowed. Allowed: yes, or empty.")
        known = self.samples.get(name)
        numbers = self.numbers(number, row)
        if known is None:
            known = self.samples[name] = _Growing(number, texts, invented == "yes", numbers)
            return known
        for column, value in (*texts.items(), *numbers.items()):
            before = known.texts.get(column) if column in known.texts else known.numbers.get(column)
            if value not in ("", None) and before != value and column in self.columns:
                was = "nothing" if before in ("", None) else _said(before)
                said = f"{_said(value)} here, but {was} in row {known.row} of the same sample '{name}'."
                self.fault(number, column, f"{said} A sample has one; give the other a name of its own.")
        return known

    def numbers(self, number: int, row: list[str]) -> dict[str, Any]:
        """The numbers of the set-up of a row, by column."""
        found = {column: self.number(number, row, column) for column in NUMBERS}
        if found["soil-g"] is not None and found["soil-mL"] is not None:
            self.fault(number, "soil-mL", "soil is given in g and in mL. Fill one of the two; bulk-density-g-per-mL joins them.")
        return found

    def number(self, number: int, row: list[str], column: str) -> float | None:
        """One number of the set-up; None where it is empty or wrong."""
        text = self.cell(row, column).strip()
        if not text:
            return None
        if self.semicolons and re.fullmatch(r"[0-9]+,[0-9]+", text):
            text = text.replace(",", ".")
        if re.fullmatch(r"[0-9]+(\.[0-9]+)?(e-?[0-9]{1,2})?", text):
            value = float(text)
            if value > 0 or column == "moisture-g-per-g":
                return value
            self.fault(number, column, "0 cannot be. Leave it empty where it is not known.")
        elif re.fullmatch(r"[0-9]+,[0-9]+", text):
            self.fault(number, column, f"'{text}' has a comma. Write {text.replace(',', '.')}, or part the cells by semicolons.")
        elif re.fullmatch(r"[0-9.,]+ *[^0-9.,].*", text):
            self.fault(
                number, column, f"'{text[:40]}' is more than a number. The unit stands in the name of the column; write the number alone."
            )
        else:
            self.fault(number, column, f"'{text[:40]}' is no number. Write plain digits, such as 18 or 0.05.")
        return None

    def record(self) -> Record:
        """The whole record."""
        return Record(tuple(_grown(name, each) for name, each in self.samples.items()))


def _said(value: Any) -> str:
    return f"{value:.12g}" if isinstance(value, float) else str(value)


def _grown(name: str, each: _Growing) -> Sample:
    numbers = each.numbers
    soil = numbers["soil-g"] if numbers["soil-g"] is not None else numbers["soil-mL"]
    setup = Setup(
        **{target: numbers[column] for column, target in NUMBERS.items() if target != "soil"},
        soil=soil,
        soil_unit="mL" if numbers["soil-mL"] is not None else "g",
    )
    sample = Sample(
        name=name,
        **{column.replace("-", "_"): value for column, value in each.texts.items()},
        invented=each.invented,
        setup=setup,
        at_drop=tuple(each.at_drop),
        at_field=tuple(each.at_field),
        slides=tuple(
            Slide(slide, drop, tuple(tally for _, tally in sorted(each.fields.get(slide, {}).items())))
            for slide, drop in each.drops.items()
        ),
    )
    return tidy(sample)
