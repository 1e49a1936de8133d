"""Ask a contributor one question at a time; answers may also be given beforehand."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypeVar

from keytool.contribute.said import NotUnderstood
from keytool.library.messages import did_you_mean, listed

T = TypeVar("T")
MOST_LISTED = 16


class NoAnswer(Exception):
    """Raised when a question stays without an answer; the message says which. Nothing has been written then."""


class Talk:
    """A conversation. `given` holds answers by the name of their option; with `quiet` nothing is asked.

    `read` gives the next typed line, or None at the end of the input.
    """

    def __init__(self, say: Callable[[str], None], read: Callable[[], str | None], given: Mapping[str, str], *, quiet: bool) -> None:
        self.say, self._read, self.given, self.quiet = say, read, given, quiet

    def ask(self, name: str, question: str, parse: Callable[[str], T], default: str | None = None) -> T:
        """The answer to a question, as `parse` understands it. Without a default an answer is needed.

        Raises:
            NotUnderstood: an answer given beforehand cannot be taken.
            NoAnswer: nothing was given and nothing can be asked.
        """
        if name in self.given:
            try:
                return parse(self.given[name])
            except NotUnderstood as error:
                raise NotUnderstood(f"--{name}: {error}") from None
        if self.quiet:
            if default is None:
                raise NoAnswer(f"--{name} is missing. {question}")
            return parse(default)
        while True:
            self.say(f"\n{question}{f' [{default}]' if default else ''}")
            line = self._read()
            if line is None:
                raise NoAnswer(f"The input ended at the question '{question.splitlines()[0]}'")
            try:
                if not line.strip() and default is None:
                    raise NotUnderstood("An answer is needed here.")
                return parse(line.strip() or str(default))
            except NotUnderstood as error:
                self.say(str(error))

    def agrees(self, name: str, question: str, *, default: bool) -> bool:
        """Whether the answer to a question is yes; the default stands where nothing is asked."""
        return self.ask(name, f"{question} yes or no?", _yes_or_no, "yes" if default else "no")


def _yes_or_no(text: str) -> bool:
    word = text.lower()
    if word in ("yes", "y", "no", "n"):
        return word.startswith("y")
    raise NotUnderstood("Type yes or no.")


def text(words: str) -> str:
    """A text, as typed."""
    if not words:
        raise NotUnderstood("An answer is needed here.")
    return words


def maybe(words: str) -> str:
    """A text that may be left out; "-" means none."""
    return "" if words == "-" else words


def one_of(allowed: Mapping[str, str]) -> Callable[[str], str]:
    """Understands one of several ids, by id, by its label, or by its number."""
    def parse(words: str) -> str:
        many = ids_of(allowed)(words)
        if len(many) != 1:
            raise NotUnderstood(f"Name one: {listed(allowed)}.")
        return many[0]

    return parse


def ids_of(allowed: Mapping[str, str]) -> Callable[[str], list[str]]:
    """Understands some of several ids, joined by commas; each by id, by its label, or by its number; "-" means none."""
    by_word = {label.lower(): id for id, label in allowed.items()} | {str(n): id for n, id in enumerate(allowed, 1)}
    by_word |= {id: id for id in allowed}

    def parse(words: str) -> list[str]:
        found = []
        for word in (each.strip().lower() for each in words.split(",") if each.strip() not in ("", "-")):
            if word not in by_word:
                known = f"Allowed: {listed(allowed)}." if len(allowed) <= MOST_LISTED else ""
                raise NotUnderstood(f"'{word}' is not known. {did_you_mean(word, by_word) or known}".strip())
            found.append(by_word[word])
        return list(dict.fromkeys(found))

    return parse
