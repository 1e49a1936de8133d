"""What an entry shows, as it is read on a page: never so that a mark it is known by reads as not known."""

from __future__ import annotations

from keytool.library import Library
from keytool.library.wording import showing_words


def test_both_answers_to_a_question_with_two_are_named(library: Library) -> None:
    """A ciliate has beating hairs, and now and then they are missed; 'any, or not known' would deny them."""
    assert showing_words(library, library.entries["ciliate"].statements["beating-hairs"]) == "beating hairs or none seen"


def test_all_of_many_answers_are_not_listed(library: Library) -> None:
    assert showing_words(library, library.entries["salt-crystal"].statements["crystal-form"]) == "any, or not known"


def test_some_of_many_answers_are_listed(library: Library) -> None:
    assert showing_words(library, library.entries["ciliate"].statements["body-shape"]) == "oval or lemon, pear or flask or lopsided"
