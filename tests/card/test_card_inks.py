"""The light, normal and strong versions: what they take in ink, and what stays readable without colour."""

from __future__ import annotations

import re

import pytest
from pdf_marks import pages

from keytool.card import INKS, NoSuchForm, card, laid_out
from keytool.card.colours import colour_of
from keytool.card.ink import BLACK, Words
from keytool.card.inks import ink_named
from keytool.card.plates import beside_each_other, inked
from keytool.figures import draw
from keytool.library.wording import plain


@pytest.fixture(scope="module")
def versions(library) -> dict[str, bytes]:
    return {name: card(library, ["naked-amoebae"], "A4", ink=name) for name in INKS}


def greys(data: bytes) -> set[str]:
    """The colours of words and rules other than black and white, as they stand in the page's own operators."""
    from io import BytesIO

    from pypdf import PdfReader

    found = set()
    for page in PdfReader(BytesIO(data)).pages:
        for line in page.get_contents().get_data().decode("latin-1").splitlines():
            found |= {match[1] for match in re.finditer(r"((?:[\d.]+ ){1,3})(?:g|G|rg|RG)\b", line)}
    return {each.strip() for each in found} - {"0", "1", "0 0 0", "1 1 1"}


def test_all_versions_say_the_same(versions) -> None:
    said = {name: " ".join(page.words for page in pages(data)) for name, data in versions.items()}
    assert said["light"] == said["normal"] == said["strong"]


def test_the_light_version_has_no_black_panels(versions) -> None:
    def panels(data):
        """How many ends are filled black: a rounded rectangle is filled as one path with four curves."""
        return sum(page.filled_curved for page in pages(data))

    assert panels(versions["normal"]) == panels(versions["strong"]) > 5
    assert panels(versions["light"]) == 0


def test_the_strong_version_prints_words_and_accents_in_black_only(versions) -> None:
    plates = INKS["strong"].plates.colours
    assert plates["accent"] == plates["ink"] == "#000000" and INKS["strong"].grey == "#000000"
    assert len(greys(versions["strong"])) <= 1, "only what is faint in a drawing"
    assert len(greys(versions["normal"])) >= 2


def test_rules_are_heaviest_in_the_strong_version_but_the_check_bar_is_the_same(versions) -> None:
    def weights(data, length):
        return {round(line.weight, 2) for line in pages(data)[0].lines if length(line) and line.start[1] == line.end[1]}

    heads = [max(weights(versions[name], lambda line: line.length > 55)) for name in ("light", "normal", "strong")]
    assert heads == sorted(heads) and len(set(heads)) == 3
    bars = [weights(data, lambda line: abs(line.length - 50) < 0.05) for data in versions.values()]
    assert bars[0] == bars[1] == bars[2] == {0.6}


@pytest.mark.parametrize("name", INKS)
def test_the_part_asked_about_has_heavier_lines_so_that_it_needs_no_colour(name: str) -> None:
    drawing = draw("nematode-head", {"width": 24, "spear": "stylet", "accent": "spear"}, title="Spear")
    ((bare,), _) = beside_each_other([drawing])
    assert bare
    ink = INKS[name]
    made = inked(bare, ink, 1.0)
    for before, after in zip(bare.shapes, made.shapes, strict=True):
        weights = [getattr(each, "weights", None) or (getattr(each, "weight", 0.0),) for each in (before, after)]
        assert weights[1] == pytest.approx([each * (ink.accent if before.role == "accent" else 1.0) for each in weights[0]])
    assert ink.accent >= 1.5


@pytest.mark.parametrize("name", INKS)
def test_no_line_is_thinner_than_the_version_prints_unless_it_would_drown_the_drawing(name: str) -> None:
    drawing = draw("nematode-head", {"width": 24}, title="Head")
    ink = INKS[name]
    for scale in (0.05, 0.3, 1.0):
        pen = inked(drawing, ink, scale).pen_um
        assert pen * scale >= ink.finest or pen == pytest.approx(2 * drawing.pen_um * ink.lines)


def test_an_unknown_version_is_named_with_those_there_are() -> None:
    with pytest.raises(NoSuchForm, match=r"'bold'.*light, normal, strong"):
        ink_named("bold")


def luminance(colour: str) -> float:
    """Relative luminance of an sRGB colour such as "#4a4a4a" (WCAG 2.2)."""
    parts = [int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@pytest.mark.parametrize("name", INKS)
def test_all_words_stand_out_from_the_paper_at_seven_to_one(library, name: str) -> None:
    # WCAG 2.2, success criterion 1.4.6 (enhanced): 7 : 1 for type of any size.
    made = laid_out(library, ["naked-amoebae"], "A4", ink=name)
    colours = {colour_of(mark.colour, made.ink) for side in made.sides for mark in side if isinstance(mark, Words)} - {"#ffffff"}
    assert colours and all(1.05 / (luminance(each) + 0.05) >= 7 for each in colours)


def test_how_to_see_it_is_black_and_sized_by_the_leads(library) -> None:
    key = library.keys["naked-amoebae"]
    made = laid_out(library, [key.id], "A4")
    words = [mark for side in made.sides for mark in side if isinstance(mark, Words)]
    for couplet in key.couplets.values():
        look = plain(library, couplet.look)
        lines = [mark for mark in words if len(mark.text) > 12 and mark.text.replace("\u00a0", " ").strip() in look]
        lead = max(mark.pt for mark in words if not mark.bold)
        assert lines and all(mark.colour == BLACK and mark.pt >= max(7.6, 0.84 * lead) for mark in lines)
