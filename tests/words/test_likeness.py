"""What a text is like as a whole: names, lay names and summaries as one weak look, which tips what the looks leave open."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from keytool.identify import Trail, compiled, parsed, written
from keytool.identify.model import Model
from keytool.identify.posterior import posterior
from keytool.library import Library
from keytool.words import compile_words
from keytool.words.likeness import likeness, together


@pytest.fixture(scope="module")
def words(library: Library) -> dict[str, Any]:
    return compile_words(library)


@pytest.fixture(scope="module")
def model(library: Library) -> Model:
    return compiled(library)


@pytest.mark.parametrize(
    ("said", "like"),
    [
        ("a bell on a stalk that snaps back like a spring", "stalked-ciliate"),
        ("springy bug with a forked tail", "springtail"),
        ("it has wheels on its head", "bdelloid-rotifer"),
        ("potato flour", "starch-grain"),
    ],
)
def test_what_is_called_by_a_name_of_the_library_is_like_it(words: dict[str, Any], model: Model, said: str, like: str) -> None:
    found = {id for id, _ in likeness(words, said)}
    assert found & {like, *(model.entries[number] for number in model.groups.get(like, ()))}


def test_what_is_denied_or_lies_beside_is_like_nothing(words: dict[str, Any]) -> None:
    assert likeness(words, "not a springtail") == likeness(words, "") == ()


def test_being_like_never_counts_more_than_is_stated(words: dict[str, Any], library: Library) -> None:
    every = " ".join(name for names in library.lay.names.values() for name in names)
    assert {bits for _, bits in likeness(words, every)} == {round(10 * library.quantities["like-most"].low)}


def test_it_lifts_what_it_is_like_and_leaves_the_order_of_the_rest(model: Model) -> None:
    before = posterior(model, Trail()).chance
    after = posterior(model, Trail(called=(("air-bubble", 30), ("mite", 10)))).chance
    bubble, mite = model.index["air-bubble"], model.groups["mite"][0]
    other = next(number for number in range(len(before)) if number != bubble and number not in model.groups["mite"])
    assert after[bubble] / after[other] == pytest.approx(8 * before[bubble] / before[other])
    assert after[mite] / after[other] == pytest.approx(2 * before[mite] / before[other])


def test_an_address_keeps_it_and_says_what_of_it_cannot_be_read(model: Model) -> None:
    trail = Trail(called=(("air-bubble", 30), ("mite", 10)))
    assert parsed(model, written(trail)).trail == trail
    read = parsed(model, "called:air-bubble=999,__proto__=3,mite=x,nematode")
    assert read.trail == replace(Trail(), called=(("air-bubble", 70),))
    assert len(read.left) == 3


def test_two_texts_about_one_thing_are_like_what_either_is_like() -> None:
    assert together((("a", 30), ("b", 10)), (("b", 20), ("c", 5))) == (("a", 30), ("b", 20), ("c", 5))
