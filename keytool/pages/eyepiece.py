"""What the microscope shows of an entry, beside its ink plate: a computed picture that is kept with the library, and its knobs.

Nothing is computed here. The picture stands without a script; where it has a series, the script puts a knob for the
focus and one for the iris beneath it, and fetches the series at the first touch.
"""

from __future__ import annotations

import json
from collections.abc import Collection, Iterator, Sequence

from keytool.figures.frame import length_label, round_length
from keytool.library.eyepiece_records import FOLDER, Still
from keytool.library.load import Loaded
from keytool.library.model import Couplet, Entry, Key, Lead, Library
from keytool.library.requirements import required
from keytool.library.value import States
from keytool.library.wording import number
from keytool.optics import LEAVES_OUT
from keytool.pages.html import Html, el, join
from keytool.pages.page_writer import Writer

SIZE = "288"
BAR = 0.28
"""The longest scale bar, as a share of the picture."""


def eyepiece_files(loaded: Loaded) -> dict[str, bytes]:
    """The pictures by their path in the site. One that is not there is left out; the check says so."""
    stills = (*loaded.library.eyepiece.stills.values(), *loaded.library.eyepiece.fields.values())
    names = [name for each in stills for name in (each.file, each.series.file if each.series else "") if name]
    found = {f"{FOLDER}/{name}": loaded.root / "keydata" / FOLDER / name for name in names}
    return {path: file.read_bytes() for path, file in found.items() if file.is_file()}


def through_eyepiece(writer: Writer, entry: Entry) -> Iterator[Html]:
    """The picture in its round field, labelled as computed, with its scale bar; nothing where there is none."""
    still = writer.library.eyepiece.stills.get(entry.id)
    if still is None:
        return
    yield el(
        "figure",
        *_round(writer, entry, still),
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


def _round(writer: Writer, entry: Entry, still: Still) -> tuple[Html, Html]:
    """The picture in its round field, and its scale bar."""
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
    scale = el("div", el("i", style=f"--share:{100 * bar / still.across:.1f}%"), length_label(bar), class_="wm-still-bar")
    return el("div", image, class_="wm-still-round"), scale


def compared(writer: Writer, pairs: Sequence[tuple[str, Entry]]) -> Html:
    """Computed pictures beside each other, each under its letter, one knob for all; folded: none is fetched before it is asked for."""
    stills = writer.library.eyepiece.stills
    turns = all(stills[entry.id].series for _, entry in pairs)  # a knob that turns only some of them would mislead
    figures = (
        el(
            "figure",
            *_round(writer, entry, stills[entry.id]),
            el("figcaption", el("b", letter), " ", entry.name),
            class_="wm-still",
            data_eyepiece=_for_script(writer, stills[entry.id]) if turns else None,
        )
        for letter, entry in pairs
    )
    return el(
        "details",
        el("summary", "Through the eyepiece"),
        el("div", *figures, class_="wm-through-row"),
        el(
            "p",
            el("strong", "Computed pictures, not photographs."),
            f" At 400×, iris {number(stills[pairs[0][1].id].iris)}; each has its own scale. ",
            el("span", data_says="knobs"),
            " What they leave out stands on the page of each.",
            class_="label",
        ),
        class_="wm-through",
        data_search_exclude=True,
    )


def on_couplet(library: Library, key: Key, couplet: Couplet) -> dict[str, Entry]:
    """Of each lead the entry whose computed picture shows what it says, where contrast decides the couplet; else nothing.

    It is what the lead ends at, else that of the first state it names, as with its drawing; and always something that the
    lead leads to, for a picture of what lies on the other side would be wrong. A lead that takes all the rest shows its
    end, or the one state left.
    """
    if not any(seen_through(library, each) for each in couplet.characters):
        return {}
    found: dict[str, Entry] = {}
    for lead in couplet.leads.values():
        ends = _ends(library, key, lead, set())
        for id in (lead.end, *_shown_by(library, couplet, lead)):
            if id in library.eyepiece.stills and _leads_to(library, ends, id):
                found[lead.id] = library.entries[id]
                break
    different = len({each.id for each in found.values()}) == len(found)
    return found if len(found) > 1 and different else {}


def _shown_by(library: Library, couplet: Couplet, lead: Lead) -> Iterator[str]:
    for name, showing in required(library, couplet, lead).items():
        if isinstance(showing, States) and not (lead.otherwise and len(showing.ids) > 1):
            first = next(state for state in library.characters[name].states.values() if state.id in showing.ids)
            if first.eyepiece:
                yield first.eyepiece


def _leads_to(library: Library, ends: Collection[str], id: str) -> bool:
    """Whether an entry is one of the ends, belongs to one, or is the group of one."""
    return bool(library.ancestry(id) & set(ends)) or any(end == id or id in library.ancestry(end) for end in ends)


def _ends(library: Library, key: Key, lead: Lead, met: set[tuple[str, str]]) -> set[str]:
    """All entries at which one may end after a lead, through other keys too."""
    if lead.end:
        return {lead.end}
    on = library.keys[lead.key] if lead.key else key
    couplet = on.couplets[lead.couplet or on.first]
    if (on.id, couplet.id) in met:
        return set()
    met.add((on.id, couplet.id))
    return {end for each in couplet.leads.values() for end in _ends(library, on, each, met)}


def at_low_power(writer: Writer, theme: str) -> Html | None:
    """The whole field of a theme at 40×, folded and labelled; None where there is none."""
    library = writer.library
    still = library.eyepiece.fields.get(theme)
    if still is None:
        return None
    label = library.vocabulary["theme"][theme].label
    shown = [writer.link(each) for each in still.shows if each in library.entries]
    holds = (
        el("span", join(shown, ", "), ", more of them than a drop would hold.")
        if shown
        else "nothing of this theme: it is too small for 40×."
    )
    image = el(
        "img",
        src=writer.href(f"{FOLDER}/{still.file}"),
        width="480",
        height="480",
        loading="lazy",
        decoding="async",
        alt=f"{label} as the 4x objective shows a whole field of 4.5 mm, computed.",
    )
    return el(
        "details",
        el("summary", f"{label} at 40×: what the low power shows"),
        el(
            "figure",
            el("div", image, class_="wm-still-round"),
            el(
                "figcaption",
                el("strong", "Computed picture, not a photograph."),
                f" The whole field at 40×, {number(still.across / 1000)}\u00a0mm across, with grit, crumbs and a bubble; in it ",
                holds,
            ),
            class_="wm-still",
        ),
        class_="wm-through wm-low",
        data_search_exclude=True,
    )


def seen_through(library: Library, character: str) -> bool:
    """Whether it is contrast that decides between the states of a character."""
    return any(state.eyepiece for state in library.characters[character].states.values())


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
