"""Versions of a card: how much ink it takes, and how strongly it stands out."""

from __future__ import annotations

from dataclasses import dataclass

from keytool.card.errors import NoSuchForm
from keytool.figures import Inks
from keytool.figures.shapes import WASHES, Role


@dataclass(frozen=True, slots=True)
class Ink:
    """One version.

    `grey` is the colour of what is read once. Ends are framed instead of reversed where `framed`. `rules` and `lines` say
    how heavy rules and the lines of drawings are against the normal version, `accent` how much heavier a drawing's lines
    are in the part that is asked about, so that it stands out without its colour; `finest` is the thinnest line, in mm.
    """

    name: str
    about: str
    grey: str
    framed: bool
    rules: float
    lines: float
    accent: float
    finest: float
    plates: Inks


GREYED: dict[Role, str] = {
    "yellow": "#e8e8e8",
    "orange": "#d8d8d8",
    "green": "#cccccc",
    "blue-green": "#bfbfbf",
    "red": "#b8b8b8",
    "rust": "#b0b0b0",
    "blue": "#c4c4c4",
    "brown": "#a8a8a8",
}
"""The washes of a plate where no colour is printed, about as light as each is: the lead's words must then name the colour."""

INKS = {
    ink.name: ink
    for ink in (
        Ink(
            name="light",
            about="framed ends, thin lines",
            grey="#555555",
            framed=True,
            rules=0.6,
            lines=0.8,
            accent=1.5,
            finest=0.1,
            plates=Inks({"ink": "#000000", "accent": "#a83510", "faint": "#85827c", "paper": "#ffffff", **WASHES}),
        ),
        Ink(
            name="normal",
            about="ends in reversed type",
            grey="#4a4a4a",
            framed=False,
            rules=1.0,
            lines=1.0,
            accent=1.5,
            finest=0.12,
            plates=Inks({"ink": "#000000", "accent": "#a83510", "faint": "#6a6762", "paper": "#ffffff", **WASHES}),
        ),
        Ink(
            name="strong",
            about="high contrast, no colour",
            grey="#000000",
            framed=False,
            rules=1.4,
            lines=1.1,
            accent=1.8,
            finest=0.14,
            plates=Inks({"ink": "#000000", "accent": "#000000", "faint": "#4c4a46", "paper": "#ffffff", **GREYED}),
        ),
    )
}
"""Every version by name."""


def ink_named(name: str) -> Ink:
    """The version with this name.

    Raises:
        NoSuchForm: there is none.
    """
    if name not in INKS:
        raise NoSuchForm(f"No version of ink is called '{name}'. There are: {', '.join(INKS)}.")
    return INKS[name]
