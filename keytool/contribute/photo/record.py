"""Take a photograph into the library: two derivatives with their bars, and the record that says what they are."""

from __future__ import annotations

import io
import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from PIL import Image

from keytool.contribute.draft import file_text
from keytool.contribute.photo.bar import burnt
from keytool.contribute.photo.picture import NoPicture, Picture
from keytool.library import Loaded
from keytool.library.model import Entry, Library
from keytool.library.value import Interval

PAGE_WIDTH, CARD_WIDTH = 1280, 720
"""The longer side of a derivative in pixels: for a screen, and for 60 mm of a card at 300 to the inch."""
FOLDER = "keydata/photos"
MOST_STRETCHED = 4
"""How many times as long as wide a photograph may be: in a narrower strip the scale bar would not find room."""


@dataclass(frozen=True, slots=True)
class Given:
    """What its author says of a photograph; `um_per_pixel` is that of the original, with the basis it rests on as it stands in a file."""

    id: str
    entry: str
    author: str
    licence: str
    shows: str
    um_per_pixel: float
    basis: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Taken:
    """The files of a photograph by name from the root of the library, and its record as data."""

    files: Mapping[str, bytes]
    record: Mapping[str, Any]


def own_length(library: Library, entry: Entry) -> tuple[float, float] | None:
    """The shortest and the longest length in µm that an entry states of itself, whatever length it is; None where it states none."""
    ends = [
        (statement.showing.low, statement.showing.high)
        for id, statement in entry.statements.items()
        if isinstance(statement.showing, Interval) and _is_length(library, id)
    ]
    lows = [low for low, _ in ends if math.isfinite(low) and low > 0]
    highs = [high for _, high in ends if math.isfinite(high)]
    return (min(lows or highs), max(highs or lows)) if lows or highs else None


def _is_length(library: Library, character: str) -> bool:
    unit = library.vocabulary["unit"].get(library.characters[character].unit)
    return unit is not None and unit.get("dimension") == "length"


def unbelievable(library: Library, um_per_pixel: float | str) -> str:
    """What is said of a scale that no microscope and no hand lens has; a template where the value is a name in braces."""
    usual = library.quantities["photo-pixel-high"]
    return f"{um_per_pixel} µm to a pixel cannot be. With a 40× objective it is about {usual.low:g} to {usual.high:g}."


def unlike(library: Library, name: str, length: tuple[float, float] | None, pixels: int, um_per_pixel: float) -> str:
    """What is said of a scale at which a thing cannot be what is seen in a picture so many pixels long; empty where it can.

    `length` is what the thing states of itself, in µm; where it states nothing, the picture must find room in the field of a 4x objective.
    """
    across = pixels * um_per_pixel
    wide = f"With {um_per_pixel:g} µm to a pixel the picture would be {_figures(across):g} µm wide"
    if length is None:
        return (
            f"{wide}, more than any microscope shows: look for a slip of the decimal point."
            if across > library.limit("photo-widest")
            else ""
        )
    least, most = length
    if most / um_per_pixel >= library.limit("photo-barely-seen") and least <= library.limit("photo-far-out") * across:
        return ""
    return (
        f"{wide}, but {name} measures {_figures(least):g} to {_figures(most):g} µm: look for a slip of the decimal point. Where it fills "
        f"half of the picture it is about {_figures(2 * most / pixels):g} µm to a pixel."
    )


def taken(loaded: Loaded, picture: Picture, given: Given) -> Taken:
    """The files of a photograph. The original is not among them: only its size and its SHA-256 are noted.

    Raises:
        NoPicture: it is too narrow a strip for a scale bar.
    """
    width, height = picture.image.size
    if max(width, height) > MOST_STRETCHED * min(width, height):
        raise NoPicture(
            f"The photograph is {width} × {height} pixels; at most {MOST_STRETCHED} times as long as wide is taken, so that "
            "the scale bar finds room. Cut it down to what it is to show."
        )
    folder = f"{FOLDER}/{given.entry}"
    files: dict[str, bytes] = {}
    derivatives: dict[str, Any] = {}
    for kind, longest, mode, ending, saved in (
        ("page", PAGE_WIDTH, "RGB", "jpg", {"quality": 86, "optimize": True}),
        ("card", CARD_WIDTH, "L", "png", {"optimize": True}),
    ):
        small = _within(picture.image, longest).convert(mode)
        scale = given.um_per_pixel * picture.image.width / small.width
        done = burnt(small, scale)
        name = f"{given.id}.{kind}.{ending}"
        files[f"{folder}/{name}"] = _bytes(done.image, "JPEG" if ending == "jpg" else "PNG", saved)
        derivatives[kind] = {
            "file": name,
            "width": small.width,
            "height": small.height,
            "um-per-pixel": _figures(scale),
            "bar": done.length,
        }
    record = {
        "id": given.id,
        "entry": given.entry,
        "author": given.author,
        "licence": given.licence,
        "shows": given.shows,
        "scale": {"um-per-pixel": _figures(given.um_per_pixel), "basis": dict(given.basis)},
        **derivatives,
        "original": {"sha256": picture.sha256, "width": picture.image.width, "height": picture.image.height},
    }
    name = f"{folder}/{given.id}.yaml"
    return Taken({**files, name: file_text(loaded, "photo", name, record).encode()}, record)


def _within(image: Image.Image, longest: int) -> Image.Image:
    ratio = min(1.0, longest / max(image.size))
    return image.resize((max(1, round(image.width * ratio)), max(1, round(image.height * ratio))), Image.Resampling.LANCZOS)


def _bytes(image: Image.Image, form: str, saved: Mapping[str, Any]) -> bytes:
    out = io.BytesIO()
    image.save(out, form, **saved)
    return out.getvalue()


def _figures(value: float) -> float:
    """Four figures, which is finer than any micrometer is read."""
    return float(f"{value:.4g}")
