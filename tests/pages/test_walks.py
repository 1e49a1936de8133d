"""The page's script gives the same answers as Python: recorded cases against both, and every real key live."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

import pytest

from keytool.identify import data, ground
from keytool.library import Library, load
from tests.conftest import sampled
from tests.identify.again import put_again
from tests.pages.walk_cases import RECORDED, cases, recorded

SCRIPT = Path(__file__).parents[2] / "site" / "assets" / "walk.js"
RUN = """([ground, addresses]) => addresses.map(address => {
    let answers;
    try { answers = wetmountWalk.answersAt(ground, address); } catch (error) { return {address, error: error.message}; }
    const standing = wetmountWalk.stand(ground, answers);
    return {address: wetmountWalk.address(answers), ...standing, doubt: wetmountWalk.doubt(ground, answers, standing),
            arrivals: wetmountWalk.arrivals(ground, answers, standing)};
})"""


def same(one: Any, other: Any) -> bool:
    """Whether two values are alike, numbers to 1e-9."""
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(same(one[name], other[name]) for name in one)
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(same, one, other))
    if isinstance(one, int | float) and isinstance(other, int | float):
        return math.isclose(one, other, rel_tol=0, abs_tol=1e-9)
    return bool(one == other)


def unlike(expected: list[dict[str, Any]], given: list[dict[str, Any]]) -> list[tuple[Any, Any]]:
    assert len(expected) == len(given)
    return [(one, other) for one, other in zip(expected, given, strict=True) if not same(one, other)]


def test_recorded_walks_in_python(mini: Path):
    now = recorded(load(put_again(mini)).library)
    then = json.loads(RECORDED.read_text(encoding="utf-8"))
    assert now.keys() == then.keys()
    for key in then:
        assert same(then[key]["data"], now[key]["data"]), f"{key}: the mini library has changed. Run: python -m tests.pages.walk_cases"
        assert unlike(then[key]["cases"], now[key]["cases"])[:1] == []


def test_recorded_walks_cover_what_matters():
    everything = [case for key in json.loads(RECORDED.read_text(encoding="utf-8")).values() for case in key["cases"]]
    assert any("error" in case for case in everything)
    assert any(len(case.get("ends", [])) > 1 for case in everything), "a walk that had to stop undecided"
    assert any(not case.get("possible", ["x"]) for case in everything) or any("cannot-tell" in case["address"] for case in everything)
    assert {case["doubt"]["jumps"] for case in everything if "doubt" in case} == {True, False}
    assert max(case["doubt"]["row"] for case in everything if "doubt" in case) > 1
    assert any(arrival["rivals"] for case in everything for arrival in case.get("arrivals", []))


@pytest.mark.browser
def test_recorded_walks_in_the_script(browser: Any):
    page = browser.new_page()
    page.add_script_tag(path=str(SCRIPT))
    for key in json.loads(RECORDED.read_text(encoding="utf-8")).values():
        given = page.evaluate(RUN, [key["data"], [case["address"] for case in key["cases"]]])
        assert unlike(key["cases"], given)[:1] == []
    page.close()


@pytest.mark.browser
def test_every_real_key_in_the_script(browser: Any, library: Library):
    page = browser.new_page()
    page.add_script_tag(path=str(SCRIPT))
    for key in library.keys.values():
        it = ground(library, key)
        expected = cases(it, sampled)
        assert len(expected) > 15
        given = page.evaluate(RUN, [json.loads(json.dumps(data(it))), [case["address"] for case in expected]])
        assert unlike(expected, given)[:1] == []
    page.close()
