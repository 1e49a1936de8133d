"""The form writes what the command writes, checks by the same rules, and walks the keys as Python does."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from keytool.contribute.draft import file_text
from keytool.contribute.form import form_data, form_script
from keytool.contribute.keyed_out import keyed_out
from keytool.contribute.outcome_text import comes_out
from keytool.contribute.page_slots import SCRIPTS
from keytool.library import Loaded, load
from tests.conftest import copy_mini, everything_found, sampled
from tests.contribute.helping import opened_form, taken, typed

ROOT = Path(__file__).parents[2]
FOLDER = ROOT / "site/assets/contribute"


@pytest.fixture(scope="module")
def still(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A mini library that nobody changes."""
    return copy_mini(tmp_path_factory.mktemp("form") / "mini")


@pytest.fixture(scope="module")
def mini_loaded(still: Path) -> Loaded:
    return load(still)


def test_data_is_the_same_bytes_twice(mini_loaded: Loaded) -> None:
    assert form_script(mini_loaded) == form_script(mini_loaded)
    assert json.loads(form_script(mini_loaded).decode().removeprefix("window.WETMOUNT_CONTRIBUTE = ").rstrip(";\n"))["keys"]["buttons"]


def test_every_rule_of_a_typed_field_has_its_sentence(mini_loaded: Loaded) -> None:
    for name, field in form_data(mini_loaded)["fields"].items():
        says = field["says"]
        assert "pattern" in says, name
        assert ("short" in says) is ("minLength" in field), name
        assert ("long" in says) is ("maxLength" in field), name
        if "maxLength" in field:
            assert "{length}" in says["long"]["message"], name
        assert says["missing"]["message"].endswith(("is missing.", "is missing in 'names'.")), name
        assert field["about"]


@pytest.fixture(scope="module")
def script(browser: Any) -> Iterator[Any]:
    """The script in a blank page: script("(W, data, arg) => ...", data, arg)."""
    page = browser.new_page()
    page.set_content("<p>")
    for name in SCRIPTS:
        if name != "start":
            page.add_script_tag(path=str(FOLDER / f"{name}.js"))
    yield lambda source, data, arg=None: page.evaluate(f"([data, arg]) => ({source})(WetmountContribute, data, arg)", [data, arg])
    page.close()


@pytest.mark.browser
def test_the_ways_are_those_of_python(script: Any, loaded: Loaded) -> None:
    library, data = loaded.library, form_data(loaded)
    met = sampled([entry.id for entry in library.entries.values() if not library.is_group(entry.id)])
    there = script("(W, data, ids) => ids.map(id => W.told(data, {id, ...data.entries[id]}).map(each => each.text))", data, met)
    for id, said in zip(met, there, strict=True):
        assert said == list(comes_out(library, keyed_out(library, id))), id


@pytest.mark.browser
def test_the_file_is_that_of_the_command_to_the_letter(script: Any, loaded: Loaded) -> None:
    data = form_data(loaded)
    needed = {name: data[name] for name in ("comments", "schemaFolder", "widths", "characters")}
    files = {id: file.data for (kind, id), file in loaded.files.by_id.items() if kind == "entry"}
    assert len(files) == len(loaded.library.entries)
    there = script("(W, data, raws) => raws.map(raw => W.fileText(data, raw))", needed, list(files.values()))
    for (id, raw), text in zip(files.items(), there, strict=True):
        assert text == file_text(loaded, "entry", f"keydata/entries/{raw['theme']}/{id}.yaml", raw), id


@pytest.mark.browser
@pytest.mark.parametrize("name", ["Tarn End worm", "  Ärger, 12 µm!", "12 worms", "no", "---", "Plectus cf. parietinus (Bastian)"])
def test_a_name_gives_the_same_id(script: Any, name: str) -> None:
    from keytool.contribute.draft import slug

    assert script("(W, data, name) => W.slug(name)", None, name) == slug(name)


@pytest.fixture
def form(browser: Any, still: Path, tmp_path: Path) -> Iterator[Any]:
    """The form of the mini library."""
    with opened_form(browser, load(still), tmp_path) as page:
        yield page


def fill(page: Any) -> None:
    page.fill("#wm-like", "shirt-button")
    page.dispatch_event("#wm-like", "change")
    page.fill("#wm-common", "Tarn End button")
    page.fill("#wm-summary", 'An invented button; "shiny": no, 12 mm.')
    page.select_option("#wm-commonness", "rare")
    page.check("input[name='shows-holes'][value='four']")
    page.fill("#wm-width-low", "1.4")
    page.fill("#wm-width-high", "1.6")
    page.check("input[name='shows-rim'][value='raised']")
    page.fill("#wm-contributor", "Ilse Okafor")
    page.fill("#wm-reviewed", "2026-11-25")
    page.dispatch_event("#wm-reviewed", "change")


@pytest.mark.browser
def test_a_filled_form_gives_a_file_that_loads_clean(form: Any, still: Path, tmp_path: Path) -> None:
    import shutil

    fill(form)
    form.fill("#wm-width-high", "16")
    form.fill("#wm-width-low", "14")
    assert form.inner_text(".wm-status").startswith("The file is right, but a key does not end rightly")
    assert "COLLISION: it comes out at Shirt button, which does not hold Tarn End button." in form.inner_text("form")
    with form.expect_download() as download:
        form.get_by_role("button", name="Download the file").click()
    assert download.value.suggested_filename == "tarn-end-button.yaml"
    root = shutil.copytree(still, tmp_path / "library")
    taken(root, Path(download.value.path()).read_text("utf-8"))
    loaded = load(root)
    assert loaded.problems == ()
    assert loaded.library.entries["tarn-end-button"].summary == 'An invented button; "shiny": no, 12 mm.'
    assert {each.check for each in everything_found(loaded)} == {"proof"}, "it collides, as the form said"
    text = (root / "keydata/entries/debris/tarn-end-button.yaml").read_text("utf-8")
    raw = loaded.files.by_id["entry", "tarn-end-button"].data
    assert text == file_text(loaded, "entry", "keydata/entries/debris/tarn-end-button.yaml", raw)


@pytest.mark.browser
def test_errors_are_those_of_the_check_and_are_announced(form: Any) -> None:
    fill(form)
    typed(form, "#wm-summary", "less <than> that")
    typed(form, "#wm-id", "coat-button")
    typed(form, "#wm-width-low", "30")
    assert "The text holds a character that plain text does not need" in form.inner_text("#wm-summary-wrong")
    assert "'coat-button' is also the id of keydata/entries/debris/coat-button.yaml" in form.inner_text("#wm-id-wrong")
    assert "Low is 30, but high is 1.6. Swap the two." in form.inner_text("#wm-shows-width-wrong")
    assert form.get_attribute("#wm-summary", "aria-invalid") == "true"
    assert "wm-summary-wrong" in str(form.get_attribute("#wm-summary", "aria-describedby"))
    assert form.get_attribute(".wm-status", "aria-live") == "polite"
    assert form.inner_text(".wm-status").startswith("3 things are still to be filled in or mended")


@pytest.mark.browser
def test_an_empty_form_says_what_is_missing_when_it_is_sent(form: Any) -> None:
    assert form.inner_text("#wm-common-wrong") == ""
    form.get_by_role("button", name="Copy the file").click()
    assert "'common' is missing" in form.inner_text("#wm-common-wrong")
    assert form.evaluate("document.activeElement.id") == "wm-common"
    assert form.inner_text("#wm-commonness-wrong") == "'' does not say how common it is.", (
        "how it is written in the file is not for one who chooses"
    )


@pytest.mark.browser
def test_what_was_typed_survives_a_reload_until_it_is_thrown_away(form: Any) -> None:
    fill(form)
    form.select_option("#wm-more", "light")
    form.check("input[name='shows-light'][value='shiny']")
    form.get_by_role("button", name="Add a look-alike").click()
    form.fill("#wm-mistaken-0-entry", "Coat button")
    form.fill("#wm-mistaken-0-by", "The coat button is dull.")
    before = form.text_content("pre[aria-label='The file']")
    assert "entry: coat-button" in before and "light: {states: [shiny]" in before
    form.reload()
    assert form.text_content("pre[aria-label='The file']") == before
    assert form.inner_text(".wm-back").startswith("What you typed before is back.")
    form.locator(".wm-back").get_by_role("button", name="Start anew").click()
    assert form.input_value("#wm-common") == ""
    form.reload()
    assert form.input_value("#wm-common") == "" and form.inner_text(".wm-back") == ""


@pytest.mark.browser
def test_a_name_is_understood_and_what_is_not_known_is_told_beside_it(form: Any) -> None:
    typed(form, "#wm-like", "shirt BUTTON")
    assert form.input_value("#wm-within") == "button"
    assert "Shirt button" in form.inner_text(".wm-beside")
    form.select_option("#wm-kind", "family")
    typed(form, "#wm-like", "buttn")
    assert form.inner_text("#wm-like-wrong").startswith("There is no entry 'buttn'. Type part of its name")
    form.fill("#wm-like", "butto")
    assert "Is it one of these: Button; Coat button" in form.inner_text("#wm-like-wrong"), "by their names"
    assert form.input_value("#wm-within") == "" and form.inner_text(".wm-beside") == "", "what followed from the button is gone"
    assert form.input_value("#wm-kind") == "family", "what was chosen by hand stays"


@pytest.mark.browser
def test_lists_stand_in_the_order_of_what_is_shown_under_their_themes(browser: Any, loaded: Loaded, tmp_path: Path) -> None:
    with opened_form(browser, loaded, tmp_path) as form:
        typed(form, "#wm-like", "LESION nematode")
        assert form.input_value("#wm-within") and form.inner_text("#wm-like-wrong") == "", "a common name in any letters"
        groups = form.evaluate(
            "[...document.querySelectorAll('#wm-more optgroup:not([label^=Matters]), #wm-within optgroup')]"
            ".map(each => [...each.children].map(one => one.label))"
        )
        labels = form.evaluate("[...document.querySelectorAll('#wm-within optgroup')].map(each => each.label)")
    assert sum(map(len, groups)) > 100 and "Nematodes" in labels
    for names in groups:
        assert names == sorted(names, key=str.casefold)
    assert not [name for names in groups for name in names if name.strip().islower() and "-" in name], "no ids"


@pytest.mark.browser
@pytest.mark.parametrize("address", ["__proto__", "constructor", "toString", "nothing-such"])
def test_an_address_that_names_no_form_opens_the_first(form: Any, address: str) -> None:
    form.evaluate("address => { location.hash = address; }", address)
    form.wait_for_timeout(50)
    form.evaluate("location.hash = 'photo'")
    form.wait_for_function("document.querySelector('#wm-what').value === 'photo'")


@pytest.mark.browser
def test_what_is_proposed_is_what_the_command_proposes(script: Any, loaded: Loaded) -> None:
    from keytool.contribute.similar import kind_and_groups

    ids = list(loaded.library.entries)
    there = script("(W, data, ids) => ids.map(id => W.kindAndGroups(data, id))", form_data(loaded), ids)
    assert there == [list(kind_and_groups(loaded.library, loaded.library.entries[id])) for id in ids]


@pytest.mark.browser
def test_a_number_that_is_none_is_told_and_not_dropped(form: Any) -> None:
    fill(form)
    typed(form, "#wm-width-low", "about 2")
    assert form.inner_text("#wm-shows-width-wrong") == "'low' is text ('about 2'). Allowed: a number."


@pytest.mark.browser
def test_what_matters_for_the_nearest_entry_is_offered_first(form: Any, still: Path) -> None:
    from keytool.contribute.similar import that_matter

    library = load(still).library
    typed(form, "#wm-like", "press-stud")
    asked = form.evaluate("[...document.querySelectorAll('[data-row^=shows-]')].map(each => each.dataset.row.slice(6))")
    offered = form.evaluate(
        "[...document.querySelectorAll('#wm-more optgroup')][0] && [...document.querySelectorAll('#wm-more optgroup')[0].children].map(each => each.value)"
    )
    assert [each for each in offered if each not in asked] == [
        each.id for each in that_matter(library, library.entries["press-stud"]) if each.id not in asked
    ]


@pytest.mark.browser
def test_the_form_is_filled_and_given_with_the_keyboard_alone(form: Any) -> None:
    """Tab, arrows, space and letters, from the top of the page; every control is met once, in the order in which it is read."""
    shown = "[...document.querySelectorAll('select, input, textarea, button, summary, pre[tabindex]')].filter(each => each.offsetParent && each.checkVisibility())"
    wanted = form.evaluate(f"{shown}.length")
    met = []
    for _ in range(wanted):
        form.keyboard.press("Tab")
        met.append(form.evaluate(f"{shown}.indexOf(document.activeElement)"))
    assert met == list(range(wanted))
    form.focus("#wm-like")
    form.keyboard.type("shirt-button")
    form.keyboard.press("Tab")
    form.keyboard.type("Tarn End button")
    assert form.input_value("#wm-id") == "tarn-end-button"
    form.focus("input[name='shows-holes'][value='four']")
    form.keyboard.press("Space")
    form.focus("#wm-commonness")
    form.keyboard.type("rare")
    assert "holes: {states: [four]" in form.text_content("pre[aria-label='The file']")
    assert "class: rare" in form.text_content("pre[aria-label='The file']")


@pytest.mark.browser
def test_targets_are_large_and_everything_has_a_name(form: Any) -> None:
    fill(form)
    small = form.evaluate("""() => [...document.querySelectorAll('button, select, input:not([type=checkbox]), textarea, .wm-choices label')]
        .filter(each => each.offsetParent && each.getBoundingClientRect().height < 48).map(each => each.outerHTML)""")
    assert small == []
    assert form.evaluate("document.documentElement.scrollWidth") <= 360
    from axe_playwright_python.sync_playwright import Axe

    found = Axe().run(form, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"]}).response["violations"]
    assert [(each["id"], [node["html"] for node in each["nodes"]]) for each in found] == []
