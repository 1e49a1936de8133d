"""The script of the pages gives the same as Python, to 1e-9, on recorded walks and descriptions."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from pathlib import Path

import pytest

from keytool.identify import Model, compiled, library_data
from keytool.library import Library
from tests.identify.recorded import COUNT, addresses, outcome

SCRIPT = Path(__file__).parents[2] / "site" / "assets" / "engine.js"
COMPARE = Path(__file__).parent / "compare.js"


@pytest.fixture(scope="module")
def model(library: Library) -> Model:
    return compiled(library)


def test_there_are_at_least_four_hundred_cases() -> None:
    assert COUNT >= 400


def test_the_script_gives_the_same_as_python(model: Model, tmp_path: Path) -> None:
    node = shutil.which("node")
    if not node:
        pytest.skip("there is no node; the tests of the pages run the same script in Chromium")
    every = 1 if os.environ.get("WETMOUNT_WHOLE") else 6
    cases = [outcome(model, address) for address in addresses(model)[::every]]
    (tmp_path / "data.json").write_text(json.dumps(library_data(model)), "utf-8")
    (tmp_path / "cases.json").write_text(json.dumps(cases), "utf-8")
    done = subprocess.run([node, COMPARE, SCRIPT, tmp_path], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout[-3000:] + done.stderr[-2000:]


def test_the_data_of_the_whole_library_is_small(model: Model) -> None:
    import gzip

    packed = gzip.compress(json.dumps(library_data(model), separators=(",", ":")).encode(), 9)
    assert len(packed) < 120_000


def test_the_same_library_gives_the_same_data(library: Library, model: Model) -> None:
    assert json.dumps(library_data(compiled(library))) == json.dumps(library_data(model))
