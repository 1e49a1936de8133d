"""A look told in any order counts for what shows it and against what does not, though most entries are silent on most looks.

What each story rests on stands beside it; nothing here was fitted to a key.
"""

from __future__ import annotations

import pytest

from keytool.identify import Model, compiled, describe, parsed
from keytool.library import Library


@pytest.fixture(scope="module")
def model(library: Library) -> Model:
    return compiled(library)


def chance(model: Model, saw: str, *names: str) -> float:
    """The chance that what was told is one of the entries, or within one of the groups, that are named."""
    read = parsed(model, "/".join(f"saw:{each}" for each in saw.split("/")))
    assert not read.left
    after = describe(model, read.trail).after.chance
    return sum(after[number] for number in set().union(*(model.within(name) for name in names)))


def test_a_green_strand_is_no_worm_and_no_hair_of_an_animal(model: Model) -> None:
    """Common knowledge: soil nematodes, horsehair worms and pot worms have no green of their own."""
    told = "form=long/body-colour=green"
    assert chance(model, told, "nematode", "horsehair-worm", "enchytraeid", "animal-hair") < 0.15
    assert chance(model, told, "green-filament", "green-alga-filament", "tube-alga", "green-flagellate") > 0.4


def test_an_orange_animal_with_eight_legs_is_a_beetle_mite_sooner_than_a_mould_mite(model: Model) -> None:
    """Adult beetle mites are yellow and orange through shades of brown (Norwegian species centre, Oribatid mites: seen)."""
    told = "body-plan=legs/leg-pairs=four/body-colour=yellow-orange"
    assert chance(model, told, "oribatid-mite") > 5 * chance(model, told, "mould-mite", "young-mite")


def test_a_clear_worm_stays_as_likely_as_a_worm_of_which_no_colour_was_told(model: Model) -> None:
    told = "form=long/own-movement=moves/insides=gut-line"
    assert chance(model, f"{told}/body-colour=clear", "nematode") >= chance(model, told, "nematode")


def test_a_long_branched_tube_without_walls_is_a_hypha_and_no_root_hair(model: Model) -> None:
    """Root hairs are 0.08 to 1.5 mm long and rarely fork (Dittmar, as recalled by Esau 1965); hyphae branch (common knowledge)."""
    told = "form=long/body-width=6..9/body-length=500../cross-walls=none-seen/branching=branched/wall-colour=clear/wall-build=tube"
    assert chance(model, told, "hypha") > 0.5
    assert chance(model, told, "hypha") > 4 * chance(model, told, "root-hair")


def test_a_tube_that_stands_on_a_root_cell_is_a_root_hair(model: Model) -> None:
    """A root hair is one cell of the root skin (Dittmar, as recalled by Esau 1965)."""
    assert chance(model, "form=long/body-width=12/branching=unbranched/cross-walls=none-seen/runs-from=root-cell", "root-hair") > 0.5


def test_bristles_on_the_head_count_for_worms_that_have_them_also_where_no_bulb_is(model: Model) -> None:
    """Ten head bristles in Prismatolaimus (Loof 1971: seen); long ones in Bastiania, none in Alaimus (from memory)."""
    told = "body-plan=neither/form=long/gullet=column/mouth=nothing/tail=drawn-out"
    for name in ("bastiania", "prismatolaimus"):
        assert chance(model, f"{told}/lips=bristles", name) > chance(model, told, name)
    assert chance(model, f"{told}/lips=bristles", "alaimus") < chance(model, told, "alaimus") / 5
