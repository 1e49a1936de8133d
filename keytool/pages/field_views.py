"""What an entry looks like in the round field at low and at high power, at true relative size.

The views hold no drawings of their own: they set the entry's portrait, which is on the page already, into a circle. Where
the portrait shows a part only (the head of a worm), the whole is drawn once for both. The script `field-views.js` sets
them anew for the user's own field number and objectives.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, degrees, sin

from keytool.figures import Drawing, to_svg
from keytool.figures.field import Optics, Power, Seen, beyond_its_plate, is_in_field, optics, seen_of, spot
from keytool.figures.frame import length_label, round_length
from keytool.figures.motion import OPTICS
from keytool.library.model import Entry
from keytool.library.show import number
from keytool.pages.html import Html, el
from keytool.pages.plates import DRAWN, Portrait, grouped
from keytool.pages.writer import Writer

RADIUS = 100.0
"""Of the edge of the field, in the units of a view; everything else is scaled to it."""
POWERS: tuple[Power, Power] = ("low", "high")
NEEDED = ("field-number-example", "eyepiece-power", "wavelength", *(each for pair in OPTICS.values() for each in pair))
"""The bench quantities without which there is no field to show."""
LINE = 0.9
"""The least width of a line, in the units of a view."""
ALONE, FEW = 0.06, 0.02
"""What is longer than the first share of the field lies there once; what is longer than the second, a few times."""
BAR_X = -55
"""Where the scale bar under a view begins."""
MANY, SPECKS = 7, 37
"""How often what is shorter lies there, and what is too fine to be more than a speck."""
SHAPELESS = 2.5
"""What comes out shorter than this, in the units of a view, is a dot on the page whatever its shape."""
DOT = 1.4
"""The least width of a dot, in the units of a view."""
WHOLE = "wm-whole"
"""The id of the whole where the portrait shows a part."""


@dataclass(frozen=True, slots=True)
class Thing:
    """What is set into the views: the element it stands in, px to the µm there, two points of it in px, its pen and its sizes in µm.

    `middle` is put at its place in the field; `spot` instead where it is longer than the field. `reach` is the longer side
    of all that is drawn, `size` of the thing, or of one of several small bodies.
    """

    id: str
    scale: float
    middle: tuple[float, float]
    spot: tuple[float, float]
    pen: float
    reach: float
    size: Seen


def field_views(writer: Writer, entry: Entry, portrait: Portrait | None) -> Iterator[Html]:
    """Both views with their words; nothing where the entry is no thing in the field, or the library knows no microscope."""
    library = writer.library
    if portrait is None or not is_in_field(entry) or any(each not in library.quantities for each in NEEDED):
        return
    high = optics(library, "high")
    whole = beyond_its_plate(entry, high)
    scale = 2 * RADIUS / max(whole.box.width, whole.box.height) if whole else portrait.scale
    thing = _thing(whole or portrait.drawing, WHOLE if whole else DRAWN, scale, high.diameter)
    given = {power: optics(library, power) for power in POWERS}
    yield el(
        "div",
        el("svg", el("defs", Html(grouped(to_svg(whole, scale, id_prefix=WHOLE), WHOLE)[1])), width="0", height="0", aria_hidden="true")
        if whole
        else None,
        *(_view(thing, entry, power, given[power], is_tonal=portrait.drawing.tonal) for power in POWERS),
        class_="wm-fields",
        data_field_views=json.dumps(_for_script(thing, given), separators=(",", ":")),
        data_search_exclude=True,
    )
    yield el(
        "p",
        "At true size in the field of an example microscope, field number ",
        _quantity(writer, "field-number-example"),
        ". What is too fine for its own lines is drawn a little heavier.",
        class_="wm-aside",
        data_field_example=True,
    )
    yield el("div", el("script", src=writer.href("assets/field-views.js")))


def _thing(drawing: Drawing, id: str, scale: float, field: float) -> Thing:
    frame, box, (x, y) = drawing.frame, drawing.box, spot(drawing, field)
    middle = ((frame.x + frame.width / 2 - box.x) * scale, (frame.y + frame.height / 2 - box.y) * scale)
    at = ((x - box.x) * scale, (y - box.y) * scale)
    return Thing(id, scale, middle, at, drawing.pen_um, max(frame.width, frame.height), seen_of(drawing))


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
            el("clipPath", el("circle", r=_n(RADIUS)), id=f"wm-edge-{power}"),
            el("circle", r=_n(RADIUS), class_="wm-field-ground"),
            el("g", *_content(thing, power, seen), clip_path=f"url(#wm-edge-{power})"),
            el("circle", r=_n(RADIUS), class_="wm-field-edge"),
            el("path", d=f"M{BAR_X} 113h{_n(bar * unit)}", class_="wm-field-bar"),
            el("text", length_label(bar), x=_n(BAR_X + bar * unit + 5), y="119"),
            viewBox="-103 -103 206 228",
            role="img",
            class_="wm-field wm-tonal-field" if is_tonal else "wm-field",
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


def _content(thing: Thing, power: Power, seen: Optics) -> Iterator[Html]:
    """Specks as wide as the finest spacing where it is too fine, dots where it is too small for the page, else the thing itself."""
    unit = RADIUS / (seen.diameter / 2)
    if thing.size.finest < seen.resolution:
        return iter([_dots(SPECKS, seen.resolution, unit, "wm-dots wm-specks")])
    if thing.reach * unit < SHAPELESS:
        return iter([_dots(MANY, thing.size.longest, unit, "wm-dots")])
    return _copies(thing, power, unit)


def _dots(count: int, um: float, unit: float, looks: str) -> Html:
    dots = "".join(f"M{_n(x)} {_n(y)}h0" for x, y, _ in places(count))
    return el("path", d=dots, stroke_width=_n(max(DOT, um * unit)), class_=looks, data_dot=f"{um:.3g}")


def _copies(thing: Thing, power: Power, unit: float) -> Iterator[Html]:
    """The thing at its places; `unit` is what one µm measures in the view."""
    size, share = unit / thing.scale, thing.reach * unit / (2 * RADIUS)
    x, y = thing.spot if share > 1 else thing.middle
    heavier = max(0.0, LINE / size - thing.pen * thing.scale)
    use = el(
        "use",
        href=f"#{thing.id}",
        transform=f"scale({size:.5g}) translate({-x:.2f} {-y:.2f})",
        stroke_width=f"{heavier:.3g}",
        data_thing=True,
    )
    first, *others = places(1 if share > ALONE else 3 if share > FEW else MANY)
    id = f"wm-thing-{power}"
    yield el("g", el("g", use, id=id), transform=_put(*first))
    yield from (el("use", href=f"#{id}", transform=_put(*each)) for each in others)


def _put(x: float, y: float, turn: float) -> str:
    return f"translate({_n(x)} {_n(y)}) rotate({_n(turn)})"


def places(count: int) -> Iterator[tuple[float, float, float]]:
    """So many places in a field, strewn evenly by the golden angle, with a turn (degrees) for each; one alone is in the middle."""
    if count == 1:
        yield 0.0, 0.0, 0.0
        return
    for k in range(count):
        reach, angle = 0.86 * RADIUS * ((k + 0.4) / count) ** 0.5, 2.39996 * k + 0.5
        yield reach * cos(angle), reach * sin(angle), degrees(1.3 * k) % 360


def _n(value: float) -> str:
    return number(round(value, 1))


def _across(um: float) -> str:
    """A length to two figures: `4.5 mm`, `450 µm`, `0.52 µm`."""
    value, unit = (um / 1000, "mm") if um >= 1000 else (um, "µm")
    return f"{number(float(f'{value:.2g}'))}\u00a0{unit}"


def _share(share: float) -> str:
    return "under 1\u00a0%" if share < 0.01 else f"{number(float(f'{100 * share:.2g}'))}\u00a0%"


def _quantity(writer: Writer, id: str) -> Html:
    return writer.rich(f"{{{id}}}")
