"""Photographs of entries for a card: found in the library's folder, and measured with what is said of them."""

from __future__ import annotations

import io
from collections.abc import Iterable, Mapping
from pathlib import Path

from keytool.card.errors import NoSuchPicture
from keytool.card.ink import Bitmap, Block
from keytool.card.model import CardPhoto
from keytool.card.typeface import Sizes
from keytool.card.words import NO_BREAK, Run, Text, set_lines
from keytool.figures.frame import length_label
from keytool.library.model import Entry, Library, Photo
from keytool.library.wording import mark

NARROWEST, WIDEST = 30.0, 60.0
"""How wide a photograph is set, mm: in less nothing is made out of its greys, and it has no more in it than for 60 mm."""
TALLEST = 60.0
PER_PLATE = 2.5
"""A photograph shows more round the thing than a drawing, and is set so many times as wide."""


def card_photos(library: Library, root: Path, entries: Iterable[str]) -> dict[str, bytes]:
    """The picture for the card of the first photograph of each entry that has one, by the id of the photograph.

    `root` is the folder that holds `keydata/`.

    Raises:
        NoSuchPicture: its file is not there, or is not the picture the record says it is.
    """
    return {photo.id: _picture(library, root, photo) for id in entries if (photo := _first(library, id))}


def card_photo(library: Library, entry: Entry, photos: Mapping[str, bytes]) -> CardPhoto | None:
    """The photograph of an entry with its author, its licence, what it shows and how long its bar is."""
    photo = _first(library, entry.id)
    if photo is None or photo.id not in photos:
        return None
    licence = library.vocabulary["licence"][photo.licence].label
    said: Text = (
        Run("Photograph: ", bold=True),
        Run(f"{photo.shows} Its bar is "),
        Run(length_label(photo.card.bar).replace(" ", NO_BREAK), bold=True),
        Run(mark(library, photo.scale_basis), raised=True),
        Run(f". By {photo.author}, {licence.replace(' ', NO_BREAK)}."),
    )
    return CardPhoto(photos[photo.id], photo.card.width, photo.card.height, said)


def bitmap(shot: CardPhoto, room: float, plate: float) -> Bitmap:
    """The photograph at the origin, no wider than `room` nor larger than it is good for; grows with the plates beside it."""
    across = min(room, max(NARROWEST, min(WIDEST, PER_PLATE * plate)), TALLEST * shot.width / shot.height)
    return Bitmap(0, 0, across, across * shot.height / shot.width, shot.picture)


def card_photo_block(shot: CardPhoto, name: Text, width: float, sizes: Sizes, plate: float) -> Block:
    """The photograph, and below it whose it is and what is said of it."""
    picture = bitmap(shot, width, plate)
    said = set_lines((*name, *shot.said), sizes.small, width, even=False)
    return Block(picture.height + 0.8 + said.height + 1.2, (picture, *said.pieces(0, picture.height + 0.8)))


def _first(library: Library, entry: str) -> Photo | None:
    return next((photo for photo in library.photos.values() if photo.entry == entry), None)


def _picture(library: Library, root: Path, photo: Photo) -> bytes:
    from PIL import Image, UnidentifiedImageError

    path = (root / library.files["photo", photo.id]).with_name(photo.card.file)
    try:
        data = path.read_bytes()
        size = Image.open(io.BytesIO(data)).size
    except (OSError, UnidentifiedImageError):
        size = (0, 0)
    if size != (photo.card.width, photo.card.height):
        raise NoSuchPicture(
            f"'{photo.card.file}' is not there, or is not the picture its record tells of. "
            "Take the photograph in again with 'wetmount photo add --replace'."
        )
    return data
