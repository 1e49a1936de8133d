"""Live fields on pages: an entry that moves, the leads of a question about movement, and the page of its own."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from keytool.figures.motion import entry_field, lead_field, lines, whole_field, why_unshown
from keytool.identify import Ground
from keytool.library.model import Couplet, Entry, Lead, Library
from keytool.library.wording import basis_words, plain
from keytool.pages.html import Html, el, json_in_page
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer

MOVEMENT = frozenset({"manner", "own-movement"})
"""The characters whose states a live field can show."""
AT_FIRST = 4
"""Movers that are in the field of a lead before one chooses; more than that hide each other."""
WHOLE = (
    "spiral-swim",
    "clumsy-swim",
    "dart-and-stop",
    "crawl-and-back",
    "wobble-and-jerk",
    "glide-whip-behind",
    "glide-whip-ahead",
    "flow",
    "eruptive-flow",
    "drag-and-rest",
    "jiggle",
    "run-and-tumble",
    "back-and-forth",
    "lie-still",
)
"""The manners to be seen at first on the page of its own."""

Field = dict[str, Any]


def live_field_page(library: Library) -> Page:
    """Everything that moves, to choose from."""
    writer = Writer(library, "live-field.md")
    return page(
        "live-field.md",
        "keydata/bench/manners.yaml",
        "Live field",
        [
            heading(1, "Live field"),
            el("p", "What moves in a drop, at true size and true speed."),
            _shown(whole_field(library, WHOLE), "whole"),
            scripts(writer),
            el(
                "p",
                "Choose the objective and what is in the field. Then add drift: everything that goes the same way at the same pace is "
                "carried, and does not swim.",
            ),
            el(
                "p",
                "Sizes and speeds are those of the figures under the field, each with what it rests on. What an objective cannot "
                "resolve is not drawn.",
                class_="wm-aside",
            ),
        ],
        description="What moves in a drop of soil, at true size and true speed.",
    )


def moving_entry(writer: Writer, entry: Entry) -> Iterator[Html]:
    """The field of an entry's page, or the reason why it is not shown moving; nothing where no manner of moving names it."""
    if field := entry_field(writer.library, entry):
        yield _shown(field)
        yield scripts(writer)
    elif manner := why_unshown(writer.library, entry):
        basis = "; ".join(basis_words(writer.library, each) for each in manner.basis)
        yield el("p", f"It is not shown moving. {manner.about} ({basis})")


def moving_leads(ground: Ground, couplet: Couplet) -> Html | None:
    """The leads of a question about movement, each as a field, folded; None for other questions."""
    if not set(couplet.characters) <= MOVEMENT:
        return None
    here = [entry for entry in ground.members if couplet.id in _asked(ground, entry)]
    fields = [field for lead in couplet.leads.values() if (field := _of_lead(ground, couplet, lead, here))]
    if not fields:
        return None
    return el("details", el("summary", "See it move, at true size and speed"), *map(_shown, fields), class_="wm-moving wm-more")


def scripts(writer: Writer) -> Html:
    """What a page with a live field loads."""
    return el("script", src=writer.href("assets/live-field.js"), defer=True)


def _shown(field: Field, kind: str = "") -> Html:
    data = json.dumps(field, ensure_ascii=False, separators=(",", ":"))
    return el(
        "div",
        el("script", json_in_page(data), type="application/json"),
        *(el("p", each) for each in lines(field)),
        data_live_field=kind or True,
        data_search_exclude=True,
    )


def _of_lead(ground: Ground, couplet: Couplet, lead: Lead, here: list[Entry]) -> Field | None:
    """The field of one lead, from the entries that come to its question and may take it, and the groups that hold no others."""
    library = ground.library
    wants = ground.wants[couplet.id][lead.id]
    shows = {state for name in MOVEMENT & wants.keys() for state in getattr(wants[name], "ids", ())}
    kept = {each.id for each in here if lead.id in ground.may[couplet.id][each.id]}
    groups = {above for id in kept for above in library.ancestry(id) - kept}
    come = {each.id for each in here}
    alike = {each for each in groups if {member.id for member in library.members((each,))} <= come}
    entries = (each for each in library.entries.values() if each.id in kept | alike)
    field = lead_field(library, plain(library, lead.text), shows, entries)
    return field and _few(field)


def _few(field: Field) -> Field:
    """The same with one mover of each motion to be seen at first, and the grain that lies still; the others wait to be chosen."""
    seen: dict[str, None] = {}
    movers = []
    for mover in field["movers"]:
        on = mover["motion"] == "still" or (mover["motion"] not in seen and len(seen) < AT_FIRST)
        if on and mover["motion"] != "still":
            seen[mover["motion"]] = None
        movers.append({**mover, "on": on})
    return {**field, "movers": movers}


def _asked(ground: Ground, entry: Entry) -> set[str]:
    """The couplets that an entry is known to come to: by leads of which it says something, and where it says something itself."""
    found: set[str] = set()
    waiting = [ground.key.first]
    while waiting:
        at = waiting.pop()
        couplet = ground.key.couplets[at]
        if at not in found and any(each in entry.statements for each in couplet.characters):
            found.add(at)
            leads = couplet.leads.values()
            waiting += [lead.couplet for lead in leads if lead.couplet and lead.id in ground.may[at][entry.id]]
    return found
