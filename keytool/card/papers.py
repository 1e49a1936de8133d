"""Papers a card can be printed on, in millimetres.

Sources: ISO 216 (A series: A0 is 1 m² with sides 1 : √2, each next size is the longer side halved, whole millimetres);
ANSI/ASME Y14.1 (size A, "Letter": 8.5 by 11 inches of 25.4 mm).
"""

from __future__ import annotations

from dataclasses import dataclass

from keytool.card.errors import NoSuchPaper

MM_PER_INCH = 25.4


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet, upright: `width` is the shorter side. Millimetres."""

    name: str
    width: float
    height: float

    def size(self, landscape: bool) -> tuple[float, float]:
        """Width and height of the page as it lies on the bench, in mm."""
        return (self.height, self.width) if landscape else (self.width, self.height)


PAPERS = {
    paper.name: paper
    for paper in (
        Paper("A5", 148, 210),
        Paper("Letter", 8.5 * MM_PER_INCH, 11 * MM_PER_INCH),
        Paper("A4", 210, 297),
    )
}
"""Every paper by name, the smallest first."""


def paper_named(name: str) -> Paper:
    """The paper with this name, in capitals or not.

    Raises:
        NoSuchPaper: there is none.
    """
    wanted = name.strip().casefold()
    found = next((paper for paper in PAPERS.values() if paper.name.casefold() == wanted), None)
    if found is None:
        raise NoSuchPaper(f"No paper is called '{name}'. There are: {', '.join(PAPERS)}.")
    return found
