"""What the microscope shows of an entry, beside its ink plate: a computed picture that is kept with the library, and its knobs.

Nothing is computed here. The picture stands without a script; where it has a series, the script puts a knob for the
focus and one for the iris beneath it, and fetches the series at the first touch.
"""

from __future__ import annotations

import json
from collections.abc import Iterator

from keytool.figures.frame import length_label, round_length
from keytool.library.eyepiece_records import FOLDER, Still
from keytool.library.load import Loaded
from keytool.library.model import Entry
from keytool.library.wording import number
from keytool.optics import LEAVES_OUT
from keytool.pages.html import Html, el
from keytool.pages.page_writer import Writer

SIZE = "288"
BAR = 0.28
"""The longest scale bar, as a share of the picture."""


def eyepiece_files(loaded: Loaded) -> dict[str, bytes]:
    """The pictures by their path in the site. One that is not there is left out; the check says so."""
    stills = loaded.library.eyepiece.stills.values()
    names = [name for each in stills for name in (each.file, each.series.file if each.series else "") if name]
    found = {f"{FOLDER}/{name}": loaded.root / "keydata" / FOLDER / name for name in names}
    return {path: file.read_bytes() for path, file in found.items() if file.is_file()}


def through_eyepiece(writer: Writer, entry: Entry) -> Iterator[Html]:
    """The picture in its round field, labelled as computed, with its scale bar; nothing where there is none."""
    still = writer.library.eyepiece.stills.get(entry.id)
    if still is None:
        return
    bar = round_length(BAR * still.across)
    image = el(
        "img",
        src=writer.href(f"{FOLDER}/{still.file}"),
        width=SIZE,
        height=SIZE,
        loading="lazy",
        decoding="async",
        alt=f"{entry.name} as a 40x objective shows it, computed. {_window(still)}.",
    )
    yield el(
        "figure",
        el("div", image, class_="wm-still-round"),
        el("div", el("i", style=f"--share:{100 * bar / still.across:.1f}%"), length_label(bar), class_="wm-still-bar"),
        el(
            "figcaption",
            el("strong", "Computed picture, not a photograph."),
            f" At 400×, {_window(still)}. ",
            el("span", f"Focus {_signed(still.focus)} from its middle, iris {number(still.iris)}.", data_says="knobs"),
            el("details", el("summary", "What it leaves out"), el("p", f"{LEAVES_OUT[0].upper()}{LEAVES_OUT[1:]}. {_RESTS}")),
        ),
        class_="wm-still",
        data_eyepiece=_for_script(writer, still),
        data_search_exclude=True,
    )


_RESTS = (
    "It is worked out from the drawing beside it, as waves through slices, with refractive indices that are mostly from memory. "
    "Directions are sure: what turns bright or dark as you focus. Shades and fine grain are not."
)


def _window(still: Still) -> str:
    return f"a window {number(float(f'{still.across:.2g}'))}\u00a0µm across"


def _signed(focus: float) -> str:
    return f"{'+' if focus > 0 else '−' if focus < 0 else ''}{number(abs(focus))}\u00a0µm"


def _for_script(writer: Writer, still: Still) -> str | None:
    series = still.series
    if series is None:
        return None
    raw = {"src": writer.href(f"{FOLDER}/{series.file}"), "focus": series.focus, "irises": series.irises, "at": still.focus}
    return json.dumps(raw, separators=(",", ":"))
