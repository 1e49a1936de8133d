"""Ask a contributor one question at a time; answers may also be given beforehand."""

from __future__ import annotations

import difflib
import unicodedata
from collections.abc import Callable, Mapping
from typing import TypeVar

from keytool.contribute.parse_answer import NotUnderstood
from keytool.library.messages import listed

T = TypeVar("T")
MOST_LISTED = 16


HOW = "? says more, b goes back, Ctrl-C stops. Nothing is written before the end."


ANY = "Name what it shows, by name or number, several with commas; or any, if it may show any or nobody knows."
_NO_MORE = "Type it in your own words, in one line. 'wetmount list' shows what the library holds, 'wetmount show ID' one thing of it."


class NoAnswer(Exception):
    """Raised when a question stays without an answer; the message says which. Nothing has been written then."""


class _Back(Exception):
    """Raised by an answer that goes back to the question before."""


class Talk:
    """A conversation. `given` holds answers by the name of their option; with `quiet` nothing is asked.

    `read` gives the next typed line, or None at the end of the input. `typed` holds what was answered
    to a question, by the name of the question.
    """

    def __init__(self, say: Callable[[str], None], read: Callable[[], str | None], given: Mapping[str, str], *, quiet: bool) -> None:
        self._say, self._read, self.given, self.quiet = say, read, given, quiet
        self.typed: list[tuple[str, str]] = []
        self._again: list[str] = []
        self._goes_back = False

    def say(self, text: str) -> None:
        """Say something; what was said before a question that was gone back over is not said twice."""
        if not self._again:
            self._say(text)

    def through(self, conversation: Callable[[], T]) -> T:
        """What a conversation comes to. Where "b" is typed it is held anew, and what was answered before the last question stands."""
        if not self.quiet:
            self.say(HOW)
        while True:
            self._goes_back = True
            try:
                return conversation()
            except _Back:
                self._again, self.typed = [line for _, line in self.typed[:-1]], []
            finally:
                self._goes_back = False

    def ask(self, name: str, question: str, parse: Callable[[str], T], default: str | None = None, *, more: str = "") -> T:
        """The answer to a question, as `parse` understands it. Without a default an answer is needed; `more` is what "?" says.

        Raises:
            NotUnderstood: an answer given beforehand cannot be taken.
            NoAnswer: nothing was given and nothing can be asked.
        """
        if name in self.given:
            try:
                return parse(legible(self.given[name]))
            except NotUnderstood as error:
                raise NotUnderstood(f"--{name}: {error}") from None
        if self.quiet:
            if default is None:
                raise NoAnswer(f"--{name} is missing. {question}")
            return parse(default)
        while True:
            try:
                answer = self._again.pop(0) if self._again else self._answered(name, question, default, more)
                found = parse(legible(answer))
            except NotUnderstood as error:
                self.say(str(error))
                continue
            self.typed.append((name, answer))
            return found

    def _answered(self, name: str, question: str, default: str | None, more: str) -> str:
        """One line typed in answer to a question, or what is proposed where it is empty."""
        self.say(f"\n{question}{f' [{default}]' if default else ''}")
        line = self._read()
        if line is None:
            raise NoAnswer(f"The input ended at the question '{question.splitlines()[0]}'")
        answer = line.strip()
        if answer == "?":
            raise NotUnderstood(more or _NO_MORE)
        if answer.lower() == "b" and self._goes_back:
            if not self.typed:
                raise NotUnderstood("This is the first question.")
            raise _Back
        if not answer and default is None:
            raise NotUnderstood(f"An answer is needed here. {ANY if name.startswith('shows ') else '? says what can be answered.'}")
        return answer or str(default)

    def agrees(self, name: str, question: str, *, default: bool) -> bool:
        """Whether the answer to a question is yes; the default stands where nothing is asked."""
        return self.ask(name, f"{question} yes or no?", _yes_or_no, "yes" if default else "no")


def _yes_or_no(text: str) -> bool:
    word = text.lower()
    if word in ("yes", "y", "no", "n"):
        return word.startswith("y")
    raise NotUnderstood("Type yes or no.")


def legible(words: str) -> str:
    """The words, if all of them can be read: no bytes of another encoding, no signs that keys such as the arrows send."""
    if any(unicodedata.category(sign) in ("Cc", "Cs") and sign != "\n" for sign in words):
        raise NotUnderstood(
            "The answer holds signs that cannot be read, as an arrow key or another encoding than UTF-8 makes them. Type it anew."
        )
    return words


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
                raise NotUnderstood(f"'{word}' is not known. {_near(word, allowed, by_word)}")
            found.append(by_word[word])
        return list(dict.fromkeys(found))

    return parse


def _near(word: str, allowed: Mapping[str, str], by_word: Mapping[str, str]) -> str:
    """What may be meant, by its names: what holds the word, or the nearest to it, or all there is where that is little."""
    named = {each: allowed[id] for each, id in by_word.items() if not each.isdecimal()}
    slips = difflib.get_close_matches(word, list(named), n=1)
    near = f"Did you mean '{named[slips[0]]}'?" if slips else ""
    if len(allowed) <= MOST_LISTED:
        return near or f"Allowed: {'; '.join(allowed.values())}."
    holding = [label for id, label in allowed.items() if word in id or word in label.lower()]
    if 0 < len(holding) <= MOST_LISTED:
        return f"Is it one of these: {'; '.join(holding)}?"
    return near or f"Type a part of its name; there are {len(allowed)}, which 'wetmount list' shows."
