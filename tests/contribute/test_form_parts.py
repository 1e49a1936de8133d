"""The parts of the form: look-alikes, a drawing, and the couplet, each as the command writes it; and the whole passes the check."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from keytool.cli.check import check_command
from keytool.contribute.change_set import couplet_text
from keytool.contribute.discriminators import couplet_draft, not_stated, partings
from keytool.contribute.form import form_data
from keytool.contribute.keyed_out import keyed_out
from keytool.contribute.page_slots import SCRIPTS
from keytool.figures import kinds, problems
from keytool.library import Loaded
from tests.conftest import KEYDATA, sampled
from tests.contribute.helping import is_large_and_named, opened_form, run, taken, typed

pytestmark = pytest.mark.browser
FOLDER = Path(__file__).parents[2] / "site/assets/contribute"


@pytest.fixture(scope="module")
def data(loaded: Loaded) -> dict[str, Any]:
    return form_data(loaded)


@pytest.fixture(scope="module")
def script(browser: Any, data: dict[str, Any]) -> Iterator[Any]:
    """The scripts in a blank page with the data of the library: script("(W, data, arg) => ...", arg)."""
    page = browser.new_page()
    page.set_content("<p>")
    for name in SCRIPTS[:-1]:
        page.add_script_tag(path=str(FOLDER / f"{name}.js"))
    page.evaluate("data => { window.DATA = data; }", data)
    yield lambda source, arg=None: page.evaluate(f"arg => ({source})(WetmountContribute, DATA, arg)", arg)
    page.close()


def test_what_parts_two_entries_is_what_python_finds(script: Any, loaded: Loaded):
    """For every entry and the next of its theme: the same characters in the same order, parted by the same quantity."""
    library = loaded.library
    met = [each for each in library.entries.values() if not library.is_group(each.id)]
    pairs = [(one, other) for one, other in pairwise(met) if one.theme == other.theme]
    there = script(
        """(W, data, pairs) => pairs.map(([id, other]) => { const entry = {id, ...data.entries[id]};
        return [W.partings(data, entry, [other], 400).map(each => [each.character, each.at]), W.notStated(data, entry, [other])]; })""",
        [[one.id, other.id] for one, other in pairs],
    )
    parted = 0
    for (one, other), (found, silent) in zip(pairs, there, strict=True):
        here = partings(library, one, [other], 400)
        assert found == [[each.character.id, each.at.id if each.at else None] for each in here], (one.id, other.id)
        assert silent == not_stated(one, [other])
        parted += bool(here)
    assert parted > 100


def test_a_couplet_is_drafted_to_the_letter(script: Any, loaded: Loaded):
    """For every way on which an entry comes out together with others: the couplet that Python drafts, or none where it drafts none."""
    library, drafted = loaded.library, 0
    for entry in sampled([each for each in library.entries.values() if not library.is_group(each.id)]):
        result = keyed_out(library, entry.id)
        ways = [way for way in result.ways if way.end and way.end != entry.id and way.end not in library.keys and result.others(way)]
        expected = []
        for way in ways:
            others = [library.entries[each] for each in result.others(way)]
            found = partings(library, entry, others, library.keys[way.key].magnification)
            drafts = [couplet_draft(library, result, way, parting) for parting in found]
            expected += [[each.slug, each.behind_couplet, each.behind_lead, couplet_text(each)] for each in drafts if each]
        if not ways:
            continue
        there = script(
            """(W, data, id) => { const entry = {id, ...data.entries[id]};
            return W.ways(data, entry).filter(way => way.end && way.end !== id && !data.keys[way.end] && W.others(data, way, id).length)
            .flatMap(way => W.partings(data, entry, W.others(data, way, id), data.keys[way.key].magnification)
                .map(parting => W.coupletDraft(data, entry, way, parting)).filter(Boolean)
                .map(each => [each.slug, each.couplet, each.lead, W.coupletText(data, each)])); }""",
            entry.id,
        )
        assert there == expected, entry.id
        drafted += len(expected)
    assert drafted > 10


def test_numbers_of_a_drawing_are_judged_in_the_words_of_the_check(script: Any, data: dict[str, Any]):
    for kind in kinds().values():
        for param in kind.params:
            if param.type in ("um", "number"):
                figure = {"kind": kind.name, param.name: param.high * 3 + 1}
                (found,) = script(
                    "(W, data, figure) => W.check(data, {}, {figure}, {}).filter(each => each.field.startsWith('figure-'))", figure
                )
                assert [found["message"]] == problems(kind.name, {param.name: param.high * 3 + 1})


WORM = {
    "common": "Tarn End worm",
    "summary": "An invented worm of the Tarn End market garden.",
    "contributor": "Ilse Okafor",
    "reviewed": "2026-11-25",
}
TELL = "The invented one has a strong cap; so it's told."


@pytest.fixture(scope="module")
def form(browser: Any, loaded: Loaded, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    """The form of the real library on a telephone, filled in with the newcomer's worm, which collides."""
    with opened_form(browser, loaded, tmp_path_factory.mktemp("form")) as page:
        fill(page)
        yield page


def fill(page: Any) -> None:
    page.fill("#wm-like", "aphelenchus")
    page.dispatch_event("#wm-like", "change")
    for name, words in WORM.items():
        page.fill(f"#wm-{name}", words)
    page.select_option("#wm-within", "aphelenchid")
    page.select_option("#wm-commonness", "rare")
    page.check("input[name='feeding'][value='fungal']")
    page.select_option("#wm-more", "resting-posture")
    page.check("input[name='shows-resting-posture'][value='spiral']")
    page.check("input[name='shows-tail'][value='blunt']")
    page.check("input[name='shows-spear-base'][value='plain']")


def add_look_alike(page: Any) -> None:
    if not page.locator("#wm-mistaken-0-entry").count():
        page.get_by_role("button", name="Add a look-alike").click()
    page.fill("#wm-mistaken-0-entry", "aphelenchus")
    page.fill("#wm-mistaken-0-by", TELL)
    page.dispatch_event("#wm-mistaken-0-by", "change")


def choose_couplet(page: Any) -> Any:
    """The couplet offered for the collision with Aphelenchus, by its posture, to be sent along."""
    block = page.locator("[data-couplet]").filter(has_text="Aphelenchus type").first
    block.locator("select").select_option(
        label=next(each for each in block.locator("option").all_text_contents() if each.startswith("Posture at rest"))
    )
    block.get_by_label("Send this couplet with the file").check()
    return block


def test_what_is_wrong_with_a_look_alike_or_a_drawing_is_said_beside_it(form: Any):
    add_look_alike(form)
    typed(form, "#wm-mistaken-0-entry", "no-such-worm")
    assert "There is no entry 'no-such-worm'." in form.inner_text("#wm-mistaken-0-wrong")
    typed(form, "#wm-mistaken-0-entry", "tarn-end-worm")
    assert "'tarn-end-worm' is named as its own look-alike." in form.inner_text("#wm-mistaken-0-wrong")
    add_look_alike(form)
    assert form.inner_text("#wm-mistaken-0-wrong") == ""
    assert form.input_value("#wm-figure") == "", "no drawing unless one is wanted"
    form.get_by_role("button", name="Start from the drawing of Aphelenchus type").click()
    assert form.input_value("#wm-figure") == "nematode-head"
    typed(form, "#wm-figure-width", "9000")
    assert "nematode-head: width: 9000 µm is not between" in form.inner_text("#wm-figure-width-wrong")
    typed(form, "#wm-figure-width", "20")
    assert form.inner_text("#wm-figure-width-wrong") == ""
    form.dispatch_event("#wm-figure-spear-length-of", "change")
    assert "'tarn-end-worm' does not give both ends of 'spear-length'." in form.inner_text("#wm-figure-spear-length-wrong")
    form.select_option("#wm-figure-spear-length-of", "")
    typed(form, "#wm-figure-spear-length", "14")
    assert "kind: nematode-head" in form.text_content("pre[aria-label='The file']")


def test_the_file_with_look_alike_drawing_and_couplet_passes_the_check(form: Any, tmp_path: Path):
    add_look_alike(form)
    for box in form.locator("[data-couplet] input:checked").all():
        box.uncheck()
    assert "COLLISION: it comes out at Aphelenchus type" in form.inner_text("form")
    block = choose_couplet(form)
    assert block.get_attribute("open") is not None
    block.get_by_label("What is seen of the rest").fill("q" * 91)
    assert "The lead is 91 characters long as shown. Allowed: at most 90." in block.inner_text()
    assert form.inner_text(".wm-status") == "1 thing is still to be filled in or mended: couplet."
    block.get_by_label("What is seen of the rest").fill("Pale and soft")
    assert form.inner_text(".wm-status").startswith("The file is right, and every key ends rightly with it.")
    with form.expect_download() as download:
        form.get_by_role("button", name="Download the file").click()
    text = Path(download.value.path()).read_text("utf-8")
    root = tmp_path / "library"
    shutil.copytree(KEYDATA, root / "keydata")
    taken(root, text)
    result = CliRunner().invoke(check_command, [], obj=root)
    assert result.exit_code == 0, result.output


def test_what_belongs_into_other_files_is_what_the_command_writes(form: Any, tmp_path: Path):
    """The same worm by the command gives the same key and the same look-alike, letter for letter."""
    add_look_alike(form)
    choose_couplet(form)
    text = form.text_content("pre[aria-label='The file']")
    by_form, by_command = tmp_path / "form", tmp_path / "command"
    for root in (by_form, by_command):
        shutil.copytree(KEYDATA, root / "keydata")
    taken(by_form, text)
    told = run(
        by_command,
        "new",
        "entry",
        "--like",
        "aphelenchus",
        "--common",
        WORM["common"],
        "--summary",
        WORM["summary"],
        "--commonness",
        "rare",
        "--feeding",
        "fungal",
        "--within",
        "aphelenchid",
        "--contributor",
        WORM["contributor"],
        "--reviewed",
        WORM["reviewed"],
        "--shows",
        "resting-posture=spiral",
        "--shows",
        "tail=blunt",
        "--shows",
        "spear-base=plain",
        "--mistaken-for",
        f"aphelenchus={TELL}",
        "--yes",
        "--couplet",
        "--by",
        "resting-posture",
    )
    assert told.exit_code == 0, told.output
    for name in ("keys/nematode-mouthparts.yaml", "entries/nematodes/aphelenchus.yaml"):
        assert (by_form / "keydata" / name).read_text("utf-8") == (by_command / "keydata" / name).read_text("utf-8"), name


def test_targets_stay_large_and_named(form: Any):
    is_large_and_named(form)
