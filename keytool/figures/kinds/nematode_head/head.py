"""The measurements every part of a head is drawn from, worked out once."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import pow

from ...frame import pen_for
from ..kind import Values, given, num, word

_LIP_SHARE = {"stylet": 0.21, "odontostyle": 0.175, "onchiostyle": 0.17, "mural-tooth": 0.18}
_MOUTH = {  # length and width as shares of body width, from the mid-range of the fact tables for each type
    "open-tube": (0.40, 0.07),
    "flared-tube": (0.48, 0.14),
    "unseen": (0.12, 0.06),
    "jointed-tube": (0.42, 0.10),
    "wide-cup": (0.36, 0.22),
    "funnel": (0.16, 0.10),
    "minute": (0.09, 0.045),
    "barrel": (0.62, 0.34),
    "closed": (0.12, 0.0),
    "slit": (0.36, 0.03),
}
_GULLET = {  # from lips to the end of what matters, as shares of body width
    "rhabditoid": 3.5,
    "diplogastroid": 3.4,
    "tylenchoid": 3.3,
    "aphelenchoid": 3.0,
    "criconematoid": 2.6,
    "dorylaimoid": 4.3,
    "mononchoid": 3.0,
    "trichodorid": 3.4,
    "cylindrical": 3.0,
    "thin": 3.0,
    "none": 2.8,
}


@dataclass(frozen=True, slots=True)
class Head:
    """Lengths in µm from the front of the lips, on an axis that runs down the page; dorsal is to the right."""

    width: float
    lip: float
    lip_shape: str
    join: float
    mouth: str
    mouth_length: float
    mouth_width: float
    spear: str
    spear_tip: float
    spear_length: float
    spear_width: float | None
    base_length: float
    gullet: str
    gullet_start: float
    gullet_end: float
    end: float
    pen: float
    coarse: bool

    def half(self, y: float) -> float:
        """Half the body width at depth y, behind the lips."""
        reach = (1.4 if self.coarse else 3.0) * self.width
        t = min(1.0, max(0.0, (y - self.join) / reach))
        start = self.neck
        return start + (self.width / 2 - start) * (1 - pow(1 - t, 2.8))

    @property
    def neck(self) -> float:
        """Half width just behind the lips."""
        share = {"smooth": 1.03, "offset": 0.93, "angular": 0.86, "disc": 0.82, "frilled": 0.9, "capped": 0.98}
        return self.lip * share[self.lip_shape]

    @property
    def skin(self) -> float:
        """How thick the skin is drawn."""
        return self.width * (0.05 if self.gullet in ("dorylaimoid", "mononchoid") else 0.04)

    @property
    def spear_base(self) -> float:
        """Where the piercing part ends: the knobs, or the joint with the extension."""
        return self.spear_tip + self.spear_length

    @property
    def mouthpart_end(self) -> float:
        """The depth behind which there is only gullet."""
        if self.spear == "none":
            return self.mouth_length + 0.15 * self.lip
        return self.spear_base + self.base_length


def measure(v: Values) -> Head:
    """The head for checked parameter values, cropped where `reach` says."""
    head = _proportions(v)
    start = head.mouthpart_end
    gullet_end = given(v, "gullet-length", max(_GULLET[head.gullet] * head.width, shortest_gullet(head)))
    # A young dorylaim carries its next spear in the gullet: the picture has to reach past it.
    behind = 1.3 * head.spear_length + 0.3 * head.width if v["two-spears"] else 0.5 * head.width
    end = gullet_end + 0.35 * head.width if word(v, "reach") == "gullet" else max(start + behind, 1.3 * head.width)
    return replace(head, gullet_start=start, gullet_end=gullet_end, end=end, pen=pen_for(1.05 * head.width, end))


def _proportions(v: Values) -> Head:
    width, spear, mouth, lips = num(v, "width"), word(v, "spear"), word(v, "stoma"), word(v, "lip-shape")
    long_share, wide_share = _MOUTH[mouth]
    mouth_length = given(v, "stoma-length", long_share * width)
    mouth_width = given(v, "stoma-width", wide_share * width)
    share = _LIP_SHARE.get(spear, 0.30 if mouth == "barrel" else 0.19)
    if lips == "capped":
        share = max(share, 0.21)
    lip = given(v, "lip-width", 2 * max(share * width, 0.72 * mouth_width if spear == "none" else 0.0)) / 2
    spear_length = num(v, "spear-length") if spear != "none" else 0.0
    base_length = given(v, "odontophore-length", 1.1 * spear_length) if spear == "odontostyle" else 0.0
    if spear == "onchiostyle":
        base_length = 0.12 * spear_length
    tip = {"stylet": 0.12, "odontostyle": 0.55, "onchiostyle": 0.5, "mural-tooth": 1.2}.get(spear, 0.0) * lip
    return Head(
        width=width,
        lip=lip,
        lip_shape=lips,
        join=lip * {"smooth": 0.95, "offset": 1.15, "angular": 1.05, "disc": 0.85, "frilled": 1.15, "capped": 0.85}[lips],
        mouth=mouth,
        mouth_length=mouth_length,
        mouth_width=mouth_width,
        spear=spear,
        spear_tip=tip,
        spear_length=spear_length,
        spear_width=None if v["spear-width"] is None else num(v, "spear-width"),
        base_length=base_length,
        gullet=word(v, "gullet"),
        gullet_start=0.0,
        gullet_end=0.0,
        end=0.0,
        pen=1.0,
        coarse=word(v, "rings") in ("coarse", "scaled"),
    )


def shortest_gullet(head: Head) -> float:
    """The least gullet length (µm from the front) that leaves room for its parts behind the mouthpart."""
    room = {"tylenchoid": 2.2, "criconematoid": 1.3}.get(head.gullet, 2.0)
    return head.mouthpart_end + room * head.width
