"""Open a picture that a stranger sent: limits first, then the right way up, in plain colours, with nothing hidden in it."""

from __future__ import annotations

import hashlib
import warnings
from dataclasses import dataclass
from pathlib import Path

from PIL import Image, ImageOps, UnidentifiedImageError

FORMATS = ("JPEG", "PNG", "TIFF", "WEBP")
LARGEST_FILE = 60_000_000
MOST_PIXELS = 80_000_000
LEAST_SIDE = 200


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
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)  # the limit below is lower and says what to do
            with Image.open(path, formats=FORMATS) as opened:
                _within_limits(path.name, opened)
                upright = ImageOps.exif_transpose(opened)
                return Picture(_plain(upright), hashlib.sha256(path.read_bytes()).hexdigest())
    except (UnidentifiedImageError, Image.DecompressionBombError, SyntaxError, ValueError, EOFError) as error:
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
    bare = Image.new("RGB", image.size)
    bare.paste(image.convert("RGB"))
    return bare
