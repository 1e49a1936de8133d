"""What colour a mark has in a version of the card; paper and screen agree on it."""

from __future__ import annotations

from keytool.card.ink import BLACK, GREY, WHITE
from keytool.card.inks import Ink

FRAME = 0.35
"""The line round an end where it is framed, mm."""


def colour_of(colour: str, ink: Ink) -> str:
    """The colour a version shows; what is reversed stands in black where ends are framed."""
    return {GREY: ink.grey, WHITE: BLACK if ink.framed else WHITE}.get(colour, colour)
