"""Look-alikes: entries that are taken for each other, the test to do first, and the characters side by side."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.figures.library_figures import of_entry
from keytool.library.model import Library, LookAlikes, Statement
from keytool.library.wording import name_of, plain, showing_words
from keytool.pages.html import Html, el
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer
from keytool.pages.plates import row

PLATE = {2: (150.0, 170.0), 3: (102.0, 140.0)}
"""Room for one drawing, px, where two or three stand abreast on a phone."""
MANY = (102.0, 110.0)
"""Room where there are more."""


def look_alikes_page(library: Library) -> Page:
    """All sets of look-alikes by the theme of what they compare, with what each holds."""
    writer = Writer(library, "look-alikes/index.md")
    blocks: list[str] = [
        heading(1, "Look-alikes"),
        el("p", f"{len(library.look_alikes)} sets of things that are taken for each other, each with the one test to do first."),
    ]
    for theme in library.vocabulary["theme"].values():
        sets = [each for each in library.look_alikes.values() if library.entries[each.entries[0]].theme == theme.id]
        if sets:
            lines = (_line(writer, each) for each in sorted(sets, key=lambda each: each.title.lower()))
            blocks += [heading(2, theme.label, theme.id), el("ul", *lines, class_="wm-entry-list")]
    return page("look-alikes/index.md", "keydata/look-alikes", "Look-alikes", blocks)


def _line(writer: Writer, these: LookAlikes) -> Html:
    holds = ", ".join(name_of(writer.library, entry) for entry in these.entries)
    return el("li", writer.link(these.id), el("div", holds, class_="wm-aside"))


def look_alike_page(library: Library, these: LookAlikes) -> Page:
    """One set: the decisive test, and a table of the drawings and of what each shows of each character."""
    writer = Writer(library, f"look-alikes/{these.id}.md")
    blocks: list[str] = [
        heading(1, these.title),
        el("p", writer.rich(these.about)),
        el("div", el("p", el("strong", "Do this first")), writer.said(these.decisive, "div"), class_="wm-first"),
        *_table(writer, these),
    ]
    if these.notes:
        blocks += [heading(2, "Notes", "notes"), el("ul", *(writer.said(each) for each in these.notes), class_="wm-list")]
    return page(
        f"look-alikes/{these.id}.md",
        library.files["look-alike", these.id],
        these.title,
        [*blocks, _cautions(writer, these), writer.legend()],
        description=plain(library, these.about),
        hide=("toc",),
    )


def _table(writer: Writer, these: LookAlikes) -> Iterator[Html | str]:
    """Drawings and names as the head, one row for each character. The roles hold where the style lays the table out in blocks."""
    library = writer.library
    drawings = [of_entry(library, library.entries[each]) for each in these.entries]
    shown = row(drawings, [f"{each}-plate" for each in these.entries], *PLATE.get(len(drawings), MANY))
    heads = [
        el("th", plate, writer.link(each), scope="col", role="columnheader")
        for each, plate in zip(these.entries, shown.plates, strict=True)
    ]
    yield el(
        "table",
        el("thead", el("tr", el("td", role="cell", class_="wm-corner"), *heads, role="row"), role="rowgroup"),
        el("tbody", *(_row(writer, these, each) for each in these.characters), role="rowgroup"),
        class_=f"wm-compared wm-of-{len(these.entries)}",
        role="table",
        data_search_exclude=True,
    )
    if not shown.one_scale:
        yield el("p", "These drawings are not at one scale: read the bar under each.", class_="wm-aside")


def _row(writer: Writer, these: LookAlikes, character: str) -> Html:
    library = writer.library
    cells = []
    for each in these.entries:
        statement = library.entries[each].statements.get(character)
        shows = _shown(writer, statement) if statement else ["not stated"]
        whose = el("span", name_of(library, each), class_="wm-whose", aria_hidden="true")
        cells.append(el("td", whose, el("div", *shows), class_=None if statement else "wm-unstated", role="cell"))
    return el("tr", el("th", writer.link(character), scope="row", role="rowheader"), *cells, role="row")


def _shown(writer: Writer, statement: Statement) -> list[Html | str]:
    """What is shown; its mark stays with the last word where the cell is narrow."""
    *words, last = showing_words(writer.library, statement).split(" ")
    return ["".join(f"{each} " for each in words), el("span", last, " ", writer.mark(statement.basis), class_="wm-together")]


def _cautions(writer: Writer, these: LookAlikes) -> Html | str:
    """Whatever of these can hurt, in one line each, folded to its titles."""
    cautions = dict.fromkeys(each for entry in these.entries for each in writer.library.entries[entry].cautions)
    if not cautions:
        return ""
    titles = ", ".join(writer.library.cautions[each].title.lower() for each in cautions)
    return el(
        "details", el("summary", f"Take care: {titles}"), *(writer.brief_caution(each) for each in cautions), class_="wm-shared-caution"
    )
