"""What a proof found wrong, said so that the writer of the key or of the entry can mend it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from keytool.identify.prove import Fault, Proof, ProofFailure
from keytool.library.checks.showing_text import seen_words
from keytool.library.finding import Finding, Place
from keytool.library.load import Loaded

CHECK = "proof"


def findings(loaded: Loaded, proof: Proof) -> list[Finding]:
    """One finding for each way in which an entry goes wrong in a key, placed at the couplet or lead that sends it there.

    Where several combinations of states go wrong in the same way, the first is shown and the rest are counted.
    """
    alike: dict[tuple[Fault, str, str, str, str], list[ProofFailure]] = {}
    for each in proof.failures:
        alike.setdefault((each.fault, each.entry, each.couplet, each.lead, each.about), []).append(each)
    return [_finding(_Case(loaded, proof.key, group[0], len(group) - 1)) for group in alike.values()]


@dataclass(frozen=True)
class _Case:
    """One failure in its key, with the words to tell it."""

    loaded: Loaded
    key: str
    failure: ProofFailure
    more: int

    @property
    def place(self) -> Place:
        lead = ("leads", self.failure.lead) if self.failure.lead else ()
        return self.loaded.files.place("key", self.key, ("couplets", self.failure.couplet, *lead), of_key=True)

    @property
    def who(self) -> str:
        """The entry, and what it shows on the way there."""
        shown = seen_words(self.loaded.library, self.failure.shown)
        words = f"'{self.failure.entry}'" + (f" ({shown})" if shown else "")
        return f"{words}, and {self.more} more such," if self.more else words

    @property
    def couplet(self) -> str:
        """The couplet by the number it is printed with, and by its slug."""
        return f"couplet {self.loaded.library.keys[self.key].couplets[self.failure.couplet].number} ('{self.failure.couplet}')"

    @property
    def file(self) -> str:
        return self.loaded.library.files["entry", self.failure.entry]


def _finding(case: _Case) -> Finding:
    message, tip = _TOLD[case.failure.fault](case)
    return Finding(CHECK, case.place, message, tip=tip)


def _unstated(case: _Case) -> tuple[str, str]:
    asked = case.failure.about
    return (
        f"{case.who} comes to {case.couplet}, but does not say what it shows of '{asked}'.",
        f"State '{asked}' in {case.file} or in a group that holds it; any: true if it may show anything.",
    )


def _gap(case: _Case) -> tuple[str, str]:
    return (
        f"{case.who} fits no lead of {case.couplet}.",
        f"Add what it shows to a lead, or mend what {case.file} states.",
    )


def _overlap(case: _Case) -> tuple[str, str]:
    return (
        f"{case.who} fits more than one lead of {case.couplet}: {case.failure.about}.",
        "Let what it shows fit one lead only.",
    )


def _wrong_end(case: _Case) -> tuple[str, str]:
    end = case.failure.about
    lead = case.loaded.library.keys[case.key].couplets[case.failure.couplet].leads[case.failure.lead]
    what, remedy = ("key", f"put its group into the scope of '{end}'") if lead.key else ("end", f"let it stand within '{end}'")
    return (
        f"{case.who} is sent to the {what} '{end}', which does not hold it, by lead '{case.failure.lead}' of {case.couplet}.",
        f"Put a couplet behind this lead ('wetmount new couplet --for {case.failure.entry}' drafts it); or mend this lead, "
        f"or what {case.file} states; or {remedy} if it belongs there.",
    )


def _loop(case: _Case) -> tuple[str, str]:
    return (f"{case.who} comes back to {case.couplet} and never ends.", "Let every lead go forward.")


_TOLD: dict[Fault, Callable[[_Case], tuple[str, str]]] = {
    Fault.UNSTATED: _unstated,
    Fault.GAP: _gap,
    Fault.OVERLAP: _overlap,
    Fault.WRONG_END: _wrong_end,
    Fault.LOOP: _loop,
}
