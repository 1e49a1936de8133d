"""What a lead wants to be seen, the lead that takes all the rest among them."""

from __future__ import annotations

from collections.abc import Mapping

from keytool.library.model import Character, Couplet, Lead, Library
from keytool.library.value import Interval, Showing, States


def everything(character: Character) -> Showing:
    """All that a character could show."""
    return Interval() if character.is_number else States(frozenset(character.states))


def required(library: Library, couplet: Couplet, lead: Lead) -> Mapping[str, Showing]:
    """What must be seen of each character for a lead.

    Of a lead that takes all the rest it is said where one character alone decides; of several it is no one thing.
    """
    if not lead.otherwise or len(couplet.characters) > 1:
        return lead.when
    (name,) = couplet.characters
    rest = [everything(library.characters[name])]
    for other in couplet.leads.values():
        if name in other.when:
            rest = [piece for each in rest for piece in each.without(other.when[name])]
    return {name: rest[0]} if len(rest) == 1 else {}
