"""The page of an entry: what is to be seen, what it is taken for, what it means, and what all that rests on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from keytool.figures.library_figures import of_entry
from keytool.identify import Ground, address, telling_first
from keytool.library.model import Entry, Library, Mistake, Statement
from keytool.library.wording import feeding_words, name_of, plain, showing_words, telling_group
from keytool.pages.eyepiece import through_eyepiece
from keytool.pages.field_views import field_views
from keytool.pages.html import Html, el, join
from keytool.pages.index_pages import first_keys
from keytool.pages.movement import moving_entry
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer
from keytool.pages.paths import Way, paths_to
from keytool.pages.photos import photographs
from keytool.pages.plates import Portrait, portrait, portrait_path
from keytool.pages.practice_and_published import voices, voices_on
from keytool.pages.shortcuts import failures_at
from keytool.pages.thumbs import pair

MOST_WAYS = 4
"""Walks shown of one key; a thing that varies may come out by many."""


def entry_page(library: Library, grounds: Sequence[Ground], entry: Entry) -> Page:
    """The page of one entry."""
    writer = Writer(library, f"entries/{entry.id}.md")
    drawing = of_entry(library, entry)
    sections: list[tuple[str, str, Iterable[Html | None]]] = [
        ("What you see", "see", _statements(writer, entry)),
        ("Mistaken for", "mistaken", [*_mistaken(writer, entry), *_compared(writer, entry)]),
        ("What it means", "means", [*voices(writer, entry.tells), *_inherited(writer, entry)]),
        ("Photographs", "photographs", photographs(writer, entry)),
        ("How it moves", "moves", moving_entry(writer, entry)),
        (
            "Where practice and print differ",
            "voices",
            voices_on(writer, (each for each in library.voices.values() if entry.id in each.entries)),
        ),
        ("Where a rule of thumb misleads", "shortcuts", _misled(writer, entry)),
        ("Notes", "notes", [el("ul", *(writer.said(each) for each in entry.notes), class_="wm-list")] if entry.notes else []),
        ("What it holds", "holds", _held(writer, entry)),
        ("How the keys come here", "keys", _keys(writer, grounds, entry)),
        ("About this page", "about", [_about(writer, entry)]),
    ]
    blocks: list[str] = [_hero(writer, entry, portrait(drawing) if drawing else None)]
    for title, anchor, content in sections:
        if parts := [each for each in content if each]:
            blocks += [heading(2, title, anchor), *parts]
    return page(
        f"entries/{entry.id}.md",
        library.files["entry", entry.id],
        entry.name,
        blocks,
        description=plain(library, entry.summary),
        kind="s-entry",
        reviewed=entry.reviewed,
        authors=", ".join(entry.contributors),
    )


def _hero(writer: Writer, entry: Entry, shown: Portrait | None) -> Html:
    """Name and one sentence, the facts that stand at its side on a desk, the ink plate, and the round field beside it."""
    is_latin = entry.scientific == entry.name
    plates = [_ink(writer, entry, shown) if shown else None, *through_eyepiece(writer, entry), *field_views(writer, entry, shown)]
    return el(
        "section",
        el("h1", el("i", entry.name) if is_latin else entry.name),
        el("p", writer.rich(entry.summary), class_="lead"),
        el("div", *_facts(writer, entry), class_="facts"),
        el("div", *plates, class_="plates") if shown else None,
        el("p", el("strong", "What would tell: "), writer.rich(entry.would_tell)) if entry.would_tell else None,
        *_onward(writer, entry),
        *(_caution(writer, entry, each) for each in entry.cautions),
        class_="part first hero",
    )


def _ink(writer: Writer, entry: Entry, shown: Portrait) -> Html:
    width, height = shown.size
    image = el(
        "img",
        src=writer.href(portrait_path(entry.id)),
        width=f"{width:.0f}",
        height=f"{height:.0f}",
        alt=" ".join(each for each in (shown.drawing.title + ".", shown.drawing.description) if each),
        style=f"--w:{1.3 * width:.0f}px",
    )
    return el("figure", image, class_="plate ink", data_search_exclude=True)


def _facts(writer: Writer, entry: Entry) -> Iterator[Html]:
    """In one line on a phone, one below the other at the side on a desk."""
    library = writer.library
    if entry.scientific and entry.scientific != entry.name:
        yield el("div", el("i", entry.scientific))
    theme = el("a", library.vocabulary["theme"][entry.theme].label, href=writer.href("entries/index.html", entry.theme))
    yield el("div", f"{library.vocabulary['entry-kind'][entry.kind].label}, ", theme)
    if entry.also:
        yield el("div", f"also: {', '.join(entry.also)}")
    if entry.feeding:
        yield el("div", "lives on: ", feeding_words(library, entry.feeding), " ", writer.mark(entry.feeding_basis))
    if entry.commonness:
        yield el("div", f"in soil drops: {library.vocabulary['commonness'][entry.commonness].label} ", writer.mark(entry.commonness_basis))
    if entry.within:
        yield el("div", "part of: ", join((writer.link(each) for each in entry.within), ", "))


def _onward(writer: Writer, entry: Entry) -> Iterator[Html]:
    """Keys that go on from a group: they name what it holds; and the way to tell what was seen instead."""
    library = writer.library
    start = first_keys(library)[0]
    onward = [id for id, key in library.keys.items() if entry.id in key.scope and entry.kind != "cannot-be-told" and id != start]
    if onward:
        links = (el("a", f"Go on: {library.keys[id].title}", href=writer.place(id), class_="btn main") for id in onward)
        yield el("p", *links, class_="acts onward")
    yield el("p", el("a", "Not sure it is this? Tell what you saw", href=writer.href("describe.html")), class_="small")


def _caution(writer: Writer, entry: Entry, id: str) -> Html:
    """A caution in brief, linked to the whole of it; folded, and then in full, where everything of its kind shares it."""
    entries = writer.library.entries
    everywhere = any(id in entries[each].cautions for each in writer.library.ancestry(entry.id) - {entry.id} if not entries[each].within)
    if not everywhere:
        return writer.brief_caution(id)
    return el(
        "details", el("summary", f"Take care: {writer.library.cautions[id].title.lower()}"), writer.caution(id), class_="wm-shared-caution"
    )


def _statements(writer: Writer, entry: Entry) -> Iterator[Html]:
    """What is said of the entry itself, the most telling first; then, folded, what it shares with each group that holds it."""
    for group, statements in telling_first(writer.library, entry):
        rows = el("dl", *(_statement(writer, each) for each in statements), class_="stmts")
        if group != entry.id:
            yield el(
                "details",
                el("summary", f"As all of: {name_of(writer.library, group)} ({len(statements)})"),
                el("p", "Said of ", writer.link(group), " as a whole.", class_="label"),
                rows,
                class_="wide wm-inherited",
            )
        else:
            yield rows


def _statement(writer: Writer, statement: Statement) -> Html:
    return el(
        "div",
        el("dt", writer.link(statement.character)),
        el("dd", el("span", showing_words(writer.library, statement), class_="t"), " ", writer.mark(statement.basis)),
    )


def _inherited(writer: Writer, entry: Entry) -> Iterator[Html]:
    """What the nearest group that holds the entry tells about the soil. It is found by that group, not by every member."""
    if group := telling_group(writer.library, entry):
        yield el(
            "div",
            el("p", "As all of ", writer.link(group.id), ":"),
            *voices(writer, group.tells),
            class_="wm-as-all",
            data_search_exclude=True,
        )


def _mistaken(writer: Writer, entry: Entry) -> Iterator[Html]:
    """Each double beside the entry, with the look that tells the two apart."""
    if entry.mistaken_for:
        yield el("ul", *(el("li", _double(writer, entry, each)) for each in entry.mistaken_for), class_="duos", role="list")


def _double(writer: Writer, entry: Entry, mistake: Mistake) -> Html:
    other = writer.library.entries[mistake.entry]
    look = [" Look at: ", writer.link(mistake.character), "."] if mistake.character else []
    return el(
        "div",
        pair(writer, entry, other),
        el("div", el("b", writer.link(other.id)), writer.rich(mistake.by), *look, class_="t"),
        writer.mark(mistake.basis),
        class_="duo",
    )


def _compared(writer: Writer, entry: Entry) -> Iterator[Html]:
    sets = [each.id for each in writer.library.look_alikes.values() if entry.id in each.entries]
    if sets:
        yield el("p", "Side by side: ", join((writer.link(each) for each in sets), ", "), ".")


def _misled(writer: Writer, entry: Entry) -> Iterator[Html]:
    for shortcut, index in failures_at(writer.library, entry.id):
        failure = shortcut.fails[index]
        yield el(
            "div",
            el(
                "p",
                "Common practice: ",
                el("a", shortcut.title, href=writer.href(f"keys/whole/{shortcut.key}.html", f"shortcut-{shortcut.id}")),
                ". ",
                el("q", writer.rich(shortcut.rules[failure.rule].text)),
            ),
            writer.said(failure.said, "div"),
            class_="wm-misled",
        )


def _held(writer: Writer, entry: Entry) -> Iterator[Html]:
    held = [each.id for each in writer.library.entries.values() if entry.id in each.within]
    if held:
        yield el(
            "ul",
            *(el("li", writer.link(each)) for each in sorted(held, key=lambda id: name_of(writer.library, id).lower())),
            class_="wm-columns",
        )


def _keys(writer: Writer, grounds: Sequence[Ground], entry: Entry) -> Iterator[Html]:
    for ground in grounds:
        if found := paths_to(ground, entry.id):
            shown = [el("li", _way(writer, ground, entry, each)) for each in found[:MOST_WAYS]]
            more = len(found) - len(shown)
            yield el("h3", writer.link(ground.key.id), id=f"key-{ground.key.id}")
            yield el("ul", *shown, class_="wm-ways", role="list")
            if more:
                yield el("p", f"And {more} longer way{'s' if more > 1 else ''}, since it varies.", class_="label")


def _way(writer: Writer, ground: Ground, entry: Entry, way: Way) -> Html:
    """A walk by its last answer, with the numbers of all its statements."""
    couplets = ground.key.couplets
    steps = [f"{couplets[each.couplet].number}{'abc'[list(couplets[each.couplet].leads).index(each.lead)]}" for each in way.answers]
    last = way.answers[-1]
    words = plain(writer.library, couplets[last.couplet].leads[last.lead].text)
    end = None if way.end == entry.id else join([", which ends at ", writer.link(way.end)])
    count = f"{len(steps)} question{'s' if len(steps) > 1 else ''}: {' '.join(steps)}"
    return join(
        [
            el("a", words, href=f"{writer.href(f'keys/{way.key}.html')}#{address(way.answers)}"),
            end,
            el("span", f" {count}", class_="label"),
        ]
    )


def _about(writer: Writer, entry: Entry) -> Html:
    by = ", ".join(entry.contributors)
    return el(
        "div",
        el("p", f"Last reviewed {entry.reviewed}. Written by {by}. Text and drawings: CC BY 4.0."),
        el(
            "p",
            "Something wrong or missing, here or in the drawing? This page is made from ",
            el("code", writer.library.files["entry", entry.id]),
            ". ",
            el("a", "How to mend it", href=writer.href("contribute/index.html")),
            ".",
        ),
        class_="wm-about",
        data_search_exclude=True,
    )
