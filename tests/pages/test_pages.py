"""The pages as values: what they say, what they link to, and that text from data stays text."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from keytool.cli.site import extras
from keytool.identify import CANNOT_TELL, Leg, Trail, compiled, evaluate, ground
from keytool.library import Library, Loaded, load, root
from keytool.library.basis import Basis
from keytool.library.model import Claim
from keytool.pages import assets, pages, write
from keytool.pages.guides import guide_page
from keytool.pages.html import Html, el, json_in_page
from keytool.pages.page import heading, in_parts, prose_in_parts
from keytool.pages.page_writer import Writer
from keytool.pages.paths import paths_to
from keytool.pages.practice_and_published import voices
from keytool.pages.whole_site import SiteContent, build_site
from keytool.pages.written_files import written_root

HOSTILE = 'An "odd" & *starred* _under_ [link](x) |bar| name\u2028here'


@pytest.fixture
def small(mini: Path) -> Library:
    return load(mini).library


def page_at(library: Library, path: str) -> str:
    return next(each.text for each in pages(library) if each.path == path)


def test_children_are_escaped_and_html_is_not():
    assert (
        el("p", "<b> & co", Html("<i>x</i>"), class_="a", title='say "x"')
        == '<p class="a" title="say &quot;x&quot;">&lt;b&gt; &amp; co<i>x</i></p>'
    )


def test_headings_take_words_as_they_are():
    from markdown import markdown

    html = markdown(heading(2, HOSTILE, "here"), extensions=["attr_list"])
    assert "<em>" not in html and "<a " not in html and 'id="here"' in html
    assert "&amp;" in html and "*starred*" in html
    assert heading(2, "What you see") == '<h2 id="what-you-see">What you see</h2>'


def test_each_second_heading_opens_a_part_and_a_ready_part_stands_as_it_is():
    ready = '<section class="part own"><h2>Mine</h2></section>'
    blocks = [heading(1, "Page"), "<p>lead</p>", heading(2, "One", "one"), "<p>a</p>", ready, heading(2, "Two", "two"), "<p>b</p>"]
    assert in_parts(blocks).split("\n") == [
        '<section class="part first"><div class="body"><h1>Page</h1><p>lead</p></div></section>',
        '<section class="part"><h2 id="one">One</h2><div class="body"><p>a</p></div></section>',
        ready,
        '<section class="part"><h2 id="two">Two</h2><div class="body"><p>b</p></div></section>',
    ]
    prose = prose_in_parts('<h1>Page</h1>\n<p>lead</p>\n<h2 id="one">One</h2>\n<p>a</p>')
    assert '<section class="part"><h2 id="one">One</h2><div class="body">\n<p>a</p></div></section>' in prose


def test_json_cannot_end_its_script():
    assert json_in_page('"</script>\u2028"') == '"\\u003c/script>\\u2028"'


def test_hostile_text_stays_text(small: Library):
    from markdown import markdown

    entry = small.entries["coat-button"]
    named = replace(entry, common=HOSTILE, summary=HOSTILE, also=(HOSTILE,))
    library = replace(small, entries={**small.entries, "coat-button": named})
    for path in ("entries/coat-button.md", "keys/whole/buttons.md", "entries/index.md"):
        html = markdown(page_at(library, path).split("---\n", 2)[2], extensions=["attr_list", "toc"])
        assert "<em>" not in html.replace("<em>x</em>", "") and 'href="x"' not in html, path
        assert "*starred* _under_ [link](x) |bar|" in re.sub(r"&#(\d+);", lambda m: chr(int(m[1])), html), path


def test_every_page_has_its_own_path_and_an_existing_source(library: Library, content: SiteContent):
    made = content.pages
    assert len({each.path for each in made}) == len(made)
    places = (root(), Path(__file__).parents[2])
    assert [each.source for each in made if not any((place / each.source).exists() for place in places)] == []
    assert {
        "index.md",
        "about.md",
        "terms.md",
        "sources.md",
        "cautions.md",
        "voices.md",
        "guides/index.md",
        "look-alikes/index.md",
        "quantities.md",
        "characters/index.md",
        "entries/index.md",
        "keys/index.md",
    } <= {each.path for each in made}
    assert {f"entries/{id}.md" for id in library.entries} | {f"keys/{id}.md" for id in library.keys} <= {each.path for each in made}


def test_the_same_library_gives_the_same_pages(loaded: Loaded, content: SiteContent):
    again = build_site(loaded.library, written_root(root()) / "site", extras(loaded))
    assert again.pages == content.pages
    assert again.assets == content.assets


def test_a_mark_says_its_basis_in_words_and_links_its_sources(small: Library):
    writer = Writer(small, "entries/x.md")
    html = writer.mark([Basis("published", ("demo-source",), "seen"), Basis("memory")])
    assert ">◌</span>" in html, "the weakest of the two is shown"
    assert "published, value seen" in html and 'href="../sources.html#demo-source"' in html


def test_a_term_is_explained_where_it_first_stands(small: Library):
    writer = Writer(small, "entries/x.md")
    assert '<abbr title="A loop at the back of a button.">Shanks</abbr>' in writer.rich("Shanks are shanks")
    assert "abbr" not in writer.rich("a shank")


def test_an_everyday_word_is_explained_only_where_it_is_linked(small: Library):
    term = small.terms["shank"]
    library = replace(small, terms={**small.terms, "shank": replace(term, everyday=True)})
    assert "abbr" not in Writer(library, "entries/x.md").rich("Shanks are shanks")
    assert "terms.html#shank" in Writer(library, "entries/x.md").rich("a [[shank]]")


def test_words_that_mislead_are_not_explained_unasked(library: Library):
    written = Writer(library, "x.md").rich("Sizes overlap in this state, on the stage, at an interval, to the naked eye; you cannot tell.")
    assert "abbr" not in written


def test_a_caution_stands_in_full_at_its_first_step_and_in_one_line_at_those_after_it(library: Library):
    """Every step that can hurt says so at the step; the whole text three times over on one page is read by nobody."""
    for guide in library.guides.values():
        shown = guide_page(library, guide).content
        at_steps = [step.caution for step in guide.steps if step.caution]
        for id in set(at_steps):
            assert shown.count(f'aria-label="Caution: {library.cautions[id].title}"') == at_steps.count(id), (guide.id, id)
        assert shown.count("wm-defer") == len({*at_steps, *guide.cautions}), guide.id


def test_no_mark_stands_inside_a_paragraph(texts: dict[str, str]):
    """A browser ends a paragraph where `<details>` begins, and the mark would fall on a line of its own."""
    for path, text in texts.items():
        for paragraph in re.findall(r"<p\b[^>]*>.*?</p>", text, re.DOTALL):
            assert "<details" not in paragraph, path


def test_every_statement_of_an_entry_stands_on_its_page(library: Library, texts: dict[str, str]):
    for entry in library.entries.values():
        text = texts[f"entries/{entry.id}.md"]
        for statement in entry.statements.values():
            assert f'characters/index.html#{statement.character}"' in text, (entry.id, statement.character)
        for mistake in entry.mistaken_for:
            assert f'href="{mistake.entry}.html"' in text, (entry.id, mistake.entry)


def test_ways_lead_where_they_say(library: Library):
    checked, model = 0, compiled(library)
    for key in library.keys.values():
        it = ground(library, key)
        for entry in list(library.members(key.scope))[::5]:
            for way in paths_to(it, entry.id)[:3]:
                state = evaluate(model, Trail(legs=(Leg(key.id, way.answers),)))
                assert (state.arrived or state.goes_on) == way.end and entry.id in it.within[way.end]
                assert all(each.lead != CANNOT_TELL for each in way.answers)
                checked += 1
    assert checked > 20


def test_writing_gives_pages_and_assets(small: Library, tmp_path: Path):
    out = tmp_path / "out"
    write(small, out)
    expected = {each.path: each.text.encode() for each in pages(small)} | {each.path: each.content for each in assets(small)}
    assert {path.relative_to(out).as_posix(): path.read_bytes() for path in out.rglob("*") if path.is_file()} == expected


def test_hand_written_pages_have_no_slot_left(texts: dict[str, str]):
    for path in ("index.md", "about.md"):
        assert "<!--" not in texts[path]


def test_each_statement_stands_under_the_voice_of_its_weakest_basis(small: Library):
    said = [Claim(f"{kind} words.", (basis,)) for kind, basis in BASES.items()]
    html = "".join(voices(Writer(small, "voices.md"), [*said, Claim("joined words.", tuple(BASES.values())[:2])]))
    under = dict(re.findall(r"wm-voice wm-voice-(\w+)\">(.*?)(?=<div class=\"wm-voice |\Z)", html, re.DOTALL))
    assert "common-practice words" in under["practice"] and "common-practice" not in under["published"] + under["memory"]
    assert "published words" in under["published"] and "computed words" in under["published"]
    assert "memory words" in under["memory"] and "joined words" in under["memory"]


BASES = {
    "published": Basis("published", value="seen"),
    "memory": Basis("memory"),
    "common-practice": Basis("common-practice"),
    "computed": Basis("computed", how="1 + 1"),
}
