"""A walk is its answers; the same answers always stand at the same place."""

from pathlib import Path

import pytest

from keytool.identify import CANNOT_TELL, Model, WalkState, address, compiled, evaluate, parsed
from keytool.library import Library, load


@pytest.fixture
def buttons(mini: Path) -> Model:
    return compiled(load(mini).library)


@pytest.fixture(scope="module")
def model(library: Library) -> Model:
    return compiled(library)


def after(model: Model, where: str, key: str = "buttons") -> WalkState:
    read = parsed(model, where, key)
    assert not read.left
    return evaluate(model, read.trail)


def test_it_begins_at_the_first_couplet_with_every_end_possible(buttons: Model) -> None:
    state = after(buttons, "")
    assert (state.asks, state.arrived, state.goes_on) == ("holes", "", "")


def test_answers_lead_to_an_end(buttons: Model) -> None:
    state = after(buttons, "holes=open/size=narrow/rim=raised")
    assert (state.is_over, state.arrived, state.ends[0].id) == (True, "shirt-button", "shirt-button")
    assert state.ends[0].chance > 0.85


def test_back_is_the_walk_without_its_last_answer(buttons: Model) -> None:
    assert after(buttons, "holes=open").asks == "size"


def test_an_earlier_answer_may_be_changed_and_the_later_ones_stay(buttons: Model) -> None:
    one, other = after(buttons, "holes=open/size=narrow/rim=raised"), after(buttons, "holes=open/size=narrow/rim=flat")
    assert (one.arrived, other.arrived) == ("shirt-button", "cuff-button")


def test_an_address_gives_back_the_walk_it_was_made_from(buttons: Model) -> None:
    where = f"holes=open/size={CANNOT_TELL}/rim=flat"
    assert address(parsed(buttons, where, "buttons").trail.legs[0].answers) == where


def test_cannot_tell_keeps_everything_possible(buttons: Model) -> None:
    assert {each.id for each in after(buttons, "holes=cannot-tell").ends} >= {"coat-button", "shirt-button", "cuff-button"}


def test_cannot_tell_to_everything_stops_with_what_is_commonest_first(buttons: Model) -> None:
    where: list[str] = []
    while not (state := after(buttons, "/".join(where))).is_over:
        where.append(f"{state.asks}=cannot-tell" if state.asks else f"saw:{state.asks_character}=cannot-tell")
    assert state.ends[0].id == "shirt-button"
    assert state.ends[0].chance < buttons.figure("holds-share")


def test_after_cannot_tell_no_question_is_asked_that_has_no_meaning_for_what_is_likely(model: Model) -> None:
    share = model.figure("asks-share")
    for id, key in model.keys.items():
        where: list[str] = []
        while not (state := after(model, "/".join(where), id)).is_over and len(where) < 6:
            if where and state.asks_character:
                has, chance = model.tables[state.asks_character].has, state.result.after.chance
                assert sum(each for each, can in zip(chance, has, strict=True) if can) >= share, (id, where)
            where.append(f"{state.asks}=cannot-tell" if state.asks else f"saw:{state.asks_character}=cannot-tell")
        assert key.key.first in where[0]


def test_what_one_key_has_settled_is_passed_over_in_the_next(model: Model) -> None:
    state = after(model, "short-insides=legs/key:small-animals", "first-look")
    assert state.passed.get("plan") == "legs"


def test_an_answer_after_cannot_tell_speaks_against_what_does_not_fit(buttons: Model) -> None:
    before, now = (
        {each.id: each.chance for each in after(buttons, where).ends}
        for where in ("holes=open/size=cannot-tell", "holes=open/size=cannot-tell/rim=raised")
    )
    assert now["cuff-button"] < before["cuff-button"] / 2
    assert now["shirt-button"] > before["shirt-button"]
