"""Failures of a proof as findings: who, with what, at which couplet, and what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from keytool.identify import Fault, Proof, ProofFailure
from keytool.identify.findings import findings
from keytool.library import load
from keytool.library.value import Interval, States

TWO = {"holes": States(frozenset({"two"}))}


@pytest.mark.parametrize(
    ("failure", "line", "message", "tip"),
    [
        (
            ProofFailure(Fault.GAP, "coat-button", "rim", "", "", {**TWO, "width": Interval(2000.0, 5000.0)}),
            30,
            "'coat-button' ('two holes'; width 2 to 5 mm) fits no lead of couplet 3 ('rim').",
            "Add what it shows",
        ),
        (
            ProofFailure(Fault.OVERLAP, "coat-button", "holes", "", "closed, open", TWO),
            8,
            "'coat-button' ('two holes') fits more than one lead of couplet 1 ('holes'): closed, open.",
            "one lead only",
        ),
        (
            ProofFailure(Fault.LOOP, "coat-button", "holes", "", "holes", {}),
            8,
            "'coat-button' comes back to couplet 1 ('holes') and never ends.",
            "forward",
        ),
        (
            ProofFailure(Fault.UNSTATED, "coat-button", "rim", "", "rim", {"width": Interval(low=18000.0)}),
            30,
            "'coat-button' (width from 18 mm) comes to couplet 3 ('rim'), but does not say what it shows of 'rim'.",
            "coat-button.yaml",
        ),
        (
            ProofFailure(Fault.WRONG_END, "coat-button", "rim", "flat", "cuff-button", {"width": Interval(high=18000.0)}),
            37,
            "'coat-button' (width below 18 mm) is sent to the end 'cuff-button', which does not hold it, by lead 'flat' of couplet 3 ('rim').",
            "stand within 'cuff-button'",
        ),
    ],
)
def test_each_fault_has_its_words(mini: Path, failure: ProofFailure, line: int, message: str, tip: str) -> None:
    (found,) = findings(load(mini), Proof("buttons", 4, 4, (failure,)))
    assert (found.place.file, found.place.line) == ("keydata/keys/buttons.yaml", line)
    assert found.message == message and tip in found.tip


def test_alike_failures_are_counted_not_repeated(mini: Path) -> None:
    alike = tuple(
        ProofFailure(Fault.WRONG_END, "coat-button", "rim", "flat", "cuff-button", {"holes": States(frozenset({state}))})
        for state in ("two", "four", "none")
    )
    (found,) = findings(load(mini), Proof("buttons", 4, 4, alike))
    assert found.message.startswith("'coat-button' ('two holes'), and 2 more such, is sent")


def test_no_failure_no_finding(mini: Path) -> None:
    assert findings(load(mini), Proof("buttons", 4, 4, ())) == []
