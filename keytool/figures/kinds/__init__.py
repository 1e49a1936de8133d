"""The registry: every kind of drawing by name."""

from __future__ import annotations

from . import (
    arthropods,
    diatom,
    dots,
    drops,
    fault,
    fibre,
    gliders,
    grains,
    larva,
    moving_cell,
    nematode_body,
    nematode_head,
    pollen,
    rotifer,
    round_body,
    segmented_worm,
    tardigrade,
    thread,
)
from .kind import Kind, Param

__all__ = ["KINDS", "Kind", "Param"]

KINDS: dict[str, Kind] = {
    kind.name: kind
    for kind in (
        nematode_head.KIND,
        nematode_body.KIND,
        segmented_worm.KIND,
        rotifer.KIND,
        tardigrade.KIND,
        arthropods.KIND,
        larva.KIND,
        gliders.KIND,
        thread.KIND,
        round_body.KIND,
        moving_cell.KIND,
        dots.KIND,
        grains.GRAIN,
        grains.CRUMB,
        fibre.KIND,
        drops.BUBBLE,
        drops.OIL_DROP,
        pollen.KIND,
        diatom.KIND,
        fault.KIND,
    )
}
