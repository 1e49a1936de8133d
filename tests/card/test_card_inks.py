"""The light, normal and strong versions: what they take in ink, and what stays readable without colour."""

from __future__ import annotations

import re

import pytest
from pdf_marks import pages

from keytool.card import INKS, NoSuchForm, card
from keytool.card.inks import ink_named
from keytool.card.plates import beside_each_other, inked
from keytool.figures import draw


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
    (bare,) = beside_each_other([drawing])
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
