"""After a "cannot tell" a walk asks only what can be answered, and goes on where most of what is still likely lies."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from keytool.identify import (
    CANNOT_TELL,
    Answer,
    Leg,
    Model,
    Observation,
    Trail,
    WalkState,
    compiled,
    compiled_for,
    evaluate,
    parsed,
    sure_leads,
)
from keytool.identify.posterior import mass, met
from keytool.library import Library
from keytool.library.graph import one_way
from keytool.library.value import States

LONG_WITHOUT_A_GUT = "key:first-look/shape=long/long-insides=gutless/long-movement=cannot-tell"


@pytest.fixture(scope="module")
def model(library: Library) -> Model:
    return compiled(library)


def unsure_to_the_end(model: Model, trail: Trail) -> Iterator[tuple[Trail, WalkState]]:
    """A walk that answers "cannot tell" to all that is asked, and goes on wherever it leads."""
    while True:
        state = evaluate(model, trail)
        yield trail, state
        leg = trail.legs[-1]
        if state.goes_on:
            trail = replace(trail, legs=(*trail.legs, Leg(state.goes_on)))
        elif state.is_over:
            return
        elif state.asks:
            trail = replace(trail, legs=(*trail.legs[:-1], Leg(leg.key, (*leg.answers, Answer(state.asks, CANNOT_TELL)))))
        else:
            trail = replace(trail, saw=(*trail.saw, Observation(state.asks_character)))


def test_a_long_thing_without_a_gut_goes_on_among_threads_with_all_that_was_told(model: Model) -> None:
    last, state = list(unsure_to_the_end(model, parsed(model, LONG_WITHOUT_A_GUT).trail))[-1]
    assert [leg.key for leg in last.legs] == ["first-look", "threads"]
    assert last.legs[0].answers[:2] == (Answer("shape", "long"), Answer("long-insides", "gutless"))
    assert state.result.leading
    assert state.result.leading.id == "thread"


def test_going_on_where_most_is_likely_says_how_much_lies_there(model: Model) -> None:
    steps = list(unsure_to_the_end(model, parsed(model, LONG_WITHOUT_A_GUT).trail))
    (state,) = [state for _, state in steps if state.goes_on]
    held = mass(state.result.after.chance, model.keys["threads"].scope)
    assert state.holds == pytest.approx(held)
    assert 0.5 <= held < 0.9


def test_an_answer_that_leads_to_another_key_leaves_nothing_open(model: Model) -> None:
    state = evaluate(model, parsed(model, "key:first-look/shape=long/long-insides=worm").trail)
    assert (state.goes_on, state.holds) == ("nematode-mouthparts", 1.0)


@pytest.mark.parametrize(
    "key", ["first-look", "threads", "nematode-mouthparts", "round-bodies", "moving-single-cells", "debris-and-faults"]
)
def test_nothing_is_asked_twice_and_it_soon_stops(model: Model, key: str) -> None:
    steps = list(unsure_to_the_end(model, Trail(legs=(Leg(key),), saw=(Observation("slide-test", ("with-slide",)),))))
    asked = [(step.legs[-1].key, state.asks) if state.asks else ("", state.asks_character) for step, state in steps if not state.is_over]
    assert len(asked) == len(set(asked))
    keys = [leg.key for leg in steps[-1][0].legs]
    assert len(keys) == len(set(keys))
    assert len(asked) <= model.figure("unsure-most") + model.figure("unsure-more") * (len(keys) - 1)


def test_an_end_that_holds_less_than_all_the_rest_is_not_arrived_at(model: Model) -> None:
    for key in model.keys:
        told = Trail(legs=(Leg(key),), saw=(Observation("slide-test", ("with-slide",)),))
        *_, (_, state) = unsure_to_the_end(model, told)
        if state.arrived:
            assert mass(state.result.after.chance, model.within(state.arrived)) >= model.figure("leads-share")


def test_who_cannot_say_whether_it_moves_is_not_asked_how(model: Model) -> None:
    for _, state in unsure_to_the_end(model, parsed(model, "key:first-look/shape=short/short-movement=cannot-tell").trail):
        assert state.asks_character not in ("manner", "speed")


def test_who_saw_no_spear_is_not_asked_what_form_it_has(model: Model) -> None:
    trail = parsed(
        model, "key:first-look/shape=long/long-insides=worm/key:nematode-mouthparts/outline=even/gullet=cannot-tell/saw:mouth=cavity"
    ).trail
    of_spears = {id for id, each in model.library.characters.items() if "spear" in each.applies.where.get("mouth", ())}
    for _, state in unsure_to_the_end(model, trail):
        assert state.asks_character not in of_spears


def test_what_is_seen_besides_leaves_the_next_question_of_a_key_where_it_was(model: Model) -> None:
    state = evaluate(model, parsed(model, "saw:tail=drawn-out", "nematode-mouthparts").trail)
    assert (state.asks, dict(state.likely)) == (model.keys["nematode-mouthparts"].key.first, {})


def test_what_nobody_told_and_is_hardly_so_is_not_taken_for_granted(model: Model) -> None:
    """A small cell with whips: that it hops is open, so it is asked how it gets about, and not what it does between the hops."""
    state = evaluate(model, parsed(model, "saw:cell-edge=whips-or-bare/saw:own-movement=moves", "moving-single-cells").trail)
    asked = [each.character for each in state.result.next]
    assert "small-path" in asked
    assert "hop" not in asked


def test_what_another_look_has_told_is_not_asked_in_other_words(model: Model) -> None:
    told = evaluate(model, parsed(model, "saw:dot-path=stays", "dots-and-rods").trail)
    assert "own-movement" not in {each.character for each in told.result.next}
    moves = evaluate(model, parsed(model, f"{LONG_WITHOUT_A_GUT}/saw:line-place=in-water").trail)
    assert "slide-test" not in {each.character for each in moves.result.next}


def test_a_key_opened_from_another_does_not_ask_what_is_as_good_as_certain(model: Model) -> None:
    """A worm was told of, so whether it lies in the optics is passed over, and said to be."""
    state = evaluate(
        model, parsed(model, "key:first-look/shape=dot/dot-on-slide=with-slide/key:dots-and-rods/saw:slide-test=with-slide").trail
    )
    assert all(model.figure("passes-share") <= held <= 1 for held in state.likely.values())
    assert set(state.likely) <= set(state.passed)


def test_a_dot_goes_straight_on_since_hardly_one_is_a_fault_of_the_optics(model: Model) -> None:
    state = evaluate(model, parsed(model, "key:first-look/shape=dot").trail)
    assert (state.goes_on, dict(state.passed)) == ("dots-and-rods", {"dot-on-slide": "with-slide"})
    assert state.holds == pytest.approx(mass(state.result.after.chance, model.keys["dots-and-rods"].scope))


def test_what_was_passed_over_as_likely_can_be_told_after_all(model: Model) -> None:
    state = evaluate(model, parsed(model, "key:first-look/shape=dot/dot-on-slide=without-slide").trail)
    assert (state.goes_on, dict(state.passed)) == ("debris-and-faults", {})


def test_a_page_knows_beforehand_what_a_walk_of_one_key_passes_over(model: Model) -> None:
    """What the data of a page say is what the engine finds, on every way that misses the questions passed over."""
    for id, each in model.keys.items():
        sure = sure_leads(model, id)
        assert sure == sure_leads(compiled_for(model.library, each.key), id)
        for couplet, way in one_way(each.key).items():
            told = tuple(Answer(at, lead) for at, lead in way if sure.get(at) != lead)
            if couplet in sure:
                state = evaluate(model, Trail(legs=(Leg(id, told),)))
                assert state.passed[couplet] == sure[couplet]
                assert state.asks != couplet


def test_what_could_not_be_told_together_is_asked_by_itself(model: Model) -> None:
    """Who saw no edge may have seen that it lies still."""
    state = evaluate(model, parsed(model, "key:first-look/shape=short/short-movement=cannot-tell").trail)
    assert state.asks_character == "own-movement"
    both = evaluate(model, parsed(model, "key:first-look/shape=short/short-movement=cannot-tell/saw:own-movement=cannot-tell").trail)
    assert both.asks_character not in ("own-movement", "")


def test_pollen_with_two_ears_is_heard_where_its_edge_and_its_openings_were_not_seen(model: Model) -> None:
    told = "key:first-look/shape=short/short-movement=cannot-tell/saw:own-movement=still/saw:body-shape=eared/saw:body-colour=yellow-orange"
    state = evaluate(model, parsed(model, told).trail)
    assert (state.goes_on, state.result.names[0].id) == ("round-bodies", "winged-pollen")


def test_a_golden_boat_whose_glass_was_not_seen_ends_as_a_diatom_and_no_green_swimmer(model: Model) -> None:
    start = "key:first-look/shape=short/short-movement=moves/short-insides=cell/key:moving-single-cells"
    state = evaluate(model, parsed(model, f"{start}/edge=whips/colour=green/green=olive/olive=boat/saw:manner=glides").trail)
    assert (state.arrived, state.result.names[0].id) == ("diatom", "diatom")


def test_who_sees_legs_need_not_have_seen_it_move(model: Model) -> None:
    leads = model.keys["first-look"].boxes["short-movement"]
    legs = {
        "own-movement": States(frozenset({"still"})),
        "body-plan": States(frozenset({"legs"})),
        "edge": States(frozenset({"irregular"})),
    }
    assert [lead for lead, boxes in leads.items() if met((legs,), boxes)] == ["moves"]


def test_a_rare_worm_does_not_borrow_the_commonness_of_all_worms_from_a_group_that_says_none(model: Model) -> None:
    """A horsehair worm stands among the soft animals, which are met now and then, and is the rarest of them."""
    prior = {id: model.prior[number] for id, number in model.index.items()}
    assert prior["horsehair-worm"] < prior["acrobeloides"]
    assert prior["horsehair-worm"] < prior["creeping-rotifer"]
