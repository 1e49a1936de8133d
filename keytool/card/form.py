"""Forms a card comes in: the whole sheet, cards to cut from it, or a pocket fold; and where each face lies on the sheet.

All is worked out from the size of the sheet. Millimetres, y pointing down from the top left corner of a side as it is read.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from keytool.card.errors import NoSuchForm
from keytool.card.typeface import SMALLEST_LEAD

Size = tuple[float, float]
"""Width and height in mm."""

CLEAR_MM = 5.0
"""Nothing is printed nearer to the edge of a sheet: few printers reach there, and film needs it to seal."""
MARGIN_MM = 7.0
"""From the edge of a whole sheet to its type."""
DENSE_MARGIN_MM = 5.5
"""The same on a dense card."""
SEAL_MM = 5.0
"""The sealed edge of film round a laminated card; between two cards lie two of them."""
MARK_MM = 3.0
"""How long the cut marks and fold marks are."""
CUT_MARGIN_MM = 3.0
"""From a cut to the type: knives stray, and printers shift the back against the front."""
FOLD_MARGIN_MM = 3.5
"""From a fold to the type."""


FAR_LEAD, NEAR_LEAD, FAR_WIDTH = 9.5, 9.0, 180.0
"""Points of leads for a sheet that lies beside the microscope, and for one narrower than `FAR_WIDTH` mm that is held in the hand.

At 60 cm, 9.5 points of a face with an x-height of 0.547 em are seen at 10.5 minutes of arc: 2 atan(h / 2d).
"""


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a face lies: `side` 0 or 1 of the sheet, its top left corner, and whether it stands on its head there."""

    side: int
    x: float
    y: float
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Form:
    """One form on one sheet lying one way.

    A face is what is read at once: a side of a sheet or card, or a panel. `inset` is what a face keeps clear at its left,
    top, right and bottom. `spots` are the faces of one sheet in reading order; `together` of them make one card.
    """

    name: str
    sheet: Size
    face: Size
    inset: tuple[float, float, float, float]
    spots: tuple[Spot, ...]
    together: int
    word: str = "side"

    @property
    def inner(self) -> Size:
        """The room inside a face."""
        left, top, right, bottom = self.inset
        return self.face[0] - left - right, self.face[1] - top - bottom

    @property
    def small(self) -> bool:
        """Whether a face is too small for a full header and footer."""
        return self.name not in ("sheet", "booklet")

    @property
    def least_lead(self) -> float:
        """The smallest leads (points) of a card that is not dense: what is read at arm's length needs more than what is held."""
        if self.small:
            return SMALLEST_LEAD
        return FAR_LEAD if self.inner[0] > FAR_WIDTH else NEAR_LEAD

    def counts(self, most: int) -> Iterator[int]:
        """How many faces to try for what can take `most`: one, and then whole cards."""
        if self.together < 3:
            yield 1
        step = 1 if self.name == "booklet" else max(2, self.together)
        yield from range(step, most + step, step)


def form_named(name: str, sheet: Size, flip: str | None = None, dense: bool = False) -> Form:
    """The form on a sheet of this size; `flip` is the edge ("long", "short") it is turned over, by default like a page.

    The whole sheet of a `dense` card has narrower margins.

    Raises:
        NoSuchForm: there is none of that name.
    """
    match name:
        case "sheet":
            inset = (DENSE_MARGIN_MM if dense else MARGIN_MM,) * 4
            return Form(name, sheet, sheet, inset, (Spot(0, 0, 0), Spot(1, 0, 0)), 1)
        case "halves":
            return _cut(name, sheet, (2, 1) if sheet[0] > sheet[1] else (1, 2), turns_sideways(sheet, flip))
        case "quarters":
            return _cut(name, sheet, (2, 2), turns_sideways(sheet, flip))
        case "pocket":
            return _pocket(sheet)
        case "booklet":
            return _booklet(sheet)
    raise NoSuchForm(f"No form of card is called '{name}'. There are: {', '.join(FORMS)}.")


FORMS = {
    "sheet": "the whole sheet, both sides",
    "halves": "two cards to cut from each sheet",
    "quarters": "four cards to cut from each sheet",
    "pocket": "eight panels, to be folded",
    "booklet": "pages half as large, to be folded in the middle and stapled",
}
"""Every form with what it is."""


def turns_sideways(sheet: Size, flip: str | None) -> bool:
    """Whether the sheet is turned over like a page, about an upright edge; else like a leaf of a calendar."""
    return flip is None or (flip == "long") == (sheet[1] >= sheet[0])


def _cut(name: str, sheet: Size, grid: tuple[int, int], sideways: bool) -> Form:
    """Cards in a grid with marks outside them; the back of each lies behind its front when the sheet is turned over."""
    edge, gap = CLEAR_MM + MARK_MM, 2 * SEAL_MM
    across, down = grid
    width = (sheet[0] - 2 * edge - (across - 1) * gap) / across
    height = (sheet[1] - 2 * edge - (down - 1) * gap) / down
    spots = []
    for row in range(down):
        for column in range(across):
            x, y = edge + column * (width + gap), edge + row * (height + gap)
            behind = (sheet[0] - x - width, y) if sideways else (x, sheet[1] - y - height)
            spots += [Spot(0, x, y), Spot(1, *behind)]
    return Form(name, sheet, (width, height), (CUT_MARGIN_MM,) * 4, tuple(spots), 2)


def _booklet(sheet: Size) -> Form:
    """Two upright pages side by side on each side of a lying sheet; which they are hangs on how many there are, see `impose`."""
    width, height = max(sheet), min(sheet)
    face = (width / 2, height)
    inset = (MARGIN_MM, MARGIN_MM, MARGIN_MM, MARGIN_MM)
    spots = (Spot(0, 0, 0), Spot(0, face[0], 0), Spot(1, 0, 0), Spot(1, face[0], 0))
    return Form("booklet", (width, height), face, inset, spots, 1, "page")


def _pocket(sheet: Size) -> Form:
    """Folded along the middle with the print outside, then to and fro in four.

    A lying sheet has panels 1 to 4 in its upper half, and 5 to 8 on their heads in its lower half, from the right: turned
    over like a page the folded strip shows those upright. On an upright sheet 1 to 4 run down the left, 5 to 8 the right.
    """
    lying = sheet[0] > sheet[1]
    face = (sheet[0] / 4, sheet[1] / 2) if lying else (sheet[0] / 2, sheet[1] / 4)
    if lying:
        front = [Spot(0, n * face[0], 0) for n in range(4)]
        back = [Spot(0, n * face[0], face[1], turned=True) for n in reversed(range(4))]
        inset = (CLEAR_MM, CLEAR_MM, CLEAR_MM, FOLD_MARGIN_MM)
    else:
        front = [Spot(0, 0, n * face[1]) for n in range(4)]
        back = [Spot(0, face[0], n * face[1]) for n in range(4)]
        inset = (CLEAR_MM, CLEAR_MM, CLEAR_MM, CLEAR_MM)
    return Form("pocket", sheet, face, inset, (*front, *back), 8, "panel")
