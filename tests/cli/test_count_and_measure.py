"""`wetmount count` and `wetmount measure`, as people type them."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from keytool.cli import main


def run(*words: str) -> str:
    done = CliRunner().invoke(main, list(words))
    assert done.exit_code == 0, done.output
    return done.output


def refused(*words: str) -> str:
    done = CliRunner().invoke(main, list(words))
    assert done.exit_code != 0
    assert "Traceback" not in done.output
    return done.output


def test_the_demonstration_is_worked_out_judged_and_compared() -> None:
    said = run("count", "--demo")
    assert "Plot 3, spring (invented)" in said
    assert "under" in said
    assert "too few drops to say" in said
    assert "never added up" in said
    assert "Plot 3, autumn against Plot 3, spring" in said
    assert "licensed laboratory" in " ".join(said.split())


def test_an_empty_sheet_can_be_filled_in_and_read(tmp_path: Path) -> None:
    sheet = tmp_path / "sheet.csv"
    sheet.write_text(run("count", "--empty"), "utf-8")
    assert "name of the sample" in run("count", str(sheet))


def test_json_gives_numbers_intervals_and_constants() -> None:
    gave = json.loads(run("count", "--demo", "--json"))
    first = gave["samples"][0]["lines"][0]
    assert first["per-unit-of-soil"]["low"] < first["per-unit-of-soil"]["value"] < first["per-unit-of-soil"]["high"]
    assert gave["constants"]["drop-error"]["low"] < gave["constants"]["drop-error"]["high"]


def test_files_are_written_and_read_again(tmp_path: Path) -> None:
    table, records = tmp_path / "t.csv", tmp_path / "dwc.csv"
    run("count", "--demo", "--csv", str(table), "--darwin-core", str(records))
    assert run("count", str(table), "--json") == run("count", "--demo", "--json")
    assert records.read_text("utf-8").startswith("occurrenceID,basisOfRecord")


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_report_is_one_page_the_same_each_time_and_says_it_is_invented(tmp_path: Path, paper: str) -> None:
    pypdf = pytest.importorskip("pypdf")
    one, two = tmp_path / "1.pdf", tmp_path / "2.pdf"
    for each in (one, two):
        run("count", "--demo", "--report", str(each), "--paper", paper, "--sample", "Plot 3, autumn")
    assert one.read_bytes() == two.read_bytes()
    read = pypdf.PdfReader(one)
    text = read.pages[0].extract_text()
    assert len(read.pages) == 1
    assert "An invented sample" in text
    assert "What this cannot say" in text
    assert "Plot 3, autumn" in text
    assert not read.pages[0].images
    width = {"A4": 210, "Letter": 215.9}[paper]
    assert float(read.pages[0].mediabox.width) == pytest.approx(width / 25.4 * 72, abs=0.1)


def test_a_bad_sheet_is_refused_in_one_message(tmp_path: Path) -> None:
    bad = tmp_path / "bad.csv"
    bad.write_text("sample,slide,at,field,count-of,count\na,1,field,1,cilliate,-1\n", "utf-8")
    said = refused("count", str(bad))
    assert "row 2, column 6 (count): -1 is below none." in said
    assert "Did you mean 'ciliate'?" in said
    assert "Nothing was taken from it." in said


def test_what_is_missing_is_asked_for(tmp_path: Path) -> None:
    assert "Name a SHEET" in refused("count")
    assert "cannot be read" in refused("count", str(tmp_path / "none.csv"))
    assert "There is no sample 'x'" in refused("count", "--demo", "--sample", "x", "--report", str(tmp_path / "r.pdf"))
    assert "No paper is called 'B5'" in refused("count", "--demo", "--paper", "B5", "--report", str(tmp_path / "r.pdf"))
    assert not (tmp_path / "r.pdf").exists()


@pytest.mark.parametrize(
    ("words", "number", "wanted"),
    [
        ("field --field-number 18 --objective 40", "width-mm", 0.45),
        ("scale --stage-parts 10 --divisions 40 --read 13", "length-um", 32.5),
        ("depth --aperture 0.65 --objective 40", "resolution-um", 0.516154),
        ("dilution --soil 1 --total-ml 5", "one-in-a-drop", 100.0),
        ("fields --mean 2 --k 1.5 --precision 0.2", "fields", 112.043),
        ("missed --searched-mg 10 --per-g 20", "chance-of-none", 0.818731),
        ("compare --first 15 20 --second 30 20", "e-test-p", 0.0252537),
        ("mpn --level 3 3 0.1 --level 3 1 0.01 --level 3 0 0.001", "mpn", 42.7288),
        ("chamber --chamber improved-neubauer --square large --count 86 --squares 4 --factor 5", "per-ml", 1.075e6),
        ("hyphae --m-per-g 100 --widths-um 2 --widths-um 3 --widths-um 4", "carbon-ug-per-g", 78.203),
        ("bacterium --width-um 0.6 --length-um 1.8", "carbon-fg-allometric", 109.951),
        ("ratio --top 48 10 --bottom 60 9", "high", 1.32314),
        ("worm --length-um 800 --width-um 30", "fresh-ug", 0.45),
        ("indices Ba1=24 Ba2=52 Ba3=5 Fu2=18 Om4=9 Om5=3 Ca4=4 Pl2=14 Pl3=18", "ei", 61.9565),
        ("settle --seconds 60", "cleared-um", 30.4607),
        ("jiggle --diameter-um 1", "step-um", 1.30932),
    ],
)  # each from the sheet of worked examples that the tests of keytool.bench name
def test_each_sum_gives_the_worked_number_and_says_it_in_words(words: str, number: str, wanted: float) -> None:
    assert json.loads(run("measure", *words.split(), "--json"))[number] == pytest.approx(wanted, rel=1e-4)
    assert len(run("measure", *words.split())) > 20


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("field --field-number 0 --objective 40", "range"),
        ("chamber --chamber nonsuch --square large --count 1 --squares 1", "There is: improved-neubauer"),
        ("indices Xx1=3", "is no guild with its count. Allowed: Ba, Fu, Ca, Om or Pl"),
        ("mpn --level 3 4 0.1", "more positive than tubes"),
        ("compare --first 0 10 --second 0 10", "nothing to compare"),
        ("bacterium --width-um 2 --length-um 1", "less than the width"),
        ("field --field-number nan --objective 40", "nan cannot be. Allowed: a plain number above 0"),
        ("compare --first 3 1e-300 --second 5 2", "1e-300 cannot be"),
        ("hyphae --m-per-g 1e308", "1e308 cannot be"),
        ("dilution --soil 10 --total-ml 5", "less than the soil in it"),
    ],
)
def test_what_cannot_be_is_refused(words: str, says: str) -> None:
    assert says in refused("measure", *words.split())


def test_below_a_hundred_worms_it_warns() -> None:
    assert "Fewer than 100" in run("measure", "indices", "Ba2=10", "Fu2=4")


def test_none_in_a_chamber_is_under_and_never_nothing() -> None:  # exact Poisson limit of none, 3.689 over 0.2 mL, times 5
    said = run(
        "measure", "chamber", "--chamber", "sedgewick-rafter", "--square", "square", "--count", "0", "--squares", "200", "--factor", "5"
    )
    assert "None seen: under 92 in a mL" in said


def test_none_and_all_positive_tubes_have_one_end() -> None:
    assert "fewer than" in run("measure", "mpn", "--level", "3", "0", "0.1")
    assert "more than" in run("measure", "mpn", "--level", "3", "3", "0.1")
