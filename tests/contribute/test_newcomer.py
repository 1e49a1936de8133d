"""A newcomer's run on the real library: Ilse Okafor of the Tarn End market garden adds an invented worm that collides."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from keytool.library import load
from keytool.library.model import Library
from tests.conftest import KEYDATA, everything_found
from tests.contribute.helping import run
from tests.contribute.test_new import words

WORM = (
    "--like",
    "aphelenchus",
    "--common",
    "Tarn End worm",
    "--summary",
    "An invented worm of the Tarn End market garden.",
    "--commonness",
    "rare",
    "--feeding",
    "fungal",
    "--within",
    "aphelenchid",
    "--contributor",
    "Ilse Okafor",
    "--reviewed",
    "2026-11-25",
    "--basis",
    "memory; invented",
    "--shows",
    "tail=blunt",
    "--shows",
    "spear-base=plain",
    "--shows",
    "resting-posture=spiral",
    "--yes",
)


@pytest.fixture(scope="module")
def library_of_ilse(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("tarn-end")
    shutil.copytree(KEYDATA, root / "keydata")
    return root


@pytest.fixture(scope="module")
def after(library_of_ilse: Path) -> Library:
    """The library after she was told of the collision, and added the couplet."""
    told = run(library_of_ilse, "new", "entry", *WORM)
    assert told.exit_code == 1
    said = words(told.output)
    assert "COLLISION: it comes out at Aphelenchus type, which does not hold Tarn End worm." in said
    assert "They differ in posture at rest (Tarn End worm: 'a spiral'; Aphelenchus type: 'nearly straight')." in said
    assert len(told.output.split()) < 600, "a page to read, not more"
    added = run(library_of_ilse, "new", "entry", *WORM, "--couplet", "--by", "resting-posture")
    assert added.exit_code == 0, added.output
    assert "Every check passes and every proof holds." in words(added.output)
    loaded = load(library_of_ilse)
    assert [each for each in everything_found(loaded) if each.severity.value == "problem"] == []
    return loaded.library


def test_the_key_now_ends_at_her_worm(after: Library) -> None:
    from keytool.contribute.keyed_out import keyed_out

    result = keyed_out(after, "tarn-end-worm")
    assert {way.end for way in result.ways if way.key == "nematode-mouthparts"} == {"tarn-end-worm"}
    assert {way.end for way in keyed_out(after, "aphelenchus").ways if way.key == "nematode-mouthparts"} == {"aphelenchus"}


def test_its_page_and_the_page_of_its_key_show_it(after: Library) -> None:
    from keytool.identify import ground
    from keytool.pages.entry_page import entry_page
    from keytool.pages.figure_files import FigureFiles
    from keytool.pages.whole_key_page import whole_key_page

    grounds = [ground(after, key) for key in after.keys.values()]
    assert "An invented worm of the Tarn End market garden." in entry_page(after, grounds, after.entries["tarn-end-worm"]).text
    page = whole_key_page(next(each for each in grounds if each.key.id == "nematode-mouthparts"), FigureFiles()).text
    assert "Tarn End worm" in page and "A spiral" in page


def test_the_card_holds_the_new_couplet(after: Library) -> None:
    import io

    from pypdf import PdfReader

    from keytool.card import card

    text = " ".join(page.extract_text() for page in PdfReader(io.BytesIO(card(after, ["nematode-mouthparts"], "A4"))).pages)
    assert "Tarn End worm" in text


def test_the_impact_report_says_what_it_changes_for_others(library_of_ilse: Path, after: Library) -> None:
    result = run(library_of_ilse, "impact", "--base", str(KEYDATA.parent), "--no-cards")
    assert result.exit_code == 0, result.output
    assert "- new: tarn-end-worm" in result.output
    assert "- new: nematode-mouthparts/tarn-end-worm-resting-posture" in result.output
    assert "## Questions" in result.output
    assert "ends elsewhere" not in result.output
