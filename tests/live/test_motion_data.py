"""The manners of moving as data, and what a page is given to show."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from keytool.figures import motion
from keytool.library import Loaded, Severity
from keytool.library.checks import manners
from keytool.library.model import Library, Manner
from keytool.pages.bundles import LIVE_FIELD, LIVE_FIELD_PAGE

ROOT = Path(__file__).resolve().parents[2]
SCHEMAS = ROOT / "keydata" / "schema"
SCRIPTS = ROOT / "site" / "assets" / "live-field"


@pytest.mark.browser
def test_the_vocabulary_and_the_scripts_know_the_same_motions_and_bodies(library: Library, script: Callable[..., Any]) -> None:
    assert set(script("W => Object.keys(W.motions)")) == set(library.vocabulary["motion"]) - {"drift", "unshown"}
    assert set(script("W => Object.keys(W.looks)")) == set(library.vocabulary["body"]) - {"none", "own"}
    words = {each.get("deforms") for each in library.vocabulary["motion"].values()} - {""}
    assert words | {"sway", "lie"} == set(script("W => Object.keys(W.deforms)"))


def test_every_script_is_loaded_and_none_is_too_long_to_read() -> None:
    stand = {each.stem: len(each.read_text(encoding="utf-8").splitlines()) for each in SCRIPTS.glob("*.js")}
    assert stand.keys() == {*LIVE_FIELD, *LIVE_FIELD_PAGE}
    assert max(stand.values()) <= 250


def shown(library: Library) -> list[Manner]:
    return [manner for manner in library.manners.values() if manner.motion != motion.UNSHOWN]


def test_manners_name_entries_that_show_that_manner_themselves(library: Library) -> None:
    for manner in shown(library):
        assert set(manner.shows) <= set(library.characters["manner"].states), manner.id
        for id in manner.seen_in:
            said = library.entries[id].statements.get("manner")
            if said and said.stated_by == id and manner.shows:
                assert set(manner.shows) & said.showing.ids, (manner.id, id)
            moves = library.entries[id].statements.get("own-movement")
            assert not moves or motion._own(manner) in moves.showing.ids, (manner.id, id)


def test_what_is_not_shown_moving_says_why_and_stands_in_no_other_manner(library: Library) -> None:
    for manner in library.manners.values():
        if manner.motion == motion.UNSHOWN:
            assert set(manner.seen_in.values()) == {"none"} and manner.about and not manner.parameters, manner.id
            assert not {each.id for each in shown(library) for entry in manner.seen_in if entry in each.seen_in}, manner.id


def test_a_manner_without_a_figure_its_motion_needs_is_found(loaded: Loaded) -> None:
    """Without `turns` the script would divide by nothing and draw nothing; `wetmount check` said no word of it once."""
    library = loaded.library
    swim = library.manners["spiral-swim"]
    broken = replace(swim, parameters={name: each for name, each in swim.parameters.items() if name != "turns"})
    changed = replace(loaded, library=replace(library, manners={**library.manners, "spiral-swim": broken}))
    (found,) = [each for each in manners.check(changed) if each.severity is Severity.PROBLEM]
    assert found.message == "'spiral-swim' has no 'turns', which the motion 'swim' needs." and found.place.line > 1


def test_what_moves_and_stands_in_no_manner_is_said_at_its_place(loaded: Loaded) -> None:
    library = loaded.library
    still = {id: replace(each, seen_in={e: b for e, b in each.seen_in.items() if e != "plectus"}) for id, each in library.manners.items()}
    found = [each for each in manners.check(replace(loaded, library=replace(library, manners=still))) if "'plectus'" in each.message]
    assert [each.message for each in found] == ["'plectus' moves, but no manner shows how."]


@pytest.mark.parametrize("id", ["dipluran", "pauropod", "proturan", "symphylan", "larger-many-legged", "spider-kin"])
def test_animals_of_litter_walk_with_bodies_of_their_own(library: Library, id: str) -> None:
    field = motion.entry_field(library, library.entries[id])
    assert field and field["start"] == "low"
    kin = [motion.entry_field(library, library.entries[each])["movers"][0]["shape"] for each in ("mite", "springtail", "deep-springtail")]
    own = [mover["shape"] for mover in field["movers"] if mover["motion"] == "stride"]
    assert own and not [each for each in own if each in kin]


@pytest.mark.parametrize("id", ["legged-larva", "earthworm-hatchling", "gliding-rod", "dead-nematode"])
def test_the_reason_why_a_thing_is_not_shown_moving_is_at_hand(library: Library, id: str) -> None:
    manner = motion.why_unshown(library, library.entries[id])
    assert manner and manner.about and motion.entry_field(library, library.entries[id]) is None


def test_every_moving_state_has_a_manner(library: Library) -> None:
    assert set(library.characters["manner"].states) == {state for manner in shown(library) for state in manner.shows}


def test_an_entry_is_shown_at_its_own_size_and_speed(library: Library) -> None:
    worm = library.entries["caenorhabditis"]
    field = motion.entry_field(library, worm)
    assert field
    mover = field["movers"][0]
    assert (mover["id"], mover["name"]) == ("thrash", worm.name)
    for name, character in (("length", "body-length"), ("width", "body-width"), ("speed", "speed")):
        said = worm.statements[character].showing
        assert mover["parameters"][name] == pytest.approx([said.low, said.high])
    speed = next(each for each in mover["figures"] if each["name"] == "speed")
    assert "value recalled" in speed["basis"] and speed["mark"] == "◐"


def test_a_wide_group_is_shown_at_the_size_of_each_example(library: Library) -> None:
    field = motion.entry_field(library, library.entries["ciliate"])
    assert field
    lengths = {mover["id"]: mover["parameters"]["length"] for mover in field["movers"]}
    assert lengths["clumsy-swim"] == [20, 40] and lengths["crawl-and-back"] == [40, 150]
    assert field["movers"][0]["name"] == "Smooth-swimming ciliate"
    assert field["movers"][-1]["id"] == "lie-still"


def test_kin_do_not_inherit_a_manner(library: Library) -> None:
    # a plectid is not said to thrash because rhabditids do, nor a stalked bell to spiral because Tetrahymena does
    for id, own in {"plectus": ["slow-waves"], "vorticella": ["coil-and-stretch"]}.items():
        assert [manner.id for manner in motion.manners_of(library, library.entries[id])] == own


def test_a_body_of_a_wide_group_has_the_proportions_of_the_example(library: Library) -> None:
    # Difflugia is 20 to 300 µm long and 15 to 150 µm wide: one 20 µm long is not 150 µm wide
    mover = (motion.entry_field(library, library.entries["difflugia"]) or {})["movers"][0]
    assert all(wide < long for wide, long in zip(mover["parameters"]["width"], mover["parameters"]["length"], strict=True))


def test_a_ring_nematode_creeps_and_its_width_goes_with_its_length(library: Library) -> None:
    kinds = [library.entries[id] for id in library.manners["ring-creep"].seen_in]
    entry = next(each for each in kinds if motion._tells(each, "body-length") and not motion._tells(each, "body-width"))
    field = motion.entry_field(library, entry)
    assert field
    assert [mover["id"] for mover in field["movers"]] == ["ring-creep", "lie-still"]
    mover, usual = field["movers"][0], library.manners["ring-creep"].parameters
    own = entry.statements["body-length"].showing
    assert mover["parameters"]["width"][0] == pytest.approx(usual["width"].low * own.low / usual["length"].low, abs=0.05)
    assert "in proportion to the length" in next(each for each in mover["figures"] if each["name"] == "width")["basis"]


@pytest.mark.parametrize("still", ["charcoal", "dead-nematode", "gliding-rod", "earthworm-hatchling"])
def test_what_does_not_move_or_cannot_be_shown_moving_has_no_field(library: Library, still: str) -> None:
    assert motion.entry_field(library, library.entries[still]) is None


def test_a_lead_about_movement_shows_what_the_lead_keeps(library: Library) -> None:
    dots = [library.entries[each] for each in ("rod", "clay-speck", "coccus")]
    moves = motion.lead_field(library, "It goes its own way", ["moves"], dots)
    jiggles = motion.lead_field(library, "It only jiggles", ["jiggles", "still"], dots)
    assert moves and jiggles
    assert [mover["id"] for mover in moves["movers"]] == ["run-and-tumble", "lie-still"]
    assert [mover["id"] for mover in jiggles["movers"]] == ["jiggle", "lie-still"]
    assert motion.lead_field(library, "It walks", ["walks"], dots) is None


def test_worms_begin_at_low_power_and_cells_at_high(library: Library) -> None:
    expected = {"rhabditis": "low", "naked-amoeba": "high", "rod": "high", "clay-speck": "high"}
    fields = {id: motion.entry_field(library, library.entries[id]) for id in expected}
    assert {id: field["start"] for id, field in fields.items() if field} == expected


def test_optics_and_water_are_the_bench_quantities(library: Library) -> None:
    field = motion.whole_field(library, ["jiggle"])
    assert field["optics"]["field-number"] == 18 and field["optics"]["low"]["objective"] == 4 and field["optics"]["high"]["objective"] == 40
    assert (field["temperature"], field["viscosity"]) == (20, 1.002)  # CRC Handbook (recalled)
    assert [mover["id"] for mover in field["movers"] if mover["on"]] == ["jiggle"]


def test_every_figure_is_shown_with_its_basis(library: Library) -> None:
    field = motion.whole_field(library, [])
    for mover in [*field["movers"], field["drift"]]:
        assert {each["name"].replace(" ", "-") for each in mover["figures"]} == set(mover["parameters"])
        assert all(each["mark"] and each["basis"] and each["words"] for each in mover["figures"])
        assert mover["mark"] or not mover["parameters"]
        numbers = [n for value in mover["parameters"].values() for n in (value if isinstance(value, list) else [value])]
        assert all(math.isfinite(n) and n >= 0 for n in numbers)


def test_words_without_a_script_say_size_speed_and_manner(library: Library) -> None:
    field = motion.entry_field(library, library.entries["diatom"])
    assert field
    assert next(motion.lines(field)) == (
        "Diatom: 15 to 60 µm long, 2 to 20 µm/s (◌ from memory). It slides straight along, stops and slides back."
    )


def test_the_same_library_gives_the_same_json(library: Library) -> None:
    once, again = (json.dumps(motion.whole_field(library, ["flow"]), ensure_ascii=False) for _ in range(2))
    assert once == again
