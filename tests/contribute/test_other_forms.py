"""The smaller forms: look-alikes, a state, a couplet and what goes with a photograph, each giving what the command makes of the same."""

from __future__ import annotations

import shlex
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from keytool.contribute.draft import file_text
from keytool.contribute.form import form_data
from keytool.contribute.look_alikes import worth_comparing
from keytool.contribute.page_slots import SCRIPTS
from keytool.library import Loaded, load
from tests.conftest import copy_mini, everything_found
from tests.contribute.helping import SCRIPT_FOLDER, is_large_and_named, opened_form, part, run, taken, typed

pytestmark = pytest.mark.browser


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return part(copy_mini(tmp_path / "mini"))


@pytest.fixture
def form(browser: Any, root: Path, tmp_path: Path) -> Iterator[Any]:
    (tmp_path / "page").mkdir()
    with opened_form(browser, load(root), tmp_path / "page") as page:
        yield page


def choose(page: Any, what: str) -> None:
    page.select_option("#wm-what", what)
    page.wait_for_function("what => location.hash === '#' + what && document.querySelectorAll('.wm-form').length === 2", arg=what)


def given(page: Any) -> str:
    """What the form gives, downloaded."""
    with page.expect_download() as download:
        page.get_by_role("button", name="Download").click()
    return Path(download.value.path()).read_text("utf-8")


def wrong(page: Any) -> list[str]:
    return [each for each in page.locator(".wm-wrong").all_inner_texts() if each]


def snapshot(root: Path) -> dict[str, str]:
    return {str(path.relative_to(root)): path.read_text("utf-8") for path in sorted(root.rglob("*.yaml"))}


def test_what_is_worth_comparing_is_what_python_proposes(browser: Any, loaded: Loaded) -> None:
    page = browser.new_page()
    page.set_content("<p>")
    for name in SCRIPTS[:-1]:
        page.add_script_tag(path=str(SCRIPT_FOLDER / f"{name}.js"))
    library = loaded.library
    sets = [list(each.entries) for each in library.look_alikes.values()]
    there = page.evaluate("([data, sets]) => sets.map(ids => WetmountContribute.worthComparing(data, ids))", [form_data(loaded), sets])
    assert sets and there == [[each.id for each in worth_comparing(library, [library.entries[id] for id in ids])] for ids in sets]
    page.close()


def test_look_alikes_give_a_file_that_passes_the_check(form: Any, root: Path) -> None:
    choose(form, "look-alikes")
    form.click(".wm-main")
    assert "'entries' holds 0. Allowed: at least 2." in wrong(form)
    form.fill("#wm-entry-0", "Coat button")
    form.fill("#wm-entry-1", "coat-button")
    assert "'entries' names 'coat-button' twice. Keep one of the two." in wrong(form)
    form.fill("#wm-entry-1", "Shirt button")
    form.fill("#wm-title", "Coat button or shirt button at Tarn End?")
    form.fill("#wm-about", "Both are round.")
    form.fill("#wm-decisive", "Measure the <width>.")
    assert "The text holds a character that plain text does not need" in " ".join(wrong(form))
    form.fill("#wm-decisive", "Measure the width.")
    text = given(form)
    path = root / "keydata/look-alikes/coat-button-or-shirt-button-at-tarn-end.yaml"
    taken(root, text)
    loaded = load(root)
    assert [each for each in everything_found(loaded) if each.severity.value == "problem"] == []
    raw = loaded.files.by_id["look-alike", path.stem].data
    assert raw["entries"] == ["coat-button", "shirt-button"]
    assert text.endswith(f"wetmount take {path.name}\n")
    assert path.read_text("utf-8") == file_text(loaded, "look-alike", f"keydata/look-alikes/{path.name}", raw)


def test_a_state_says_what_the_command_writes(form: Any, root: Path, tmp_path: Path) -> None:
    choose(form, "state")
    form.select_option("#wm-character", "rim")
    form.fill("#wm-name", "rolled")
    form.fill("#wm-about", "The edge is rolled over.")
    leads = [str(each) for each in form.locator("select[name^='lead-']").evaluate_all("all => all.map(each => each.name)")]
    assert leads == ["lead-buttons-rim"]
    form.click(".wm-main")
    assert wrong(form) == ["'lead' is missing. Choose one."]
    form.select_option(f"#wm-{leads[0]}", "raised")
    form.check("input[name='entries'][value='coat-button']")
    by_command = shutil.copytree(root, tmp_path / "command")
    taken(root, given(form))
    told = run(
        by_command,
        "new",
        "state",
        "--character",
        "rim",
        "--id",
        "rolled",
        "--name",
        "rolled",
        "--about",
        "The edge is rolled over.",
        "--entries",
        "coat-button",
        "--lead",
        "buttons/rim/raised",
        "--yes",
        "--even-so",
    )
    assert told.exit_code == 0, told.output
    assert snapshot(root) == snapshot(by_command)


def test_a_couplet_between_standing_entries_is_that_of_the_command(browser: Any, root: Path, tmp_path: Path) -> None:
    added = run(
        root,
        "new",
        "entry",
        "--like",
        "shirt-button",
        "--common",
        "Tarn End button",
        "--summary",
        "An invented button.",
        "--commonness",
        "rare",
        "--contributor",
        "Ilse Okafor",
        "--reviewed",
        "2026-11-25",
        "--shows",
        "holes=four",
        "--shows",
        "width=14..16mm",
        "--shows",
        "rim=raised",
        "--shows",
        "light=shiny",
        "--yes",
        "--even-so",
    )
    assert added.exit_code == 0, added.output
    by_command = shutil.copytree(root, tmp_path / "command")
    (tmp_path / "page").mkdir()
    with opened_form(browser, load(root), tmp_path / "page") as form:
        choose(form, "couplet")
        form.fill("#wm-entry", "Tarn End button")
        assert "COLLISION: it comes out at Shirt button" in form.inner_text(".wm-form >> nth=1")
        form.click(".wm-main")
        assert wrong(form) == ["No couplet is to be sent."]
        form.get_by_label("Send this couplet with the file").check()
        taken(root, given(form))
    told = run(by_command, "new", "couplet", "--for", "tarn-end-button", "--yes")
    assert told.exit_code == 0, told.output
    assert snapshot(root) == snapshot(by_command)
    assert everything_found(load(root)) == []


def test_what_goes_with_a_photograph_is_a_command_that_takes_it_in(form: Any, root: Path, tmp_path: Path) -> None:
    choose(form, "photo")
    form.fill("#wm-entry", "Coat button")
    form.fill("#wm-shows", "A coat button; Ilse's own.")
    form.fill("#wm-author", "Zoë O'Neil")
    form.select_option("#wm-licence", "cc-by-4.0")
    form.select_option("#wm-scale", "known")
    typed(form, "#wm-um", "-3")
    assert wrong(form) == ["-3 µm to a pixel cannot be. With a 40× objective it is about 0.05 to 0.5."]
    form.fill("#wm-um", "0,25")
    Image.new("RGB", (900, 600), (120, 130, 90)).save(tmp_path / "drop.png")
    words = shlex.split(given(form).replace("PHOTOGRAPH", str(tmp_path / "drop.png")))
    result = run(root, *words[1:])
    assert result.exit_code == 0, result.output
    photo = load(root).library.photos["coat-button-1"]
    assert (photo.author, photo.shows, photo.licence) == ("Zoë O'Neil", "A coat button; Ilse's own.", "cc-by-4.0")


def test_each_form_keeps_what_was_typed_into_it(form: Any) -> None:
    choose(form, "photo")
    form.fill("#wm-author", "Davit Roe")
    choose(form, "look-alikes")
    form.fill("#wm-entry-0", "Coat button")
    form.fill("#wm-entry-1", "Shirt button")
    before = form.text_content("pre[aria-label='The file']")
    form.reload()
    assert form.input_value("#wm-what") == "look-alikes"
    assert form.text_content("pre[aria-label='The file']") == before
    choose(form, "photo")
    assert form.input_value("#wm-author") == "Davit Roe"


@pytest.mark.parametrize("what", ["look-alikes", "photo", "couplet", "state"])
def test_targets_are_large_and_everything_has_a_name(form: Any, what: str) -> None:
    choose(form, what)
    is_large_and_named(form)
