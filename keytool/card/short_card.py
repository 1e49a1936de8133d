"""The short card: what is met nine times in ten, at its true size in the field at 40× and at 400×, with the one look that decides.

On a whole sheet each side is the field of one power with its labels around; as a pocket fold the same things stand in rows.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from keytool.card import typeface
from keytool.card.colophon import EXAMPLE, Imprint, eyepiece, legend, made, microscope
from keytool.card.compact_header import check_bar
from keytool.card.content import diets
from keytool.card.errors import CardError, DoesNotFit
from keytool.card.field_layout import Thing, laid
from keytool.card.form import Form
from keytool.card.impose import Face, fold_words
from keytool.card.ink import GREY, Block, Heading, Moved, Panel, Picture, Piece, Rule, Words
from keytool.card.model import WARNING_SIGN, dotted
from keytool.card.plates import bare
from keytool.card.typeface import MM_PER_PT, RISE
from keytool.card.words import NO_BREAK, Run, Text, set_lines, text_of
from keytool.figures import Drawing
from keytool.figures.library_figures import of_entry
from keytool.figures.whole_body import is_worm_part, whole_of
from keytool.library.model import Library, Met
from keytool.library.value import Interval, Showing
from keytool.library.wording import mark, number

PAGE = "entries.html"
SIZES = ((13.0, 11.0, 9.0), (12.0, 10.0, 8.5), (11.0, 9.5, 8.0), (10.0, 8.5, 7.6))
"""Points of the name, the look that decides, and the small line, the largest that fit being taken."""
STRANDS = "threads"
"""The theme of what may run through the whole field."""
NIB = 0.2
"""A pen stroke of the field on paper, mm."""
STRIP = 37.0
"""mm at the foot: what to remember, your microscope, the check bar."""
VAGUE = 100
"""A length whose ends lie further apart than this, one by the other, is only printed where nothing better is known."""
LABEL = 46.0
"""The least width of a column of labels, mm."""
BLANK = f"_{NO_BREAK}_{NO_BREAK}_{NO_BREAK}_{NO_BREAK}_"


@dataclass(frozen=True, slots=True)
class ShortBench:
    """What every face of one short card shares."""

    library: Library
    imprint: Imprint
    form: Form

    def objective(self, power: int) -> int:
        """The objective that is swung in for a power (eyepiece times objective)."""
        return power // eyepiece(self.library)

    def diameter(self, power: int) -> float:
        """Of the field at a power (eyepiece times objective), in µm: your own, or that of the example."""
        own = self.imprint.field_diameters.get(self.objective(power))
        return 1000 * (own or self.library.quantities[EXAMPLE].low / self.objective(power))

    def powers(self) -> dict[int, list[Met]]:
        """What is shown at each power, the low one first."""
        met = self.library.short_card.met
        return {power: [each for each in met if each.power == power] for power in sorted({each.power for each in met})}


def faces(bench: ShortBench) -> list[Face]:
    """The faces of the card in reading order: two sides of a sheet, or the eight panels of a pocket fold.

    Raises:
        CardError: the library shows nothing on a short card, or the form is not one it comes in.
        DoesNotFit: the labels do not fit at the smallest readable size.
    """
    if not bench.library.short_card.met:
        raise CardError("This library has no short card: keydata/bench/short-card.yaml says what stands on it.")
    if bench.form.name == "pocket":
        return _pocket(bench)
    if bench.form.name == "sheet":
        return [_side(bench, power, met, n) for n, (power, met) in enumerate(bench.powers().items())]
    raise CardError(f"The short card comes as sheet or pocket, not as {bench.form.name}.")


# --- what is said of one thing ---------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Label:
    name: Text
    tells: Text
    fine: Text

    def block(self, width: float, sizes: tuple[float, float, float]) -> Block:
        """The three lines under each other."""
        pieces: list[Piece] = []
        y = 0.0
        for text, pt, colour in zip((self.name, self.tells, self.fine), sizes, (None, None, GREY), strict=True):
            lines = set_lines(text, pt, width, even=False)
            pieces += lines.pieces(0, y) if colour is None else lines.pieces(0, y, colour)
            y += lines.height
        return Block(y, tuple(pieces))


def _label(library: Library, met: Met, goes_on: bool = True) -> _Label:
    entry = library.entries[met.entry]
    fine: list[Run] = []
    for text in filter(None, (_size(library, met), _diet(library, met))):
        fine += [Run(" · "), *text] if fine else text
    if met.key and goes_on:
        fine.append(Run(f"{' · ' if fine else ''}→{NO_BREAK}{library.keys[met.key].title}"))
    tells = (*text_of(library, met.tells), Run(mark(library, met.basis), raised=True))
    return _Label((Run(entry.name, bold=True),), tells, tuple(fine))


def _size(library: Library, met: Met) -> Text:
    """How long, or else how wide, as the entry says, or else the one whose drawing is shown."""
    stated = [
        (library.entries[id].statements[character], word)
        for id in dict.fromkeys((met.entry, met.draw))
        for character, word in (("body-length", ""), ("body-width", " wide"))
        if character in library.entries[id].statements
    ]
    if not stated:
        return ()
    statement, word = min(stated, key=lambda each: _vague(each[0].showing))
    return (Run(_lengths(statement.showing) + word), Run(mark(library, statement.basis), raised=True))


def _vague(showing: Showing) -> bool:
    """Whether a length says little: open at an end, or from tiny to huge."""
    return not isinstance(showing, Interval) or not 0 < showing.high <= VAGUE * showing.low


def _lengths(showing: Showing) -> str:
    assert isinstance(showing, Interval)
    low, high = showing.low, showing.high
    unit, share = ("mm", 1000) if 1000 <= high < math.inf and low >= 10 else ("µm", 1)
    ends = [number(float(f"{each / share:.3g}")) if 0 < each < math.inf else "" for each in (low, high)]
    words = f"{ends[0]} to {ends[1]}" if all(ends) and ends[0] != ends[1] else ends[0] or ends[1]
    prefix = "" if all(ends) else ("from " if ends[0] else "up to ")
    return f"{prefix}{words}{NO_BREAK}{unit}"


def _diet(library: Library, met: Met) -> Text:
    return tuple(Run(run.text.lower(), raised=run.raised) for run in diets(library, library.entries[met.entry]))


# --- a whole sheet: the field with its labels ------------------------------------------------------------------------


def _side(bench: ShortBench, power: int, met: Sequence[Met], number_of: int) -> Face:
    width, height = bench.form.inner
    room = height - STRIP
    diameter = min(room, width - 2 * LABEL)
    column = (width - diameter) / 2 - 3
    um = bench.diameter(power)
    head = _head(bench, power, um, column)
    labels = {id(each): _label(bench.library, each) for each in met}
    drawings = [_drawn(bench.library, each, um) for each in met]
    left = _sides(drawings)
    for sizes in SIZES:
        blocks = [labels[id(each)].block(column, sizes) for each in met]
        free = {True: room - head.height - 2, False: room}
        if all(sum(b.height for b, at in zip(blocks, left, strict=True) if at is side) < 0.94 * free[side] for side in free):
            break
    else:
        raise DoesNotFit(
            f"The short card does not fit {bench.form.sheet[0]:g} × {bench.form.sheet[1]:g} mm at readable sizes. Take A4 or Letter."
        )
    order = {side: _ordered([n for n in range(len(met)) if left[n] is side], drawings) for side in (True, False)}
    tops = _tops(order, blocks, head.height + 2, room)
    scale = diameter / um
    middle = (width / 2, room / 2)
    strands = [bench.library.entries[each.draw].theme == STRANDS for each in met]
    things = [Thing(drawings[n], left[n], (tops[n] + 2.5 - middle[1]) / scale, strands[n]) for n in range(len(met))]
    field = laid(things, um, NIB / scale)
    for numbers in order.values():  # where a thing found its place elsewhere, its label follows, so that no two lines cross
        numbers.sort(key=lambda n: field.points[n][1])
    tops = _tops(order, blocks, head.height + 2, room)
    box = field.drawing.box
    pieces: list[Piece] = [
        Heading(bench.library.say("card-most-met-at", power=power), 0),
        *head.pieces,
        Picture(middle[0] + box.x * scale, middle[1] + box.y * scale, field.drawing, scale),
    ]
    for n, block in enumerate(blocks):
        x = 0.0 if left[n] else width - column
        pieces.append(Moved(x, tops[n], block.pieces))
        pieces += _leader(labels[id(met[n])].name, sizes[0], x, tops[n], column, left[n], _on_sheet(field.points[n], middle, scale))
    pieces.append(Moved(0, room + 2, _strip(bench, power, width, number_of).pieces))
    return tuple(pieces)


def _on_sheet(point: tuple[float, float], middle: tuple[float, float], scale: float) -> tuple[float, float]:
    return middle[0] + point[0] * scale, middle[1] + point[1] * scale


def _drawn(library: Library, met: Met, um: float) -> Drawing:
    drawing = whole_of(library.entries[met.draw], um)
    assert drawing is not None, "the check 'short-card' asks for one"
    return bare(drawing)


def _sides(drawings: Sequence[Drawing]) -> list[bool]:
    """Which things stand at the left: every second, so that both columns are equally full."""
    return [n % 2 == 0 for n in range(len(drawings))]


def _ordered(numbers: list[int], drawings: Sequence[Drawing]) -> list[int]:
    """From top to bottom, the largest in the middle, where the field is widest."""
    by_size = sorted(numbers, key=lambda n: (max(drawings[n].frame.width, drawings[n].frame.height), n))
    return [*by_size[0::2], *reversed(by_size[1::2])]


def _tops(order: Mapping[bool, list[int]], blocks: Sequence[Block], head: float, room: float) -> dict[int, float]:
    """Where each label begins, mm from the top, spread evenly down its column; the title stands above the left one."""
    tops: dict[int, float] = {}
    for side, numbers in order.items():
        start = head if side else 0.0
        gap = (room - start - sum(blocks[n].height for n in numbers)) / max(1, len(numbers))
        y = start
        for n in numbers:
            tops[n] = y + gap / 2
            y += blocks[n].height + gap
    return tops


def _leader(name: Text, pt: float, x: float, top: float, column: float, left: bool, end: tuple[float, float]) -> Iterator[Piece]:
    y = top + pt * MM_PER_PT * 0.62
    start = x + min(column, typeface.width("".join(run.text for run in name), True, pt) + 1.5) if left else x - 1.0
    knee = x + column + 1.5 if left else x - 2.5
    yield Rule(start, y, knee, y, 0.18, GREY)
    yield Rule(knee, y, *end, 0.18, GREY)
    yield Panel(end[0] - 0.55, end[1] - 0.55, 1.1, 1.1, 0.55)


def _head(bench: ShortBench, power: int, um: float, width: float) -> Block:
    title = set_lines((Run(bench.library.say("card-most-met-at", power=power), bold=True),), 17.0, width)
    own = bench.objective(power) in bench.imprint.field_diameters
    across = f"{number(round(um / 1000, 3))}{NO_BREAK}mm"
    words = bench.library.say("card-the-field-yours" if own else "card-the-field", objective=bench.objective(power), across=across)
    lines = set_lines((Run(words),), 8.5, width, even=False)
    return Block(title.height + lines.height + 2, (*title.pieces(0, 0), *lines.pieces(0, title.height + 0.5, GREY)))


def _strip(bench: ShortBench, power: int, width: float, number_of: int) -> Block:
    """The foot of a side: what to do first on the one, your microscope and the small print on the other."""
    gap = 5.0
    third = (width - 2 * gap) / 3
    columns = (
        [_remember(bench, third), _beware(bench, third), _yours(bench, third)]
        if number_of == 0
        else [*_index(bench, third, halves=2), _small_print(bench, third)]
    )
    pieces: list[Piece] = [Rule(0, 0, width, 0, 0.3)]
    for n, column in enumerate(columns):
        pieces.append(Moved(n * (third + gap), 1.2, column.pieces))
    return Block(STRIP, tuple(pieces))


def _paragraphs(title: str, paragraphs: Sequence[Text], width: float, pt: float = 8.0, gap: float = 0.5) -> Block:
    heading = set_lines((Run(title or NO_BREAK, bold=True),), pt + 1, width)
    pieces: list[Piece] = [*heading.pieces(0, 0)]
    y = heading.height + 0.4
    for paragraph in paragraphs:
        lines = set_lines(paragraph, pt, width, even=False)
        pieces += lines.pieces(0, y)
        y += lines.height + gap
    return Block(y, tuple(pieces))


def _remember(bench: ShortBench, width: float, pt: float = 8.0) -> Block:
    texts = bench.library.short_card.remember
    numbered = [(Run(f"{n}.{NO_BREAK}"), *text_of(bench.library, text)) for n, text in enumerate(texts, 1)]
    return _paragraphs(bench.library.say("card-so-that-counts-compare"), numbered, width, pt)


def _beware(bench: ShortBench, width: float, pt: float = 8.0) -> Block:
    cautions = [bench.library.cautions[each] for each in bench.library.short_card.cautions]
    paragraphs = [(Run(f"{WARNING_SIGN}{NO_BREAK}{each.title}: ", bold=True), *text_of(bench.library, each.brief)) for each in cautions]
    return _paragraphs(bench.library.say("card-take-care"), paragraphs, width, pt)


def _yours(bench: ShortBench, width: float, pt: float = 8.5) -> Block:
    """Your field of view and scale: what you gave, or room to write it by hand."""
    paragraphs: list[Text] = []
    say = bench.library.say
    for power in sorted(bench.powers()):
        objective = bench.objective(power)
        field, division = bench.imprint.field_diameters.get(objective), bench.imprint.divisions.get(objective)
        at = Run(f"{say('card-at', power=power, objective=objective)}: ", bold=True)
        across = say("card-field", value=f"{field:.3g}{NO_BREAK}mm" if field else f"{BLANK}{NO_BREAK}mm")
        scale = f"{division:.3g}{NO_BREAK}µm" if division else f"{BLANK}{NO_BREAK}µm"
        paragraphs.append((at, Run(say("card-field-and-division", field=across, value=scale))))
    paragraphs += [
        (Run(say("card-my-drop", volume=f"{BLANK}{NO_BREAK}mL", times=BLANK)),),
        (Run(say("card-field-is")),),
    ]
    return _paragraphs(say("card-my-microscope"), paragraphs, width, pt)


def _index(bench: ShortBench, width: float, pt: float = 8.0, halves: int = 1, gap: float = 0.5) -> list[Block]:
    """Where to go on from each thing: the keys with what leads to them; in one block, or cut in two beside each other."""
    library = bench.library
    by_key: dict[str, list[str]] = {}
    for met in library.short_card.met:
        if met.key and (name := library.entries[met.entry].name) not in by_key.setdefault(met.key, []):
            by_key[met.key].append(name)
    lines = [(Run(f"{library.keys[key].title}: ", bold=True), Run(", ".join(names))) for key, names in by_key.items()]
    lines.append((Run(f"{library.say('card-cannot-tell')} ", bold=True), Run(library.say("card-no-name-is-better"))))
    cut = -(-len(lines) // halves)
    return [_paragraphs("" if n else library.say("card-which-key"), lines[n : n + cut], width, pt, gap) for n in range(0, len(lines), cut)]


def _small_print(bench: ShortBench, width: float) -> Block:
    bar = check_bar(7.6)
    address = bench.imprint.short_address
    lines = [
        legend(bench.library),
        *([] if bench.imprint.field_diameters else microscope(bench.library, bench.imprint)[:1]),
        made(bench.library, bench.imprint),
    ]
    lines += [bench.library.say("card-more", address=address)] if address else []
    pieces: list[Piece] = list(bar.pieces)
    y = bar.height + 0.6
    for line in lines:
        words = set_lines(dotted(line), 7.0, width, even=False)
        pieces += words.pieces(0, y, GREY)
        y += words.height
    return Block(y, tuple(pieces))


# --- a pocket fold: the same in rows ---------------------------------------------------------------------------------


def _pocket(bench: ShortBench) -> list[Face]:
    """Eight panels: title, care and microscope; three for each power; and last what to do, which key goes on, the small print."""
    width, height = bench.form.inner
    panels: list[Face] = [_cover(bench, width, height)]
    for power, met in bench.powers().items():
        third = -(-len(met) // 3)
        for start in range(0, 3 * third, third):
            panels.append(_rows(bench, power, met[start : start + third], width, height))
    return [*panels, _last(bench, width, height)]


def _cover(bench: ShortBench, width: float, height: float) -> Face:
    title = set_lines((Run(bench.library.say("card-most-met-in-drop"), bold=True),), 13.0, width)
    for pt in (8.0, 7.6, 7.3, 7.0):
        blocks = [_yours(bench, width, pt), _remember(bench, width, pt), _beware(bench, width, pt)]
        if title.height + 1 + sum(block.height + 0.4 for block in blocks) <= height:
            break
    else:
        raise _no_pocket()
    pieces: list[Piece] = [Heading(bench.library.say("card-most-met"), 0), *title.pieces(0, 0)]
    y = title.height + 1
    for block in blocks:
        pieces.append(Moved(0, y, block.pieces))
        y += block.height + 0.4
    return tuple(pieces)


def _last(bench: ShortBench, width: float, height: float) -> Face:
    fold = set_lines((Run(fold_words(bench.form)),), 7.0, width, even=False)
    small = _small_print(bench, width)
    foot = height - small.height - fold.height - 1
    sizes = ((7.6, 0.5), (7.3, 0.5), (7.0, 0.5), (7.0, 0.0))  # a longer language closes the gaps before it is left out
    fitting = (made for pt, gap in sizes for made in _index(bench, width, pt, gap=gap) if made.height < foot)
    index = next(fitting, None)
    if index is None:
        raise _no_pocket()
    return (*index.pieces, *fold.pieces(0, foot, GREY), Moved(0, foot + fold.height + 1, small.pieces))


def _rows(bench: ShortBench, power: int, met: Sequence[Met], width: float, height: float) -> Face:
    """A panel of rows: the picture at the left, all on the panel at one scale where none becomes a speck, its label beside it."""
    head = bench.library.say("card-at", power=power, objective=bench.objective(power))
    pieces: list[Piece] = [Words(0, 9.5 * MM_PER_PT * RISE, head, 9.5, True), Rule(0, 4.6, width, 4.6, 0.3)]
    cell = (0.36 * width, (height - 6) / max(1, len(met)))
    column = width - cell[0] - 2
    labels = [_label(bench.library, each, goes_on=False) for each in met]
    for sizes in ((11.0, 9.5, 8.0), (10.0, 8.5, 7.6), (9.5, 8.0, 7.0)):
        blocks = [each.block(column, sizes) for each in labels]
        if all(block.height < cell[1] - 0.8 for block in blocks):
            break
    else:
        raise _no_pocket()
    for n, (each, block) in enumerate(zip(met, blocks, strict=True)):
        drawing = _in_row(bench, each)
        y = 6 + n * cell[1]
        plate = bare(drawing)
        scale = min((cell[0] - 1) / plate.box.width, (cell[1] - 5.5) / plate.box.height)
        pieces.append(Picture((cell[0] - plate.box.width * scale) / 2, y + (cell[1] - 4.5 - plate.box.height * scale) / 2, plate, scale))
        pieces += _bar(plate, scale, y + cell[1] - 3.4)
        pieces.append(Moved(cell[0] + 2, y + (cell[1] - block.height) / 2 - 0.5, block.pieces))
        if n:
            pieces.append(Rule(0, y - 0.4, width, y - 0.4, 0.12, GREY))
    return tuple(pieces)


def _no_pocket() -> DoesNotFit:
    return DoesNotFit("The short card does not fit this paper as a pocket. Take A4 or Letter.")


def _in_row(bench: ShortBench, met: Met) -> Drawing:
    """A worm whole, as it is met; all else as its own plate shows it."""
    entry = bench.library.entries[met.draw]
    drawing = None if entry.figure and is_worm_part(entry.figure) else of_entry(bench.library, entry)
    return drawing or _drawn(bench.library, met, bench.diameter(met.power))


def _bar(drawing: Drawing, scale: float, y: float) -> Iterator[Piece]:
    from keytool.figures.frame import length_label, round_length

    um = round_length(min(0.5 * drawing.box.width, 12 / scale))
    yield Rule(0, y, um * scale, y, 0.5)
    yield Words(um * scale + 1, y + 0.9, length_label(um), 7.0)
