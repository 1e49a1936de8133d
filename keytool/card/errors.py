"""What can be wrong with the wish for a card; each message is one plain sentence or two, ready to show."""

from __future__ import annotations


class CardError(Exception):
    """A card cannot be made as asked for; the message says why and what would help."""


class DoesNotFit(CardError):
    """The content does not fit the paper at readable sizes; the message says by how much and what would make it fit."""


class NoSuchLetter(CardError):
    """The card's typeface has no such letter; the message names the letters and where they stand."""


class NoSuchPaper(CardError):
    """No paper is known by that name; the message lists those that are."""


class NoSuchKey(CardError):
    """The library has no key with that id; the message lists those it has."""
