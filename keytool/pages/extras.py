"""What other faces add to the site. Faces do not know each other, so whoever builds the site hands it over."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Extras:
    """Files by their path in the site, HTML for slots of the hand-written pages by name, and the papers a card can be made on."""

    files: Mapping[str, bytes] = field(default_factory=dict)
    slots: Mapping[str, str] = field(default_factory=dict)
    papers: tuple[str, ...] = ()
