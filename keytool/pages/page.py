"""What the site is made of: pages as HTML with a little front matter, and assets as they are."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from dataclasses import dataclass
from html import escape

from keytool.pages.html import Html


@dataclass(frozen=True, slots=True)
class Page:
    """One page: its path in the site (`keys/first-look.md`), its content, the file it comes from, and its front matter.

    The content of a page written by hand is Markdown, front matter and all; of one made from the library it `is_html`, ready
    as it stands. `source` is relative to the root of the library: the page's edit link goes there.
    """

    path: str
    content: str
    source: str
    front: str = ""
    is_html: bool = False

    @property
    def text(self) -> str:
        """The page for any site builder: front matter and Markdown."""
        return f"{self.front}{self.content}\n" if self.is_html else self.content

    @property
    def html(self) -> str:
        """The content of a page that is HTML; nothing for one that Markdown has still to make into it."""
        return self.content if self.is_html else ""


@dataclass(frozen=True, slots=True)
class Asset:
    """A style sheet, script or other file of the site: its path, its content and where it comes from."""

    path: str
    content: bytes
    source: str


def page(
    path: str,
    source: str,
    title: str,
    blocks: Iterable[str],
    *,
    description: str = "",
    kind: str = "",
    own_dock: bool = False,
    reviewed: str = "",
    authors: str = "",
) -> Page:
    """A page from its title and its blocks: headings (`heading`) and whole HTML elements; empty ones are left out.

    `kind` becomes a class of the page (`s-entry`). With `own_dock` the frame leaves the dock to the page. For citing
    it, `reviewed` is the day its content was last looked through, and `authors` who wrote it where that is known.
    """
    front: dict[str, str | bool] = {"title": title, "description": description, "kind": kind, "own_dock": own_dock}
    front |= {"reviewed": reviewed, "authors": authors}
    lines = [f"{name}: {json.dumps(value, ensure_ascii=False)}" for name, value in front.items() if value]
    html = str(in_parts(block for block in blocks if block))
    return Page(path, html, source, "---\n" + "\n".join(lines) + "\n---\n\n", is_html=True)


def heading(level: int, words: str, anchor: str = "") -> Html:
    """A heading. Of the second level it opens a part of the page, with the words at its side on a desk."""
    id = anchor or (slug(words) if level > 1 else "")
    return Html(f"<h{level}" + (f' id="{id}"' if id else "") + f">{escape(words, quote=False)}</h{level}>")


def slug(words: str) -> str:
    """Words as an anchor: `What you see` becomes `what-you-see`."""
    return re.sub(r"[^\w]+", "-", words.lower()).strip("-")


def in_parts(blocks: Iterable[str]) -> Html:
    """Blocks as the parts of a page: each second-level heading begins one, and what follows is its body.

    A block that is a part itself (`<section class="part …">`, `<article class="part …">`) is put out as it stands.
    """
    done: list[str] = []
    head = ""
    body: list[str] = []

    def close() -> None:
        if head or body:
            first = "" if done else " first"
            done.append(f'<section class="part{first}">{head}<div class="body">{"".join(body)}</div></section>')
        body.clear()

    for block in blocks:
        if _PART.match(block):
            close()
            head = ""
            done.append(block)
        elif block.startswith("<h2"):
            close()
            head = block
        else:
            body.append(block)
    close()
    return Html("\n".join(done))


def prose_in_parts(html: str) -> Html:
    """The same for the HTML of a page written in Markdown: cut before each of its second-level headings."""
    blocks: list[str] = []
    for piece in re.split(r"(?=<h2[ >])", html):
        if piece.startswith("<h2"):
            head, _, rest = piece.partition("</h2>")
            blocks += [f"{head}</h2>", rest]
        else:
            blocks.append(piece)
    return in_parts(block for block in blocks if block.strip())


_PART = re.compile(r'<(section|article)\b[^>]* class="part\b')
