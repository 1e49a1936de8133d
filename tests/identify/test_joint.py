"""Several answers together, against trying out everything that may be seen.

The enumeration below is Bayes' rule written out: for each entry, everything that may be seen of
all characters asked, how likely that is, and whether it would be answered so. It shares no
code with `keytool.identify` but the rule for what entries do not say. Which answers hang together
is compared with the connected components that networkx finds.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from itertools import pairwise, product
from pathlib import Path
from typing import Any

import networkx
import pytest

from keytool.contribute.keyed_out import paths_through
from keytool.identify import CANNOT_TELL, Answer, Answers, Ground, address, answers_at, arrivals, ground, stand
from keytool.identify.answer import told
from keytool.identify.joint import chances, next_chances, parts, together
from keytool.identify.standing import gain
from keytool.library import Library, load
from keytool.library.model import Character, Couplet
from keytool.library.value import Interval, Showing, States
from tests.identify.again import put_again
from tests.identify.walks_over import walks

MOST_SEEN = 300
"""Walks of which more than so many different things may be seen are left out."""


@pytest.fixture
def again(mini: Path) -> Ground:
    library = load(put_again(mini)).library
    return ground(library, library.keys["again"])


# --- everything that may be seen, tried out ---


def limits(it: Ground, name: str) -> list[float]:
    """Every limit at which a couplet of the key cuts a number, from the least to the greatest, open ends included."""
    found = {-math.inf, math.inf}
    for couplet in it.key.couplets.values():
        for lead in couplet.leads.values():
            if name in lead.when:
                found |= {lead.when[name].low, lead.when[name].high}  # type: ignore[attr-defined]
    return sorted(found)


def read_below(shown: Interval, limit: float, error: float) -> float:
    """P(u + e < limit), u even over what is shown and e even within the error: the straight pieces of its graph, summed."""
    if math.isinf(limit):
        return float(limit > 0)
    high = max(shown.high, shown.low + 1e-9)

    def below(u: float) -> float:
        return min(1.0, max(0.0, (limit - u + error) / (2 * error)))

    knots = sorted({shown.low, high, *(x for x in (limit - error, limit + error) if shown.low < x < high)})
    return sum((b - a) * (below(a) + below(b)) / 2 for a, b in pairwise(knots)) / (high - shown.low)


def may_be_seen(it: Ground, character: Character, shown: Showing) -> dict[Any, float]:
    """Each state, or each stretch between two limits, and how likely it is to be seen."""
    if isinstance(shown, States):
        others = len(character.states) - 1
        found: dict[Any, float] = dict.fromkeys(character.states, 0.0)
        for true in shown.ids:
            wrong = {seen: character.mix_ups.get((true, seen), character.misread / others) for seen in character.states if seen != true}
            for seen, rate in {**wrong, true: 1 - sum(wrong.values())}.items():
                found[seen] += rate / len(shown.ids)
        return found
    assert isinstance(shown, Interval)
    ends = limits(it, character.id)
    stretches = list(pairwise(ends))
    if math.isinf(shown.low) or math.isinf(shown.high):
        reached = [(low, high) for low, high in stretches if max(low, shown.low) < min(high, shown.high)]
        right = {each: (each in reached) / len(reached) for each in stretches}
    else:
        right = {
            (low, high): read_below(shown, high, character.plus_minus) - read_below(shown, low, character.plus_minus)
            for low, high in stretches
        }
    wrong = character.misread / (len(stretches) - 1)
    return {each: (1 - character.misread) * chance + wrong * (1 - chance) for each, chance in right.items()}


def answered(couplet: Couplet, seen: Mapping[str, Any]) -> dict[str, float]:
    """The lead that somebody takes who has seen this: any of those that fit, any at all where none does."""

    def fits(name: str, wanted: Any) -> bool:
        return seen[name] in wanted.ids if isinstance(wanted, States) else wanted.low <= seen[name][0] < wanted.high

    fitting = [lead.id for lead in couplet.leads.values() if not lead.otherwise and all(fits(*each) for each in lead.when.items())]
    fitting = fitting or [lead.id for lead in couplet.leads.values() if lead.otherwise] or list(couplet.leads)
    return {id: 1 / len(fitting) for id in fitting}


def everything_seen(it: Ground, names: list[str]) -> Iterator[dict[str, Any]]:
    """Everything that may be seen of some characters, whatever is there."""
    axes = [
        may_be_seen(
            it,
            it.library.characters[name],
            Interval() if it.library.characters[name].is_number else States(frozenset(it.library.characters[name].states)),
        )
        for name in names
    ]
    for combination in product(*axes):
        yield dict(zip(names, combination, strict=True))


def enumerated(it: Ground, answers: Answers) -> dict[str, float] | None:
    """The chance of each entry after some answers; None where no look at all explains them."""
    answers = told(answers)
    couplets = [it.key.couplets[each.couplet] for each in answers]
    open_before = []
    for index, couplet in enumerate(couplets):
        names = list(dict.fromkeys(name for each in couplets[: index + 1] for name in each.characters))
        so_far = [
            seen
            for seen in everything_seen(it, names)
            if all(before.lead in answered(one, seen) for one, before in zip(couplets[:index], answers[:index], strict=True))
        ]
        open_before.append({lead for seen in so_far for lead in answered(couplet, seen)})
    if any(each.lead not in opened for each, opened in zip(answers, open_before, strict=True)):
        return None
    weights = {}
    for entry in it.members:
        stated = [i for i, couplet in enumerate(couplets) if all(name in entry.statements for name in couplet.characters)]
        names = list(dict.fromkeys(name for i in stated for name in couplets[i].characters))
        axes = [may_be_seen(it, it.library.characters[name], entry.statements[name].showing).items() for name in names]
        total = 0.0
        for combination in product(*axes):
            seen = dict(zip(names, (what for what, _ in combination), strict=True))
            total += math.prod(chance for _, chance in combination) * math.prod(
                answered(couplets[i], seen).get(answers[i].lead, 0.0) for i in stated
            )
        for i, opened in enumerate(open_before):
            if i not in stated:
                total /= len(opened)
        weights[entry.id] = it.prior[entry.id] * total
    whole = sum(weights.values())
    return {id: weight / whole for id, weight in weights.items()}


def contradicts_itself(it: Ground, answers: Answers) -> bool:
    """Whether some answers on one character are explained by no single look, so that they count as several."""
    return any(not any(together(it, part, it.prior).values()) for part in parts(it, told(answers)))


def how_many(it: Ground, answers: Answers) -> int:
    names = {name for each in told(answers) for name in it.key.couplets[each.couplet].characters}
    return math.prod(
        len(limits(it, name)) if it.library.characters[name].is_number else len(it.library.characters[name].states) for name in names
    )


def asks_again(it: Ground, answers: Answers) -> bool:
    return any(len(part) > 1 for part in parts(it, told(answers)))


def compare(it: Ground, few: int) -> int:
    """Compares the walks that ask a character again with the enumeration, every so manieth of them; gives how many were."""
    tried = 0
    for answers in [each for each in walks(it) if asks_again(it, each) and how_many(it, each) <= MOST_SEEN][::few]:
        expected = enumerated(it, answers)
        if expected:
            assert chances(it, answers) == pytest.approx(expected, abs=1e-9), address(answers)
            tried += 1
    return tried


def test_every_walk_of_a_key_that_asks_again_agrees_with_trying_everything(again: Ground) -> None:
    assert compare(again, 1) > 60


def test_walks_of_the_real_keys_agree_with_trying_everything(library: Library) -> None:
    assert sum(compare(ground(library, key), 4) for key in library.keys.values()) > 50


# --- what must hold ---


def test_a_second_look_at_the_same_thing_is_no_second_witness(again: Ground) -> None:
    """By hand: holes are seen as they are in 18 of 20, as each other number in 1 of 20; "open" and then "four" is "four"."""
    prior = {
        "shank-button": Fraction(1, 40),
        "coat-button": Fraction(3, 40),
        "shirt-button": Fraction(27, 40),
        "cuff-button": Fraction(9, 40),
    }
    sees_four = {
        "shank-button": Fraction(1, 20),
        "coat-button": Fraction(19, 40),
        "shirt-button": Fraction(18, 20),
        "cuff-button": Fraction(19, 40),
    }
    weight = {id: prior[id] * sees_four[id] for id in prior}
    expected = {id: float(each / sum(weight.values())) for id, each in weight.items()}
    assert chances(again, (Answer("through", "open"), Answer("count", "four"))) == pytest.approx(expected, abs=1e-9)


def test_an_answer_that_follows_from_those_before_changes_nothing_and_tells_nothing(again: Ground) -> None:
    """Whoever has seen "closed" and is asked for the number of the holes of a thing with holes can say anything: it is no news."""
    before = (Answer("size", "wide"),)
    after = (*before, Answer("thick", "wide"))
    assert chances(again, after) == pytest.approx(chances(again, before))
    standing = stand(again, ())
    assert gain(again, before, "thick", standing.possible, chances(again, before)) == pytest.approx(0)
    assert gain(again, (), "thick", standing.possible, chances(again, ())) > 0.1


def test_answers_that_no_single_look_explains_count_as_two_looks(again: Ground) -> None:
    answers = (Answer("size", "wide"), Answer("thick", "narrow"))
    assert enumerated(again, answers) is None
    weight = {
        entry.id: again.prior[entry.id] * again.chance["size"][entry.id][0] * again.chance["thick"][entry.id][0] for entry in again.members
    }
    expected = {id: each / sum(weight.values()) for id, each in weight.items()}
    assert chances(again, answers) == pytest.approx(expected)


def test_the_order_of_answers_does_not_count_where_entries_say_all_that_is_asked(again: Ground) -> None:
    answers = (Answer("through", "open"), Answer("small", "other"), Answer("count", "four"), Answer("size", "narrow"))
    assert chances(again, answers) == pytest.approx(chances(again, answers[::-1]))


def test_chances_now_are_the_mean_of_the_chances_after_the_next_answer(library: Library) -> None:
    """The law of total probability over walks of every key, for entries that say all or nothing of what each couplet asks."""
    tried = 0
    for key in library.keys.values():
        it = ground(library, key)
        for answers in walks(it)[::5]:
            standing = stand(it, answers)
            if not standing.asks or contradicts_itself(it, answers):
                continue
            after = next_chances(it, answers, standing.asks, it.prior)
            now = standing.chance
            asked = [*(each.couplet for each in told(answers)), standing.asks]
            whole = [
                entry.id
                for entry in it.members
                if not any(
                    0 < sum(name in entry.statements for name in names) < len(names)
                    for names in (key.couplets[couplet].characters for couplet in asked)
                )
            ]
            assert {id: sum(each[id] for each in after) for id in whole} == pytest.approx(dict.fromkeys(whole, 1.0))
            for lead, given in zip(key.couplets[standing.asks].leads, after, strict=True):
                weights = {id: now[id] * given[id] for id in now}
                if any(weights.values()):
                    then = chances(it, (*answers, Answer(standing.asks, lead)))
                    assert then == pytest.approx({id: weight / sum(weights.values()) for id, weight in weights.items()})
            tried += asks_again(it, (*answers, Answer(standing.asks, next(iter(key.couplets[standing.asks].leads)))))
    assert tried > 80


def test_answers_hang_together_as_their_characters_do(library: Library) -> None:
    """Against the connected components of the graph of couplets and characters."""
    for key in library.keys.values():
        it = ground(library, key)
        for answers in walks(it)[::20]:
            graph = networkx.Graph()
            graph.add_nodes_from(each for each in told(answers))
            graph.add_edges_from((each, name) for each in told(answers) for name in key.couplets[each.couplet].characters)
            expected = {frozenset(each for each in part if isinstance(each, Answer)) for part in networkx.connected_components(graph)}
            assert {frozenset(part) for part in parts(it, told(answers))} == expected


def test_nothing_is_ruled_out_by_answers_about_different_limits(library: Library) -> None:
    """A number is read between two limits now and then, also when the thing is far from there."""
    it = ground(library, library.keys["debris-and-faults"])
    answers = (Answer("grain-size", "coarse-silt"), Answer("speck", "larger"))
    assert len(parts(it, answers)) == 1
    assert min(chances(it, answers).values()) > 0


def test_cannot_tell_says_nothing(again: Ground) -> None:
    answers = answers_at(again, "through=open")
    assert chances(again, (*answers, Answer("small", CANNOT_TELL))) == chances(again, answers)


def test_how_sure_the_ends_are_is_told(library: Library, record_property: Callable[[str, object], None]) -> None:
    """At the ends that each entry rightly comes to: as if every answer were a look of its own, and as it is."""
    both: list[tuple[float, float]] = []
    for key in library.keys.values():
        it = ground(library, key)
        for entry in it.members:
            for way in paths_through(library, key, entry):
                answers = tuple(Answer(step.couplet, step.lead) for step in way.steps)
                if asks_again(it, answers):
                    (arrival,) = arrivals(it, answers, stand(it, answers))
                    weights = {
                        id: it.prior[id]
                        * math.prod(
                            it.chance[each.couplet][id][list(key.couplets[each.couplet].leads).index(each.lead)] for each in answers
                        )
                        for id in it.prior
                    }
                    both.append((sum(weights[id] for id in it.within[way.end]) / sum(weights.values()), arrival.sure))
    apart, joint = (sum(each) / len(both) for each in zip(*both, strict=True))
    lower = sum(after < before - 0.005 for before, after in both)
    higher = sum(after > before + 0.005 for before, after in both)
    record_property(
        "score",
        f"{len(both)} ways ask a character again. How sure at their ends, on average: {apart:.3f} as if each answer were a look "
        f"of its own, {joint:.3f} with one look at each character; less sure at {lower}, surer at {higher}, "
        f"most changed {min(after - before for before, after in both):+.2f} and {max(after - before for before, after in both):+.2f}.",
    )
    assert len(both) > 50
    assert lower > 0
