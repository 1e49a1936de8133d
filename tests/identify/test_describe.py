"""Describing in any order: Bayes by hand, what applies, what is inherited, and forty-eight things told in lay words."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from keytool.identify import Model, Observation, Trail, compiled, describe, evaluate, explain, parsed, written
from keytool.identify.asking import end_of, within_scope
from keytool.identify.observation_tables import _below, entropy, seen
from keytool.identify.posterior import likelihood
from keytool.identify.questions import information, power_at_hand, questions
from keytool.library import Library
from keytool.library.value import States
from tests.conftest import read_cases

CASES = Path(__file__).parents[1] / "cases" / "described.yaml"
TOLD: list[dict[str, Any]] = read_cases(CASES)


@pytest.fixture(scope="module")
def model(library: Library) -> Model:
    return compiled(library)


def saw(model: Model, text: str, **more: Any) -> Trail:
    read = parsed(model, "/".join(f"saw:{each}" for each in text.split("/")))
    assert not read.left
    return Trail(saw=read.trail.saw, **more)


def test_the_posterior_is_prior_times_the_chance_of_each_look(model: Model) -> None:
    """Against the rule itself, multiplied out for every entry."""
    trail = saw(model, "edge=irregular/own-movement=still/form=compact")
    after = describe(model, trail).after
    weights = list(model.prior)
    for name, state in (("edge", "irregular"), ("own-movement", "still"), ("form", "compact")):
        table = model.tables[name]
        at = table.states.index(state)
        weights = [weight * table.rows[row][at] for weight, row in zip(weights, table.row, strict=True)]
    assert after.chance == pytest.approx([weight / sum(weights) for weight in weights], rel=1e-12)


def test_a_state_is_seen_or_misread_at_the_rates_of_its_character(library: Library) -> None:
    for character in library.characters.values():
        for state in character.states:
            row = seen(character, States(frozenset({state})))
            assert sum(row) == pytest.approx(1)
            assert row[list(character.states).index(state)] >= 1 - 0.9


def test_two_answers_on_one_character_are_one_look(model: Model) -> None:
    once = describe(model, saw(model, "edge=irregular")).after.chance
    again = describe(model, saw(model, "edge=irregular")).after.chance
    assert once == again
    assert describe(model, saw(model, "edge=!regular")).after.chance == pytest.approx(once)


def test_what_contradicts_is_left_out_and_named(model: Model) -> None:
    key = model.keys["first-look"].key
    lead = next(lead for lead in key.couplets[key.first].leads.values() if lead.when)
    name, value = next(iter(lead.when.items()))
    assert isinstance(value, States)
    others = ",".join(state for state in model.tables[name].states if state not in value.ids)
    read = parsed(model, f"{key.first}={lead.id}/saw:{name}={others}", "first-look")
    result = describe(model, read.trail)
    assert [look.source for look in result.conflicts] == [("first-look", key.first, lead.id)]


def test_cannot_tell_changes_nothing(model: Model) -> None:
    told = describe(model, saw(model, "form=long")).after.chance
    assert describe(model, saw(model, "form=long/tail=cannot-tell/gullet=cannot-tell")).after.chance == told


def test_what_is_seen_where_it_cannot_be_speaks_against(model: Model) -> None:
    before, after = (describe(model, saw(model, text)).after.chance for text in ("form=long", "form=long/cross-walls=straight"))
    hyphae, worms = model.groups["hypha"], model.groups["nematode"]

    def odds(chance: tuple[float, ...]) -> float:
        return sum(chance[i] for i in hyphae) / sum(chance[i] for i in worms)

    assert odds(after) > 10 * odds(before)


def test_whoever_measured_a_spear_saw_a_spear(model: Model) -> None:
    result = describe(model, saw(model, "spear-length=16"))
    assert {look.source for looks, _ in result.after.evidence.parts for look in looks} == {("spear-length",), ("mouth",)}


def test_an_entry_does_not_win_by_saying_little(model: Model) -> None:
    """Of two entries alike but for one character, the one that states what was seen is likelier than the silent one."""
    for name, table in model.tables.items():
        if table.is_number:
            continue
        for number, row in enumerate(table.row):
            states = model.library.entries[model.entries[number]].statements.get(name)
            if states and isinstance(states.showing, States) and len(states.showing.ids) == 1:
                (state,) = states.showing.ids
                at = table.states.index(state)
                silent = [i for i, id in enumerate(model.entries) if name not in model.library.entries[id].statements and table.has[i]]
                assert all(table.rows[row][at] >= table.rows[table.row[i]][at] - 0.35 for i in silent[:5]), (name, state)


def test_a_range_has_soft_ends_and_covers_everything() -> None:
    assert _below(float("-inf"), 1, 2, 0.1) == 0 and _below(float("inf"), 1, 2, 0.1) == 1
    assert _below(1.5, 1, 2, 0.1) == pytest.approx(0.5)
    assert 0 < _below(1.0, 1, 2, 0.1) < 0.05, "half the blur lies beyond the end"
    assert _below(1.3, 1, 2, 0.1) - _below(1.2, 1, 2, 0.1) == pytest.approx(0.1)


def test_the_chances_of_the_leads_of_a_couplet_add_up_to_one(model: Model) -> None:
    for compiled_key in model.keys.values():
        for couplet, leads in compiled_key.boxes.items():
            if all(model.tables[name].is_number is False for name in compiled_key.key.couplets[couplet].characters):
                totals = [sum(column) for column in zip(*(likelihood(model, boxes) for boxes in leads.values()), strict=True)]
                assert totals == pytest.approx([1.0] * len(totals), abs=1e-4), couplet


def test_entropy_is_that_of_scipy_and_of_the_textbook() -> None:
    """Shannon 1948: priors .4 .3 .2 .1 have 1.84644 bits (computed, in every textbook)."""
    stats = pytest.importorskip("scipy.stats")
    for weights in ([0.4, 0.3, 0.2, 0.1], [0.35, 0.2, 0.15, 0.1, 0.08, 0.06, 0.04, 0.02], [1, 1], [5, 0, 5]):
        assert entropy(weights) == pytest.approx(stats.entropy(weights, base=2))
    assert entropy([0.4, 0.3, 0.2, 0.1]) == pytest.approx(1.84644, abs=1e-5)


def test_information_is_that_of_worked_examples() -> None:
    """Four kinds of equal chance: one that varies costs 0.3 of a clean bit, misreading at one in ten another 0.34 (computed)."""

    def rows(*yes: float, misread: float = 0.0) -> list[list[float]]:
        read = [each * (1 - misread) + (1 - each) * misread for each in yes]
        return [[each, 1 - each] for each in read]

    even, each = [0.25] * 4, range(4)
    assert information(rows(1, 1, 0, 0), even, each) == pytest.approx(1)
    assert information(rows(1, 0, 0, 0), even, each) == pytest.approx(0.811278, abs=1e-6)
    # A kind that varies: what is left unknown is which kind, so the sum over kinds of their own spread is taken off.
    assert information(rows(1, 0.5, 0, 0), even, each) == pytest.approx(0.954434 - 0.25, abs=1e-6)
    assert information(rows(1, 0.5, 0, 0, misread=0.1), even, each) == pytest.approx(0.369204, abs=1e-6)
    # Three kinds of unequal chance, worked by hand as what is open before less what is open after: 1.48548 - 0.65 x 0.779350 - 0.35 x 0.985228.
    assert information(rows(0, 0.5, 1), [0.5, 0.3, 0.2], range(3)) == pytest.approx(0.634068, abs=1e-6)
    assert information(rows(0, 0.5, 1, misread=0.1), [0.5, 0.3, 0.2], range(3)) == pytest.approx(0.329745, abs=1e-6)


def test_a_look_that_parts_only_what_ends_alike_tells_nothing() -> None:
    rows = [[1.0, 0.0], [0.0, 1.0], [0.5, 0.5], [0.5, 0.5]]
    even = [0.25] * 4
    assert information(rows, even, [0, 0, 1, 1]) == pytest.approx(0)
    assert information(rows, even, [0, 1, 2, 2]) == pytest.approx(0.5)


def test_where_a_drop_is_from_moves_what_is_met_there(model: Model) -> None:
    def chance(sample: str, entry: str) -> float:
        return describe(model, Trail(sample=sample)).after.chance[model.index[entry]]

    assert chance("moss", "smooth-water-bear") > chance("", "smooth-water-bear") > chance("compost", "smooth-water-bear")
    assert chance("compost", "rhabditis") > chance("compost", "eudorylaimus")
    assert chance("litter", "club-fungus-hypha") > chance("field", "club-fungus-hypha")
    for multipliers in model.samples.values():
        assert all(1 / 9 - 1e-9 <= each <= 9 + 1e-9 for each in multipliers)


def test_a_result_explains_itself(model: Model) -> None:
    trail = saw(model, "mouth=spear/spear-base=knobs/head-cap=dark/tail=drawn-out")
    weights = {look.source[0]: reason.weight for reason in explain(model, trail, "pratylenchus") for look in reason.looks}
    assert weights["head-cap"] > 0 > weights["tail"]


@pytest.mark.parametrize("case", TOLD, ids=lambda case: case["id"])
def test_a_thing_told_in_lay_words_comes_out_right_or_open(model: Model, case: dict[str, Any]) -> None:
    result = described(model, case)
    right = set().union(*(model.within(id) for id in case["right"]))
    harmful = set().union(*(model.within(id) for id in case["harmful"])) - right if case["harmful"] else set()
    chance = result.after.chance
    assert sum(chance[i] for i in harmful) < 0.5
    is_right = sum(chance[i] for i in right) >= 0.5
    is_open = result.verdict is None or bool(set(model.within(result.verdict.id)) & right)
    assert is_right or is_open
    assert len(result.names) <= 5


def test_things_told_in_lay_words_come_out_right_in_the_mean(model: Model) -> None:
    shares = []
    for case in TOLD:
        right = set().union(*(model.within(id) for id in case["right"]))
        shares.append(sum(described(model, case).after.chance[i] for i in right))
    assert len(shares) == 51
    assert sum(shares) / len(shares) >= 0.7
    assert sum(share >= 0.5 for share in shares) >= 46


def described(model: Model, case: dict[str, Any]) -> Any:
    first = [f"{name}:{case[name]}" for name in ("from", "at") if name in case]
    read = parsed(model, "/".join([*first, *(f"saw:{each}" for each in case["saw"].split("/"))]))
    assert not read.left
    return describe(model, read.trail)


def test_an_address_restores_all_that_was_told(model: Model) -> None:
    trail = parsed(
        model, "from:moss/at:worm/key:first-look/dot-on-slide=without-slide/saw:tail=!blunt/saw:body-length=~600/saw:~form=long"
    ).trail
    assert (
        written(trail) == "from:moss/at:worm/key:first-look/dot-on-slide=without-slide/saw:tail=!blunt/saw:body-length=~600/saw:~form=long"
    )
    assert trail.saw[2] == Observation("form", ("long",), pointed=True)


@pytest.mark.parametrize(
    ("address", "says"),
    [
        ("__proto__=x", "There is no question of first-look '__proto__'."),
        ("saw:body-length=900..10", "'900..10' for 'body-length' runs backwards."),
        ("saw:body-length=0", "Nothing is 0 of 'body-length'."),
        ("saw:body-length=long", "'long' is no number for 'body-length'."),
        ("saw:tails=blunt", "There is no character 'tails'."),
        ("from:attic", "There is no kind of sample 'attic'."),
        ("<script>", "'<script>' says nothing that this library knows."),
    ],
)
def test_what_cannot_be_read_is_left_out_and_named_and_the_rest_kept(model: Model, address: str, says: str) -> None:
    read = parsed(model, f"saw:form=long/{address}/saw:edge=regular", "first-look")
    assert read.left == (says,)
    assert [each.character for each in read.trail.saw] == ["form", "edge"]


def test_the_duty_to_tell_is_said_once_most_of_what_is_likely_carries_it_though_nothing_is_settled(model: Model) -> None:
    result = describe(model, parsed(model, "saw:mouth=spear/saw:spear-base=knobs/saw:body-length=450").trail)
    assert result.names[0].chance < 0.5
    assert result.cautions == ("send-to-laboratory",)
    assert not describe(model, parsed(model, "saw:form=long").trail).cautions


def test_after_cannot_tell_the_key_goes_on_in_its_own_words_unless_another_look_tells_clearly_more(model: Model) -> None:
    for id, key in model.keys.items():
        state = evaluate(model, parsed(model, f"{key.key.first}=cannot-tell", id).trail)
        own = {name for couplet in key.key.couplets.values() for name in couplet.characters}
        if state.asks_character and state.asks_character not in own:
            inside = replace(state.result.after, chance=within_scope(state.result.after.chance, key.scope))
            found = questions(model, inside, power_at_hand(model, inside), end_of(model, key))
            worth = {each.character: each.worth for each in found}
            rivals = [each for name, each in worth.items() if name in own]
            assert worth[state.asks_character] > model.figure("clearly-better") * max(rivals, default=0.0), id
