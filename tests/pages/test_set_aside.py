"""What is set aside while a page is made into HTML comes back, and the page is the one that would have been made without."""

from __future__ import annotations

import re
from pathlib import Path

import markdown
import pytest

from keytool.library import load
from keytool.pages import pages
from keytool.pages.opaque_html import BLOCKS, UNSEARCHED, hide_html, put_back


def as_html(text: str) -> str:
    return markdown.markdown(text, extensions=["attr_list", "toc"])


def body(text: str) -> str:
    """A page without its front matter."""
    return text.removeprefix("---\n").partition("\n---\n\n")[2] if text.startswith("---\n") else text


def test_every_page_reads_the_same_to_markdown_with_its_blocks_set_aside(mini: Path):
    for page in pages(load(mini).library):
        text, aside = hide_html(BLOCKS, body(page.text))
        assert put_back(as_html(text), aside) == as_html(body(page.text)), page.path


@pytest.mark.parametrize(("what", "gone"), [(BLOCKS, "<table"), (UNSEARCHED, 'class="wm-basis"')])
def test_a_made_page_is_set_aside_and_comes_back_whole(mini: Path, what: re.Pattern[str], gone: str):
    page = next(each for each in pages(load(mini).library) if gone in each.text)
    text, aside = hide_html(what, page.text)
    assert gone not in text and put_back(text, aside) == page.text


def test_notes_on_a_basis_are_set_aside_and_what_is_searched_stays():
    text = '<p>Lips <details class="wm-basis" data-search-exclude><summary>~</summary><div>memory</div></details> low</p>'
    left, aside = hide_html(UNSEARCHED, text)
    assert left == '<p>Lips <details data-set-aside="0"></details> low</p>' and list(aside) == ["0"]


@pytest.mark.parametrize(
    "text",
    [
        "Words with <em>a tag</em> and *stars*.",
        "<div>\n\n*Markdown between two tags*\n\n</div>",
        "    <div>code</div>\n\nafter",
        "`<div>code</div>`",
        "<div>open and never closed",
        "<div>one</div> and words",
    ],
)
def test_what_markdown_may_have_to_read_is_left_to_it(text: str):
    left, aside = hide_html(BLOCKS, text)
    assert (left, aside) == (text, {})
