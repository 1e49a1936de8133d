"""Forty things told in whole sentences and as observations: the right group, and never what would do harm, with what is open marked so."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from keytool.cli.observations import Words
from keytool.identify import Model, Trail, compiled, describe, parsed
from keytool.library import Library

CASES = Path(__file__).parents[1] / "cases" / "described-in-sentences.yaml"
TOLD: list[dict[str, Any]] = yaml.safe_load(CASES.read_text("utf-8"))


@pytest.fixture(scope="module")
def model(library: Library) -> Model:
    return compiled(library)


@pytest.fixture(scope="module")
def words(model: Model) -> Words:
    return Words(model)


def shares(model: Model, case: dict[str, Any], trail: Trail) -> tuple[float, float]:
    """The chance of what is right, and of what would do harm."""
    right = set().union(*(model.within(id) for id in case["right"]))
    harmful = set().union(*(model.within(id) for id in case["harmful"])) - right
    chance = describe(model, trail).after.chance
    return sum(chance[i] for i in right), sum(chance[i] for i in harmful)


def still_open(case: dict[str, Any], what: str) -> None:
    if what in case.get("open", ()):
        pytest.xfail(f"{case['id']}: {what} is open")


@pytest.mark.parametrize("case", TOLD, ids=lambda case: case["id"])
def test_what_was_seen_leads_to_the_right_group(model: Model, case: dict[str, Any]) -> None:
    first = [f"{name}:{case[name]}" for name in ("from", "at") if name in case]
    read = parsed(model, "/".join([*first, *(f"saw:{each}" for each in case["saw"].split("/"))]))
    assert not read.left
    right, harmful = shares(model, case, read.trail)
    assert harmful < 0.5
    if right < 0.5:
        still_open(case, "saw")
    assert right >= 0.5


@pytest.mark.parametrize("case", TOLD, ids=lambda case: case["id"])
def test_whole_sentences_lead_to_the_right_group(model: Model, words: Words, case: dict[str, Any]) -> None:
    trail, _ = words.take_words(Trail(), case["said"])
    right, harmful = shares(model, case, trail)
    if harmful >= 0.5:
        still_open(case, "harm")
    assert harmful < 0.5
    if right < 0.5:
        still_open(case, "said")
    assert right >= 0.5


def test_a_sentence_in_which_nothing_is_heard_is_named_and_the_rest_taken(words: Words) -> None:
    trail, unheard = words.take_words(Trail(), ["It smelled of earth on Tuesday.", "Six legs and feelers."])
    assert unheard == ("It smelled of earth on Tuesday.",)
    assert {each.character for each in trail.saw} >= {"leg-pairs", "front-end"}


def test_what_is_said_at_once_is_what_the_sentences_say_together(words: Words) -> None:
    """The part that a sentence speaks of may be named in another: feelers first, whose legs come after."""
    one, _ = words.take_words(Trail(), ["A pair of feelers.", "Six legs."])
    other, _ = words.take_words(Trail(), ["Six legs.", "A pair of feelers."])
    assert {(each.character, each.states) for each in one.saw} == {(each.character, each.states) for each in other.saw}
