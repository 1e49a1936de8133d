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


class NoSuchForm(CardError):
    """No form of card, version of ink or edge is known by that name; the message lists those that are."""


class NotInLibrary(CardError):
    """The library has no key, entry or look-alike set with that id; the message lists what it has."""


class NoSuchPicture(CardError):
    """The picture of a photograph is not there or is another; the message says how to get it back."""


class Impossible(CardError):
    """A figure or an address that cannot be; the message says what can."""


class NothingAsked(CardError):
    """Neither key, look-alike set nor entry was asked for."""
