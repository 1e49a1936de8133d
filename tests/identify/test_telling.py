"""What is said of an entry stands in the order in which it parts it from its doubles."""

from __future__ import annotations

import pytest

from keytool.identify import telling_first
from keytool.library import Library
from keytool.library.wording import stated


@pytest.mark.parametrize(
    ("entry", "character"),
    [
        ("rotifer", "soft-build"),  # jaws at work, and a foot
        ("oribatid-mite", "eight-legged-look"),  # a hard shell all over
        ("dorylaim", "gullet"),  # the rear of the gullet wide, without a bulb
        ("nematode", "insides"),  # one gut from mouth to tail
        ("air-bubble", "rim"),  # a broad black rim
    ],
)
def test_the_mark_to_look_for_comes_first(library: Library, entry: str, character: str) -> None:
    """Common practice, no source: the mark by which a worker at the bench would name each of these."""
    (group, statements), *_ = telling_first(library, library.entries[entry])
    assert (group, statements[0].character) == (entry, character)


def test_what_the_entry_names_against_a_double_comes_before_the_rest(library: Library) -> None:
    for entry in library.entries.values():
        named = {each.character for each in entry.mistaken_for}
        for _, statements in telling_first(library, entry):
            told = [each.character in named for each in statements]
            assert told == sorted(told, reverse=True), entry.id


def test_nothing_is_left_out_and_the_groups_keep_their_order(library: Library) -> None:
    for entry in library.entries.values():
        ordered = [(group, sorted(each.character for each in said)) for group, said in telling_first(library, entry)]
        assert ordered == [(group, sorted(each.character for each in said)) for group, said in stated(library, entry)]
