"""The scale bar that is burnt into a picture: a round length, in a colour that stands out, with its length beside it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from pathlib import Path

from PIL import Image, ImageDraw, ImageFont, ImageStat

STEPS = (1, 2, 5)
WIDEST_SHARE = 0.3
"""The most of the width of a picture that the bar takes."""
FONT = Path(__file__).parents[2] / "card" / "fonts" / "DejaVuSansCondensed-Bold.ttf"
"""The bold face of the bench card, so that one typeface serves both."""


def bar_length(um_per_pixel: float, width: int) -> float:
    """The longest length of 1, 2 or 5 times a power of ten, in µm, that takes at most 30 % of a width in pixels."""
    most = um_per_pixel * width * WIDEST_SHARE
    power = math.floor(math.log10(most))
    return max(step * 10.0**each for each in (power - 1, power) for step in STEPS if step * 10.0**each <= most)


def words(length: float) -> str:
    """A length as it is written beside the bar: "50 µm", "0.5 µm", "2 mm"."""
    return f"{length / 1000:g} mm" if length >= 1000 else f"{length:g} µm"


@dataclass(frozen=True, slots=True)
class Burnt:
    """A picture with its bar: its length in µm, and where it lies in pixels (left, top, right, bottom; right and bottom not in it)."""

    image: Image.Image
    length: float
    box: tuple[int, int, int, int]


def burnt(image: Image.Image, um_per_pixel: float) -> Burnt:
    """The picture with a scale bar in its lower right corner, black or white, whichever stands out, on a plate of the other."""
    width, height = image.size
    length = bar_length(um_per_pixel, width)
    long, thick, gap = round(length / um_per_pixel), max(3, width // 160), max(4, width // 60)
    font = ImageFont.truetype(str(FONT), max(12, width // 24))
    text = words(length)
    left, top, right, bottom = font.getbbox(text)
    tall, wide = math.ceil(bottom - top), math.ceil(right - left)
    plate = (width - max(long, wide) - 3 * gap, height - tall - thick - 4 * gap, width - gap, height - gap)
    done = image.copy()
    dark = ImageStat.Stat(image.convert("L").crop(plate)).mean[0] < 128
    ink, ground = ((255, 255, 255), (0, 0, 0)) if dark else ((0, 0, 0), (255, 255, 255))
    draw = ImageDraw.Draw(done)
    draw.rectangle((plate[0], plate[1], plate[2] - 1, plate[3] - 1), fill=_in_mode(done, ground))
    x, y = plate[2] - gap - long, plate[3] - gap - thick
    draw.rectangle((x, y, x + long - 1, y + thick - 1), fill=_in_mode(done, ink))
    draw.text((plate[2] - gap - wide - left, plate[1] + gap - top), text, font=font, fill=_in_mode(done, ink))
    return Burnt(done, length, (x, y, x + long, y + thick))


def _in_mode(image: Image.Image, colour: tuple[int, int, int]) -> int | tuple[int, int, int]:
    return colour[0] if image.mode == "L" else colour
