"""`wetmount count`: a count sheet as CSV or JSON, worked out, judged, and reported."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

if TYPE_CHECKING:
    from keytool.bench.sheet import Record
    from keytool.cli.terminal import Terminal
    from keytool.library.model import Library


@click.command("count", short_help="Work out a count sheet: per gram, with intervals, and the rules of the bench.")
@click.argument("sheet", required=False, type=click.Path(path_type=Path, dir_okay=False))
@click.option("--demo", is_flag=True, help="Use the demonstration sheet, of an invented place.")
@click.option("--empty", is_flag=True, help="Print an empty sheet to fill in, as CSV.")
@click.option("--json", "as_json", is_flag=True, help="Print results as JSON.")
@click.option("--csv", "to_csv", type=click.Path(path_type=Path, dir_okay=False), help="Write the sheet as CSV.")
@click.option(
    "--darwin-core", "to_dwc", type=click.Path(path_type=Path, dir_okay=False), help="Write the observations as a Darwin Core table."
)
@click.option("--report", type=click.Path(path_type=Path, dir_okay=False), help="Write a page for the grower, as PDF.")
@click.option("--sample", "named_sample", help="Report on this sample only. Default: the first.")
@click.option("--against", help="Another sample of the sheet, such as an earlier date, drawn beside it on the report.")
@click.option("--paper", default="A4", show_default=True, help="Paper of the report: A4 or Letter.")
@click.pass_obj
def count_command(
    named: Path | None,
    sheet: Path | None,
    demo: bool,
    empty: bool,
    as_json: bool,
    to_csv: Path | None,
    to_dwc: Path | None,
    report: Path | None,
    named_sample: str | None,
    against: str | None,
    paper: str,
) -> None:
    """Work out SHEET, a CSV file or the JSON that the count page saves.

    You get each kind per drop or field and per gram, with the interval that counting leaves open, and the rules of the bench,
    each met, not met, or too few to say.
    """
    from keytool.bench.sheet import NotASheet
    from keytool.bench.sheet_csv import as_csv
    from keytool.cli.opening import library
    from keytool.cli.terminal import Terminal

    everything = library(named)
    if empty:
        click.echo(_empty_sheet(everything), nl=False)
        return
    if demo is (sheet is not None):
        raise click.UsageError("Name a SHEET, or say --demo or --empty.")
    try:
        record = _read(sheet, everything)
    except NotASheet as error:
        where = f"{sheet}: " if sheet else ""
        raise click.ClickException(f"{where}{error}\nNothing was taken from it.") from None
    if not record.samples:
        raise click.ClickException("The sheet holds no sample. 'wetmount count --empty' prints one to fill in.")
    terminal = Terminal()
    if to_csv:
        _write(to_csv, as_csv(record, everything).encode("utf-8"))
    if to_dwc:
        from keytool.bench.darwin_core import as_table

        _write(to_dwc, as_table(record, everything).encode("utf-8"))
    if report:
        _report(report, record, everything, named_sample, against, paper)
    if as_json:
        from keytool.bench.results_json import record_results

        terminal.raw(json.dumps(record_results(everything, record), ensure_ascii=False, indent=1))
        return
    for sample in record.samples:
        _tell(terminal, everything, sample)
    for one, two in zip(record.samples, record.samples[1:], strict=False):
        _tell_difference(terminal, everything, one, two)
    for each in (to_csv, to_dwc, report):
        if each:
            terminal.say(f"Written: {each}.")


def _read(sheet: Path | None, library: Library) -> Record:
    from keytool.bench.sheet import NotASheet
    from keytool.bench.sheet_csv import from_csv
    from keytool.bench.sheet_json import MOST_BYTES, from_data, from_text

    if sheet is None:
        return from_data(library.bench.demo, library)
    try:
        if sheet.stat().st_size > MOST_BYTES:
            raise NotASheet(f"it has {sheet.stat().st_size / 1e6:.0f} MB. Allowed: up to {MOST_BYTES / 1e6:.0f} MB. Split it by sample.")
        raw = sheet.read_bytes()
    except OSError as error:
        raise click.ClickException(f"'{sheet}' cannot be read: {error.strerror}.") from None
    if raw.lstrip(b"\xef\xbb\xbf \r\n\t")[:1] == b"{":
        try:
            return from_text(raw.decode("utf-8-sig"), library)
        except UnicodeDecodeError:
            raise NotASheet("this is not UTF-8 text.") from None
    return from_csv(raw, library)


def _write(path: Path, content: bytes) -> None:
    from keytool.library.save import save

    try:
        save(path, content)
    except OSError as error:
        raise click.ClickException(f"'{path}' cannot be written: {error.strerror}.") from None


def _empty_sheet(library: Library) -> str:
    from keytool.bench.sheet import Record, Sample, Setup, Slide
    from keytool.bench.sheet_csv import as_csv

    at_once = [line for line in library.bench.tally.values() if line.at_once]
    fields = tuple(line.id for line in at_once if "field" in line.at)
    sample = Sample(
        name="name of the sample",
        setup=Setup(18, 4, 40, 1, "g", 5, 0.05, 22, 22),
        at_drop=tuple(line.id for line in at_once if "drop" in line.at),
        at_field=fields,
        slides=(Slide("1", {}, ({}, {})),),
    )
    return as_csv(Record((sample,)), library)


def _report(path: Path, record: Record, library: Library, wanted: str | None, against: str | None, paper: str) -> None:
    from keytool.report import PAPERS, report_pdf

    names = [each.name for each in record.samples]
    for each in (wanted, against):
        if each is not None and each not in names:
            raise click.UsageError(f"There is no sample '{each}'. There is: {'; '.join(names[:12])}.")
    if paper not in PAPERS:
        raise click.UsageError(f"No paper is called '{paper}'. There is: {', '.join(PAPERS)}.")
    sample = record.samples[names.index(wanted) if wanted is not None else 0]
    other = record.samples[names.index(against)] if against is not None else None
    if other is sample:
        raise click.UsageError(f"--against: '{against}' is the sample the report is of. Name another: {'; '.join(names[:12])}.")
    _write(path, report_pdf(library, sample, paper, other))


def _tell(terminal: Terminal, library: Library, sample: Any) -> None:
    from keytool.bench.report_words import answer, counted, units
    from keytool.bench.results import results
    from keytool.bench.verdict import verdict
    from keytool.bench.wording import between, estimate, figures

    found = results(library, sample)
    terminal.say(terminal.bold(f"{sample.name}{' (invented)' if sample.invented else ''}"))
    about = [
        each
        for each in (
            sample.place,
            sample.taken,
            f"{len(sample.drops)} whole {units(len(sample.drops), 'drop').partition(' ')[2]}, {units(len(sample.fields), 'field')}",
        )
        if each
    ]
    terminal.say(". ".join(about) + ".")
    made = found.slip
    if made.film_mm and made.field_ml and made.field_mm:
        terminal.say(
            f"Field {figures(made.field_mm * 1000)} µm across, film {figures(made.film_mm * 1000, 3)} µm deep, "
            f"{made.field_ml:.2g} mL under one field."
        )
    for at, title in (("drop", "In whole drops"), ("field", "In fields")):
        lines = [each for each in found.lines if each.at == at]
        if lines:
            per = f"in 1 {made.unit}" if lines[0].per_unit else f"per {at}"
            terminal.say()
            terminal.say(f"{title}: counted, about how many {per}, and what the count leaves open (95 in 100)")
        for each in lines:
            of = each.per_unit or each.mean.per_field
            clumped = "  clumped" if each.mean.widened else ""
            terminal.raw(f"  {each.label[:28]:<28} {each.mean.total:>6}  {estimate(of):>16}  {between(of)}{clumped}")
    terminal.say()
    terminal.say("Rules of the bench. Common practice, no published source; never added up.")
    for outcome in verdict(library, sample):
        rests_on = counted(outcome)
        terminal.say(f"{outcome.rule.asks}: {rests_on + '. ' if rests_on else ''}{terminal.bold(answer(outcome))}.", indent=2)
        if outcome.more:
            terminal.say(f"About {units(outcome.more, outcome.rule.per)} more like these would settle it.", indent=4)
    terminal.say()
    terminal.say("What this cannot say:")
    from keytool.library.wording import plain

    for limit in library.bench.cannot_say.values():
        terminal.say(plain(library, limit.text), indent=2)
    terminal.say()


def _tell_difference(terminal: Terminal, library: Library, one: Any, two: Any) -> None:
    from keytool.bench.difference import differences
    from keytool.bench.wording import ratio_words

    found = differences(library, one, two)
    if not found:
        return
    terminal.say(terminal.bold(f"{two.name} against {one.name}"))
    for each in found:
        name = f"{each.label}, {'drops' if each.first.at == 'drop' else 'fields'}"
        terminal.raw(f"  {name[:28]:<28} {ratio_words(each.comparison.ratio)}")
    terminal.say("Two slides of one jar tell only how slides scatter. A difference between two plots needs several samples of each.")
