"""The sentences that pages, terminal, card and scripts share, by language, with plurals by the rules of Unicode (CLDR).

Python knows the rules from Babel, a browser from `Intl.PluralRules`; `site/assets/identify/dom.js` reads the same sentences.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cache

BASE = "en"
"""The language that every sentence has, and that stands in where another lacks one."""
Sentence = str | Mapping[str, str]
"""A sentence, or its forms by plural category: one, other, ..."""


@dataclass(frozen=True, slots=True)
class Sentences:
    """What is said in one language, by id. Called with an id and the words to put in, it gives the sentence."""

    language: str = BASE
    by_id: Mapping[str, Sentence] = field(default_factory=dict)

    def __call__(self, id: str, **words: object) -> str:
        """A sentence with its words put in; a number `n` decides its form.

        Raises:
            KeyError: no such sentence, or a word of it is not given.
        """
        said = self.by_id[id]
        if not isinstance(said, str):
            n = words["n"]
            said = said.get(plural(self.language, float(str(n))), said["other"])
        return said.format_map(words)


@cache
def plural(language: str, n: float) -> str:
    """The plural category of a number in a language: "one", "few", "other", ... by CLDR; a made-up language counts as English does."""
    from babel import Locale, UnknownLocaleError  # only where something is counted

    try:
        locale = Locale.parse(language, sep="-")
    except (UnknownLocaleError, ValueError):
        locale = Locale.parse(BASE)
    return str(locale.plural_form(n))


@cache
def categories(language: str) -> frozenset[str]:
    """The plural categories that a language has."""
    from babel import Locale, UnknownLocaleError

    try:
        locale = Locale.parse(language, sep="-")
    except (UnknownLocaleError, ValueError):
        locale = Locale.parse(BASE)
    return frozenset({*locale.plural_form.tags, "other"})


def by_language(files: Iterable[tuple[str, Mapping[str, Sentence]]]) -> dict[str, Sentences]:
    """The sentences of every language, from its files as (language, sentences); what one lacks is said in the base language."""
    found: dict[str, dict[str, Sentence]] = {}
    for language, sentences in files:
        found.setdefault(language, {}).update(sentences)
    base = found.get(BASE, {})
    return {language: Sentences(language, {**base, **own}) for language, own in found.items()}
