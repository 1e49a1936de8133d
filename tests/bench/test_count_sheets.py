"""Count sheets: worked out and judged, as CSV and JSON without loss, the same in the page's script; and what is said of bad ones."""

from __future__ import annotations

import json
import math
import random
import shutil
import subprocess
import time
from pathlib import Path
from typing import Any

import pytest

from keytool.bench.darwin_core import TERMS, as_table
from keytool.bench.page_data import page_data
from keytool.bench.results import results, slip, with_slide_errors
from keytool.bench.results_json import record_results
from keytool.bench.sheet import NotASheet, Record, Sample, Setup, Slide, tidy
from keytool.bench.sheet_csv import COLUMNS, as_csv, from_csv
from keytool.bench.sheet_json import as_text, from_data, from_text
from keytool.bench.verdict import verdict
from keytool.library import Library
from tests.bench.record_cases import CASES

ASSETS = Path(__file__).parents[2] / "site" / "assets" / "bench"
NODE = shutil.which("node")
SETUP = Setup(18, 4, 40, 1, "g", 5, 0.05, 18, 18)


@pytest.fixture(scope="module")
def demo(library: Library) -> Record:
    return from_data(library.bench.demo, library)


def sheet(drops: list[dict[str, int]], fields: list[dict[str, int]], setup: Setup = SETUP) -> Sample:
    slides = [Slide(str(n), drop, tuple(fields) if n == 1 else ()) for n, drop in enumerate(drops or [None], 1)]
    return tidy(
        Sample("here", setup=setup, slides=tuple(slides), at_drop=("nematode", "ciliate"), at_field=("flagellate", "ciliate", "hypha"))
    )


def test_thirty_seven_in_twenty_fields_are_the_worked_chain(library: Library) -> None:  # worked independently: 428271 a gram of dry soil
    setup = Setup(18, 4, 40, 1, "mL", 5, 0.05, 18, 18, moisture=0.25, bulk_density=1.1)
    found = results(library, sheet([], [{"flagellate": 2}] * 17 + [{"flagellate": 1}] * 3, setup)).line("flagellate", "field")
    assert found is not None
    assert found.per_unit is not None
    assert (found.per_unit.value, found.per_unit.low, found.per_unit.high) == pytest.approx((428271, 301543, 590316), rel=1e-5)
    assert slip(setup).unit == "g dry"


def test_all_errors_together_are_wider_than_counting(library: Library) -> None:
    found = results(library, sheet([], [{"flagellate": 2}] * 20)).line("flagellate", "field")
    assert found is not None
    assert found.all_in is not None
    assert found.all_in.low < found.per_unit.low < found.per_unit.high < found.all_in.high
    none = with_slide_errors(found.per_unit.times(0).__class__(0, 0, 10), [0.1])
    assert (none.low, none.high > 10) == (0, True)


def test_parts_are_added_to_their_whole_and_entries_to_their_line(library: Library) -> None:
    found = results(library, sheet([{"plectus": 2, "nematode": 1, "other:thing": 4}], []))
    assert found.line("nematode", "drop").mean.total == 3
    assert found.line("bacterial-nematode", "drop").mean.total == 2
    assert found.line("other:thing", "drop").mean.total == 4


def test_what_was_not_set_up_is_not_worked_out(library: Library) -> None:
    found = results(library, sheet([{"nematode": 1}], [{"flagellate": 1}], Setup())).line("flagellate", "field")
    assert found.per_unit is found.per_ml is found.all_in is None
    assert found.mean.per_field.value == 1


def answers(library: Library, sample: Sample) -> dict[str, str]:
    return {each.rule.id: each.answer for each in verdict(library, sample)}


def test_a_rule_of_whole_drops_is_never_answered_by_fields(library: Library) -> None:
    many = sheet([], [{"ciliate": 0, "flagellate": 3}] * 30)
    assert answers(library, many)["ciliates-in-drop"] == "not-looked"
    assert answers(library, many)["grazer-in-field"] == "met"


def test_met_not_met_and_too_few(library: Library) -> None:
    assert answers(library, sheet([], [{"flagellate": 1}] * 4))["grazer-in-field"] == "too-few"
    assert answers(library, sheet([], [{}] * 12))["grazer-in-field"] == "not-met"
    assert answers(library, sheet([{"ciliate": 40}] * 3, []))["ciliates-in-drop"] == "not-met"
    assert answers(library, sheet([{"ciliate": 2}] * 3, []))["ciliates-in-drop"] == "met"
    assert answers(library, sheet([{"pratylenchus": 1}], []))["root-feeders"] == "seen"


def test_worms_not_told_leave_the_rule_of_good_worms_open(library: Library) -> None:
    untold = next(each for each in verdict(library, sheet([{"nematode": 5}] * 4, [])) if each.rule.id == "nematode-in-drop")
    assert (untold.answer, untold.sure, untold.at_most) == ("too-few", 0, 20)


def test_more_of_the_same_settles_what_is_open(library: Library) -> None:
    fields = [{"flagellate": 1 + n % 2} for n in range(8)]
    open_still = next(each for each in verdict(library, sheet([], fields)) if each.rule.id == "grazer-in-field")
    assert open_still.more is not None
    settled = sheet([], fields * (1 + math.ceil(open_still.more / 8)))
    assert answers(library, settled)["grazer-in-field"] == "met"


def test_every_rule_is_common_practice_and_says_what_speaks_against_it(library: Library) -> None:
    for rule in library.bench.rules.values():
        assert {each.kind for each in rule.basis} == {"common-practice"}
        assert rule.against
    assert {"crop", "pest", "mark"} <= {*library.bench.cannot_say}


# ---- files ----


def random_record(seed: int, library: Library) -> Record:
    chance = random.Random(seed)
    nasty = ["=1+1", "+x", "@cmd", "-2", "'quoted", "'=x", "a,b;c\td", 'say "so"', "two\nlines", "Wiesenbeet Süd", "", "\ttab"]
    ids = [*list(library.bench.tally)[:6], "plectus", "other:=SUM(A1)", "other:grüne Kugel"]

    def tally() -> dict[str, int]:
        return {id: chance.choice([0, 1, 2, 50]) for id in chance.sample(ids, chance.randint(0, 5))}

    samples = []
    for n in range(chance.randint(1, 3)):
        slides = tuple(
            Slide(
                f"{nasty[chance.randrange(10)]}{m}", chance.choice([None, {}, tally()]), tuple(tally() for _ in range(chance.randint(0, 3)))
            )
            for m in range(chance.randint(0, 3))
        )
        texts = {name: chance.choice(nasty) for name in ("place", "kind", "taken", "looked", "by", "depth_cm", "note")}
        setup = Setup(
            18.5, 4, 40, 1.25, chance.choice(["g", "mL"]), 5, 0.05, 18, 22, chance.choice([None, 0.2]), None, chance.choice([None, 250.0])
        )
        samples.append(
            tidy(
                Sample(
                    f"{chance.choice(nasty)}{n}",
                    **texts,
                    invented=bool(n % 2),
                    setup=setup,
                    at_drop=("nematode",),
                    at_field=("ciliate",),
                    slides=slides,
                )
            )
        )
    return Record(tuple(samples))


@pytest.mark.parametrize("seed", range(25))
def test_a_record_loses_nothing_by_csv_and_json(seed: int, library: Library) -> None:
    record = random_record(seed, library)
    assert from_text(as_text(record), library) == record
    text = as_csv(record, library)
    assert from_csv(text.encode(), library) == record
    assert not any(line.split(",")[0].startswith(("=", "+", "@", "-")) for line in text.splitlines())
    assert ",=SUM" not in text


def test_the_demonstration_says_that_it_is_invented(demo: Record) -> None:
    assert all(each.invented and "invented" in each.place for each in demo.samples)
    assert len(demo.samples) == 2


def changed(library: Library, demo: Record, change: Any) -> bytes:
    return change(as_csv(Record(demo.samples[:1]), library)).encode("utf-8")


def test_spreadsheet_files_are_read_as_they_come(library: Library, demo: Record) -> None:
    one = Record(demo.samples[:1])
    assert from_csv(b"\xef\xbb\xbf" + as_csv(one, library).encode(), library) == one
    import csv
    import io

    rows = list(csv.reader(io.StringIO(as_csv(one, library))))
    out = io.StringIO()
    writer = csv.writer(out, delimiter=";", lineterminator="\n")
    at = COLUMNS.index("drop-mL")
    writer.writerows([[cell.replace(".", ",") if n == at and row[at] != "drop-mL" else cell for n, cell in enumerate(row)] for row in rows])
    assert from_csv(out.getvalue().encode(), library) == one
    assert from_csv(as_csv(one, library).replace("\r\n", "\n").encode(), library) == one


HEAD = "sample,slide,at,field,count-of,count"


BAD = [
    ("sample,slide,at,field,count\n", "row 1: the column 'count-of' is missing. Needed: sample, slide, at, field, count-of, count."),
    (f"{HEAD},colour\na,1,field,1,ciliate,2,red\n", "row 1, column 7: 'colour' is no column of a count sheet."),
    (f"{HEAD},count\n", "row 1: the column 'count' stands twice."),
    (f"{HEAD}\na,1,field,1,ciliate,-2\n", "row 2, column 6 (count): -2 is below none. Allowed: whole numbers from 0 to a million."),
    (f"{HEAD}\na,1,field,1,ciliate,2.5\n", "row 2, column 6 (count): 2.5 is not whole"),
    (f'{HEAD}\na,1,field,1,ciliate,"2,5"\n', "row 2, column 6 (count): 2,5 is not whole"),
    (f"{HEAD}\na,1,field,1,ciliate,many\n", "'many' is no count."),
    (f"{HEAD}\na,1,field,1,ciliate,\n", "(count): is empty. Write 0 for none seen"),
    (f"{HEAD}\na,1,field,1,cilliate,2\n", "row 2, column 5 (count-of): nothing is called 'cilliate'. Did you mean 'ciliate'?"),
    (f"{HEAD}\na,1,field,x,ciliate,2\n", "'x' is no field number. Allowed: 1, 2, 3"),
    (f"{HEAD}\na,1,drop,3,ciliate,2\n", "a whole drop has no field number."),
    (f"{HEAD}\na,1,eye,1,ciliate,2\n", "'eye' is not allowed. Allowed: drop"),
    (f"{HEAD}\na,1,field,1,ciliate,2\na,1,field,1,ciliate,3\n", "row 3, column 5 (count-of): 'ciliate' stands twice in this field."),
    (f"{HEAD}\na,1,field,1,ciliate,2,,,\n", "row 2: 9 cells, but 6 columns."),
    (f'{HEAD},drop-mL\na,1,field,1,ciliate,2,"0,05"\n', "'0,05' has a comma. Write 0.05, or part the cells by semicolons."),
    (
        f"{HEAD},drop-mL\na,1,field,1,ciliate,2,50 µL\n",
        "row 2, column 7 (drop-mL): '50 µL' is more than a number. The unit stands in the name of the column",
    ),
    (f"{HEAD},drop-mL\na,1,field,1,ciliate,2,0\n", "0 cannot be. Leave it empty where it is not known."),
    (
        f"{HEAD},drop-mL\na,1,field,1,ciliate,2,0.05\na,1,field,2,ciliate,2,0.04\n",
        "row 3, column 7 (drop-mL): 0.04 here, but 0.05 in row 2 of the same sample 'a'.",
    ),
    (f"{HEAD},soil-g,soil-mL\na,1,field,1,ciliate,2,1,1\n", "soil is given in g and in mL. Fill one of the two"),
    (f"{HEAD}\na,1,field,1,ciliate,1000001\n", "'1000001' is no count."),
    (f"{HEAD}\na,1,field,,ciliate,1\n", "'' is no field number."),
    (f"{HEAD}\na,1,,,ciliate,1\n", "row 2, column 3 (at): is empty. Allowed: drop, field."),
    (f"{HEAD},drop-mL\na,1,field,1,ciliate,2,0.05\na,1,field,2,ciliate,2,5e-2x\n", "row 3, column 7 (drop-mL): '5e-2x'"),
    (f"{HEAD},high-objective\na,1,field,1,ciliate,2,40\na,1,field,2,ciliate,2,10\n", "10 here, but 40 in row 2 of the same sample 'a'."),
    (f"{HEAD},place,invented\na,1,field,1,ciliate,2,north,maybe\n", "'maybe' is not allowed. Allowed: yes, or empty."),
    ("sample;slide;at;field;count-of;count;drop-mL\na;1;field;1;ciliate;2,5;0,05\n", "row 2, column 6 (count): 2,5 is not whole"),
    ("samples,slide,at,field,count-of,count\n", "Rename the column 'samples'?"),
]
"""Tables that are no sheet, and what must be said of each, by the command and by the page."""


@pytest.mark.parametrize(("text", "says"), BAD)
def test_a_bad_table_is_said_with_its_row_and_column(text: str, says: str, library: Library) -> None:
    with pytest.raises(NotASheet) as error:
        from_csv(text.encode(), library)
    assert says in str(error.value)


def test_many_faults_are_said_at_once_and_no_more_than_eight(library: Library) -> None:
    with pytest.raises(NotASheet) as error:
        from_csv((HEAD + "\n" + "a,1,field,1,nothing,x\n" * 30).encode(), library)
    assert str(error.value).count("row ") == 8
    assert "and 52 more." in str(error.value)


def test_what_is_no_text_is_refused(library: Library) -> None:
    for raw, says in (
        (b"PK\x03\x04\0\0", "not text"),
        (HEAD.encode() + b"\n\xff\xfe,1", "row 2: this is not UTF-8"),
        (b"a" * 20_000_001, "20 MB"),
    ):
        with pytest.raises(NotASheet, match=says):
            from_csv(raw, library)


def test_a_table_of_ten_megabytes_is_read_whole(library: Library) -> None:
    rows = [f"sample {n // 20000},1,field,{n % 20000 + 1},flagellate,{n % 7}" for n in range(120_000)]
    text = HEAD + ",note\n" + "\n".join(f"{row},{'a long note ' * 5}" for row in rows)
    assert len(text) > 10_000_000
    started = time.process_time()
    record = from_csv(text.encode(), library)
    assert sum(len(each.fields) for each in record.samples) == 120_000
    assert time.process_time() - started < 120  # seconds of a slow machine; it takes three


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("{", "this is not JSON"),
        ("[]", "This is not a count sheet"),
        ('{"wetmount-count": 1}', "'samples' is missing"),
        (
            '{"wetmount-count": 1, "samples": [{"slides": [{"fields": [{"ciliate": -1}]}]}]}',
            "sample 1, slide 1, field 1, 'ciliate': -1 is no count",
        ),
        ('{"wetmount-count": 1, "samples": [{"slides": [{"fields": [{"dragon": 1}]}]}]}', "nothing is called 'dragon'"),
        ('{"wetmount-count": 1, "samples": [{"setup": {"drop-ml": "x"}}]}', "'drop-ml' is 'x'. Allowed: a number above 0."),
    ],
)
def test_a_bad_record_is_said_with_its_place(text: str, says: str, library: Library) -> None:
    with pytest.raises(NotASheet) as error:
        from_text(text, library)
    assert says in str(error.value)


def test_darwin_core_keeps_its_pairs(demo: Record, library: Library) -> None:  # terms read in the TDWG list; pairs in its issue 338
    import csv
    import io

    rows = list(csv.DictReader(io.StringIO(as_table(demo, library))))
    assert tuple(rows[0]) == TERMS
    for row in rows:
        assert bool(row["organismQuantity"]) == bool(row["organismQuantityType"])
        assert bool(row["sampleSizeValue"]) == bool(row["sampleSizeUnit"])
        assert row["samplingEffort"]
        assert row["occurrenceStatus"] == ("absent" if row["individualCount"] == "0" else "present")
        assert "invented" in row["occurrenceRemarks"]


# ---- the page's script ----


def alike(one: Any, two: Any, where: str = "") -> None:
    if isinstance(one, dict):
        assert one.keys() == two.keys(), where
        for key in one:
            alike(one[key], two[key], f"{where}/{key}")
    elif isinstance(one, list):
        assert len(one) == len(two), where
        for n, (a, b) in enumerate(zip(one, two, strict=True)):
            alike(a, b, f"{where}/{n}")
    elif isinstance(one, float) or isinstance(two, float):
        assert one is not None and two is not None, where
        assert one == pytest.approx(two, rel=1e-9, abs=1e-12), where
    else:
        assert one == two, where


def test_recorded_cases_hold_in_python(library: Library) -> None:
    for case in json.loads(CASES.read_text("utf-8")):
        alike(case["gives"], json.loads(json.dumps(record_results(library, from_data(case["sheet"], library)))))


def in_node(script: str, *given: Any) -> Any:
    if not NODE:
        pytest.skip("there is no node")
    loads = "".join(f'require("{ASSETS / name}.js");' for name in ("distributions", "counts", "results", "sheet", "csv", "results-json"))
    text = loads + "var B=globalThis.wetmountBench;var given=JSON.parse(require('fs').readFileSync(0,'utf8'));" + script
    done = subprocess.run([NODE, "-e", text], input=json.dumps(given), capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def test_recorded_cases_hold_in_the_script(library: Library) -> None:
    cases = json.loads(CASES.read_text("utf-8"))
    gave = in_node("console.log(JSON.stringify(given[1].map(c=>B.resultsJson(given[0],c.sheet))))", page_data(library), cases)
    for case, found in zip(cases, gave, strict=True):
        alike({name: case["gives"][name] for name in ("samples", "differences")}, found)


def test_the_script_reads_and_writes_the_same_files(library: Library) -> None:
    records = [random_record(seed, library) for seed in range(12)]
    texts = [as_csv(each, library) for each in records]
    script = "console.log(JSON.stringify(given[1].map(t=>{var r=B.csv.fromCsv(t,given[0]);return [r,B.csv.toCsv(r,given[0])]})))"
    for record, text, (read, written) in zip(records, texts, in_node(script, page_data(library), texts), strict=True):
        assert from_data(read, library) == record
        assert from_csv(written.encode(), library) == record
        assert written == text


def test_the_script_says_of_every_bad_table_what_the_command_says(library: Library) -> None:
    script = "console.log(JSON.stringify(given[1].map(t=>{try{B.csv.fromCsv(t,given[0]);return ''}catch(e){return e.message}})))"
    for (text, says), said in zip(BAD, in_node(script, page_data(library), [text for text, _ in BAD]), strict=True):
        assert says in said
        with pytest.raises(NotASheet) as error:
            from_csv(text.encode(), library)
        command = str(error.value).split(" Did you mean")[0].split(" Rename")[0].split(" 'wetmount count --empty'")[0]
        assert command in said


def test_whole_numbers_with_a_point_and_the_first_line_of_spreadsheets_are_read(library: Library) -> None:
    text = "sep=;\r\n" + HEAD.replace(",", ";") + "\r\na;1;field;1;ciliate;3,0\r\na;1;field;2;ciliate;4.00\r\n"
    record = from_csv(text.encode(), library)
    assert record.samples[0].fields == ({"ciliate": 3}, {"ciliate": 4})
    read = in_node("console.log(JSON.stringify(B.csv.fromCsv(given[1],given[0])))", page_data(library), text)
    assert from_data(read, library) == record


def test_taking_back_undoes_every_step(library: Library) -> None:
    script = """
    var d=given[0], s=B.sheet.begin(d,{}), before=JSON.stringify([s.record,s.open]);
    B.sheet.tap(s,'nematode'); B.sheet.tap(s,'plectus'); B.sheet.done(s); B.sheet.tap(s,'ciliate'); B.sheet.done(s); B.sheet.newSlide(s); B.sheet.tap(s,'nematode');
    var whole=B.sheet.whole(s);
    while(B.sheet.takeBack(s)){}
    s.open={drop:s.open.drop&&Object.keys(s.open.drop).length?s.open.drop:null,field:s.open.field&&Object.keys(s.open.field).length?s.open.field:null};
    console.log(JSON.stringify([JSON.stringify([s.record,s.open])===before, whole]))"""
    same, whole = in_node(script, page_data(library))
    assert same
    record = from_data(whole, library)
    assert record.samples[0].drops == ({"nematode": 1, "plectus": 1}, {"nematode": 1})
    assert record.samples[0].fields == ({"ciliate": 1},)
