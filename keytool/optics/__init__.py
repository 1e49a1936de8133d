"""Through the eyepiece: from an entry's own drawing to what a brightfield microscope shows of it.

    drawing -> silhouette -> matter in slices -> waves, or rays for bubbles, drops and sand -> lamp, eye and file

Signs: light goes up (+z), lengths are in µm, the slide is at z = 0. A focus above 0 means that the plane in focus lies above
the middle of the thing, which is the stage lowered. The iris is the condenser's aperture over the objective's (S), from 0 (shut) to 1.

Nothing here is needed to build the site or to start the commands: pictures are made once, by `wetmount eyepiece`, and
kept in `keydata/eyepiece/`. Only `kept` and `sections` may be imported without numpy and scipy.
"""

from __future__ import annotations

MODEL = "1"
"""Raised when a change to this package should change the pictures; a still made by an older one is told as stale."""
LEAVES_OUT = (
    "colour fringes of the lens, the shadow of one body on another, scratches and streaming, and all that its drawing does not hold"
)
"""What every computed picture lacks, said beside it."""
