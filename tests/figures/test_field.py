"""The round field: everything in it at true size, by the user's own field number."""

from functools import cache
from pathlib import Path

import pytest
from reading import read

from keytool.figures import to_svg
from keytool.figures.field import Optics, field_view, optics
from keytool.library import load

LOW, HIGH = (Optics(18, 10, objective, aperture, 0.55) for objective, aperture in ((4, 0.10), (40, 0.65)))
PX = 2.0


@cache
def library():
    return load(Path(__file__).parents[2]).library


def seen(entry, through):
    view = field_view(library(), library().entries[entry], through)
    return read(to_svg(view, PX, id_prefix="x"), PX)


def test_the_field_is_field_number_over_objective():
    assert (LOW.diameter, HIGH.diameter) == (4500, 450)
    assert Optics(22, 10, 40, 0.65, 0.55).diameter == 550
    assert HIGH.power == 400 and HIGH.resolution == pytest.approx(0.516, abs=0.001)


def test_the_example_microscope_comes_from_the_library():
    assert optics(library(), "low") == LOW and optics(library(), "high", 20).diameter == 500


@pytest.mark.parametrize("through", [LOW, HIGH])
def test_the_edge_of_the_field_is_drawn_to_scale(through):
    assert seen("ciliate", through).span("field") == pytest.approx((through.diameter, through.diameter), rel=0.001)


@pytest.mark.parametrize(("entry", "through", "longest"), [("mite", LOW, 400), ("springtail", LOW, 1000)])
def test_an_animal_has_its_own_size_in_the_field(entry, through, longest):
    figure = library().entries[entry].figure
    assert figure.params["length"] == longest
    assert max(seen(entry, through).span("outline")) == pytest.approx(longest, rel=0.03)


@pytest.mark.parametrize("entry", ["nematode", "rod", "hypha", "air-bubble", "xiphinema", "mite"])
@pytest.mark.parametrize("through", [LOW, HIGH])
def test_nothing_lies_beyond_the_edge(entry, through):
    picture = seen(entry, through)
    xs, ys = zip(*picture.points("field"), strict=True)
    x0, y0, r = (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2, (max(xs) - min(xs)) / 2
    for part, pts, _ in picture.paths:
        if part not in ("scale-bar", "field"):
            assert all((x / PX - x0) ** 2 + (y / PX - y0) ** 2 <= (1.02 * r) ** 2 for x, y in pts), part


def test_below_the_limit_of_the_lens_there_are_soft_dots_only():
    assert {part for part, _, _ in seen("dwarf-cell", HIGH).paths} == {"unresolved", "field", "scale-bar"}
    assert {part for part, _, _ in seen("rod", LOW).paths} == {"unresolved", "field", "scale-bar"}
    assert "dots" in {part for part, _, _ in seen("rod", HIGH).paths}


def test_a_soft_dot_is_as_wide_as_the_finest_spacing():
    picture = seen("dwarf-cell", HIGH)
    widths = {round(max(x for x, _ in pts) - min(x for x, _ in pts), 2) for part, pts, _ in picture.paths if part == "unresolved"}
    assert max(widths) == pytest.approx(HIGH.resolution * PX, abs=0.03)


def test_a_nematode_is_a_hair_at_low_power_even_where_only_its_head_is_drawn():
    wide, tall = seen("xiphinema", LOW).span("outline")
    assert 1000 < max(wide, tall) < 4000 < LOW.diameter


def test_every_entry_with_a_drawing_has_a_field_view():
    for k, entry in enumerate(library().entries.values()):
        view = field_view(library(), entry, (LOW, HIGH)[k % 2])
        assert (view is None) == (entry.figure is None)
        assert view is None or view.title.startswith(entry.name)
