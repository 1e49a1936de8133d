"""Every language says every sentence, with the same words put in, in every form that it counts in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from string import Formatter

from keytool.library.finding import Finding, Severity
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.messages import listed
from keytool.library.sentences import BASE, Sentence, categories
from keytool.library.yaml_file import YamlFile

NAME = "sentences"
TWICE = Message(NAME, "'{sentence}' stands in {file} too.", tip="Keep one of the two.")
UNKNOWN = Message(
    NAME, "No page and no command says '{sentence}'.", tip="Its id stands in none of the files of '{base}': mend it, or take it out."
)
OTHER_WORDS = Message(
    NAME, "'{sentence}' puts in {here}, but in '{base}' {there}.", tip="Put in the same words; only their places may differ."
)
BROKEN = Message(
    NAME,
    "'{sentence}' has a brace without its partner.",
    allowed="a word to be put in stands between two braces",
    tip="Close it, or write two braces where one is to be seen.",
)
FORMS_MISSING = Message(NAME, "'{sentence}' lacks the form {forms}.", tip="Give each form that the plural rules of the language have.")
UNSAID = Message(
    NAME,
    "The language '{language}' does not say everything yet: it has no '{sentence}'.",
    tip="They are said in '{base}' until it has.",
    severity=Severity.ADVICE,
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each sentence that stands twice, is unknown, puts in other words or lacks a form; advice for what is not said yet."""
    files = [(name.partition("/")[0], file) for (kind, name), file in loaded.files.by_id.items() if kind == "sentences"]
    base: dict[str, Sentence] = {id: said for language, file in files if language == BASE for id, said in file.data.items()}
    said: dict[tuple[str, str], str] = {}
    for language, file in files:
        for id, sentence in file.data.items():
            place = file.place((id,), of_key=True)
            if (language, id) in said:
                yield TWICE.at(place, sentence=id, file=said[language, id])
            elif id not in base:
                yield UNKNOWN.at(place, sentence=id, base=BASE)
            elif _whole(sentence) and _whole(base[id]):
                yield from _one(language, file, id, sentence, base[id])
            if not _whole(sentence):
                yield BROKEN.at(place, sentence=id)
            said.setdefault((language, id), file.name)
    for language in sorted({language for language, _ in files} - {BASE}):
        if unsaid := [id for id in base if (language, id) not in said]:
            first = next(file for each, file in files if each == language)
            yield UNSAID.at(first.place(()), language=language, sentence=unsaid[0], base=BASE)


def _one(language: str, file: YamlFile, id: str, sentence: Sentence, base: Sentence) -> Iterator[Finding]:
    place = file.place((id,), of_key=True)
    here, there = _words(sentence), _words(base)
    if here != there:
        yield OTHER_WORDS.at(
            place, sentence=id, here=listed(sorted(here)) or "nothing", there=listed(sorted(there)) or "nothing", base=BASE
        )
    if isinstance(sentence, Mapping) and (lacking := categories(language) - set(sentence)):
        yield FORMS_MISSING.at(place, sentence=id, forms=listed(sorted(lacking)))


def _forms(sentence: Sentence) -> list[str]:
    return [sentence] if isinstance(sentence, str) else list(sentence.values())


def _whole(sentence: Sentence) -> bool:
    """Whether every brace has its partner."""
    try:
        _words(sentence)
    except ValueError:
        return False
    return True


def _words(sentence: Sentence) -> set[str]:
    """What is put in; the number that decides the form need not stand in every form of it."""
    return {name for form in _forms(sentence) for _, name, _, _ in Formatter().parse(form) if name}
