"""The pictures of a photograph are what their record says, and carry nothing besides: no place, no device, no maker's name."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from keytool.library.finding import Finding, Place
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Derivative

NAME = "photos"
FORMATS = {".jpg": "JPEG", ".png": "PNG"}
CARRIED = ("jfif", "jfif_version", "jfif_unit", "jfif_density", "dpi", "progressive", "progression", "interlace", "gamma", "srgb")
"""What Pillow tells of a picture that says how it is stored, not where, when or by whom it was taken."""
LARGEST_FILE = 4_000_000
AGAIN = "Make it anew with 'wetmount photo add --replace', which keeps nothing but the pixels."
NOT_THERE = Message(NAME, "'{file}' is not there as a file of its own beside the record.", tip=AGAIN)
TOO_LARGE = Message(NAME, "'{file}' is larger than {most} MB.", tip=AGAIN)
OTHER_SIZE = Message(NAME, "'{file}' is {wide} × {high} pixels, but the record says {told_wide} × {told_high}.", tip=AGAIN)
UNREADABLE = Message(NAME, "'{file}' cannot be read as a picture.", tip=AGAIN)
CARRIES_MORE = Message(NAME, "'{file}' carries more than its pixels: {carried}.", tip=AGAIN)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each picture that is missing, is a link, is no picture, has another size, or carries hidden data."""
    for photo in loaded.library.photos.values():
        for name, derivative in (("page", photo.page), ("card", photo.card)):
            place = loaded.files.place("photo", photo.id, (name, "file"))
            yield from _wrong(loaded.root / "keydata" / "photos" / photo.entry, derivative, place)


def _wrong(folder: Path, derivative: Derivative, place: Place) -> Iterator[Finding]:
    path, name = folder / derivative.file, derivative.file
    if path.is_symlink() or not path.is_file():
        yield NOT_THERE.at(place, file=name)
        return
    if path.stat().st_size > LARGEST_FILE:
        yield TOO_LARGE.at(place, file=name, most=LARGEST_FILE // 1_000_000)
        return
    from PIL import Image, UnidentifiedImageError  # takes a while, and most libraries checked have no photographs

    try:
        with Image.open(path, formats=[FORMATS.get(path.suffix, "JPEG")]) as image:
            if image.size != (derivative.width, derivative.height):
                wide, high = image.size
                told = {"told_wide": derivative.width, "told_high": derivative.height}
                yield OTHER_SIZE.at(place, file=name, wide=wide, high=high, **told)
                return
            image.load()
            carried = sorted({*map(str, image.info), *(["exif"] if image.getexif() else [])} - {*CARRIED})
            chunks = [marker for marker, _ in getattr(image, "applist", ()) if marker not in ("APP0", "APP14")]
    except (OSError, ValueError, SyntaxError, TypeError, EOFError, UnidentifiedImageError, Image.DecompressionBombError):
        yield UNREADABLE.at(place, file=name)
        return
    if carried or chunks:
        yield CARRIES_MORE.at(place, file=name, carried=", ".join([*carried, *chunks]))
