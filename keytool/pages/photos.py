"""Photographs on the page of an entry: each with what is seen, its author, its licence, and what its scale bar rests on."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.figures.frame import length_label
from keytool.library import Loaded
from keytool.library.model import Entry, Photo
from keytool.pages.html import Html, el
from keytool.pages.page_writer import Writer

FOLDER = "photos"


def photo_files(loaded: Loaded) -> dict[str, bytes]:
    """The pictures for pages by their path in the site. A picture that is not there is left out; the check says so."""
    found = {_path(each): loaded.root / "keydata" / FOLDER / each.entry / each.page.file for each in loaded.library.photos.values()}
    return {path: file.read_bytes() for path, file in found.items() if file.is_file()}


def photographs(writer: Writer, entry: Entry) -> Iterator[Html]:
    """The photographs of an entry, in the order of their ids."""
    for photo in writer.library.photos.values():
        if photo.entry == entry.id:
            yield _figure(writer, photo)


def _path(photo: Photo) -> str:
    return f"{FOLDER}/{photo.entry}/{photo.page.file}"


def _figure(writer: Writer, photo: Photo) -> Html:
    image = el(
        "img",
        src=writer.href(_path(photo)),
        width=str(photo.page.width),
        height=str(photo.page.height),
        loading="lazy",
        alt=photo.shows,
    )
    licence = writer.library.vocabulary["licence"][photo.licence]
    return el(
        "figure",
        image,
        el(
            "figcaption",
            el("span", photo.shows, " ", class_="wm-shows"),
            f"Photograph: {photo.author}, ",
            el("span", licence.label, title=str(licence.get("about"))),
            f". Bar {length_label(photo.page.bar)} ",
            writer.mark(photo.scale_basis),
        ),
        id=photo.id,
        class_="wm-photo",
    )
