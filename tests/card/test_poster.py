"""The poster: everything met at one power, all at one scale, on the paper asked for."""

from __future__ import annotations

import re

import pytest

from keytool.card.poster import POSTERS, poster
from keytool.library import Library


@pytest.fixture(scope="module")
def small(library: Library):
    return poster(library, POSTERS["A3"], 400)


def test_it_is_one_page_of_that_paper_in_exact_millimetres(small) -> None:
    [box] = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", small.data)
    assert [float(each) * 25.4 / 72 for each in box] == pytest.approx([297, 420], abs=0.02)


def test_single_things_that_are_met_are_on_it_and_groups_are_not(small, library: Library) -> None:
    assert {library.entries[each].name for each in ("air-bubble", "sac-fungus-hypha", "acanthamoeba", "humic-crumb")} <= set(small.shown)
    assert library.entries["hypha"].name not in small.shown
    assert library.entries["spirillum"].name not in small.shown  # rare


def test_a_larger_paper_gives_a_larger_scale(small, library: Library) -> None:
    assert poster(library, POSTERS["A2"], 400).um_per_mm < small.um_per_mm


def test_at_low_power_there_are_worms_and_no_bacteria(library: Library) -> None:
    shown = poster(library, POSTERS["A3"], 40).shown
    assert library.entries["plectus"].name in shown
    assert library.entries["coccus-pair"].name not in shown


def test_the_same_library_gives_the_same_bytes(small, library: Library) -> None:
    assert poster(library, POSTERS["A3"], 400).data == small.data
