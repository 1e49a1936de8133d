"""What the tests of the sums share: the constants of the library, and how near is near enough."""

from __future__ import annotations

import pytest

from keytool.bench.constants import judging
from keytool.bench.counts import Judging
from keytool.library import Library


@pytest.fixture(scope="session")
def constants(library: Library):
    return library.bench.constants


@pytest.fixture(scope="session")
def by(constants) -> Judging:
    return judging(constants)


def near(value: float, wanted: float, relative: float = 1e-5):
    """Equal to six figures, as the tables print them."""
    return value == pytest.approx(wanted, rel=relative)
