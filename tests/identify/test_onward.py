"""What one key has settled is carried into the next, and nothing more."""

import pytest

from keytool.identify import answers_at, carried, ground, stand
from keytool.library import Library


@pytest.mark.parametrize(
    ("couplet", "lead", "settled"),
    [
        ("short-insides", "legs", "plan=legs"),
        ("short-insides", "animal", ""),
        ("long-insides", "worm", ""),
        ("dot-on-slide", "without-slide", ""),
    ],
)
def test_first_look_hands_on_what_it_has_seen(library: Library, couplet: str, lead: str, settled: str) -> None:
    assert carried(library, library.keys["first-look"], couplet, lead) == settled


def test_what_is_carried_is_a_walk_of_the_next_key_that_stops_before_any_end(library: Library) -> None:
    for key in library.keys.values():
        for couplet in key.couplets.values():
            for lead in couplet.leads.values():
                if lead.key:
                    there = ground(library, library.keys[lead.key])
                    assert stand(there, answers_at(there, carried(library, key, couplet.id, lead.id))).asks
