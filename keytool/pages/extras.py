"""What other faces add to the site. Faces do not know each other, so whoever builds the site hands it over."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Extras:
    """Files by their path in the site, and HTML for slots of the hand-written pages by name.

    `papers` are those a card can be made on, `forms` and `inks` what it can be made as, each with what that is.
    """

    files: Mapping[str, bytes] = field(default_factory=dict)
    slots: Mapping[str, str] = field(default_factory=dict)
    papers: tuple[str, ...] = ()
    forms: Mapping[str, str] = field(default_factory=dict)
    inks: Mapping[str, str] = field(default_factory=dict)
