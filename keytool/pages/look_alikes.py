"""Look-alikes: entries that are taken for each other, the test to do first, and the characters side by side."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import inf

from keytool.figures import Drawing, contrast
from keytool.figures.library_figures import of_entry
from keytool.figures.shapes import ScaleBar
from keytool.library.basis import Basis
from keytool.library.model import Entry, Library, LookAlikes, Statement
from keytool.library.value import States
from keytool.library.wording import name_of, plain, showing_words
from keytool.pages.eyepiece import compared, seen_through
from keytool.pages.figure_files import PEN, FigureFiles
from keytool.pages.html import Html, el
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer
from keytool.pages.thumbs import picture, thumb

ROOM = (180.0, 200.0)
"""Room for one drawing, px on a desk; on a phone all shrink alike."""
LETTERS = "abcdefgh"


def look_alikes_page(library: Library) -> Page:
    """All sets of look-alikes by the theme of what they compare, with what each holds."""
    writer = Writer(library, "look-alikes/index.md")
    blocks: list[str] = [
        heading(1, "Look-alikes"),
        el(
            "p",
            f"{len(library.look_alikes)} sets of things that are taken for each other, each with the one test to do first.",
            class_="lead",
        ),
    ]
    for theme in library.vocabulary["theme"].values():
        sets = [each for each in library.look_alikes.values() if library.entries[each.entries[0]].theme == theme.id]
        if sets:
            lines = (_line(writer, each) for each in sorted(sets, key=lambda each: each.title.lower()))
            blocks += [heading(2, theme.label, theme.id), el("ul", *lines, class_="sets", role="list")]
    return page("look-alikes/index.md", "keydata/look-alikes", "Look-alikes", blocks, kind="s-looks")


def _line(writer: Writer, these: LookAlikes) -> Html:
    holds = ", ".join(name_of(writer.library, entry) for entry in these.entries)
    thumbs = (thumb(writer, writer.library.entries[each]) for each in these.entries)
    words = el("span", el("strong", these.title), el("span", holds), class_="t")
    return el("li", el("a", words, el("span", *thumbs, class_="thumbs", aria_hidden="true"), href=writer.place(these.id)))


def look_alike_page(library: Library, these: LookAlikes, figures: FigureFiles) -> Page:
    """One set: the decisive test, the drawings at one scale where that shows them, and of each character who shows what."""
    writer = Writer(library, f"look-alikes/{these.id}.md")
    blocks: list[str] = [
        heading(1, these.title),
        el("p", writer.rich(these.about), class_="lead"),
        el("p", el("strong", "Do this first"), class_="first-test"),
        writer.said(these.decisive, "div"),
        _strip(writer, these, figures),
        *_through(writer, these),
        *(part for each in these.characters if (part := _character(writer, these, each))),
    ]
    if these.notes:
        blocks += [heading(2, "Notes", "notes"), el("ul", *(writer.said(each) for each in these.notes), class_="wm-list")]
    cautions = _cautions(writer, these)
    return page(
        f"look-alikes/{these.id}.md",
        library.files["look-alike", these.id],
        these.title,
        [*blocks, *([heading(2, "Take care", "care"), cautions] if cautions else [])],
        description=plain(library, these.about),
        kind="s-look",
    )


def _strip(writer: Writer, these: LookAlikes, figures: FigureFiles) -> Html:
    """All of them on one plate with their letters; one bar where they are at one scale, else one for each."""
    entries = [writer.library.entries[each] for each in these.entries]
    shown = contrast([of_entry(writer.library, each) for each in entries], *ROOM, pen=PEN)
    several = sum(1 for each in shown.drawings if each) > 1
    one = shown.one_scale and several
    items = [
        _in_strip(writer, entry, letter, drawing, scale, figures, with_bar=not one)
        for entry, letter, drawing, scale in zip(entries, LETTERS, shown.drawings, shown.scales, strict=False)
    ]
    bars = [(each.bar, scale) for each, scale in zip(shown.drawings, shown.scales, strict=True) if each]
    columns = f"--n:{len(entries)};--c:{2 if len(entries) in (2, 4) else 3}"
    return el(
        "div",
        el("ol", *items),
        el("p", _bar(*bars[0], ", all at one scale"), class_="one-bar") if one else None,
        class_="plate strip wide",
        style=columns,
        data_search_exclude=True,
    )


def _through(writer: Writer, these: LookAlikes) -> Iterator[Html]:
    """Where contrast decides between them: what the microscope shows of each that has a computed picture."""
    library = writer.library
    pictures = [(letter, library.entries[id]) for letter, id in zip(LETTERS, these.entries, strict=False) if id in library.eyepiece.stills]
    if len(pictures) > 1 and any(seen_through(library, each) for each in these.characters):
        yield compared(writer, pictures)
        yield el("script", src=writer.href("assets/entry.js"), defer=True)


def _in_strip(
    writer: Writer, entry: Entry, letter: str, drawing: Drawing | None, scale: float, figures: FigureFiles, *, with_bar: bool
) -> Html:
    image = None
    if drawing:
        width = drawing.frame.width * scale
        image = el(
            "img",
            src=writer.href(figures.path(drawing, scale, cut=True)),
            alt="",
            width=f"{width:.0f}",
            height=f"{drawing.frame.height * scale:.0f}",
            style=f"--s:{width / ROOM[0]:.5f}",
        )
    return el(
        "li",
        el(
            "a",
            el("span", image or el("span", "no drawing yet", class_="none"), class_="clip"),
            el("b", letter),
            el("span", entry.name, class_="t"),
            href=writer.place(entry.id),
        ),
        _bar(drawing.bar, scale) if drawing and with_bar else None,
    )


def _bar(bar: ScaleBar, scale: float, after: str = "") -> Html:
    """A scale bar whose length is a share of its column, so that it shrinks with the drawings."""
    return el("span", bar.label + after, class_="bar", style=f"--s:{bar.length * scale / ROOM[0]:.5f}")


@dataclass(frozen=True, slots=True)
class _Shown:
    """What some of a set show of a character: in words, who (positions in the set), and what it rests on."""

    words: str
    who: tuple[int, ...]
    basis: tuple[Basis, ...]


def _character(writer: Writer, these: LookAlikes, id: str) -> Html | None:
    """A part of the page: the entries sorted under what they show. Who states nothing is left out."""
    library = writer.library
    stated = [(at, each.statements[id]) for at, name in enumerate(these.entries) if id in (each := library.entries[name]).statements]
    if len(stated) < 2:
        return None
    rows = el("ul", *(_row(writer, these, each) for each in _sorted_under(library, id, stated)), class_="tri", role="list")
    return el(
        "section",
        el("h2", writer.link(id), id=id),
        el("div", rows, el("p", writer.rich(library.characters[id].look), class_="how"), class_="body"),
        class_="part ch",
        style=f"--n:{len(these.entries)}",
    )


def _sorted_under(library: Library, id: str, stated: list[tuple[int, Statement]]) -> Iterator[_Shown]:
    """Each state with all that may show it, in the order of the character; of numbers each stretch, the smallest first."""
    character = library.characters[id]
    whole = frozenset(character.states)
    for state in character.states.values():
        having = [(at, each) for at, each in stated if isinstance(each.showing, States) and state.id in each.showing.ids != whole]
        if having:
            yield _gathered(state.name, having)
    rest = [(at, each) for at, each in stated if not isinstance(each.showing, States) or each.showing.ids == whole]
    rest.sort(key=lambda pair: getattr(pair[1].showing, "low", inf))
    for words in dict.fromkeys(showing_words(library, each) for _, each in rest):
        yield _gathered(words, [pair for pair in rest if showing_words(library, pair[1]) == words])


def _gathered(words: str, having: list[tuple[int, Statement]]) -> _Shown:
    basis = dict.fromkeys(basis for _, each in having for basis in each.basis)
    return _Shown(words, tuple(sorted(at for at, _ in having)), tuple(basis))


def _row(writer: Writer, these: LookAlikes, shown: _Shown) -> Html:
    """One line: on a phone their pictures before the words, on a desk a bar in each of their columns above the words."""
    entries = [writer.library.entries[these.entries[at]] for at in shown.who]
    who = (
        el(
            "li",
            el("span", picture(writer, entry), el("b", LETTERS[at]), class_="thumb"),
            style=f"--at:{at + 1}",
        )
        for at, entry in zip(shown.who, entries, strict=True)
    )
    first, *others = _runs(shown.who)
    return el(
        "li",
        el("ul", *who, class_="who", aria_hidden="true"),
        el(
            "div",
            el("span", ", ".join(each.name for each in entries), ": ", class_="unseen"),
            shown.words,
            " ",
            writer.mark(shown.basis),
            class_="t",
            style=_columns(first),
        ),
        *(el("div", shown.words, class_="t again", style=_columns(each), aria_hidden="true") for each in others),
    )


def _runs(who: tuple[int, ...]) -> list[tuple[int, int]]:
    """Neighbouring columns as (first, how many)."""
    runs: list[tuple[int, int]] = []
    for at in who:
        if runs and sum(runs[-1]) == at:
            runs[-1] = (runs[-1][0], runs[-1][1] + 1)
        else:
            runs.append((at, 1))
    return runs


def _columns(run: tuple[int, int]) -> str:
    return f"--from:{run[0] + 1};--span:{run[1]}"


def _cautions(writer: Writer, these: LookAlikes) -> Html | str:
    """Whatever of these can hurt, in one line each, folded to its titles."""
    cautions = dict.fromkeys(each for entry in these.entries for each in writer.library.entries[entry].cautions)
    if not cautions:
        return ""
    titles = ", ".join(writer.library.cautions[each].title.lower() for each in cautions)
    return el(
        "details", el("summary", f"Take care: {titles}"), *(writer.brief_caution(each) for each in cautions), class_="wm-shared-caution"
    )
