"""What an entry looks like in the round field at low and at high power, at true relative size.

The thing is drawn once, and both views set it into a circle; where the portrait shows a part only (the head of a worm),
that is the whole. The script `field-views.js` sets
them anew for the user's own field number and objectives.
"""

from __future__ import annotations

import json
from collections.abc import Iterator

from keytool.figures import to_svg
from keytool.figures.field import Optics, Power, optics
from keytool.figures.frame import length_label, round_length
from keytool.figures.in_field import beyond_its_plate, is_in_field
from keytool.figures.motion import OPTICS
from keytool.library.model import Entry
from keytool.library.wording import number
from keytool.pages.field_svg import DOT, LINE, RADIUS, Thing, content, short, thing_of
from keytool.pages.figure_files import bare
from keytool.pages.html import Html, el
from keytool.pages.page_writer import Writer
from keytool.pages.plates import Portrait, grouped

POWERS: tuple[Power, Power] = ("low", "high")
NEEDED = ("field-number-example", "eyepiece-power", "wavelength", *(each for pair in OPTICS.values() for each in pair))
"""The bench quantities without which there is no field to show."""
BAR_X = -55
"""Where the scale bar under a view begins."""
THING = "wm-thing"
"""The id of the thing that both views set into the field."""


def field_views(writer: Writer, entry: Entry, portrait: Portrait | None) -> Iterator[Html]:
    """Both views with their words; nothing where the entry is no thing in the field, or the library knows no microscope."""
    library = writer.library
    if portrait is None or not is_in_field(entry) or any(each not in library.quantities for each in NEEDED):
        return
    high = optics(library, "high")
    shown = beyond_its_plate(entry, portrait.drawing, high) or portrait.drawing
    scale = 2 * RADIUS / max(shown.box.width, shown.box.height)
    thing = thing_of(shown, THING, scale, high.diameter)
    given = {power: optics(library, power) for power in POWERS}
    yield el(
        "div",
        el(
            "svg",
            el("defs", Html(grouped(bare(to_svg(shown, scale, id_prefix=THING)), THING)[1])),
            width="0",
            height="0",
            aria_hidden="true",
            class_="wm-figure",
        ),
        *(_view(thing, entry, power, given[power], is_tonal=portrait.drawing.tonal) for power in POWERS),
        el(
            "p",
            "At true size in the field of an example microscope, field number ",
            _quantity(writer, "field-number-example"),
            ". What is too fine for its own lines is drawn a little heavier.",
            class_="label",
            data_field_example=True,
        ),
        class_="eye",
        data_field_views=json.dumps(_for_script(thing, given), separators=(",", ":")),
        data_search_exclude=True,
    )
    yield el("script", src=writer.href("assets/entry.js"), defer=True)


def _for_script(thing: Thing, given: dict[Power, Optics]) -> dict[str, object]:
    return {
        "scale": round(thing.scale, 5),
        "middle": [round(each, 2) for each in thing.middle],
        "spot": [round(each, 2) for each in thing.spot],
        "pen": round(thing.pen, 4),
        "reach": round(thing.reach, 2),
        "longest": round(thing.size.longest, 2),
        "line": LINE,
        "dot": DOT,
        "radius": RADIUS,
        "fieldNumber": given["low"].field_number,
        "eyepiece": given["low"].eyepiece,
        **{power: each.objective for power, each in given.items()},
    }


def _view(thing: Thing, entry: Entry, power: Power, seen: Optics, *, is_tonal: bool) -> Html:
    """One view and its words, for the microscope that the library takes as its example."""
    unit = RADIUS / (seen.diameter / 2)
    times = f"{number(seen.power)}×"
    bar = round_length(0.3 * seen.diameter)
    return el(
        "figure",
        el(
            "svg",
            el("title", f"{entry.name} in the field at {times}"),
            el("clipPath", el("circle", r=short(RADIUS)), id=f"wm-edge-{power}"),
            el("circle", r=short(RADIUS), class_="wm-field-ground"),
            el("g", *content(thing, power, seen), clip_path=f"url(#wm-edge-{power})"),
            el("circle", r=short(RADIUS), class_="wm-field-edge"),
            el("path", d=f"M{BAR_X} 113h{short(bar * unit)}", class_="wm-field-bar"),
            el("text", length_label(bar), x=short(BAR_X + bar * unit + 5), y="119"),
            viewBox="-103 -103 206 228",
            role="img",
            class_="wm-figure wm-field wm-tonal-field" if is_tonal else "wm-figure wm-field",
        ),
        el(
            "figcaption",
            el("strong", times, data_says="times"),
            " Field ",
            el("span", _across(seen.diameter), data_says="field"),
            " across. ",
            *(_too_fine(seen) if thing.size.finest < seen.resolution else _sizes(thing, seen)),
        ),
        data_power=power,
    )


def _sizes(thing: Thing, seen: Optics) -> Iterator[Html | str]:
    yield f"As drawn {_across(thing.size.longest)}, "
    yield el("span", _share(thing.size.longest / seen.diameter), data_says="share")
    yield " of the field."


def _too_fine(seen: Optics) -> Iterator[Html | str]:
    yield f"Too fine for this objective, which parts {_across(seen.resolution)}: a speck without a shape, or nothing."


def _across(um: float) -> str:
    """A length to two figures: `4.5 mm`, `450 µm`, `0.52 µm`."""
    value, unit = (um / 1000, "mm") if um >= 1000 else (um, "µm")
    return f"{number(float(f'{value:.2g}'))}\u00a0{unit}"


def _share(share: float) -> str:
    return "under 1\u00a0%" if share < 0.01 else f"{number(float(f'{100 * share:.2g}'))}\u00a0%"


def _quantity(writer: Writer, id: str) -> Html:
    return writer.rich(f"{{{id}}}")
