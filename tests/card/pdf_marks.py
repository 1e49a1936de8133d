"""An independent reader of the card: what its pages really put where, in mm from the top left corner."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache
from io import BytesIO

from pypdf import PdfReader
from pypdf.generic import ContentStream

MM = 25.4 / 72


@dataclass
class Line:
    start: tuple[float, float]
    end: tuple[float, float]
    weight: float

    @property
    def length(self) -> float:
        return ((self.end[0] - self.start[0]) ** 2 + (self.end[1] - self.start[1]) ** 2) ** 0.5


@dataclass
class Page:
    width: float
    height: float
    sizes: set[float] = field(default_factory=set)
    """Point sizes of type that text was shown in."""
    texts: list[tuple[float, float, float]] = field(default_factory=list)
    """(x, y of the baseline, size in pt) of every piece of text."""
    points: list[tuple[float, float]] = field(default_factory=list)
    """Every point of every path; for beziers their control points, which the curve never leaves."""
    lines: list[Line] = field(default_factory=list)
    operators: set[str] = field(default_factory=set)
    words: str = ""


@cache
def pages(data: bytes) -> list[Page]:
    reader = PdfReader(BytesIO(data))
    return [_page(page, reader) for page in reader.pages]


def _page(page, reader) -> Page:
    width, height = float(page.mediabox.width), float(page.mediabox.height)
    made = Page(width * MM, height * MM, words=page.extract_text().replace("\u00a0", " "))
    state = ((1.0, 0.0, 0.0, 1.0, 0.0, 0.0), 0.0, 1.0)
    stack = []
    here = (0.0, 0.0)

    def at(x, y):
        a, b, c, d, e, f = state[0]
        return (a * x + c * y + e) * MM, (height - (b * x + d * y + f)) * MM

    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        name = operator.decode()
        made.operators.add(name)
        numbers = [float(each) for each in operands] if name in {"m", "l", "c", "re", "cm", "w", "Td"} else []
        matrix, size, weight = state
        match name:
            case "q":
                stack.append(state)
            case "Q":
                state = stack.pop()
            case "cm":
                assert matrix == (1.0, 0.0, 0.0, 1.0, 0.0, 0.0), "nested transforms are not read here"
                state = (tuple(numbers), size, weight)
            case "Tf":
                state = (matrix, float(operands[1]), weight)
            case "w":
                state = (matrix, size, numbers[0])
            case "Td":
                here = at(*numbers)
            case "Tj":
                if operands[0]:
                    made.sizes.add(size)
                    made.texts.append((*here, size))
            case "m":
                here = at(*numbers)
                made.points.append(here)
            case "l":
                end = at(*numbers)
                made.lines.append(Line(here, end, weight * MM))
                here = end
                made.points.append(here)
            case "c":
                made.points += [at(*numbers[i:i + 2]) for i in (0, 2, 4)]
                here = made.points[-1]
            case "re":
                x, y, w, h = numbers
                made.points += [at(x, y), at(x + w, y + h)]
    return made
