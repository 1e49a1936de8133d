"""Forty things told in whole sentences and as observations, ninety as beginners talk: the right group, and never what would do harm, with what is open marked so."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from keytool.cli.describe import sentences
from keytool.cli.observations import Words
from keytool.identify import Model, Trail, compiled, describe, parsed
from keytool.library import Library
from tests.conftest import read_cases

CASES = Path(__file__).parents[1] / "cases" / "described-in-sentences.yaml"
TOLD: list[dict[str, Any]] = read_cases(CASES)
SPOKEN: list[dict[str, Any]] = read_cases(CASES.parent / "described-as-spoken.yaml")
UNSEEN: list[dict[str, Any]] = read_cases(CASES.parent / "described-as-spoken-unseen.yaml")


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


@pytest.mark.parametrize(("cases", "least", "open_share"), [(SPOKEN, 90, 0.12), (UNSEEN, 110, 0.3)], ids=["spoken", "unseen"])
def test_what_beginners_say_leads_to_the_right_group_and_never_to_harm(
    model: Model, words: Words, cases: list[dict[str, Any]], least: int, open_share: float
) -> None:
    """All together, since a change of what an entry shows may move any one of them past the middle."""
    missed, harmed = [], []
    for case in cases:
        right, harmful = shares(model, case, words.take_words(Trail(), sentences(case["said"]))[0])
        missed += [case["id"]] if right < 0.5 else []
        harmed += [case["id"]] if harmful >= 0.5 and "harm" not in case.get("open", ()) else []
    assert len(cases) >= least
    assert harmed == []
    assert len(missed) <= open_share * len(cases), missed


@pytest.mark.parametrize(
    ("said", "is_taken", "never"),
    [
        ("Brown thread with cross walls and clamp bumps.", {"cross-walls=straight", "clamp-seen=clamp"}, set()),
        ("A thread, cross walls not seen.", {"cross-walls=none-seen"}, set()),
        ("A worm with flaps on its head, about half a millimetre", {"body-length=500"}, set()),
        ("A ball. Fills half of the field at 400x", {"body-length=225"}, set()),
        ("A worm .4 mm long", {"body-length=400"}, set()),
        ("A worm like a long hair, 30 mm", {"body-length=30000"}, set()),
        ("A worm. No movement.", {"own-movement=still"}, {"inside-movement", "manner"}),
        ("A worm, not moving at all.", {"own-movement=still"}, {"inside-movement", "manner"}),
        ("Slipper shaped cell. Green? no, clear.", {"body-colour=clear"}, set()),
        ("A worm. It lay beside a brown piece of root.", set(), {"body-colour", "wall-colour", "feeding-seen"}),
        ("A ball, 20 um across. A green leaf scrap lay nearby, 200 um away.", {"body-width=20"}, {"body-colour", "body-length"}),
    ],
)
def test_a_word_that_means_something_else_there_is_not_heard(words: Words, said: str, is_taken: set[str], never: set[str]) -> None:
    trail, _ = words.take_words(Trail(), sentences(said))
    told = {f"{each.character}={each.states[0] if each.states else f'{each.low:g}'}" for each in trail.saw if not each.is_unsure}
    assert is_taken <= told
    assert not {each.character for each in trail.saw} & never


@pytest.mark.parametrize("said", ["I think the tail is blunt.", "The tail is blunt, maybe.", "Is the tail blunt?", "Tail might be blunt"])
def test_what_is_said_with_half_a_voice_counts_as_a_first_impression(words: Words, said: str) -> None:
    (tail,) = (each for each in words.take_words(Trail(), ["A worm.", said])[0].saw if each.character == "tail")
    assert tail.states == ("blunt",) and tail.pointed
    (sure,) = (each for each in words.take_words(Trail(), ["A worm.", "The tail is blunt."])[0].saw if each.character == "tail")
    assert not sure.pointed


def test_what_a_thing_is_called_and_where_it_is_from_are_heard(words: Words) -> None:
    trail, _ = words.take_words(Trail(), ["Clear worm from my worm bin, half a millimetre long."])
    assert (trail.pictures, trail.sample) == (("worm",), "worm-bin")
    assert words.take_words(Trail(), ["A bell on a thread, stuck to a crumb."])[0].pictures == ()
    assert words.take_words(Trail(), ["A spider web of fine threads."])[0].pictures == ("thread",)
    assert words.take_words(Trail(), ["Bright green grains inside."])[0].pictures == ()
    assert words.take_words(Trail(), ["White thread worm."])[0].pictures == ("worm",)


def test_a_sentence_in_which_nothing_is_heard_is_named_and_the_rest_taken(words: Words) -> None:
    trail, unheard = words.take_words(Trail(), ["It smelled of earth on Tuesday.", "Six legs and feelers."])
    assert unheard == ("It smelled of earth on Tuesday.",)
    assert {each.character for each in trail.saw} >= {"leg-pairs", "front-end"}


def test_what_is_said_at_once_is_what_the_sentences_say_together(words: Words) -> None:
    """The part that a sentence speaks of may be named in another: feelers first, whose legs come after."""
    one, _ = words.take_words(Trail(), ["A pair of feelers.", "Six legs."])
    other, _ = words.take_words(Trail(), ["Six legs.", "A pair of feelers."])
    assert {(each.character, each.states) for each in one.saw} == {(each.character, each.states) for each in other.saw}
