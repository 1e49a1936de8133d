"""One couplet as HTML: the question, how to look, and its leads side by side. The walk and the whole printed key show the same."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from keytool.figures.library_figures import of_lead
from keytool.library.model import Couplet, Key, Lead, Library
from keytool.library.wording import feeding_words, name_of, plain
from keytool.pages.eyepiece import compared, on_couplet
from keytool.pages.figure_files import FigureFiles
from keytool.pages.html import Html, el, join
from keytool.pages.page_writer import Writer
from keytool.pages.plates import are_tall

PAIR = (144.0, 168.0)
"""Room for the drawing of one of two leads, px: they stand side by side on a phone 360 px wide."""
TRIPLE = (94.0, 176.0)
"""Room where three tall drawings stand side by side."""
STACK = (104.0, 104.0)
"""Room where three leads stand one below the other, the drawing beside the words."""
OF_SIZES = 0.05
"""Where only a size is asked, the sizes are what must be seen: even a giant stands at one scale with the rest."""
SEEN = 54.0
"""A drawing whose longer side would come out smaller than this on a phone (px) is not put to one scale with a larger one.
45 px are left where the page draws all a step smaller to fit."""


def smallest(room: tuple[float, float], *, sizes_only: bool) -> float:
    """The least share of the room that a drawing takes before the leads of a couplet go each to a scale of its own."""
    return OF_SIZES if sizes_only else SEEN / max(room)


@dataclass(frozen=True, slots=True)
class Place:
    """Where a couplet is shown: `whole` is the address of the page of the whole printed key, empty on that page itself."""

    whole: str = ""

    def couplet(self, id: str) -> str:
        """The address of a couplet of the printed key."""
        return f"{self.whole}#couplet-{id}"


def letter(key: Key, couplet: Couplet, lead: Lead) -> str:
    """The printed name of a lead: "5a"."""
    return f"{couplet.number}{'abc'[list(couplet.leads).index(lead.id)]}"


def couplet_html(writer: Writer, figures: FigureFiles, key: Key, couplet: Couplet, place: Place, moving: Html | None, *, now: bool) -> Html:
    """One couplet. `now` where it is what the page shows first, so that its drawings are not waited for."""
    library = writer.library
    drawings = [of_lead(library, couplet, lead) for lead in couplet.leads.values()]
    drawn = any(drawings)
    stacked = len(drawings) == 3 and not are_tall(drawings)
    room = STACK if stacked else TRIPLE if len(drawings) == 3 else PAIR
    sizes_only = all(library.characters[each].is_number for each in couplet.characters)
    shown = figures.row(writer, drawings, *room, smallest=smallest(room, sizes_only=sizes_only), now=now)
    layout = "undrawn" if not drawn else "stacked" if stacked else "abreast"
    leads = zip(couplet.leads.values(), shown.plates, strict=True)
    return el(
        "article",
        el("div", _where(writer, key, couplet, place), class_="side"),
        el(
            "div",
            el("h2", plain(library, couplet.asks), id=f"couplet-{couplet.id}", tabindex="-1"),
            el("p", writer.rich(couplet.look), class_="wm-look") if couplet.look else None,
            el(
                "ul",
                *(_lead(writer, key, couplet, lead, plate, place, number, drawn=drawn) for number, (lead, plate) in enumerate(leads, 1)),
                class_=f"wm-leads wm-{layout} wm-of-{len(drawings)}",
                role="list",
            ),
            el("p", "Not at one scale: read the bar under each drawing.", class_="label wm-scales") if not shown.one_scale else None,
            _through(writer, key, couplet, place),
            moving,
            class_="body",
        ),
        el(
            "div",
            writer.said(couplet.note, "div") if couplet.note else None,
            el("p", "More on ", join((writer.link(each) for each in couplet.characters), ", "), class_="wm-more"),
            class_="notes",
        ),
        class_="part wm-couplet",
        data_couplet=couplet.id,
        data_number=str(couplet.number),
    )


def _through(writer: Writer, key: Key, couplet: Couplet, place: Place) -> Html | None:
    """Where contrast decides: what the microscope shows of each lead, folded."""
    pictures = on_couplet(writer.library, key, couplet)
    leads = [(number, lead) for number, lead in enumerate(couplet.leads.values(), 1) if lead.id in pictures]
    named = [(str(number) if place.whole else letter(key, couplet, lead), pictures[lead.id]) for number, lead in leads]
    return compared(writer, named) if named else None


def _where(writer: Writer, key: Key, couplet: Couplet, place: Place) -> Html:
    """The number of the question, the power it is asked at, and in the printed key the leads that come here, for going back."""
    magnification = max(writer.library.characters[each].magnification for each in couplet.characters)
    before = [
        el("a", letter(key, each, lead), href=place.couplet(each.id))
        for each in key.couplets.values()
        for lead in each.leads.values()
        if lead.couplet == couplet.id
    ]
    return el(
        "p",
        el("span", key.title, class_="wm-key-name") if place.whole else None,
        el("span", str(couplet.number), class_="wm-number"),
        el("span", writer.power(magnification), class_="wm-power"),
        el("span", "from ", join(before, ", "), class_="wm-from") if before and not place.whole else None,
        class_="wm-where label",
    )


def _lead(writer: Writer, key: Key, couplet: Couplet, lead: Lead, plate: Html | None, place: Place, number: int, *, drawn: bool) -> Html:
    href = place.couplet(lead.couplet) if lead.couplet else writer.place(lead.goes_to)
    return el(
        "li",
        el(
            "a",
            el("span", plate, class_="wm-picture plate", aria_hidden="true") if drawn else None,
            el(
                "span",
                el("span", letter(key, couplet, lead) if not place.whole else str(number), class_="wm-letter"),
                " ",
                plain(writer.library, lead.text),
                class_="wm-lead-text",
            ),
            el("span", *_goes(writer.library, key, lead), class_="wm-goes label") if not place.whole else None,
            href=href,
            class_="wm-lead",
            data_lead=lead.id,
        ),
    )


def _goes(library: Library, key: Key, lead: Lead) -> Iterator[Html | str]:
    if lead.couplet:
        yield f"→ {key.couplets[lead.couplet].number}"
        return
    yield el("strong", name_of(library, lead.goes_to))
    if lead.key:
        yield " (another key)"
    elif feeding := library.entries[lead.end].feeding:
        yield f" · {feeding_words(library, feeding)}"
