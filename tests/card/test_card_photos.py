"""Photographs on the card of an entry: beside its drawing, to scale, with author and licence; nowhere else."""

from __future__ import annotations

import re
from io import BytesIO
from pathlib import Path
from typing import NamedTuple

import pytest
from click.testing import CliRunner
from pdf_marks import MM, pages
from PIL import Image, ImageChops, ImageDraw
from pypdf import PdfReader
from pypdf.generic import ContentStream

from keytool.card import CardError, NoSuchPicture, card, card_photos, laid_out
from keytool.card.form import CLEAR_MM
from keytool.cli.card import card_command
from keytool.library import load
from keytool.library.model import Library
from tests.contribute.helping import run

ENTRY = "coat-button"
UM_PER_PIXEL = 0.5
ADDED = ("--entry", ENTRY, "--author", "Davit Roe", "--licence", "cc-by-sa-4.0", "--shows", "A coat button from above, rim sharp.")


@pytest.fixture
def picture(tmp_path: Path) -> Path:
    """A grey disc with two holes, 900 by 600 pixels."""
    image = Image.new("RGB", (900, 600), (205, 205, 200))
    draw = ImageDraw.Draw(image)
    draw.ellipse((200, 50, 700, 550), fill=(90, 80, 70), outline=(20, 20, 20), width=12)
    for x in (380, 480):
        draw.ellipse((x, 270, x + 60, 330), fill=(220, 220, 220))
    path = tmp_path / "button.png"
    image.save(path)
    return path


@pytest.fixture
def photographed(mini: Path, picture: Path) -> tuple[Library, Path]:
    """The mini library with a photograph taken in by the command, and where it lies."""
    done = run(mini, "photo", "add", str(picture), *ADDED, "--um-per-pixel", str(UM_PER_PIXEL))
    assert done.exit_code == 0, done.output
    return load(mini).library, mini


def wish(photographed: tuple[Library, Path], **more) -> bytes:
    library, root = photographed
    return card(library, [], "A4", entries=[ENTRY], photos=card_photos(library, root, [ENTRY]), **more)


class Placed(NamedTuple):
    """Where a picture stands on its page, mm from the top left, and its pixels."""

    x: float
    y: float
    width: float
    height: float
    image: Image.Image


def placed(data: bytes) -> list[Placed]:
    reader = PdfReader(BytesIO(data))
    found = []
    for page in reader.pages:
        high, matrix = float(page.mediabox.height), [0.0] * 6
        images = {each.name.rpartition(".")[0]: each.image for each in page.images}
        for operands, operator in ContentStream(page.get_contents(), reader).operations:
            if operator == b"cm":
                matrix = [float(each) for each in operands]
            if operator == b"Do":
                width, _, _, height, x, y = matrix
                found.append(Placed(x * MM, (high - y - height) * MM, width * MM, height * MM, images[operands[0][1:]]))
    return found


def test_the_photograph_stands_beside_the_drawing_with_author_licence_and_bar(photographed) -> None:
    data = wish(photographed)
    (shown,) = placed(data)
    library, root = photographed
    (photo,) = library.photos.values()
    kept = Image.open(root / "keydata/photos" / ENTRY / photo.card.file)
    assert ImageChops.difference(shown.image.convert("L"), kept.convert("L")).getbbox() is None, "every pixel, its bar among them"
    words = re.sub(r"[\s\u00a0]+", " ", pages(data)[0].words)
    assert "Photograph: A coat button from above, rim sharp. Its bar is 100 µm" in words
    assert "By Davit Roe, CC BY-SA 4.0." in words


def test_its_burnt_in_bar_is_as_long_as_it_says_at_the_scale_it_is_printed_at(photographed) -> None:
    (shown,) = placed(wish(photographed))
    library, _ = photographed
    (photo,) = library.photos.values()
    across, down = shown.width / shown.image.width, shown.height / shown.image.height
    assert across == pytest.approx(down, rel=0.005), "not stretched"
    mm_per_um = across / photo.card.um_per_pixel
    # The button is 501 pixels of the original across; on the card it is as wide as the scale says.
    row = [shown.image.convert("L").getpixel((x, shown.image.height // 2)) < 60 for x in range(shown.image.width)]
    first, last = row.index(True), len(row) - 1 - row[::-1].index(True)
    assert (last - first + 1) * across == pytest.approx(501 * UM_PER_PIXEL * mm_per_um, rel=0.01)
    # The bar is the longest black line there is.
    grey = shown.image.convert("L")
    rows = ("".join("#" if grey.getpixel((x, y)) == 0 else " " for x in range(grey.width)) for y in range(grey.height))
    longest = max(len(run_of) for row in rows for run_of in row.split(" "))
    assert longest * across == pytest.approx(photo.card.bar * mm_per_um, rel=0.01)
    assert 28 <= shown.width <= 60.01


@pytest.mark.parametrize("form", ["sheet", "halves", "quarters", "pocket"])
def test_it_keeps_to_its_face_and_covers_no_words(photographed, form: str) -> None:
    data = wish(photographed, form=form, landscape=form != "halves")
    shown = placed(data)
    assert shown
    for page in pages(data)[:1]:
        for each in shown:
            assert each.x >= CLEAR_MM - 0.01 and each.x + each.width <= page.width - CLEAR_MM + 0.01
            assert each.y >= CLEAR_MM - 0.01 and each.y + each.height <= page.height - CLEAR_MM + 0.01
            for left, top, right, bottom in (text.box for text in page.texts):
                apart = right <= each.x or left >= each.x + each.width or bottom <= each.y + 0.3 or top >= each.y + each.height - 0.3
                assert apart


def test_several_entries_show_those_photographs_there_are(photographed) -> None:
    library, root = photographed
    entries = list(library.entries)[:2] if ENTRY in list(library.entries)[:2] else [ENTRY, next(iter(library.entries))]
    data = card(library, [], "A4", entries=entries, photos=card_photos(library, root, entries))
    assert len(placed(data)) == 1


def test_cards_of_keys_stay_vectors_only_and_an_entry_shows_none_unless_it_is_given(photographed) -> None:
    library, root = photographed
    photos = card_photos(library, root, [ENTRY])
    assert photos and not placed(card(library, ["buttons"], "A4", photos=photos))
    assert not placed(card(library, [], "A4", entries=[ENTRY]))


def test_the_same_photograph_gives_the_same_bytes_and_a_preview_of_its_own(photographed) -> None:
    assert wish(photographed) == wish(photographed)
    library, root = photographed
    look = laid_out(library, [], "A4", entries=[ENTRY], photos=card_photos(library, root, [ENTRY])).preview()
    assert look.count("<image ") == 1 and 'href="data:image/png;base64,' in look


def test_the_command_shows_it(photographed, tmp_path: Path) -> None:
    _, root = photographed
    done = CliRunner().invoke(card_command, ["--entry", ENTRY, "-o", str(tmp_path / "card.pdf")], obj=root)
    assert done.exit_code == 0, done.output
    assert len(placed((tmp_path / "card.pdf").read_bytes())) == 1


@pytest.mark.parametrize("broken", [None, b"no picture", b""])
def test_a_picture_that_is_lost_or_broken_is_said_and_how_to_get_it_back(photographed, broken: bytes | None) -> None:
    library, root = photographed
    file = root / "keydata/photos" / ENTRY / f"{ENTRY}-1.card.png"
    file.unlink()
    if broken is not None:
        file.write_bytes(broken)
    with pytest.raises(NoSuchPicture, match=r"coat-button-1\.card\.png.*wetmount photo add --replace") as caught:
        card_photos(library, root, [ENTRY])
    assert isinstance(caught.value, CardError)
