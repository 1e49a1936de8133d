"""The page of an entry: what is to be seen, what it is taken for, what it means, and what all that rests on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from keytool.figures.library_figures import of_entry
from keytool.identify import Ground, address
from keytool.library.model import Entry, Library, Statement
from keytool.library.wording import feeding_words, name_of, plain, showing_words, stated, telling_group
from keytool.pages.field_views import field_views
from keytool.pages.html import Html, el, join
from keytool.pages.index_pages import first_keys
from keytool.pages.movement import moving_entry
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer
from keytool.pages.paths import Way, paths_to
from keytool.pages.photos import photographs
from keytool.pages.plates import empty, portrait
from keytool.pages.practice_and_published import voices, voices_on
from keytool.pages.shortcuts import failures_at

MOST_WAYS = 4
"""Walks shown of one key; a thing that varies may come out by many."""


def entry_page(library: Library, grounds: Sequence[Ground], entry: Entry) -> Page:
    """The page of one entry."""
    writer = Writer(library, f"entries/{entry.id}.md")
    drawing = of_entry(library, entry)
    shown = portrait(drawing) if drawing else None
    sections: list[tuple[str, str, Iterable[Html | None]]] = [
        ("Taken for something else", "mistaken", [*_mistaken(writer, entry), *_compared(writer, entry)]),
        ("What it means", "means", [*voices(writer, entry.tells), *_inherited(writer, entry)]),
        ("What you see", "see", _statements(writer, entry)),
        ("In the field of view", "field", field_views(writer, entry, shown)),
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
    blocks: list[str] = [heading(1, entry.name), _lead(writer, entry, shown.plate if shown else empty())]
    for title, anchor, content in sections:
        if parts := [each for each in content if each]:
            blocks += [heading(2, title, anchor), *parts]
    return page(
        f"entries/{entry.id}.md",
        library.files["entry", entry.id],
        entry.name,
        [*blocks, writer.legend()],
        description=plain(library, entry.summary),
    )


def _lead(writer: Writer, entry: Entry, plate: Html) -> Html:
    library = writer.library
    kind = library.vocabulary["entry-kind"][entry.kind].label
    theme = library.vocabulary["theme"][entry.theme].label
    also = f"also: {', '.join(entry.also)}" if entry.also else None
    names = [
        el("i", entry.scientific) if entry.scientific else None,
        kind,
        el("a", theme, href=writer.href("entries/index.html", entry.theme)),
        also,
    ]
    above = [writer.link(each) for each in entry.within]
    start = first_keys(library)[0]
    onward = [id for id, key in library.keys.items() if entry.id in key.scope and entry.kind != "cannot-be-told" and id != start]
    facts = [
        _fact("Lives on", feeding_words(library, entry.feeding), writer.mark(entry.feeding_basis)) if entry.feeding else None,
        _fact("In soil drops", library.vocabulary["commonness"][entry.commonness].label, writer.mark(entry.commonness_basis))
        if entry.commonness
        else None,
        _fact("Part of", join(above, ", ")) if above else None,
        _fact("What would tell", writer.rich(entry.would_tell)) if entry.would_tell else None,
        _fact("To go on", join((writer.link(each) for each in onward), ", ")) if onward else None,
    ]
    return el(
        "div",
        el("figure", plate, class_="wm-portrait"),
        el(
            "div",
            el("p", join((each for each in names if each), " · "), class_="wm-names"),
            el("p", writer.rich(entry.summary), class_="wm-summary"),
            el("dl", *facts, class_="wm-facts"),
            *(_caution(writer, entry, each) for each in entry.cautions),
        ),
        class_="wm-entry-head",
    )


def _caution(writer: Writer, entry: Entry, id: str) -> Html:
    """A caution in brief, linked to the whole of it; folded, and then in full, where everything of its kind shares it."""
    entries = writer.library.entries
    everywhere = any(id in entries[each].cautions for each in writer.library.ancestry(entry.id) - {entry.id} if not entries[each].within)
    if not everywhere:
        return writer.brief_caution(id)
    return el(
        "details", el("summary", f"Take care: {writer.library.cautions[id].title.lower()}"), writer.caution(id), class_="wm-shared-caution"
    )


def _fact(name: str, *value: Html | str) -> Html:
    return el("div", el("dt", name), el("dd", *[part for each in value for part in (each, " ")]))


def _statements(writer: Writer, entry: Entry) -> Iterator[Html]:
    """What is said of the entry itself; then, folded, what it shares with each group that holds it."""
    for group, statements in stated(writer.library, entry):
        table = el(
            "table",
            el("thead", el("tr", el("th", "Character", scope="col"), el("th", "Shows", scope="col"))),
            el("tbody", *(_statement(writer, each) for each in statements)),
            class_="wm-statements",
        )
        if group != entry.id:
            yield el(
                "details",
                el("summary", f"As all of: {name_of(writer.library, group)} ({len(statements)})"),
                el("p", "Said of ", writer.link(group), " as a whole.", class_="wm-aside"),
                table,
                class_="wm-inherited",
            )
        else:
            yield el("div", table)


def _statement(writer: Writer, statement: Statement) -> Html:
    return el(
        "tr",
        el("th", writer.link(statement.character), scope="row"),
        el("td", showing_words(writer.library, statement), " ", writer.mark(statement.basis)),
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
    if entry.mistaken_for:
        yield el(
            "dl",
            *(
                join(
                    [
                        el("dt", writer.link(each.entry)),
                        el(
                            "dd",
                            writer.rich(each.by),
                            *([" Look at: ", writer.link(each.character), "."] if each.character else []),
                            " ",
                            writer.mark(each.basis),
                        ),
                    ]
                )
                for each in entry.mistaken_for
            ),
            class_="wm-mistaken",
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
                el("a", shortcut.title, href=writer.href(f"keys/{shortcut.key}.html", f"shortcut-{shortcut.id}")),
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
            yield el(
                "div",
                el("h3", writer.link(ground.key.id), id=f"key-{ground.key.id}"),
                el("ul", *shown, class_="wm-ways"),
                el("p", f"And {more} longer way{'s' if more > 1 else ''}, since it varies.", class_="wm-aside") if more else None,
            )


def _way(writer: Writer, ground: Ground, entry: Entry, way: Way) -> Html:
    couplets = ground.key.couplets
    steps = [f"{couplets[each.couplet].number}{'abc'[list(couplets[each.couplet].leads).index(each.lead)]}" for each in way.answers]
    last = way.answers[-1]
    words = plain(writer.library, couplets[last.couplet].leads[last.lead].text)
    end = None if way.end == entry.id else join([", which ends at ", writer.link(way.end)])
    return join([el("a", " ".join(steps), href=f"{writer.href(f'keys/{way.key}.html')}#{address(way.answers)}"), f" {words}", end])


def _about(writer: Writer, entry: Entry) -> Html:
    by, library = ", ".join(entry.contributors), writer.library
    scientific = f" ({entry.scientific})" if entry.scientific else ""
    return el(
        "div",
        el("p", f"Last reviewed {entry.reviewed}. Written by {by}. Text and drawings: CC BY 4.0."),
        el(
            "p",
            "Something wrong or missing, here or in the drawing? This page is made from ",
            el("code", library.files["entry", entry.id]),
            ". ",
            el("a", "How to mend it", href=writer.href("contribute/index.html")),
            ".",
        ),
        el(
            "p",
            "To cite: ",
            el(
                "span",
                f"{by}. {entry.name}{scientific}. In: wetmount {library.version}, entry “{entry.id}”, reviewed {entry.reviewed}.",
                class_="wm-cite",
            ),
        ),
        class_="wm-about",
        data_search_exclude=True,
    )
