"""Naked amoebae by the way they reach out."""

from __future__ import annotations

from collections.abc import Callable

from ...frame import Sketch
from ..amoebae import amoeba
from ..kind import Kind, Values, accent, choice, num, um, word
from .armed import cones, proteus, rays, spikes
from .net import net
from .round_ones import lens, sun
from .slugs import bent_slug, eruptive, fan, knob_slug, plain, slug, thin_slug, wrinkled


def build(v: Values) -> Sketch:
    """The amoeba, creeping up the page."""
    return _FORMS[word(v, "form")](num(v, "length"))


_FORMS: dict[str, Callable[[float], Sketch]] = {
    "lobes": amoeba,
    "fingers": proteus,
    "bent-slug": bent_slug,
    "thin-slug": thin_slug,
    "slug": slug,
    "eruptive": eruptive,
    "knob-slug": knob_slug,
    "fan": fan,
    "wrinkled": wrinkled,
    "spikes": spikes,
    "rays": rays,
    "cones": cones,
    "net": net,
    "plain": plain,
    "lens": lens,
    "sun": sun,
}


KIND = Kind(
    "amoeba",
    "a naked amoeba by the way it reaches out",
    (
        choice(
            "form",
            tuple(_FORMS),
            "several broad lobes; many long blunt arms; slug in a bend; thin slug; steady slug; "
            "slug whose front bursts to the sides; slug with a rear knob; fan; bag in folds; "
            "thin spikes; hair-thin rays; cones; net; small plain cell; lens with a clear rim; sun with stiff rays",
        ),
        um("length", 25, 2, 1000, "length in the direction of travel, without spikes and rays"),
        accent("body", "pseudopods", "nucleus", "vacuole", "contents", "folds", "knob", "rear", "crystals"),
    ),
    build,
)
