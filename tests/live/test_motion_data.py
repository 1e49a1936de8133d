"""The manners of moving as data, and what a page is given to show."""

from __future__ import annotations

import json
import math
import re
from pathlib import Path
from typing import Any

import pytest

from keytool.figures import motion
from keytool.library.model import Library

ROOT = Path(__file__).resolve().parents[2]
SCHEMAS = ROOT / "keydata" / "schema"
SCRIPT = (ROOT / "site" / "assets" / "live-field.js").read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def schema() -> dict[str, Any]:
    return json.loads((SCHEMAS / "manners.schema.json").read_text(encoding="utf-8"))


def test_the_schema_and_the_script_know_the_same_motions_and_bodies(schema: Any) -> None:
    properties = schema["additionalProperties"]["properties"]
    motions = re.search(r"var MOTIONS = \{(.*?)\n  \};", SCRIPT, re.S)
    bodies = re.search(r"var BODIES = \{(.*?)\n  \};", SCRIPT, re.S)
    assert motions and bodies
    names = r'^    "?([a-z-]+)"?: (?:\{|function)'
    assert set(re.findall(names, motions[1], re.M)) == set(properties["motion"]["enum"]) - {"drift"}
    assert set(re.findall(names, bodies[1], re.M)) == set(properties["seen-in"]["additionalProperties"]["enum"])


def test_manners_name_entries_that_show_that_manner_themselves(library: Library) -> None:
    for manner in library.manners.values():
        assert set(manner.shows) <= set(library.characters["manner"].states), manner.id
        for id in manner.seen_in:
            said = library.entries[id].statements.get("manner")
            if said and said.stated_by == id and manner.shows:
                assert set(manner.shows) & said.showing.ids, (manner.id, id)
            moves = library.entries[id].statements.get("own-movement")
            assert not moves or motion._own(manner) in moves.showing.ids, (manner.id, id)


def test_every_moving_state_but_those_of_larger_animals_has_a_manner(library: Library) -> None:
    shown = {state for manner in library.manners.values() for state in manner.shows}
    assert set(library.characters["manner"].states) == shown


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
    assert motion.entry_field(library, library.entries["plectus"]) is None
    assert motion.entry_field(library, library.entries["vorticella"]) is None


def test_a_ring_nematode_creeps_and_its_width_goes_with_its_length(library: Library) -> None:
    field = motion.entry_field(library, library.entries["mesocriconema"])
    assert field
    assert [mover["id"] for mover in field["movers"]] == ["ring-creep", "lie-still"]
    mover, usual = field["movers"][0], library.manners["ring-creep"].parameters
    own = library.entries["mesocriconema"].statements["body-length"].showing
    assert mover["parameters"]["width"][0] == pytest.approx(usual["width"].low * own.low / usual["length"].low, abs=0.05)
    assert "in proportion to the length" in next(each for each in mover["figures"] if each["name"] == "width")["basis"]


@pytest.mark.parametrize("still", ["charcoal", "dead-nematode"])
def test_what_does_not_move_has_no_field(library: Library, still: str) -> None:
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
        "Diatom: 15 to 60 µm long, 2 to 20 µm/s (~ from memory). It slides straight along, stops and slides back.")


def test_the_same_library_gives_the_same_json(library: Library) -> None:
    once, again = (json.dumps(motion.whole_field(library, ["flow"]), ensure_ascii=False) for _ in range(2))
    assert once == again
