"""The constants of the bench: what `keydata/bench/constants.yaml` gives, as the sums take them."""

from __future__ import annotations

from collections.abc import Mapping

from keytool.bench.counts import Judging
from keytool.library.bench_records import Constant

__all__ = ["Constant", "judging"]


def judging(constants: Mapping[str, Constant]) -> Judging:
    """How intervals are made, from the constants of a library."""
    return Judging(
        constants["confidence"].value,
        round(constants["least-fields-to-widen"].value),
        round(constants["least-total-to-widen"].value),
        constants["clumped-chance"].value,
        constants["surely-clumped-chance"].value,
    )
