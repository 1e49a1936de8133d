"""Parts lie where they lie in life."""

import pytest
from test_sizes import drawn


@pytest.mark.parametrize("form", ["walker", "walker-with-tail"])
def test_the_wreath_of_a_walking_ciliate_runs_down_the_right_of_its_belly_view(form):
    """The platelets follow the front and the cell's own left, which lies on the right when one looks at its belly."""
    picture = drawn("ciliate", form=form, length=100)
    wreath, outline = picture.points("wreath"), picture.points("outline")
    middle = (min(x for x, _ in outline) + max(x for x, _ in outline)) / 2
    low = max(wreath, key=lambda p: p[1])
    assert low[0] > middle and sum(x > middle for x, _ in wreath) > sum(x < middle for x, _ in wreath)


@pytest.mark.parametrize("stoma", ["funnel", "minute", "slit"])
def test_a_thick_gullet_behind_a_small_mouth_leaves_room_on_both_sides(stoma):
    picture = drawn("nematode-head", width=30, stoma=stoma, gullet="mononchoid")
    widest = max(x for x, _ in picture.points("gullet")) - min(x for x, _ in picture.points("gullet"))
    body = max(x for x, _ in picture.points("outline")) - min(x for x, _ in picture.points("outline"))
    assert 0.45 < widest / body < 0.65


def test_the_scar_of_a_bean_shaped_spore_lies_along_its_hollow_side():
    picture = drawn("round-body", shape="bean", mark="scar", diameter=40, width=26)
    xs = [x for x, _ in picture.points("outline")]
    assert max(x for x, _ in picture.points("mark")) < (min(xs) + max(xs)) / 2


def test_a_folded_worm_lies_wholly_within_its_egg():
    picture = drawn("round-body", shape="oval", diameter=60, width=30, contents="worm")
    shell, worm = picture.points("outline"), picture.points("contents")
    assert min(x for x, _ in shell) < min(x for x, _ in worm) and max(x for x, _ in worm) < max(x for x, _ in shell)
    assert min(y for _, y in shell) < min(y for _, y in worm) and max(y for _, y in worm) < max(y for _, y in shell)
