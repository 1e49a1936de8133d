"""A whole field at 40×: what the 4x objective loses at a slope of the optical path, and the fields that are kept."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import yaml

from keytool.library import load
from keytool.optics.kept import field_is_stale, index_text, named_by_content
from keytool.optics.laid import LEAST, laid, met_in
from keytool.optics.low_power import ACROSS, APERTURE, passed
from keytool.optics.rays import bright_to
from keytool.optics.transfer import WATER, overlap
from keytool.pages.eyepiece import at_low_power
from keytool.pages.page_writer import Writer

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def library():
    return load(ROOT).library


def test_a_flat_plate_loses_nothing_and_a_steep_slope_all() -> None:
    assert passed(np.array([0.0]))[0] == pytest.approx(1.0)
    assert passed(np.array([2.1 * APERTURE]))[0] == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize("slope", [0.02, 0.05, 0.1, 0.15])
@pytest.mark.parametrize("iris", [0.5, 1.0])
def test_what_is_lost_is_the_overlap_of_lamp_and_pupil(slope: float, iris: float) -> None:
    # two discs that overlap: the closed form for the transfer function in focus (Hopkins 1953, recalled)
    assert passed(np.array([slope]), iris)[0] == pytest.approx(overlap(slope / APERTURE, iris), abs=1e-6)


@pytest.mark.parametrize("index", [1.376, 1.47, 1.549])
def test_a_ball_is_bright_nearly_as_far_out_as_by_snells_law(index: float) -> None:
    # Snell's law traced through a ball, against the thin prism that a field is made with; upright light, a lamp of no width.
    # Near the axis the prism overstates the power of a ball by its index over that of water: sand comes out a little too dark.
    exact = bright_to(index, APERTURE)
    b = np.linspace(0, 0.999, 100_000)
    slope = 2 * (index - WATER) * b / np.sqrt(1 - b * b)
    assert exact * WATER / index * 0.99 <= b[np.argmax(slope > APERTURE)] <= exact * 1.01


def test_the_field_is_that_of_a_ten_times_eyepiece() -> None:
    # field number 18 over a 4x objective: 4.5 mm (common practice, no source)
    assert ACROSS == 18_000 / 4


def test_only_what_can_be_told_from_a_speck_is_laid_in(library) -> None:
    for theme in library.eyepiece.fields:
        assert all(each.long >= LEAST for each in met_in(library, theme))
    assert met_in(library, "dots") == []


def test_every_kept_field_is_small_named_by_content_and_of_what_there_is_now(library) -> None:
    assert len(library.eyepiece.fields) >= 7
    for theme, still in library.eyepiece.fields.items():
        content = (ROOT / "keydata/eyepiece" / still.file).read_bytes()
        assert len(content) <= 15_000
        assert named_by_content(f"field-{theme}", content) == still.file
    stale = [theme for theme, still in library.eyepiece.fields.items() if field_is_stale(library, still)]
    assert len(stale) <= len(library.eyepiece.fields) / 2


def test_a_field_is_stale_when_what_lies_in_it_changes(library) -> None:
    still = library.eyepiece.fields["nematodes"]
    assert field_is_stale(library, replace(still, shows=still.shows[1:]))


def test_a_worm_of_the_field_is_whole_and_as_long_as_its_entry_says(library) -> None:
    worm = laid(library, library.entries["panagrolaimus"])
    length = library.entries["panagrolaimus"].statements["body-length"].showing
    assert 0.6 * length.low <= worm.long <= length.high  # it may lie bent


def test_the_index_keeps_theme_and_what_is_shown(library) -> None:
    still = library.eyepiece.fields["nematodes"]
    written = yaml.safe_load(index_text({still.entry: still}))[still.entry]
    assert written["theme"] == "nematodes"
    assert tuple(written["shows"]) == still.shows


def test_the_field_on_a_page_is_folded_lazy_and_labelled(library) -> None:
    html = at_low_power(Writer(library, "entries/index.md"), "nematodes")
    assert html.startswith("<details")
    assert 'loading="lazy"' in html
    assert "Computed picture, not a photograph." in html
    assert "4.5" in html
    assert at_low_power(Writer(library, "entries/index.md"), "optics") is None
    assert "too small for 40×" in at_low_power(Writer(library, "entries/index.md"), "dots")
