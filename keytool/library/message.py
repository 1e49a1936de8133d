"""What a rule says, as a template: the finding is made from it, and so is the sentence that a form says as one types."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from string import Formatter

from keytool.library.finding import Finding, Place, Severity


@dataclass(frozen=True, slots=True)
class Message:
    """One sentence of a rule; what differs from case to case stands in braces, a brace of the text itself is doubled.

    `check` names the rule, `text` says what is wrong, `allowed` what would be right, `tip` what to do.
    """

    check: str
    text: str
    allowed: str = ""
    tip: str = ""
    severity: Severity = Severity.PROBLEM

    def at(self, place: Place, **words: object) -> Finding:
        """The finding at a place, with every word of the case put in.

        Raises:
            KeyError: a word that stands in braces was not given.
        """
        text, allowed, tip = (part.format_map(words) for part in (self.text, self.allowed, self.tip))
        return Finding(self.check, place, text, allowed, tip, self.severity)

    def template(self, **words: object) -> dict[str, str]:
        """`message`, `allowed` and `tip`, each where it is not empty; what is not given stays as a name in braces."""
        parts = {"message": self.text, "allowed": self.allowed, "tip": self.tip}
        return {name: part.format_map(_Kept(words)) for name, part in parts.items() if part}

    @property
    def names(self) -> frozenset[str]:
        """What differs from case to case."""
        return frozenset(name for part in (self.text, self.allowed, self.tip) for _, name, _, _ in Formatter().parse(part) if name)


class _Kept(dict[str, object]):
    def __init__(self, words: Mapping[str, object]) -> None:
        super().__init__(words)

    def __missing__(self, name: str) -> str:
        return "{" + name + "}"
