"""A key is proved by walking every entry through it in every way it may show itself."""

import json
from pathlib import Path

import pytest

from keytool.identify import Fault, prove
from keytool.library import Library, load
from tests.conftest import read_cases


def edited(root: Path, file: str, **changes: object) -> Library:
    """The library after some fields of one file were changed (None takes a field out)."""
    path = root / "keydata" / file
    data = read_cases(path)
    for name, value in changes.items():
        place, *rest = name.split("__")
        target = data
        for step in [place, *rest][:-1]:
            target = target[step.replace("_", "-")]
        last = [place, *rest][-1].replace("_", "-")
        if value is None:
            del target[last]
        else:
            target[last] = value
    path.write_text(json.dumps(data), "utf-8")
    return load(root).library


def test_every_entry_of_a_sound_key_is_proved(mini: Path) -> None:
    library = load(mini).library
    proof = prove(library, library.keys["buttons"])
    assert (proof.entries, proof.failures) == (4, ())


def test_an_entry_that_may_show_two_things_is_walked_both_ways(mini: Path) -> None:
    library = edited(
        mini, "entries/debris/coat-button.yaml", characters__width={"low": 8, "high": 35, "unit": "mm", "basis": {"kind": "memory"}}
    )
    proof = prove(library, library.keys["buttons"])
    assert {(failure.fault, failure.entry, failure.couplet, failure.about) for failure in proof.failures} == {
        (Fault.WRONG_END, "coat-button", "rim", "shirt-button"),
        (Fault.WRONG_END, "coat-button", "rim", "cuff-button"),
    }
    assert proof.combinations == 6  # the other three in one way each, this one wide, narrow and raised, narrow and flat


def test_a_failure_names_what_was_shown_on_the_way(mini: Path) -> None:
    library = edited(mini, "entries/debris/shank-button.yaml", characters__holes={"states": ["four"], "basis": {"kind": "memory"}})
    (failure,) = {each.about: each for each in prove(library, library.keys["buttons"]).failures if each.about == "cuff-button"}.values()
    assert failure.shown["holes"].ids == {"four"}  # type: ignore[attr-defined]
    assert failure.shown["width"].high <= 18_000  # type: ignore[attr-defined]
    assert (failure.entry, failure.lead) == ("shank-button", "flat")


def test_an_entry_that_does_not_say_what_is_asked_fails(mini: Path) -> None:
    library = edited(mini, "entries/debris/cuff-button.yaml", characters__rim=None)
    assert [(failure.fault, failure.entry, failure.about) for failure in prove(library, library.keys["buttons"]).failures] == [
        (Fault.UNSTATED, "cuff-button", "rim")
    ]


def test_a_character_that_is_not_asked_on_the_way_need_not_be_said(mini: Path) -> None:
    library = edited(mini, "entries/debris/shank-button.yaml", characters__rim=None)
    assert prove(library, library.keys["buttons"]).failures == ()


@pytest.mark.parametrize(
    ("lead", "when", "fault"),
    [
        ("closed", {"holes": ["none", "four"]}, Fault.OVERLAP),
        ("open", {"holes": ["four"]}, Fault.GAP),
    ],
)
def test_leads_that_overlap_or_leave_a_gap_fail(mini: Path, lead: str, when: dict[str, list[str]], fault: Fault) -> None:
    library = edited(mini, "keys/buttons.yaml", **{f"couplets__holes__leads__{lead}__when": when})
    assert fault in {failure.fault for failure in prove(library, library.keys["buttons"]).failures}


def test_a_loop_is_found_and_ends(mini: Path) -> None:
    library = edited(
        mini, "keys/buttons.yaml", couplets__rim__leads__flat={"text": "Edge flat", "when": {"rim": ["flat"]}, "couplet": "size"}
    )
    assert Fault.LOOP in {failure.fault for failure in prove(library, library.keys["buttons"]).failures}


def test_an_end_may_be_a_group_that_holds_the_entry(mini: Path) -> None:
    library = edited(
        mini, "keys/buttons.yaml", couplets__rim__leads__flat={"text": "Edge flat", "when": {"rim": ["flat"]}, "end": "button"}
    )
    assert prove(library, library.keys["buttons"]).failures == ()
