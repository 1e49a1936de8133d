"""The chances after answers, against naive Bayes worked by hand with exact fractions, a reference library, and trying everything."""

from __future__ import annotations

import random
from fractions import Fraction
from itertools import product
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import networkx
import pytest

from keytool.identify import Answer, Leg, Model, Observation, Trail, compiled
from keytool.identify.model import prior_chances
from keytool.identify.observation_tables import Table
from keytool.identify.posterior import evidence, likelihood, posterior
from keytool.library import Library, load
from keytool.library.pieces import holds
from keytool.library.value import States

MOST_SEEN = 3000
"""Walks of which more than so many different things may be seen are left out."""


@pytest.fixture(scope="module")
def model(library: Library) -> Model:
    return compiled(library)


def yes(f: Fraction, e: Fraction) -> Fraction:
    """P(yes) = f(1 - e) + (1 - f)e for two states (naive Bayes with misreading, standard; from memory)."""
    return f * (1 - e) + (1 - f) * e


def test_the_chance_after_answers_is_bayes_rule_with_misreading(mini: Path) -> None:
    """Of the three states of "holes" one is wrongly seen as each other in 1 of 20; the rim is misread in 1 of 5."""
    model = compiled(load(mini).library)
    prior = {
        "shank-button": Fraction(1, 40),
        "coat-button": Fraction(3, 40),
        "shirt-button": Fraction(27, 40),
        "cuff-button": Fraction(9, 40),
    }
    seen_open = {"shank-button": Fraction(2, 20)} | dict.fromkeys(("coat-button", "shirt-button", "cuff-button"), Fraction(19, 20))
    is_raised = {"coat-button": Fraction(1, 2), "shirt-button": Fraction(1), "cuff-button": Fraction(0)}
    weight = {id: prior[id] * seen_open[id] * yes(is_raised[id], Fraction(2, 10)) for id in is_raised}
    answers = (Answer("holes", "open"), Answer("size", "cannot-tell"), Answer("rim", "raised"))
    chance = posterior(model, Trail(legs=(Leg("buttons", answers),))).chance
    got = {id: chance[model.index[id]] for id in weight}
    expected = {id: float(each / sum(weight.values())) for id, each in weight.items()}
    assert {id: each / sum(got.values()) for id, each in got.items()} == pytest.approx(expected, abs=1e-6)


def of_tables(tables: list[Table]) -> Any:
    """As much of a model as looks are weighed with."""
    return SimpleNamespace(tables={each.character: each for each in tables}, entries=tables[0].row)


def test_the_worked_example_of_three_things_and_three_looks() -> None:
    """Priors .5 .3 .2, characters of two states misread one time in ten; seen yes, no, yes. Worked with pencil, to six figures (computed)."""
    f = [[0.9, 0.2, 0.5], [0.1, 0.8, 0.5], [0.1, 0.3, 1.0]]
    tables = [
        Table(f"c{c}", ("yes", "no"), tuple((y := each[c] * 0.9 + (1 - each[c]) * 0.1, 1 - y) for each in f), (0, 1, 2), (True,) * 3, -1)
        for c in range(3)
    ]
    seen = [{f"c{c}": States(frozenset({state}))} for c, state in enumerate(("yes", "no", "yes"))]
    weights = [0.5, 0.3, 0.2]
    for box in seen:
        weights = [a * b for a, b in zip(weights, likelihood(of_tables(tables), [box]), strict=True)]
    assert [each / sum(weights) for each in weights] == pytest.approx([0.842291, 0.0389775, 0.118731], rel=1e-5)


def test_the_chances_are_those_of_scikit_learn_on_handwritten_digits() -> None:
    """1,797 digits of 64 points, dark or not; BernoulliNB of scikit-learn, whose training accuracy on them is 0.89872 (computed)."""
    datasets, naive_bayes = pytest.importorskip("sklearn.datasets"), pytest.importorskip("sklearn.naive_bayes")
    found = datasets.load_digits()
    dark, digit = found.data >= 8, found.target
    peer = naive_bayes.BernoulliNB(alpha=1).fit(dark, digit)
    assert round(peer.score(dark, digit), 5) == 0.89872
    counts = [(int((digit == each).sum()), dark[digit == each].sum(axis=0)) for each in range(10)]
    tables = [
        Table(
            f"c{c}",
            ("dark", "light"),
            tuple(((int(some[c]) + 1) / (of + 2), 1 - (int(some[c]) + 1) / (of + 2)) for of, some in counts),
            tuple(range(10)),
            (True,) * 10,
            -1,
        )
        for c in range(64)
    ]
    for number in range(0, len(dark), 60):
        box = {f"c{c}": States(frozenset({"dark" if dark[number][c] else "light"})) for c in range(64)}
        weights = [of * chance for (of, _), chance in zip(counts, likelihood(of_tables(tables), [box]), strict=True)]
        assert [each / sum(weights) for each in weights] == pytest.approx(list(peer.predict_proba(dark[number : number + 1])[0]), abs=1e-9)


def walks(model: Model, count: int) -> list[Trail]:
    """Answers picked from couplets of states, in any order, so that several ask the same characters."""
    chance, found = random.Random(5), []
    for id, key in model.keys.items():
        couplets = [each for each in key.key.couplets.values() if all(not model.tables[name].is_number for name in each.characters)]
        for _ in range(count):
            some = chance.sample(couplets, min(3, len(couplets)))
            found.append(Trail(legs=(Leg(id, tuple(Answer(each.id, chance.choice(list(each.leads))) for each in some)),)))
    return found


def test_answers_are_weighed_as_trying_everything_that_may_be_seen_does(model: Model) -> None:
    """For each thing seen of all characters asked: how likely it is, and whether every answer would be given to it."""
    checked = 0
    for trail in walks(model, 6):
        found = evidence(model, trail)
        (leg,) = trail.legs
        names = sorted({name for each in leg.answers for name in model.keys[leg.key].key.couplets[each.couplet].characters})
        if found.conflicts or {name for looks, _ in found.parts for look in looks for name in look.characters} != set(names):
            continue
        tables = [model.tables[name] for name in names]
        everything = list(product(*(range(len(each.states)) for each in tables)))
        if len(everything) > MOST_SEEN:
            continue
        total = [1.0] * len(model.entries)
        for _, boxes in found.parts:
            total = [a * b for a, b in zip(total, likelihood(model, boxes), strict=True)]
        fitting = []
        for seen in everything:
            shown = {name: States(frozenset({table.states[at]})) for name, table, at in zip(names, tables, seen, strict=True)}
            couplets = ((model.keys[leg.key].key.couplets[each.couplet], each.lead) for each in leg.answers)
            if all(lead in {each.id for each in holds(couplet, shown)} for couplet, lead in couplets):
                fitting.append(seen)
        for number in model.keys[leg.key].scope[::9]:
            rows = [table.rows[table.row[number]] for table in tables]
            expected = 0.0
            for seen in fitting:
                each = 1.0
                for row, at in zip(rows, seen, strict=True):
                    each *= row[at]
                expected += each
            assert total[number] == pytest.approx(expected, rel=1e-9, abs=1e-9), (leg, model.entries[number])
        checked += 1
    assert checked >= 15


def test_answers_hang_together_as_their_characters_do(model: Model) -> None:
    """Against the connected components that networkx finds."""
    for trail in walks(model, 6):
        found = evidence(model, trail)
        if found.conflicts:
            continue
        graph = networkx.Graph()
        for looks, _ in found.parts:
            for look in looks:
                networkx.add_path(graph, [look.source, *sorted(look.characters)])
        together = {frozenset(name for look in looks for name in look.characters) for looks, _ in found.parts}
        assert together == {frozenset(each for each in part if isinstance(each, str)) for part in networkx.connected_components(graph)}


def test_a_pair_that_is_never_mixed_up_is_not(mini: Path) -> None:
    path = mini / "keydata/characters/rim.yaml"
    path.write_text(path.read_text("utf-8").replace("{rate: 0.2,", "{rate: 0.2, pairs: [{is: flat, seen: raised, rate: 0}],"), "utf-8")
    model = compiled(load(mini).library)
    raised = likelihood(model, [{"rim": States(frozenset({"raised"}))}])
    assert raised[model.index["cuff-button"]] < 1e-6
    assert raised[model.index["shirt-button"]] == pytest.approx(0.8)


def test_a_second_look_at_the_same_thing_is_no_second_witness(mini: Path) -> None:
    model = compiled(load(mini).library)
    answer = Trail(legs=(Leg("buttons", (Answer("rim", "raised"),)),))
    again = Trail(legs=answer.legs, saw=(Observation("rim", ("raised",)),))
    assert posterior(model, again).chance == pytest.approx(posterior(model, answer).chance)


def test_a_group_that_says_how_common_it_is_counts_so_however_many_it_holds(mini: Path) -> None:
    path = mini / "keydata/entries/debris/button.yaml"
    path.write_text(
        path.read_text("utf-8").replace("theme: debris", "theme: debris\ncommonness: {class: rare, basis: {kind: memory}}"), "utf-8"
    )
    for letter in "ab":
        (mini / f"keydata/entries/debris/pin-{letter}.yaml").write_text(
            f"{{id: pin-{letter}, kind: object, theme: debris, names: {{common: Pin}}, within: [pin], summary: Invented., "
            'commonness: {class: common, basis: {kind: memory}}, contributors: [wetmount founders], reviewed: "2026-11-25"}',
            "utf-8",
        )
    (mini / "keydata/entries/debris/pin.yaml").write_text(
        '{id: pin, kind: group, theme: debris, names: {common: Pin}, summary: Invented., contributors: [wetmount founders], reviewed: "2026-11-25"}',
        "utf-8",
    )
    prior = prior_chances(load(mini).library, ("button", "pin"))
    assert prior["pin-a"] == pytest.approx(9 / 19)  # 9 + 9 against 1 for all buttons
    assert prior["shirt-button"] == pytest.approx(27 / 40 / 19)
