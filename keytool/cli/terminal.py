"""Speak to a terminal, a pipe or a file: width, colour and letters that it can show."""

from __future__ import annotations

import codecs
import os
import shutil
import sys
import textwrap
from typing import TextIO

import click

_PLAIN = {
    "µ": "u",
    "×": "x",
    "°": " deg ",
    "±": "+/-",
    "≥": ">=",
    "≤": "<=",
    "–": "-",
    "—": "-",
    "→": "->",
    "…": "...",
    "‘": "'",
    "’": "'",
    "“": '"',
    "”": '"',
    "●": "*",
    "◐": "+",
    "○": "o",
    "·": "-",
    "²": "2",
    "³": "3",
}


def _instead(error: UnicodeError) -> tuple[str, int]:
    assert isinstance(error, UnicodeEncodeError)
    return "".join(_PLAIN.get(char, "?") for char in error.object[error.start : error.end]), error.end


codecs.register_error("wetmount", _instead)


class Terminal:
    """One stream to speak to. Bold and colour only where a person sees them and NO_COLOR is not set."""

    def __init__(self, stream: TextIO | None = None) -> None:
        self.stream = stream or sys.stdout
        reconfigure = getattr(self.stream, "reconfigure", None)
        if reconfigure:
            reconfigure(errors="wetmount")
        self.is_screen = self.stream.isatty()
        self.colours = self.is_screen and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"
        self.shows_braille = self.is_screen and os.environ.get("TERM") != "dumb" and "utf" in (self.stream.encoding or "").lower()
        self.width = min(84, max(40, shutil.get_terminal_size((80, 24)).columns - 1))

    def bold(self, text: str) -> str:
        """The text, made to stand out where that can be shown."""
        return click.style(text, bold=True) if self.colours else text

    def faint(self, text: str) -> str:
        """The text, made to step back where that can be shown."""
        return click.style(text, dim=True) if self.colours else text

    def warn(self, text: str) -> str:
        """The text, marked as a caution where that can be shown."""
        return click.style(text, fg="yellow", bold=True) if self.colours else text

    def say(self, text: str = "", *, indent: int = 0, label: str = "") -> None:
        """One paragraph, folded to the width; `label` stands in the margin of its first line."""
        first = " " * indent if not label else f"{label:<{indent}}"
        lines = textwrap.wrap(text, self.width - indent, break_long_words=False, break_on_hyphens=False) or [""]
        for number, line in enumerate(lines):
            print((first if number == 0 else " " * indent) + line, file=self.stream)
        self.stream.flush()

    def raw(self, text: str) -> None:
        """Text as it is, such as JSON."""
        print(text, file=self.stream)
        self.stream.flush()
