"""What a parser need not read is set aside while a page is made into HTML, and put back where it stood.

Most of a page is HTML already, and most of that is drawings and notes on where a statement is from. Markdown passes HTML
on as it is, and the search index leaves drawings and notes out; reading them all takes longer than the rest of the site.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

BLOCKS = re.compile(
    r"(?:(?<=\n\n)|\A)<(div|section|p|ul|ol|dl|table|details|figure|aside|nav|form)\b[^\n]*(?:\n[^\n]+)*</\1>(?=\n\n|\n?\Z)"
)
"""Blocks of HTML, which Markdown need not read: from one blank line to the next."""
UNSEARCHED = re.compile(r'<(svg) [^>]*?class="wm-figure.*?</svg>|<(details) class="wm-basis" data-search-exclude>.*?</details>', re.DOTALL)
"""Drawings and notes on the basis of a statement, which are not searched."""
_MARK = re.compile(r'<\w+ data-set-aside="(\d+)"></\w+>')


def hide_html(what: re.Pattern[str], text: str) -> tuple[str, Mapping[str, str]]:
    """The text with an empty element as a mark for each piece of a kind, and the pieces by the number of their mark."""
    pieces: dict[str, str] = {}

    def mark(found: re.Match[str]) -> str:
        number, name = str(len(pieces)), next(filter(None, found.groups()))
        pieces[number] = found[0]
        return f'<{name} data-set-aside="{number}"></{name}>'

    return what.sub(mark, text), pieces


def put_back(html: str, pieces: Mapping[str, str]) -> str:
    """The page with each piece where its mark stood."""
    return _MARK.sub(lambda found: pieces[found[1]], html)
