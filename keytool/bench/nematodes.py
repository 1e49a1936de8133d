"""Mass of nematodes, and indices of what a community of them is like.

A guild is a feeding group and a colonizer-persister class, such as Ba1: Ba bacterial, Fu fungal, Ca predator, Om omnivore,
Pl plant feeder. Counts may be any numbers in proportion. An index whose divisor is 0 is None: not to be worked out.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from keytool.library.bench_records import Constant

PLANT = "Pl"


@dataclass(frozen=True, slots=True)
class Weights:
    """Weights of the guilds (Ferris, Bongers and de Goede 2001): class 2 feeders, class 1 bacterial feeders, and classes 3 to 5."""

    basal: float
    enriched: float
    structure: Mapping[int, float]


def weights(constants: Mapping[str, Constant]) -> Weights:
    """The weights as the library states them."""
    named = {3: "weight-structure-three", 4: "weight-structure-four", 5: "weight-structure-five"}
    return Weights(
        constants["weight-basal"].value,
        constants["weight-enriched"].value,
        {cp: constants[each].value for cp, each in named.items()},
    )


def fresh_ug(length_um: float, width_um: float, divisor: float) -> float:
    """Fresh mass of a worm by Andrássy: L D² / 1.6 million. `width_um` is the greatest, relaxed and not flattened."""
    return length_um * width_um**2 / divisor


def carbon_ug(fresh: float, dry_share: float, carbon_share: float) -> float:
    """Carbon of so much fresh mass."""
    return fresh * dry_share * carbon_share


def footprint_ug(count: float, mean_fresh_ug: float, cp: int, growth: float, respiration: float) -> float:
    """Metabolic footprint of a kind of worm (Ferris 2010): N (0.1 W / m + 0.273 W^0.75) with the two factors handed in."""
    return count * (growth * mean_fresh_ug / cp + respiration * math.pow(mean_fresh_ug, 0.75))


def split(guild: str) -> tuple[str, int]:
    """Feeding group and class of a guild. Raises ValueError when it is none."""
    found = re.fullmatch(r"(Ba|Fu|Ca|Om|Pl)([1-5])", guild)
    if not found:
        raise ValueError(guild)
    return found[1], int(found[2])


@dataclass(frozen=True, slots=True)
class Indices:
    """Indices of a community. `worms` is how many were named; below about a hundred they mean little.

    `mi` free-living only, `mi_2_5` without class 1, `sigma_mi` all, `ppi` plant feeders; `ei` enrichment, `si` structure,
    `bi` basal, `ci` channel, each 0 to 100; `ncr` share of bacterial among bacterial and fungal feeders; `shannon` in nats.
    Plant feeders take no part in EI, SI, BI, CI and NCR.
    """

    worms: float
    mi: float | None
    mi_2_5: float | None
    sigma_mi: float | None
    ppi: float | None
    e: float
    b: float
    s: float
    ei: float | None
    si: float | None
    bi: float | None
    ci: float | None
    ncr: float | None


def indices(guilds: Mapping[str, float], by: Weights) -> Indices:
    """The indices of counts by guild (Bongers 1990; Ferris, Bongers and de Goede 2001). Resting stages must be left out beforehand."""
    known = {split(each): count for each, count in guilds.items()}
    free = {guild: count for guild, count in known.items() if guild[0] != PLANT}
    channel = by.basal * guilds.get("Fu2", 0)  # these feeders stand for both: they are basal, and they follow fresh food
    e = by.enriched * guilds.get("Ba1", 0) + channel
    b = by.basal * guilds.get("Ba2", 0) + channel
    s = math.fsum(by.structure.get(cp, 0.0) * count for (_, cp), count in free.items()) + by.basal * guilds.get("Ca2", 0)
    bacterial, fungal = (math.fsum(n for (group, _), n in free.items() if group == each) for each in ("Ba", "Fu"))
    return Indices(
        math.fsum(known.values()),
        _mean_class(free.items()),
        _mean_class((guild, count) for guild, count in free.items() if guild[1] > 1),
        _mean_class(known.items()),
        _mean_class((guild, count) for guild, count in known.items() if guild[0] == PLANT),
        e,
        b,
        s,
        _share(e, e + b),
        _share(s, s + b),
        _share(b, b + e + s),
        _share(channel, e),
        bacterial / (bacterial + fungal) if bacterial + fungal else None,
    )


def shannon(counts: Iterable[float]) -> float:
    """Diversity of kinds, natural logarithm."""
    each = [count for count in counts if count > 0]
    total = math.fsum(each)
    return -math.fsum(count / total * math.log(count / total) for count in each)


def _mean_class(items: Iterable[tuple[tuple[str, int], float]]) -> float | None:
    listed = list(items)
    total = math.fsum(count for _, count in listed)
    return math.fsum(cp * count for (_, cp), count in listed) / total if total else None


def _share(part: float, whole: float) -> float | None:
    return 100 * part / whole if whole else None
