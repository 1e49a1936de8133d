"""The bench card of keys, look-alike sets and entries."""

from __future__ import annotations

import contextlib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from keytool.card.card_request import chosen
from keytool.card.colophon import Imprint
from keytool.card.draw import document
from keytool.card.errors import DoesNotFit, NoSuchLetter
from keytool.card.fit_advice import does_not_fit
from keytool.card.form import Form, form_named
from keytool.card.header_footer import FINE, FINE_DENSE, Furniture, Place
from keytool.card.impose import Face, sides
from keytool.card.ink import Mark, Moved, Piece, Words, marks
from keytool.card.inks import Ink, ink_named
from keytool.card.layout import COLUMN_GAP, Area, Setting, best_setting, fits
from keytool.card.model import CardCouplet, Content
from keytool.card.own_microscope import all_fields, checked_address, checked_divisions, with_own
from keytool.card.papers import Paper, paper_named
from keytool.card.preview import picture
from keytool.card.short_card import ShortBench
from keytool.card.short_card import faces as short_faces
from keytool.card.typeface import SMALLEST_LEAD, missing
from keytool.library.model import Library


@dataclass(frozen=True, slots=True)
class Bench:
    """What all contents of one card share."""

    library: Library
    imprint: Imprint
    dense: bool

    def furniture(self, what: Content, form: Form) -> Furniture:
        """What stands above and below the columns."""
        return Furniture(self.library, what, self.imprint, form, FINE_DENSE if self.dense else FINE)

    def area(self, what: Content, form: Form) -> Area:
        """The room for columns on the faces of a form."""
        least = SMALLEST_LEAD if what.wide else form.least_lead  # a table is better seen whole than large
        return Area(form.inner[0], self.furniture(what, form).heights(), form.small, self.dense, least)

    def setting(self, what: Content, form: Form) -> Setting | None:
        """The best way to set a content; None where it does not fit."""
        return best_setting(what, self.area(what, form), form)


@dataclass(frozen=True, slots=True)
class Way:
    """A sheet lying one way, and how each content is set on it."""

    form: Form
    settings: tuple[Setting, ...]

    @property
    def rank(self) -> tuple[int, float]:
        """Lower is better: fewer faces, then the more comfortable."""
        return sum(each.faces for each in self.settings), -min(each.comfort for each in self.settings)


@dataclass(frozen=True, slots=True)
class Card:
    """A card laid out: every side to print, with its marks in millimetres."""

    title: str
    size: tuple[float, float]
    sides: tuple[tuple[Mark, ...], ...]
    ink: Ink
    flip: str | None
    maker: str
    date: str
    remark: str = ""
    """What to know of how it was set, as a sentence; mostly nothing."""

    def pdf(self) -> bytes:
        """The PDF, one page of exactly `size` for each side; the same card gives the same bytes."""
        return document(self.sides, self.size, f"{self.title}: bench card", self.maker, self.date, self.ink, self.flip)

    def preview(self, side: int = 0) -> str:
        """One side as an SVG picture for the screen."""
        return picture(self.sides[side], self.size, f"{self.title}: bench card, side {side + 1}", self.ink)


def card(library: Library, keys: Sequence[str], paper: str, **wish: Any) -> bytes:
    """The card as a PDF; see `laid_out` for what may be wished for and what may go wrong."""
    return laid_out(library, keys, paper, **wish).pdf()


def laid_out(
    library: Library,
    keys: Sequence[str],
    paper: str,
    *,
    look_alikes: Sequence[str] = (),
    entries: Sequence[str] = (),
    photos: Mapping[str, bytes] | None = None,
    form: str = "sheet",
    flip: str | None = None,
    ink: str = "normal",
    dense: bool = False,
    field_diameters: Mapping[int, float] | None = None,
    divisions: Mapping[int, float] | None = None,
    site_address: str = "",
    landscape: bool | None = None,
) -> Card:
    """The card of keys, look-alike sets and, compared with each other, entries; each starts on a new side or card.

    `form` is one of `FORMS`, `ink` one of `INKS`; `flip` is the edge ("long" or "short") the sheet is turned over when its
    back is printed, by default like a page. A `dense` card takes as few sides as it can, all as small as may be.
    `photos` (see `card_photos`) are shown beside the drawings of `entries`, and nowhere else.
    `field_diameters` maps the power of an objective to the diameter of your field of view with it, in mm; those of the other
    objectives are worked out from it. Without it an example is printed and marked as one.
    `divisions` maps it to what one division of your eyepiece scale measures, in µm.
    With `site_address` (such as "https://example.org/soil") a QR code leads to the page of what is shown. Without
    `landscape` the sheet is turned the way that takes fewer sides, or else reads better.

    Raises:
        NotInLibrary: a key, look-alike set or entry is not in the library.
        NothingAsked: none was named.
        NoSuchPaper, NoSuchForm: the paper, or the form or ink, is not known.
        NoSuchLetter: a text has a letter the card's typeface lacks.
        Impossible: no microscope has such a field or scale, or the address is none.
        DoesNotFit: not even the smallest readable sizes fit; says by how much, and what would do.
    """
    sheet, version = paper_named(paper), ink_named(ink)
    imprint = _imprint(library, field_diameters, divisions, site_address)
    library = with_own(library, imprint.field_diameters, imprint.divisions)
    turns = (True,) if form == "booklet" else (True, False) if landscape is None else (landscape,)

    def set_on(small: bool) -> tuple[Bench, list[Content], Way]:
        contents = chosen(library, keys, look_alikes, entries, photos or {}, small)
        bench = Bench(library, imprint, small)
        forms = [form_named(form, sheet.size(lying), flip, small) for lying in turns]
        return bench, contents, _best_way(bench, contents, forms, sheet)

    bench, contents, way = set_on(dense)
    remark = ""
    if dense:
        with contextlib.suppress(DoesNotFit):
            roomy = set_on(False)
            if roomy[2].rank[0] <= way.rank[0]:
                bench, contents, way = roomy
                remark = "Dense saves no side here, so the larger type is kept."
    faces = _faces(bench, contents, way)
    _check_letters(face for each in faces for face in each)
    title = " and ".join(each.title for each in contents)
    printed = tuple(tuple(marks(side)) for side in sides(way.form, faces, flip))
    return Card(title, way.form.sheet, printed, version, flip, f"wetmount {library.version}", imprint.reviewed, remark)


def check_fit(library: Library, keys: Sequence[str], paper: str) -> None:
    """Whether the card of keys fits a sheet of paper, without the work of laying it out at its best.

    Raises:
        CardError: as `laid_out`.
    """
    sheet, imprint = paper_named(paper), _imprint(library, None, None, "")
    contents, bench = chosen(library, keys, (), (), {}, False), Bench(library, imprint, False)
    forms = [form_named("sheet", sheet.size(lying), None, False) for lying in (True, False)]
    if not any(all(fits(each, bench.area(each, form)) for each in contents) for form in forms):
        raise does_not_fit(contents, bench.area, forms, sheet)


def short_card(
    library: Library,
    paper: str,
    *,
    form: str = "sheet",
    ink: str = "normal",
    field_diameters: Mapping[int, float] | None = None,
    divisions: Mapping[int, float] | None = None,
    site_address: str = "",
) -> Card:
    """The short card: what is met most, at true size in the field at the low and at the high power; one sheet.

    `form` is "sheet", two sides lying, or "pocket", eight panels to fold. The rest is as for `laid_out`.

    Raises:
        CardError: as `laid_out`; also where the library has no short card.
    """
    sheet, version = paper_named(paper), ink_named(ink)
    imprint = _imprint(library, field_diameters, divisions, site_address)
    library = with_own(library, imprint.field_diameters, imprint.divisions)
    laid = form_named(form, sheet.size(True))
    made = [short_faces(ShortBench(library, imprint, laid))]
    _check_letters(face for each in made for face in each)
    printed = tuple(tuple(marks(side)) for side in sides(laid, made, None))
    return Card("Most met", laid.sheet, printed, version, None, f"wetmount {library.version}", imprint.reviewed)


def _imprint(library: Library, fields: Mapping[int, float] | None, divisions: Mapping[int, float] | None, address: str) -> Imprint:
    own = all_fields(library, fields or {}), checked_divisions(library, divisions or {})
    return Imprint(library.version, _reviewed(library), checked_address(address), *own)


def _reviewed(library: Library) -> str:
    """The day the newest entry was reviewed: the card's date, so that it changes only when the library does."""
    return max((entry.reviewed for entry in library.entries.values()), default="2000-01-01")


def _best_way(bench: Bench, contents: Sequence[Content], forms: Sequence[Form], sheet: Paper) -> Way:
    """The way to turn the sheet, and how each content is then set."""
    found = []
    for form in forms:
        settings = [setting for each in contents if (setting := bench.setting(each, form))]
        if len(settings) == len(contents):
            found.append(Way(form, tuple(settings)))
    if not found:
        raise does_not_fit(contents, bench.area, forms, sheet)
    return min(found, key=lambda each: each.rank)


def _faces(bench: Bench, contents: Sequence[Content], way: Way) -> list[list[Face]]:
    """The faces of each content; those of small cards and pockets fill whole ones."""
    form = way.form
    counts = [-(-setting.faces // form.together) * form.together for setting in way.settings]
    total = sum(counts)
    made: list[list[Face]] = []
    for what, setting, count in zip(contents, way.settings, counts, strict=True):
        furniture = bench.furniture(what, form)
        before = sum(len(each) for each in made)
        folded = form.together if form.name == "pocket" else 1
        places = [Place(form.word, before + number + 1, total, number == 0, _couplets(setting, number), folded) for number in range(count)]
        made.append([_face(furniture, setting, number, place) for number, place in enumerate(places)])
    return made


def _face(furniture: Furniture, setting: Setting, number: int, place: Place) -> Face:
    columns = setting.columns[number * setting.across : (number + 1) * setting.across]
    above, below = furniture.above(number, place), furniture.below(number)
    pieces: list[Piece] = [*above.pieces]
    for place_across, column in enumerate(columns):
        pieces.append(Moved(place_across * (setting.width + COLUMN_GAP), above.height, column.pieces))
    return (*pieces, Moved(0, furniture.form.inner[1] - below.height, below.pieces))


def _couplets(setting: Setting, number: int) -> str:
    """Which couplets stand on a face, for finding the next one by a glance at its corner."""
    start, end = (
        sum(len(column.blocks) for column in setting.columns[:columns])
        for columns in (number * setting.across, (number + 1) * setting.across)
    )
    numbers = list(dict.fromkeys(str(block.number) for block in setting.blocks[start:end] if isinstance(block, CardCouplet)))
    return "" if not numbers else f"couplet {numbers[0]}" if len(numbers) == 1 else f"couplets {numbers[0]} to {numbers[-1]}"


def _check_letters(faces: Iterable[Face]) -> None:
    for number, face in enumerate(faces, 1):
        for words in marks(face):
            if isinstance(words, Words) and (lacking := missing(words.text)):
                raise NoSuchLetter(f"The card's typeface has no letter '{lacking}', which side {number} needs in '{words.text.strip()}'.")
