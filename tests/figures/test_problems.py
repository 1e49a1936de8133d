"""Bad figure data gets one clear sentence for each fault."""

import pytest

from keytool.figures import FigureError, draw, problems

FAULTS = {
    "kind": ("nematode-hed", {}, "no kind of drawing is called 'nematode-hed'. Did you mean 'nematode-head'? Allowed: nematode-head"),
    "parameter": (
        "nematode-head",
        {"spear-lenght": 3},
        "nematode-head has no parameter 'spear-lenght'. Did you mean 'spear-length'? Allowed: ",
    ),
    "word": (
        "nematode-head",
        {"spear": "stylett"},
        "nematode-head: spear: 'stylett' is not one of its values. Did you mean 'stylet'? Allowed: none, stylet",
    ),
    "number": ("round-body", {"diameter": "20"}, "round-body: diameter: '20' should be a number between 2 and 1000 µm"),
    "flag for number": ("round-body", {"diameter": True}, "round-body: diameter: True should be a number"),
    "range": ("round-body", {"diameter": 5000}, "round-body: diameter: 5000 µm is not between 2 and 1000 µm"),
    "flag": ("round-body", {"stalk": "yes"}, "round-body: stalk: 'yes' should be true or false"),
    "word as list": ("nematode-head", {"spear": ["stylet"]}, "nematode-head: spear: ['stylet'] is not one of its values."),
    "conflict": ("nematode-head", {"two-spears": True}, "nematode-head: two-spears is for a young dorylaim"),
    "no room": ("nematode-head", {"gullet-length": 30, "gullet": "rhabditoid"}, "nematode-head: gullet-length 30 µm leaves no room"),
    "stout worm": ("nematode-body", {"length": 200, "width": 100}, "nematode-body: width 100 µm is too much for a worm 200 µm long"),
    "clamp alone": ("thread", {"clamp": True}, "thread: clamp needs cross-walls: true"),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_each_fault_is_named(fault):
    kind, params, message = FAULTS[fault]
    (found,) = problems(kind, params)
    assert found.startswith(message)
    with pytest.raises(FigureError) as raised:
        draw(kind, params, title="t")
    assert str(raised.value) == found


def test_all_faults_are_told_at_once():
    assert len(problems("thread", {"width": 0, "form": "odd", "colour": 1})) == 3


def test_good_parameters_have_no_problems():
    assert problems("nematode-head", {"spear": "stylet", "spear-length": 16, "width": 22}) == []
