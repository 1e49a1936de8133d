"""The content of a card that compares: a look-alike set, or entries chosen by hand."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import combinations

from keytool.card.content import caution_notes, diets
from keytool.card.model import CardBlock, Compared, Content, End, Photographed, Row, Told, caution_line, dotted
from keytool.card.photographs import card_photo
from keytool.card.plates import set_side_by_side
from keytool.card.words import Run, Text, text_of
from keytool.figures.library_figures import of_entry
from keytool.library.basis import Basis
from keytool.library.model import Entry, Library, LookAlikes, Statement
from keytool.library.wording import mark, showing_words

CANNOT_TELL = (Run("Cannot tell? ", bold=True), Run("Keep all it may be, and write them all down."))
FIRST = "Do this first"


def look_alike_content(library: Library, these: LookAlikes) -> Content:
    """A look-alike set: the decisive test, the drawings, and what each shows of the same characters."""
    entries = [library.entries[each] for each in these.entries]
    first = Told(FIRST, (_said(library, these.decisive.text, these.decisive.basis),), first=True)
    notes = [_said(library, each.text, each.basis) for each in these.notes]
    about = text_of(library, these.about)
    return _content(library, f"look-alikes/{these.id}.html", these.title, about, first, entries, these.characters, notes)


def entries_content(library: Library, entries: Sequence[Entry], photos: Mapping[str, bytes]) -> Content:
    """Entries chosen by hand: how to tell those that are mistaken for each other, the drawings, and where they differ.

    Of one entry, all it shows; of several, the characters in which they differ. `photos` holds the pictures of those
    photographs that are to be shown, by their ids.
    """
    tests = [test for one, other in combinations(entries, 2) for test in _tests(library, one, other)]
    first = Told(FIRST, tuple(tests), first=True) if tests else None
    title = ", ".join(each.name for each in entries[:-1]) + (" or " if entries[1:] else "") + entries[-1].name
    page = f"entries/{entries[0].id}.html" if len(entries) == 1 else "entries/index.html"
    notes = [note for entry in entries for note in _notes(library, entry)] if len(entries) == 1 else []
    return _content(library, page, title, (), first, entries, _telling(library, entries), notes, photos)


def _content(
    library: Library,
    page: str,
    title: str,
    about: Text,
    first: Told | None,
    entries: Sequence[Entry],
    characters: Iterable[str],
    notes: Sequence[Text],
    photos: Mapping[str, bytes] | None = None,
) -> Content:
    """`photos` is None for a look-alike set, which shows neither photographs nor summaries."""
    names = tuple(each.name for each in entries)
    ends = tuple(
        End(
            (Run("CANNOT BE TOLD", bold=True),) if each.kind == "cannot-be-told" else (),
            (Run(each.name, bold=True),),
            diets(library, each),
            _below(each),
        )
        for each in entries
    )
    drawings, one_scale = set_side_by_side([of_entry(library, each) for each in entries])
    shots = tuple(card_photo(library, each, photos or {}) for each in entries)
    seen = Row((Run("What one sees", bold=True),), tuple(text_of(library, each.summary) for each in entries), ends)
    rows = [] if photos is None else [seen]
    rows += [
        Row((Run(library.characters[id].name, bold=True),), tuple(_shown(library, each.statements.get(id)) for each in entries), ends)
        for id in characters
    ]
    blocks: tuple[CardBlock, ...] = (
        *([first] if first else []),
        Compared(ends, drawings, one_scale, Photographed(ends, shots) if any(shots) else None),
        *rows,
        *([Told("Notes", tuple(notes), first=False)] if notes else []),
        *caution_notes(library, (each.cautions for each in entries)),
    )
    begin = (*([about] if about else []), CANNOT_TELL)
    left_to_right = (Run("Left to right: ", bold=True), *dotted(" · ".join(names)), Run("."))
    cautions = caution_line(blocks)
    later = (left_to_right, *([dotted(cautions)] if cautions else []))
    return Content(page, title, "", begin, later, blocks, wide=len(entries) > 1)


def _below(entry: Entry) -> tuple[Text, ...]:
    return ((Run(entry.scientific),),) if entry.scientific and entry.scientific != entry.name else ()


def _said(library: Library, text: str, basis: Iterable[Basis]) -> Text:
    return (*text_of(library, text), Run(mark(library, basis), raised=True))


def _notes(library: Library, entry: Entry) -> list[Text]:
    """What it is mistaken for, and all else there is to say of it."""
    taken = [
        (Run(f"Not {library.entries[each.entry].name}: ", bold=True), *_said(library, each.by, each.basis)) for each in entry.mistaken_for
    ]
    return taken + [_said(library, each.text, each.basis) for each in (*entry.tells, *entry.notes)]


def _shown(library: Library, statement: Statement | None) -> Text:
    if statement is None:
        return (Run("not stated"),)
    return _said(library, showing_words(library, statement), statement.basis)


def _tests(library: Library, one: Entry, other: Entry) -> list[Text]:
    """How to tell two entries, as one of them says it."""
    for here, there in ((one, other), (other, one)):
        for mistake in here.mistaken_for:
            if mistake.entry == there.id:
                about = Run(f"{here.name} or {there.name}: ", bold=True)
                return [(about, *_said(library, mistake.by, mistake.basis))]
    return []


def _telling(library: Library, entries: Sequence[Entry]) -> list[str]:
    """The characters to put side by side, in the order of the library."""
    stated = [id for id in library.characters if any(id in each.statements for each in entries)]
    if len(entries) == 1:
        return stated
    shown = {id: [_shown(library, each.statements.get(id))[0].text for each in entries if id in each.statements] for id in stated}
    return [id for id, words in shown.items() if len(words) > 1 and len(set(words)) > 1]
