"""A computed picture with its words and scale bar in it, so that it cannot be taken for a photograph where it is pasted."""

from __future__ import annotations

import io

import numpy as np
from PIL import Image, ImageDraw, ImageFont

from keytool.card.typeface import FILES
from keytool.figures.frame import length_label, round_length

from . import LEAVES_OUT
from .body import scene
from .still import picture
from .subject import Subject

PAPER, INK = (251, 249, 244), (40, 36, 30)


def labelled_png(subject: Subject, focus: float, iris: float, width: int) -> tuple[bytes, str]:
    """The picture in its round field as PNG, `width` pixels wide, and what is written beneath it."""
    there = scene(subject.drawing, subject.section, subject.materials, subject.seed)
    square = picture(there, focus, iris, width, subject.seed).astype(float)
    y, x = np.mgrid[-1 : 1 : width * 1j, -1 : 1 : width * 1j]
    within = np.clip((0.985 - np.hypot(x, y)) * width / 2, 0, 1)[..., None]
    letter = max(11, width // 42)
    lines = [
        f"{subject.entry.name}, 400×. Computed picture, not a photograph.",
        f"Focus {focus:+g} µm from its middle, iris {iris:g} of the objective's aperture.",
        *_wrapped(f"It leaves out {LEAVES_OUT}.", round(width / (0.56 * letter))),
    ]
    whole = Image.new("RGB", (width, width + letter * (2 * len(lines) + 3)), PAPER)
    whole.paste(Image.fromarray((square * within + np.array(PAPER) * (1 - within)).astype(np.uint8)))
    pen, font = ImageDraw.Draw(whole), ImageFont.truetype(str(FILES[False]), letter)
    bar = round_length(0.25 * there.across)
    at = width + letter // 2
    pen.line([(letter, at), (letter + bar / there.across * width, at)], fill=INK, width=max(2, width // 300))
    pen.text((letter, at + letter // 3), length_label(bar), fill=INK, font=font)
    for number, line in enumerate(lines):
        pen.text((letter, at + letter * 2 * (number + 1)), line, fill=INK, font=font)
    file = io.BytesIO()
    whole.save(file, "PNG", optimize=True)
    return file.getvalue(), lines[0].rstrip(".")


def _wrapped(text: str, letters: int) -> list[str]:
    import textwrap

    return textwrap.wrap(text, letters)
