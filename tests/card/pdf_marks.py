"""An independent reader of the card: what its pages really put where, in mm from the top left corner."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache
from io import BytesIO
from typing import NamedTuple

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


class Text(NamedTuple):
    """One piece of text: where its baseline starts, its size in pt, its width in mm, and whether it stands on its head."""

    x: float
    y: float
    size: float
    width: float
    turned: bool

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right, bottom of what it may cover."""
        up, down = 0.76 * self.size * MM, 0.24 * self.size * MM
        if self.turned:
            return self.x - self.width, self.y - down, self.x, self.y + up
        return self.x, self.y - up, self.x + self.width, self.y + down


@dataclass
class Page:
    width: float
    height: float
    sizes: set[float] = field(default_factory=set)
    """Point sizes of type that text was shown in."""
    texts: list[Text] = field(default_factory=list)
    points: list[tuple[float, float]] = field(default_factory=list)
    """Every point of every path; for beziers their control points, which the curve never leaves."""
    paths: list[list[tuple[float, float]]] = field(default_factory=list)
    """The same, path by path."""
    lines: list[Line] = field(default_factory=list)
    operators: set[str] = field(default_factory=set)
    filled_curved: int = 0
    """How many paths of exactly four curves and four lines (rounded rectangles) are filled."""
    words: str = ""


@cache
def pages(data: bytes) -> list[Page]:
    reader = PdfReader(BytesIO(data))
    return [_page(page, reader) for page in reader.pages]


def _page(page, reader) -> Page:
    width, height = float(page.mediabox.width), float(page.mediabox.height)
    made = Page(width * MM, height * MM, words=page.extract_text().replace("\u00a0", " "))
    advances = _advances(page)
    state = ((1.0, 0.0, 0.0, 1.0, 0.0, 0.0), "", 0.0, 1.0)
    stack, since = [], []
    here = (0.0, 0.0)

    def at(x, y):
        a, b, c, d, e, f = state[0]
        return (a * x + c * y + e) * MM, (height - (b * x + d * y + f)) * MM

    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        name = operator.decode()
        made.operators.add(name)
        numbers = [float(each) for each in operands] if name in {"m", "l", "c", "re", "cm", "w", "Td"} else []
        matrix, font, size, weight = state
        made.filled_curved += name in {"f", "F", "f*"} and since.count("c") == 4 == since.count("l")
        since = [] if name in {"f", "F", "f*", "S", "s", "B", "n"} else [*since, name] if name in {"m", "l", "c", "h", "re"} else since
        match name:
            case "q":
                stack.append(state)
            case "Q":
                state = stack.pop()
            case "cm":
                state = (_times(numbers, matrix), font, size, weight)
            case "Tf":
                state = (matrix, operands[0], float(operands[1]), weight)
            case "w":
                state = (matrix, font, size, numbers[0])
            case "Td":
                here = at(*numbers)
            case "Tj":
                if operands[0]:
                    made.sizes.add(size)
                    codes = operands[0].original_bytes
                    long = sum(advances[font][codes[n] << 8 | codes[n + 1]] for n in range(0, len(codes), 2)) / 1000 * size * MM
                    made.texts.append(Text(*here, size, long, matrix[0] < 0))
            case "m":
                here = at(*numbers)
                made.points.append(here)
                made.paths.append([here])
            case "l":
                end = at(*numbers)
                made.lines.append(Line(here, end, weight * MM))
                here = end
                made.points.append(here)
                made.paths[-1].append(here)
            case "c":
                new = [at(*numbers[i : i + 2]) for i in (0, 2, 4)]
                made.points += new
                made.paths[-1] += new
                here = made.points[-1]
            case "re":
                x, y, w, h = numbers
                corners = [at(x, y), at(x + w, y + h)]
                made.points += corners
                made.paths.append(corners)
    return made


def _times(first, then):
    """The matrix that does `first` and then `then`."""
    a, b, c, d, e, f = first
    p, q, r, s, t, u = then
    return (a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u)


def _advances(page):
    """The advance of every glyph of every font, in thousandths of the size. A blank side of a booklet has none."""
    fonts = {}
    for name, font in page["/Resources"].get("/Font", {}).items():
        widths = {}
        entries = list(font.get_object()["/DescendantFonts"][0].get_object()["/W"])
        while entries:
            first, second, *entries = entries
            if isinstance(second, list):
                widths |= {int(first) + n: float(each) for n, each in enumerate(second)}
            else:
                each, *entries = entries
                widths |= dict.fromkeys(range(int(first), int(second) + 1), float(each))
        fonts[name] = widths
    return fonts
