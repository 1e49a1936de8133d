"""Things described from published sizes and characters walk to the group their source gives.

The descriptions stand in `tests/cases/`, each with its source and with how every observation is
known to us (seen in the source, recalled, memory). What was not recorded is answered with
"cannot tell". Nothing in a case was fitted to a key.

For nematodes the feeding group is that of Yeates, Bongers, de Goede, Freckman and Georgieva
1993 (J Nematol 25:315-331). That table is recalled; only the abstract of the paper was seen.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from keytool.identify import CANNOT_TELL, Model, WalkState, compiled, evaluate, key_out, written
from keytool.identify.key_out import observation
from keytool.library import Library
from keytool.library.value import Interval, Showing, States
from tests.conftest import read_cases

CASES = Path(__file__).parents[1] / "cases"
FILES = sorted(path for path in CASES.glob("*.yaml") if "\nkey: " in path.read_text("utf-8"))


def cases(path: Path) -> Iterator[tuple[dict[str, Any], dict[str, Any]]]:
    """Each case of a file, with the head of the file."""
    data = read_cases(path)
    for case in data["cases"]:
        yield data, case


ALL = [pytest.param(head, case, id=f"{head['key']}: {case['taxon']}") for path in FILES for head, case in cases(path)]


def observed(library: Library, case: Mapping[str, Any]) -> dict[str, Showing]:
    """What was recorded, as what is seen of each character."""
    seen: dict[str, Showing] = {}
    for name, what in case["observations"].items():
        character = library.characters[name]
        if character.is_number:
            value = what["number"] * float(library.vocabulary["unit"][what["unit"]].get("factor"))
            seen[name] = Interval.closed(value, value)
        else:
            assert what["state"] in character.states, f"{name} has no state {what['state']}"
            seen[name] = States(frozenset([what["state"]]))
    return seen


@pytest.fixture(scope="module")
def model(library: Library) -> Model:
    return compiled(library)


def shortcut_says(library: Library, head: Mapping[str, Any], seen: Mapping[str, Showing]) -> set[str]:
    """The feeding groups that the first fitting rule of the shortcut names; none where no rule fits."""
    for rule in library.shortcuts[head["shortcut"]].rules.values():
        if all(name in seen and not seen[name].meet(wanted).is_empty for name, wanted in rule.when.items()):
            return set(rule.says)
    return set()


def verdict(library: Library, case: Mapping[str, Any], ends: tuple[str, ...]) -> str:
    """How the ends compare with what the source gives: "exact", "held" by a wider group, or "wrong"."""
    if "yeates" in case:
        found = [set(library.entries[end].feeding) for end in ends]
        wanted = set(case["yeates"])
        return "exact" if found == [wanted] else "held" if any(wanted <= each for each in found) else "wrong"
    target = case["ends-in"]
    if list(ends) == [target]:
        return "exact"
    related = any(target in library.ancestry(end) or end in library.ancestry(target) for end in ends if end in library.entries)
    onward = any(end in library.keys and set(library.keys[end].scope) & library.ancestry(target) for end in ends)
    return "held" if related or onward else "wrong"


@pytest.mark.parametrize(("head", "case"), ALL)
def test_a_published_description_never_ends_at_a_wrong_group(model: Model, head: dict[str, Any], case: dict[str, Any]) -> None:
    """What the key did not come to ask is told beside it, where a question was left open; an end that says it is open is no wrong end."""
    seen = observed(model.library, case)
    trail, state = key_out(model, head["key"], seen)
    if state.open:
        trail = replace(trail, saw=tuple(observation(name, showing) for name, showing in seen.items()))
        state = evaluate(model, trail)
    is_open = state.asks or state.asks_character or not (state.arrived or state.goes_on)
    ended = f"ended at {likely(state)} after {written(trail)}"
    assert verdict(model.library, case, likely(state)) != "wrong" or is_open, ended


def likely(state: WalkState) -> tuple[str, ...]:
    """Where a walk has come to: its end, or the ends that are likely when it had to stop undecided."""
    end = state.arrived or state.goes_on
    return (end,) if end else tuple(each.id for each in state.ends)


def test_one_answer_replaced_by_cannot_tell_hardly_ever_ends_firmly_at_a_wrong_group(
    model: Model, record_property: Callable[[str, object], None]
) -> None:
    """Of walks of published descriptions with one answer doubted; an open end that says so is no wrong end.

    What is left wrong has a double that the doubted look alone would have parted, so that the end is likely and not so.
    """
    firm, wrong = 0, []
    for head, case in [each.values for each in ALL[::9]]:
        seen = observed(model.library, case)
        trail, _ = key_out(model, head["key"], seen)
        for doubted in (answer.couplet for answer in trail.legs[0].answers if answer.lead != CANNOT_TELL):
            _, state = key_out(model, head["key"], seen, {doubted})
            if (state.arrived or state.goes_on) and state.ends[0].chance >= model.figure("holds-share"):
                firm += 1
                if verdict(model.library, case, likely(state)) == "wrong":
                    wrong.append(f"{case['taxon']} without {doubted}: {likely(state)[0]}")
    record_property("score", f"{firm} walks with one answer doubted end at nine tenths or more, {len(wrong)} wrongly: {'; '.join(wrong)}.")
    assert firm > 30
    assert len(wrong) <= 0.05 * firm, wrong


@pytest.mark.parametrize(("head", "case"), ALL)
def test_a_case_names_a_source_or_says_memory(library: Library, head: dict[str, Any], case: dict[str, Any]) -> None:
    """Cases are evidence: each names a source in the library, or every observation is from memory."""
    bases = {what["basis"] for what in case["observations"].values()}
    assert bases <= {"seen", "quoted", "recalled", "memory", "computed", "common-practice"}
    if case.get("source"):
        assert case["source"] in library.sources
    else:
        assert bases <= {"memory", "common-practice", "computed"}


def test_the_key_beats_the_four_way_shortcut(model: Model, record_property: Callable[[str, object], None]) -> None:
    """Both are scored on the same worms; a worm the shortcut gets wrong and the key right is marked so."""
    library = model.library
    ours: Counter[str] = Counter()
    shortcut: Counter[str] = Counter()
    mended = []
    head: dict[str, Any] = {}
    for head, case in cases(CASES / "nematode-mouthparts.yaml"):
        seen = observed(library, case)
        _, state = key_out(model, head["key"], seen)
        mine = verdict(library, case, likely(state))
        says = shortcut_says(library, head, seen)
        theirs = "silent" if not says else "right" if set(case["yeates"]) <= says else "wrong"
        ours[mine] += 1
        shortcut[theirs] += 1
        if theirs == "wrong" and mine != "wrong":
            mended.append(case["taxon"])
    record_property("score", f"{sum(ours.values())} published worms. Key: {dict(ours)}. Four-way shortcut: {dict(shortcut)}.")
    record_property("score", f"Wrong by the shortcut, right by the key ({len(mended)}): {', '.join(mended)}.")
    assert sum(ours.values()) >= 30
    assert ours["wrong"] == 0
    assert len(mended) >= 10


def test_there_are_enough_cases_over_all_keys(library: Library, record_property: Callable[[str, object], None]) -> None:
    """At least 120 with a source, and as many of which a figure or form was read in the source; each key but the first has some."""
    sourced = [(head["key"], case) for path in FILES for head, case in cases(path) if case.get("source")]
    read = [case for _, case in sourced if any(what["basis"] == "seen" for what in case["observations"].values())]
    assert len(sourced) >= len(read) >= 120
    assert {key for key, _ in sourced} == set(library.keys) - {"first-look"}
    record_property(
        "score", f"{len(sourced)} sourced cases over {len(library.keys) - 1} keys, {len(read)} with something read in the source."
    )
