"""The computed picture on the page of an entry: labelled, lazy, and standing without a script."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from keytool.library import load
from keytool.pages.eyepiece import compared, eyepiece_files, on_couplet, through_eyepiece
from keytool.pages.page_writer import Writer

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def loaded():
    return load(ROOT)


def shown(loaded, id: str) -> str:
    return "".join(through_eyepiece(Writer(loaded.library, f"entries/{id}.md"), loaded.library.entries[id]))


def test_it_says_that_it_is_computed_and_what_it_leaves_out(loaded) -> None:
    html = shown(loaded, "euglypha")
    assert "Computed picture, not a photograph." in html
    assert "What it leaves out" in html
    assert "from memory" in html


def test_the_still_is_fetched_only_when_it_comes_into_sight(loaded) -> None:
    html = shown(loaded, "euglypha")
    assert 'loading="lazy"' in html
    assert html.count("<img") == 1


def test_a_series_is_named_for_the_script_and_not_fetched(loaded) -> None:
    series = [id for id, still in loaded.library.eyepiece.stills.items() if still.series]
    assert series
    html = shown(loaded, series[0])
    assert f'src="../eyepiece/{loaded.library.eyepiece.stills[series[0]].file}"' in html
    assert "-focus-" not in html.split("data-eyepiece")[0]
    given = loaded.library.eyepiece.stills[series[0]].series
    assert json.loads(json.dumps(given.focus)) == [-6, -4, -2, 0, 2, 4, 6]


def test_an_entry_without_a_picture_shows_nothing(loaded) -> None:
    assert shown(loaded, "filenchus") == ""


def test_every_picture_of_the_index_goes_into_the_site(loaded) -> None:
    files = eyepiece_files(loaded)
    for still in loaded.library.eyepiece.stills.values():
        assert f"eyepiece/{still.file}" in files


def on(loaded, key: str, couplet: str) -> dict[str, str]:
    keys = loaded.library.keys
    return {lead: each.id for lead, each in on_couplet(loaded.library, keys[key], keys[key].couplets[couplet]).items()}


def test_where_contrast_decides_each_lead_has_its_own_computed_picture(loaded) -> None:
    assert on(loaded, "round-bodies", "rim") == {"black": "air-bubble", "glossy": "oil-drop", "steady": "spore"}


def test_a_couplet_that_contrast_does_not_decide_has_none(loaded) -> None:
    assert on(loaded, "round-bodies", "size") == {}


def test_a_picture_of_what_a_lead_does_not_lead_to_is_never_shown(loaded) -> None:
    # algae with flat discs stand before this couplet: a fungus that shows the same cross-walls would be wrong there
    for key in loaded.library.keys.values():
        for couplet in key.couplets.values():
            for lead, entry in on_couplet(loaded.library, key, couplet).items():
                end = couplet.leads[lead].end
                assert not end or loaded.library.ancestry(entry.id) & {end} or entry.id in loaded.library.ancestry(end), (key.id, lead)
    assert on(loaded, "threads", "discs") == {}


def test_pictures_beside_each_other_are_folded_lazy_labelled_and_stand_without_a_script(loaded) -> None:
    entries = loaded.library.entries
    html = compared(Writer(loaded.library, "keys/round-bodies.md"), [("1a", entries["air-bubble"]), ("1b", entries["oil-drop"])])
    assert html.startswith('<details class="wm-through"')
    assert html.count('loading="lazy"') == html.count("<img") == 2
    assert "Computed pictures, not photographs." in html
    assert html.count("data-eyepiece") == 2


def test_one_knob_turns_all_or_there_is_none(loaded) -> None:
    entries, stills = loaded.library.entries, loaded.library.eyepiece.stills
    still = next(id for id, each in stills.items() if not each.series)
    html = compared(Writer(loaded.library, "keys/x.md"), [("1", entries["air-bubble"]), ("2", entries[still])])
    assert "data-eyepiece" not in html
