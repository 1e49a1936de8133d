"""A side of a card as an SVG picture for the screen: the same marks as on paper, in millimetres."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable, Iterator
from html import escape

from keytool.card import typeface
from keytool.card.colours import FRAME, colour_of
from keytool.card.ink import BLACK, WHITE, Bitmap, Mark, Panel, Picture, Rule, Turned, Words, marks
from keytool.card.inks import Ink
from keytool.card.plates import inked
from keytool.card.typeface import MM_PER_PT
from keytool.figures.marks import SCALE_BAR, Lettering
from keytool.figures.marks import marks as marks_of


def picture(side: Iterable[Mark], size: tuple[float, float], title: str, ink: Ink) -> str:
    """The side as SVG with a white ground; a screen without the card's typeface sets its words equally wide in another."""
    width, height = (_short(each) for each in size)
    body = "\n".join(line for mark in side for line in _drawn(mark, ink))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}mm" height="{height}mm" role="img">\n'
        f'<title>{escape(title)}</title>\n<rect width="{width}" height="{height}" fill="{WHITE}"/>\n'
        f"<g font-family=\"'DejaVu Sans Condensed','Arial Narrow',Arial,sans-serif\">\n{body}\n</g>\n</svg>\n"
    )


def _drawn(mark: Mark, ink: Ink) -> Iterator[str]:
    match mark:
        case Words() if mark.text.strip():
            wide = typeface.width(mark.text, mark.bold, mark.pt)
            bold = ' font-weight="700"' if mark.bold else ""
            yield (
                f'<text x="{_short(mark.x)}" y="{_short(mark.y)}" font-size="{_short(mark.pt * MM_PER_PT)}"{bold} '
                f'fill="{colour_of(mark.colour, ink)}" textLength="{_short(wide)}" lengthAdjust="spacingAndGlyphs" '
                f'xml:space="preserve">{escape(mark.text)}</text>'
            )
        case Rule():
            weight = mark.weight if mark.exact else mark.weight * ink.rules
            yield (
                f'<path d="M{_short(mark.x)} {_short(mark.y)}L{_short(mark.x2)} {_short(mark.y2)}" '
                f'stroke="{colour_of(mark.colour, ink)}" stroke-width="{_short(weight)}"/>'
            )
        case Panel():
            look = f'fill="none" stroke="{BLACK}" stroke-width="{FRAME}"' if mark.reversed and ink.framed else f'fill="{BLACK}"'
            yield (
                f'<rect x="{_short(mark.x)}" y="{_short(mark.y)}" width="{_short(mark.width)}" height="{_short(mark.height)}" '
                f'rx="{_short(mark.radius)}" {look}/>'
            )
        case Picture():
            yield from _plate(mark, ink)
        case Bitmap():
            kind = "png" if mark.file.startswith(b"\x89PNG") else "jpeg"
            yield (
                f'<image x="{_short(mark.x)}" y="{_short(mark.y)}" width="{_short(mark.width)}" height="{_short(mark.height)}" '
                f'preserveAspectRatio="none" href="data:image/{kind};base64,{b64encode(mark.file).decode()}"/>'
            )
        case Turned():
            yield f'<g transform="rotate(180 {_short(mark.x + mark.width / 2)} {_short(mark.y + mark.height / 2)})">'
            for inside in marks(mark.pieces, mark.x, mark.y):
                yield from _drawn(inside, ink)
            yield "</g>"


def _plate(mark: Picture, ink: Ink) -> Iterator[str]:
    k, box = mark.mm_per_um, mark.drawing.box
    left, top = mark.x - box.x * k, mark.y - box.y * k
    for each in marks_of(inked(mark.drawing, ink, k)):
        if isinstance(each, Lettering) or each.part in SCALE_BAR:
            continue
        colour = ink.plates.colours[each.role]
        steps = "".join(
            letter + " ".join(_short((top if n % 2 else left) + value * k) for n, value in enumerate(values))
            for letter, values in each.steps
        )
        look = (
            f'fill="none" stroke="{colour}" stroke-width="{_short(each.width * k)}" stroke-linecap="round" stroke-linejoin="round"'
            if each.width
            else f'fill="{colour}"'
        )
        yield f'<path d="{steps}" {look}/>'


def _short(value: float) -> str:
    """A length in mm to the hundredth, without needless zeros."""
    return f"{value:.2f}".rstrip("0").rstrip(".") if abs(value) >= 0.005 else "0"
