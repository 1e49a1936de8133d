"""What the site is made of: pages in Markdown, and assets as they are."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Page:
    """One page: its path in the site (`keys/first-look.md`), its Markdown, and the file it comes from.

    `source` is relative to the root of the library and is where the page's edit link goes.
    """

    path: str
    text: str
    source: str


@dataclass(frozen=True, slots=True)
class Asset:
    """A style sheet, script or other file of the site: its path, its content and where it comes from."""

    path: str
    content: bytes
    source: str


def page(path: str, source: str, title: str, blocks: Iterable[str], *, description: str = "", hide: Iterable[str] = ()) -> Page:
    """A page from its title and its blocks, with the front matter that site builders read.

    Blocks are Markdown headings (`heading`) or whole HTML elements; empty ones are left out.
    """
    front = [f"title: {json.dumps(title, ensure_ascii=False)}"]
    if description:
        front.append(f"description: {json.dumps(description, ensure_ascii=False)}")
    hidden = list(hide)
    if hidden:
        front.append(f"hide: {json.dumps(hidden)}")
    body = "\n\n".join(block for block in blocks if block)
    return Page(path, "---\n" + "\n".join(front) + "\n---\n\n" + body + "\n", source)


def heading(level: int, words: str, anchor: str = "") -> str:
    """A Markdown heading whose words are taken as they are, however many asterisks they hold."""
    safe = "".join(f"&#{ord(each)};" if each in _MARKDOWN else each for each in words)
    return f"{'#' * level} {safe}" + (f" {{: #{anchor} }}" if anchor else "")


_MARKDOWN = "\\`*_{}[]()<>#+-.!|~&:\"'"
