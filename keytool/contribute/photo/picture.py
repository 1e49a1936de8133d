"""Open a picture that a stranger sent: limits first, then the right way up, in plain colours, with nothing hidden in it."""

from __future__ import annotations

import hashlib
import logging
import warnings
import zlib
from dataclasses import dataclass
from pathlib import Path

from PIL import Image, ImageOps, UnidentifiedImageError

FORMATS = ("JPEG", "PNG", "TIFF", "WEBP")
LARGEST_FILE = 60_000_000
DAMAGED = (UnidentifiedImageError, SyntaxError, ValueError, TypeError, KeyError, IndexError, EOFError, OverflowError, zlib.error)
MOST_PIXELS = 80_000_000
LEAST_SIDE = 200
logging.getLogger("PIL").addHandler(logging.NullHandler())  # as with its warnings below: what Pillow logs would reach the terminal


class NoPicture(Exception):
    """Raised for a file that is not taken; the message says why and what would be."""


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture in plain RGB, the right way up, and the SHA-256 of the file it came from."""

    image: Image.Image
    sha256: str


def picture(path: Path) -> Picture:
    """The picture in a file.

    The size is read before anything is unpacked, so that a small file cannot fill the memory.

    Raises:
        NoPicture: it cannot be read, or is too large, too small, of another format, or an animation.
    """
    try:
        raw = path.stat().st_size
        if raw > LARGEST_FILE:
            raise NoPicture(f"'{path.name}' has {raw // 1_000_000} MB; at most {LARGEST_FILE // 1_000_000} MB are taken. Save it as JPEG.")
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # what a strange file makes Pillow say tells its sender nothing; the limits below do
            with Image.open(path, formats=FORMATS) as opened:
                _within_limits(path.name, opened)
                _whole(path, opened)
                upright = ImageOps.exif_transpose(opened)
                return Picture(_plain(upright), hashlib.sha256(path.read_bytes()).hexdigest())
    except (Image.DecompressionBombError, *DAMAGED) as error:
        raise NoPicture(_not_taken(path.name, error)) from None
    except OSError as error:
        raise NoPicture(f"'{path.name}' cannot be read: {error.strerror or 'it is damaged or cut short'}.") from None


def _within_limits(name: str, opened: Image.Image) -> None:
    width, height = opened.size
    if width * height > MOST_PIXELS:
        raise NoPicture(
            f"'{name}' would unpack to {width} × {height} pixels; at most {MOST_PIXELS // 1_000_000} million are taken. "
            "Cut it down to what it is to show."
        )
    if min(width, height) < LEAST_SIDE:
        raise NoPicture(f"'{name}' is {width} × {height} pixels; at least {LEAST_SIDE} each way are needed.")
    if getattr(opened, "n_frames", 1) > 1:
        raise NoPicture(f"'{name}' holds {getattr(opened, 'n_frames', 1)} pictures. Save the one that is meant by itself.")


def _whole(path: Path, opened: Image.Image) -> None:
    """Refuses a PNG whose pixels stop before the last row; Pillow would leave the rest blank without a word.

    Source: PNG specification (W3C, third edition), sections 7.2 and 10: each row is a filter byte and its samples, deflated.
    """
    if opened.format != "PNG" or opened.info.get("interlace"):
        return
    raw, at, held = path.read_bytes(), 8, zlib.decompressobj()
    bits, colour = raw[24], raw[25]
    row = 1 + (opened.width * bits * {0: 1, 2: 3, 3: 1, 4: 2, 6: 4}[colour] + 7) // 8
    given = 0
    while at + 8 <= len(raw) and given < row * opened.height:
        size, kind = int.from_bytes(raw[at : at + 4]), raw[at + 4 : at + 8]
        if kind == b"IDAT":
            left = raw[at + 8 : at + 8 + size]
            while left and given < row * opened.height:
                given += len(held.decompress(left, 1 << 20))
                left = held.unconsumed_tail
        at += size + 12
    if given < row * opened.height:
        raise NoPicture(f"'{path.name}' stops after {given // row} of {opened.height} rows: it is cut short.")


def _not_taken(name: str, error: Exception) -> str:
    if isinstance(error, Image.DecompressionBombError):
        return f"'{name}' would unpack to far more pixels than the {MOST_PIXELS // 1_000_000} million that are taken."
    return f"'{name}' is no picture that is taken: {', '.join(FORMATS)}. A telephone's HEIC is saved as JPEG first."


def _plain(image: Image.Image) -> Image.Image:
    """The pixels alone, in RGB: everything a file carries besides them stays behind, transparency becomes white."""
    if image.mode.startswith("I") or image.mode == "F":
        low, high = image.convert("F").getextrema()
        span = (float(high) - float(low)) or 1.0  # type: ignore[arg-type]
        image = image.convert("F").point(lambda value: (value - float(low)) * (255 / span)).convert("L")  # type: ignore[arg-type]
    if image.mode in ("RGBA", "LA", "PA") or "transparency" in image.info:
        over = image.convert("RGBA")
        image = Image.alpha_composite(Image.new("RGBA", over.size, "white"), over)
    return Image.frombytes("RGB", image.size, image.convert("RGB").tobytes())
