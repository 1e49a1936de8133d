"""Laying faces on sheets: which face lies where, the marks to cut and fold by, and the words that say how."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from keytool.card.form import CLEAR_MM, MARK_MM, Form, turns_sideways
from keytool.card.ink import Moved, Piece, Rule, Turned
from keytool.card.typeface import SMALLEST
from keytool.card.words import Run, set_lines

HAIR = 0.2
"""How heavy cut and fold marks are, mm."""
CUT_WORDS = (
    "Print both sides at 100 %, turned over the {edge} edge. Cut at the corner marks.",
    "Laminate as they lie here; then cut mid-gap: 5 mm of film all round.",
)
FOLD_WORDS = {
    True: "Fold along the long middle, print outside; then to and fro at the three short folds, panel 1 in front.",
    False: "Fold along the upright middle, print outside; then to and fro at the three level folds, panel 1 in front.",
}
"""How a lying and how an upright sheet is folded."""

STAPLE_WORDS = (
    "Print on both sides, turned over the short edge; lay the sheets on each other, fold in the middle, staple twice in the fold."
)
"""How a booklet is put together."""

Face = tuple[Piece, ...]


def sides(form: Form, cards: Sequence[Sequence[Face]], flip: str | None) -> list[tuple[Piece, ...]]:
    """Every side to print. Each of `cards` begins on a card of its own; few small cards are repeated to fill their sheet."""
    if form.name == "booklet":
        return _booklet(form, [face for card in cards for face in card])
    faces = [face for card in cards for face in _filled(card, form.together)]
    room = len(form.spots)
    if form.together == 2:
        faces *= max(1, room // len(faces))
    made: list[tuple[Piece, ...]] = []
    for start in range(0, len(faces), room):
        on_sheet = faces[start : start + room]
        last = start + room >= len(faces)
        for side in (0, 1):
            laid = [(spot, face) for spot, face in zip(form.spots, on_sheet, strict=False) if spot.side == side]
            # The back of a sheet may be empty, but must be there if another sheet follows.
            if any(face for _, face in laid) or (laid and not last):
                made.append((*(_laid(form, spot.x, spot.y, spot.turned, face) for spot, face in laid), *marks_of(form, flip)))
    return made


def page_pairs(pages: int) -> list[tuple[int, int]]:
    """The pages, counted from 0, at the left and right of each side of a stapled booklet, the outer sheet first, front and back.

    `pages` is a multiple of four. Lying on each other and folded in the middle the sheets read in order.
    """
    pairs: list[tuple[int, int]] = []
    for sheet in range(pages // 4):
        first, last = 2 * sheet, pages - 1 - 2 * sheet
        pairs += [(last, first), (first + 1, last - 1)]
    return pairs


def _booklet(form: Form, faces: Sequence[Face]) -> list[tuple[Piece, ...]]:
    pages = [*faces, *[()] * (-len(faces) % 4)]
    left, right = form.spots[:2]
    return [
        (*(_laid(form, spot.x, spot.y, False, pages[n]) for spot, n in ((left, a), (right, b))), *marks_of(form, None))
        for a, b in page_pairs(len(pages))
    ]


def _filled(card: Sequence[Face], together: int) -> Iterator[Face]:
    yield from card
    yield from [()] * (-len(card) % together)


def _laid(form: Form, x: float, y: float, turned: bool, face: Face) -> Piece:
    left, top = form.inset[:2]
    inside = Moved(left, top, face)
    return Moved(x, y, (Turned(*form.face, (inside,)) if turned else inside,))


def marks_of(form: Form, flip: str | None) -> tuple[Piece, ...]:
    """What is printed outside the faces: marks, and on sheets to be cut the words that say how."""
    if form.name == "pocket":
        return tuple(_fold_marks(form))
    if form.name == "booklet":
        return tuple(_broken(form.face[0], CLEAR_MM, 0, 1)) + tuple(_broken(form.face[0], form.sheet[1] - CLEAR_MM - MARK_MM, 0, 1))
    if form.together == 2:
        return (*_cut_marks(form), *_cut_words(form, flip))
    return ()


def fold_words(form: Form) -> str:
    """How to fold the sheet, for the last panel."""
    return FOLD_WORDS[form.sheet[0] > form.sheet[1]]


def folds(form: Form) -> tuple[list[float], list[float]]:
    """Where the sheet is folded: x of the upright folds, y of the level ones."""
    if form.name != "pocket":
        return [], []
    width, height = form.face
    across, down = round(form.sheet[0] / width), round(form.sheet[1] / height)
    return [n * width for n in range(1, across)], [n * height for n in range(1, down)]


def _cut_marks(form: Form) -> Iterator[Rule]:
    """Two short lines at each corner of each card, in line with its edges and outside them."""
    near, far = 0.5, MARK_MM
    for spot in form.spots:
        if spot.side:
            continue
        right, bottom = spot.x + form.face[0], spot.y + form.face[1]
        for x, out in ((spot.x, -1), (right, 1)):
            for y, down in ((spot.y, -1), (bottom, 1)):
                yield Rule(x + out * near, y, x + out * far, y, HAIR, exact=True)
                yield Rule(x, y + down * near, x, y + down * far, HAIR, exact=True)


def _cut_words(form: Form, flip: str | None) -> Iterator[Piece]:
    """Below the cards, in what is cut away."""
    long = turns_sideways(form.sheet, flip) == (form.sheet[1] >= form.sheet[0])
    top = form.sheet[1] - CLEAR_MM - MARK_MM + 0.1
    half = form.sheet[0] / 2
    for left, words in zip((CLEAR_MM + MARK_MM + 2, half + 7), CUT_WORDS, strict=True):
        line = set_lines((Run(words.format(edge="long" if long else "short")),), SMALLEST, half - 16)
        yield from line.pieces(left, top)


def _fold_marks(form: Form) -> Iterator[Rule]:
    """Broken lines on each fold where it meets the edge, and a small cross where folds meet."""
    upright, level = folds(form)
    width, height = form.sheet
    for x in upright:
        for y in (CLEAR_MM, *(each - MARK_MM / 2 for each in level), height - CLEAR_MM - MARK_MM):
            yield from _broken(x, y, 0, 1)
    for y in level:
        for x in (CLEAR_MM, *(each - MARK_MM / 2 for each in upright), width - CLEAR_MM - MARK_MM):
            yield from _broken(x, y, 1, 0)


def _broken(x: float, y: float, across: int, down: int) -> Iterator[Rule]:
    dash = MARK_MM / 5
    for n in (0, 2, 4):
        yield Rule(x + n * dash * across, y + n * dash * down, x + (n + 1) * dash * across, y + (n + 1) * dash * down, HAIR, exact=True)
