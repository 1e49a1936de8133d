"""A newcomer's whole way without editing a file by hand: the form, the file it gives, `wetmount take`, then page, card and impact."""

from __future__ import annotations

import io
import shutil
from pathlib import Path
from typing import Any

import pytest

from keytool.library import load
from tests.conftest import copy_mini, everything_found
from tests.contribute.helping import opened_form, part, run
from tests.contribute.test_form import fill

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def sent(browser: Any, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """The library, and what the form gave for an invented button with the couplet that parts it."""
    folder = tmp_path_factory.mktemp("form")
    root = part(copy_mini(folder / "mini"))
    (folder / "page").mkdir()
    with opened_form(browser, load(root), folder / "page") as form:
        fill(form)
        form.fill("#wm-width-low", "14")
        form.fill("#wm-width-high", "16")
        form.select_option("#wm-more", "light")
        form.check("input[name='shows-light'][value='shiny']")
        form.locator("[data-couplet] input[type='checkbox']").first.check()
        with form.expect_download() as download:
            form.get_by_role("button", name="Download the file").click()
        file = shutil.copy(download.value.path(), folder / download.value.suggested_filename)
    return root, Path(file)


@pytest.fixture(scope="module")
def after(sent: tuple[Path, Path]) -> Path:
    """The library once the file was taken over."""
    root, file = sent
    shutil.copytree(root / "keydata", root.parent / "before" / "keydata")
    done = run(root, "take", str(file), "--yes")
    assert done.exit_code == 0, done.output
    return root


def test_the_library_is_whole_and_every_proof_holds(after: Path) -> None:
    assert [each for each in everything_found(load(after)) if each.severity.value == "problem"] == []


def test_the_key_ends_at_it_in_the_words_of_the_form(after: Path, sent: tuple[Path, Path]) -> None:
    from keytool.contribute.keyed_out import keyed_out

    library = load(after).library
    assert {way.end for way in keyed_out(library, "tarn-end-button").ways if way.key == "buttons"} == {"tarn-end-button"}
    (couplet,) = (
        each for each in library.keys["buttons"].couplets.values() if "tarn-end-button" in {lead.end for lead in each.leads.values()}
    )
    assert couplet.characters == ("light",)
    assert couplet.asks in sent[1].read_text("utf-8")


def test_its_page_shows_it(after: Path) -> None:
    from keytool.identify import ground
    from keytool.pages.entry_page import entry_page

    library = load(after).library
    grounds = [ground(library, key) for key in library.keys.values()]
    assert "An invented button" in entry_page(library, grounds, library.entries["tarn-end-button"]).text


def test_the_card_of_its_key_holds_it(after: Path) -> None:
    from pypdf import PdfReader

    from keytool.card import card

    pages = PdfReader(io.BytesIO(card(load(after).library, ["buttons"], "A4"))).pages
    assert "Tarn End button" in " ".join(" ".join(page.extract_text() for page in pages).split())


def test_impact_says_what_it_did_to_others(after: Path) -> None:
    told = run(after, "impact", "--base", str(after.parent / "before"), "--no-cards")
    assert told.exit_code == 0, told.output
    assert "- new: tarn-end-button" in told.output
    assert "buttons/" in told.output
