"""The bench card of one or several keys."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from keytool.card.content import CardCouplet, Content, content
from keytool.card.draw import document
from keytool.card.errors import DoesNotFit, NoSuchKey, NoSuchLetter
from keytool.card.furniture import Imprint, Place, footer, header
from keytool.card.ink import Mark, Moved, Piece, Words, marks
from keytool.card.layout import COLUMN_GAP, MARGIN_MM, Area, Setting, best_setting, shortfall
from keytool.card.papers import PAPERS, Paper, paper_named
from keytool.card.typeface import missing
from keytool.library.model import Key, Library

Size = tuple[float, float]
"""Width and height of a page in mm."""


def card(
    library: Library,
    keys: Sequence[str],
    paper: str,
    *,
    field_diameters: Mapping[int, float] | None = None,
    site_address: str = "",
    landscape: bool | None = None,
) -> bytes:
    """The card as a PDF: each key starts on a new side and takes as many sides as it needs; print at 100 %, both sides.

    `field_diameters` maps the power of an objective to the diameter of your field of view with it, in mm; without it an
    example is printed and marked as one. With `site_address` (such as "https://example.org/soil") a QR code leads to the
    key's page. Without `landscape` the paper is turned the way that takes fewer sides, or else reads better.

    Raises:
        NoSuchKey: a key is not in the library.
        NoSuchPaper: the paper is not known.
        NoSuchLetter: a text has a letter the card's typeface lacks.
        DoesNotFit: not even the smallest readable sizes fit; says by how much, and which paper would do.
    """
    sheet = paper_named(paper)
    contents = [content(library, _key(library, each)) for each in keys]
    imprint = Imprint(library.version, _reviewed(library), site_address, field_diameters)
    ways = [sheet.size(lying) for lying in ((True, False) if landscape is None else (landscape,))]
    size, settings = _best_way(library, contents, imprint, sheet, ways)
    total = sum(each.sides for each in settings)
    sides: list[list[Mark]] = []
    for each, setting in zip(contents, settings, strict=True):
        for number in range(setting.sides):
            sides.append(_side(library, each, imprint, size, setting, number, len(sides) + 1, total))
    title = " and ".join(each.title for each in contents)
    _check_letters(sides)
    return document(sides, size, f"{title}: bench card", f"wetmount {library.version}", imprint.reviewed)


def _key(library: Library, id: str) -> Key:
    if id not in library.keys:
        raise NoSuchKey(f"There is no key '{id}'. There are: {', '.join(library.keys)}.")
    return library.keys[id]


def _reviewed(library: Library) -> str:
    """The day the newest entry was reviewed: the card's date, so that it changes only when the library does."""
    return max((entry.reviewed for entry in library.entries.values()), default="2000-01-01")


def _area(library: Library, what: Content, imprint: Imprint, size: Size) -> Area:
    width = size[0] - 2 * MARGIN_MM
    used = header(what, imprint, width, Place(1, 1, "")).height + footer(library, imprint, width).height + 1.5
    return Area(width, size[1] - 2 * MARGIN_MM - used)


def _best_way(
    library: Library, contents: Sequence[Content], imprint: Imprint, sheet: Paper, ways: Sequence[Size]
) -> tuple[Size, list[Setting]]:
    """The way to turn the paper, and how each key is then set."""
    found: list[tuple[tuple[int, float], Size, list[Setting]]] = []
    for size in ways:
        settings = [setting for each in contents if (setting := best_setting(each, _area(library, each, imprint, size)))]
        if len(settings) == len(contents):
            rank = (sum(each.sides for each in settings), -min(each.comfort for each in settings))
            found.append((rank, size, settings))
    if not found:
        raise _does_not_fit(library, contents, imprint, sheet, ways)
    _, size, settings = min(found, key=lambda each: each[0])
    return size, settings


def _does_not_fit(library: Library, contents: Sequence[Content], imprint: Imprint, sheet: Paper, ways: Sequence[Size]) -> DoesNotFit:
    def fits(what: Content, size: Size) -> bool:
        return best_setting(what, _area(library, what, imprint, size)) is not None

    what = next(each for each in contents if not fits(each, ways[-1]))
    name, by = shortfall(what, _area(library, what, imprint, ways[-1]))
    lack = f"{name} is {by:.0f} mm too high" if by < float("inf") else f"{name} is too wide for any column"
    others = [
        f"{other.name} {'landscape' if lying else 'portrait'}"
        for other in PAPERS.values()
        for lying in (True, False)
        if other.size(lying) not in ways and fits(what, other.size(lying))
    ]
    remedy = f"It fits on: {', '.join(others)}." if others else "It fits on no paper there is: shorten the couplet or its drawings."
    width, height = ways[-1]
    return DoesNotFit(f"'{what.title}' does not fit on {sheet.name} ({width:g} × {height:g} mm) at readable sizes: {lack}. {remedy}")


def _side(
    library: Library, what: Content, imprint: Imprint, size: Size, setting: Setting, number: int, side: int, sides: int
) -> list[Mark]:
    width = size[0] - 2 * MARGIN_MM
    columns = setting.columns[number * setting.across:(number + 1) * setting.across]
    top = header(what, imprint, width, Place(side, sides, _couplets(what, setting, number)))
    foot = footer(library, imprint, width)
    pieces: list[Piece] = [Moved(MARGIN_MM, MARGIN_MM, top.pieces)]
    for place, column in enumerate(columns):
        pieces.append(Moved(MARGIN_MM + place * (setting.width + COLUMN_GAP), MARGIN_MM + top.height, column.pieces))
    pieces.append(Moved(MARGIN_MM, size[1] - MARGIN_MM - foot.height, foot.pieces))
    return list(marks(pieces))


def _couplets(what: Content, setting: Setting, number: int) -> str:
    """Which couplets stand on a side, for finding the next one by a glance at its corner."""
    start, end = (sum(len(column.blocks) for column in setting.columns[:columns]) for columns in
                  (number * setting.across, (number + 1) * setting.across))
    numbers = [str(block.number) for block in what.blocks[start:end] if isinstance(block, CardCouplet)]
    return "" if not numbers else f"couplet {numbers[0]}" if len(numbers) == 1 else f"couplets {numbers[0]} to {numbers[-1]}"


def _check_letters(sides: Sequence[Sequence[Mark]]) -> None:
    for number, side in enumerate(sides, 1):
        for words in side:
            if isinstance(words, Words) and (lacking := missing(words.text)):
                raise NoSuchLetter(f"The card's typeface has no letter '{lacking}', which side {number} needs in '{words.text.strip()}'.")
