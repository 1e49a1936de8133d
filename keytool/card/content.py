"""The content of a key's card, taken from the library."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from keytool.card import plates
from keytool.card.model import WARNING_SIGN, CardBlock, CardCouplet, CardLead, Content, End, Goto, Note, caution_line, dotted
from keytool.card.words import NO_BREAK, Run, Text, text_of
from keytool.figures.library_figures import of_lead
from keytool.library.model import Caution, Couplet, Entry, Key, Lead, Library
from keytool.library.wording import mark

MOST_DIETS = 3
"""An end that may feed in more ways than this says so instead of listing them."""
CANNOT_TELL = (Run("Cannot tell? ", bold=True), Run("Follow every lead it may be, and keep all the ends you reach."))


def content(library: Library, key: Key) -> Content:
    """The key with all its couplets, what to do before starting, and every caution that belongs to it or to one of its ends."""
    particular = _particular(library, key)
    came_from = _came_from(key)
    notes = [
        Note("Before you start", tuple(text_of(library, each) for each in key.before)),
        *caution_notes(library, (key.cautions, *(entry.cautions for entry in _ends(library, key)))),
    ]
    couplets = [
        CardCouplet(
            couplet.number,
            came_from.get(couplet.id, ()),
            _own_magnification(library, key, couplet),
            text_of(library, couplet.asks, bold=True),
            text_of(library, couplet.look),
            text_of(library, _short_look(library, couplet)),
            *_leads(library, key, couplet, particular),
        )
        for couplet in key.couplets.values()
    ]
    magnification = library.vocabulary["magnification"][str(key.magnification)]
    others = dict.fromkeys(each.magnification for each in couplets if each.magnification)
    apart = f" Where {' or '.join(others)} stands under the number, look at that." if others else ""
    begin = (Run(f"Look at {magnification.label}: {magnification.get('about')}.{apart}"),)
    blocks: tuple[CardBlock, ...] = (*(note for note in notes if note.paragraphs), *couplets)
    cautions = caution_line(blocks)
    later = (CANNOT_TELL, dotted(cautions)) if cautions else (begin, CANNOT_TELL)
    return Content(f"keys/{key.id}.html", key.title, magnification.label, (begin, CANNOT_TELL), later, blocks)


def _own_magnification(library: Library, key: Key, couplet: Couplet) -> str:
    power = max(library.characters[each].magnification for each in couplet.characters)
    return "" if power == key.magnification else library.vocabulary["magnification"][str(power)].label


def _leads(library: Library, key: Key, couplet: Couplet, particular: frozenset[str]) -> tuple[tuple[CardLead, ...], bool]:
    """The leads, and whether one scale shows their drawings: always where a size is asked for."""
    leads = list(couplet.leads.values())
    size_tells = any(library.characters[each].is_number for each in couplet.characters)
    drawings, one_scale = plates.beside_each_other([of_lead(library, couplet, lead) for lead in leads], size_tells)
    made = (
        CardLead(text_of(library, lead.text), drawing, _target(library, key, lead, particular))
        for lead, drawing in zip(leads, drawings, strict=True)
    )
    return tuple(made), one_scale


def _target(library: Library, key: Key, lead: Lead, particular: frozenset[str]) -> Goto | End:
    if lead.couplet:
        return Goto((Run(f"→{NO_BREAK}{key.couplets[lead.couplet].number}", bold=True),), to_number=True)
    if lead.key:
        return Goto((Run(f"→{NO_BREAK}key: {library.keys[lead.key].title}", bold=True),), to_number=False)
    entry = library.entries[lead.end]
    flag = (Run("CANNOT BE TOLD", bold=True),) if entry.kind == "cannot-be-told" else ()
    below: list[Text] = [
        (Run(f"{WARNING_SIGN}{NO_BREAK}{library.cautions[each].title}", bold=True),) for each in entry.cautions if each in particular
    ]
    if entry.would_tell:
        below.append((Run("Would tell: ", bold=True), *text_of(library, entry.would_tell)))
    return End(flag, (Run(entry.name, bold=True),), diets(library, entry), tuple(below))


def diets(library: Library, entry: Entry) -> Text:
    """The functional groups in the short words of the vocabulary, with the mark; nothing for what is no feeder."""
    short = dict.fromkeys(str(library.vocabulary["feeding"][each].get("short")) for each in entry.feeding)
    names = [each for each in short if each]
    if not names:
        return ()
    words = "MANY DIETS" if len(names) > MOST_DIETS else " or ".join(names)
    return (Run(words, bold=True), Run(mark(library, entry.feeding_basis), raised=True))


def _ends(library: Library, key: Key) -> list[Entry]:
    ends = dict.fromkeys(lead.end for couplet in key.couplets.values() for lead in couplet.leads.values() if lead.end)
    return [library.entries[each] for each in ends]


def _particular(library: Library, key: Key) -> frozenset[str]:
    """The cautions that mark some ends and not others. Those of the key, or of every end, hold throughout and mark none."""
    carried = [frozenset(entry.cautions) for entry in _ends(library, key)]
    return frozenset().union(*carried) - frozenset.intersection(*carried) - frozenset(key.cautions) if carried else frozenset()


def caution_notes(library: Library, ids: Iterable[Iterable[str]]) -> list[Note]:
    """A note for each caution, each once, in order."""
    cautions = [library.cautions[each] for each in dict.fromkeys(id for some in ids for id in some)]
    return [Note(each.title, (_caution(library, each),), caution=True) for each in cautions]


def _caution(library: Library, caution: Caution) -> Text:
    return (*text_of(library, caution.brief), Run(mark(library, caution.basis), raised=True))


def _came_from(key: Key) -> Mapping[str, tuple[int, ...]]:
    """For each couplet, the numbers of those that lead to it: the way back."""
    numbers: dict[str, list[int]] = {}
    for couplet in key.couplets.values():
        for target in dict.fromkeys(lead.couplet for lead in couplet.leads.values() if lead.couplet):
            numbers.setdefault(target, []).append(couplet.number)
    return {target: tuple(sorted(each)) for target, each in numbers.items()}


def _short_look(library: Library, couplet: Couplet) -> str:
    """The first sentence of how to see it; where that was put together from several characters, the first of each."""
    looks = [library.characters[each].look for each in couplet.characters]
    if couplet.look != " ".join(looks):
        looks = [couplet.look]
    return " ".join(_first_sentence(each) for each in looks)


def _first_sentence(text: str) -> str:
    head, stop, _ = text.partition(". ")
    return head + "." if stop else head
