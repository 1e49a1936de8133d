"""Plates as inline SVG: lines follow the text colour, the accent and the paper follow two CSS variables."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby
from xml.sax.saxutils import escape

from .marks import Lettering, Mark, marks
from .shapes import WASHES, Drawing, Role, Step

_THEMED: dict[Role, str] = {
    "ink": 'class="wm-ink"',
    "accent": 'class="wm-accent" style="color:var(--wm-accent, #b0401c)"',
    "faint": 'class="wm-faint" opacity="0.55"',
    "paper": 'class="wm-paper" style="color:var(--wm-paper, transparent)"',
    **{role: f'class="wm-wash" color="{colour}"' for role, colour in WASHES.items()},
}
_PLAIN: dict[Role, str] = {
    "ink": 'color="#1a1816"',
    "accent": 'color="#b0401c"',
    "faint": 'color="#1a1816" opacity="0.55"',
    "paper": 'color="#ffffff"',
    **{role: f'color="{colour}"' for role, colour in WASHES.items()},
}


def to_svg(drawing: Drawing, px_per_um: float, *, id_prefix: str, plain: bool = False) -> str:
    """One `<svg>` element, `drawing.box` times `px_per_um` in size, for placing inside a page.

    `id_prefix` must be unique on the page and is used for the title and description ids. Each path carries
    `data-part`, the name of what it shows. A plate whose light and dark are themselves what is shown (a bubble's black
    rim) has the class `wm-tonal`, so that a dark theme can lay it on light paper. `plain` writes fixed colours, for
    programs that know no CSS variables (rasterisers). The text is deterministic.
    """
    box, k = drawing.box, px_per_um
    width, height = number(box.width * k), number(box.height * k)
    title_id, desc_id = f"{id_prefix}-title", f"{id_prefix}-desc"
    named = f"{title_id} {desc_id}" if drawing.description else title_id
    head = [
        f'<svg xmlns="http://www.w3.org/2000/svg" class="{_classes(drawing)}" role="img" aria-labelledby="{_attribute(named)}" '
        f'viewBox="0 0 {width} {height}" width="{width}" height="{height}" '
        'stroke-linecap="round" stroke-linejoin="round">',
        f'<title id="{_attribute(title_id)}">{escape(drawing.title)}</title>',
    ]
    if drawing.description:
        head.append(f'<desc id="{_attribute(desc_id)}">{escape(drawing.description)}</desc>')
    groups = _PLAIN if plain else _THEMED
    body: list[str] = []
    for role, run in groupby(marks(drawing), key=lambda mark: mark.role):
        body += [f"<g {groups[role]}>", *(_element(mark, box.x, box.y, k) for mark in run), "</g>"]
    return "\n".join([*head, *body, "</svg>"])


def _classes(drawing: Drawing) -> str:
    return "wm-figure wm-tonal" if drawing.tonal else "wm-figure"


def number(value: float) -> str:
    """A coordinate: at most two decimals, no exponent, no trailing zeros, no minus zero."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _attribute(text: str) -> str:
    return escape(text, {'"': "&quot;"})


def _element(mark: Mark | Lettering, x0: float, y0: float, k: float) -> str:
    part = f'data-part="{_attribute(mark.part)}"'
    if isinstance(mark, Lettering):
        return (
            f'<text {part} x="{number((mark.x - x0) * k)}" y="{number((mark.y - y0) * k)}" '
            f'font-size="{number(mark.size * k)}" font-family="system-ui, sans-serif" '
            f'text-anchor="{mark.anchor}" fill="currentColor">{escape(mark.text)}</text>'
        )
    d = _data(mark.steps, x0, y0, k)
    if mark.width:
        return f'<path {part} fill="none" stroke="currentColor" stroke-width="{number(mark.width * k)}" d="{d}"/>'
    return f'<path {part} fill="currentColor" d="{d}"/>'


def _data(steps: Iterable[Step], x0: float, y0: float, k: float) -> str:
    """Path data with relative steps; each is taken from the rounded point before, so rounding cannot add up."""
    words: list[str] = []
    here_x = here_y = 0  # hundredths of a pixel
    scale = k * 100
    for letter, values in steps:
        if letter == "L":
            x, y = round((values[0] - x0) * scale), round((values[1] - y0) * scale)
            words.append(f"l{_FIRST[x - here_x]}{_NEXT[y - here_y]}")
            here_x, here_y = x, y
        elif letter == "M":
            here_x, here_y = round((values[0] - x0) * scale), round((values[1] - y0) * scale)
            words.append(f"M{_FIRST[here_x]}{_NEXT[here_y]}")
        elif letter == "C":
            xs = [round((v - x0) * scale) for v in values[0::2]]
            ys = [round((v - y0) * scale) for v in values[1::2]]
            told = "".join([f"{_NEXT[x - here_x]}{_NEXT[y - here_y]}" for x, y in zip(xs, ys, strict=True)])
            words.append("c" + told.lstrip(" "))
            here_x, here_y = xs[-1], ys[-1]
        else:
            words.append("z")
    return "".join(words)


class _Texts(dict[int, str]):
    """Hundredths as text, each worked out once; `gap` stands before a number that has no minus sign to part it from the last."""

    def __init__(self, gap: str) -> None:
        super().__init__()
        self.gap = gap

    def __missing__(self, hundredths: int) -> str:
        text = number(hundredths / 100)
        self[hundredths] = text if text[0] == "-" else self.gap + text
        return self[hundredths]


_FIRST, _NEXT = _Texts(""), _Texts(" ")
