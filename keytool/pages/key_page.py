"""The page of a key: the complete printed key, which the page's script turns into one question at a time."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.figures.contrast import SMALLEST
from keytool.figures.library_figures import of_entry, of_lead
from keytool.identify import Ground
from keytool.library.model import Couplet, Entry, Key, Lead, Library
from keytool.library.wording import feeding_words, meaning, name_of, plain
from keytool.pages.html import Html, el, join
from keytool.pages.key_data import key_data
from keytool.pages.movement import moving_leads, scripts
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer
from keytool.pages.plates import are_tall, row, single
from keytool.pages.practice_and_published import voices_on
from keytool.pages.shortcuts import shortcuts
from keytool.pages.undecided_help import undecided_help

PAIR = (144.0, 168.0)
"""Room for the drawing of one of two leads, px: they stand side by side on a phone 360 px wide."""
TRIPLE = (94.0, 176.0)
"""Room where three tall drawings stand side by side."""
PORTRAIT = (240.0, 150.0)
"""Room for the drawing of what a key ends at."""
STACK = (104.0, 104.0)
"""Room where three leads stand one below the other, the drawing beside the words."""

OF_SIZES = 0.05
"""Where only a size is asked, the sizes are what must be seen: even a giant stands at one scale with the rest."""


def key_page(ground: Ground) -> Page:
    """The page of one key: whole and linked without JavaScript, a walk with it."""
    library, key = ground.library, ground.key
    writer = Writer(library, f"keys/{key.id}.md")
    moving = {id: moving_leads(ground, couplet) for id, couplet in key.couplets.items()}
    ends = dict.fromkeys(lead.goes_to for couplet in key.couplets.values() for lead in couplet.leads.values() if not lead.couplet)
    return page(
        f"keys/{key.id}.md",
        library.files["key", key.id],
        key.title,
        [
            heading(1, key.title),
            _before(writer, key),
            el(
                "section",
                undecided_help(writer),
                el("h2", "The questions", class_="wm-unseen"),
                *(_couplet(writer, key, couplet, moving[couplet.id]) for couplet in key.couplets.values()),
                el("h2", "Where this key ends", id="ends"),
                el("div", *(_end(writer, key, end) for end in ends), class_="wm-ends"),
                class_="wm-key",
                data_key=key.id,
                aria_label="The key",
            ),
            el(
                "div",
                el("script", key_data(writer, ground), type="application/json", id="wm-data"),
                el("link", rel="stylesheet", href=writer.href("assets/key.css")),
                el("script", src=writer.href("assets/key.js")),
            ),
            scripts(writer) if any(moving.values()) else "",
            *shortcuts(writer, key),
            *_voices(writer, key),
        ],
        description=plain(library, key.about),
        kind="s-key",
        own_dock=True,
    )


def _voices(writer: Writer, key: Key) -> list[str]:
    found = list(voices_on(writer, (each for each in writer.library.voices.values() if key.id in each.keys)))
    return [heading(2, "Where practice and print differ", "voices"), *found] if found else []


def letter(key: Key, couplet: Couplet, lead: Lead) -> str:
    """The printed name of a lead: "5a"."""
    return f"{couplet.number}{'abc'[list(couplet.leads).index(lead.id)]}"


def _before(writer: Writer, key: Key) -> Html:
    titles = ", ".join(writer.library.cautions[each].title.lower() for each in key.cautions)
    return el(
        "details",
        el("summary", "Before you start", el("span", f" Take care: {titles}", class_="wm-take-care") if titles else None),
        el("p", writer.rich(key.about)),
        el("ul", *(el("li", writer.rich(each)) for each in key.before)) if key.before else None,
        *(writer.caution(each) for each in key.cautions),
        el(
            "p",
            f"Use {writer.power(key.magnification)}. For each question take the one statement that "
            "fits what you see and go where it says. The drawings of one question are to one scale unless it says otherwise.",
        ),
        class_="wm-before",
        open=True,
    )


def _couplet(writer: Writer, key: Key, couplet: Couplet, moving: Html | None) -> Html:
    library = writer.library
    magnification = max(library.characters[each].magnification for each in couplet.characters)
    drawings = [of_lead(library, couplet, lead) for lead in couplet.leads.values()]
    drawn = any(drawings)
    stacked = len(drawings) == 3 and not are_tall(drawings)
    room = STACK if stacked else TRIPLE if len(drawings) == 3 else PAIR
    sizes_only = all(library.characters[each].is_number for each in couplet.characters)
    shown = row(drawings, [f"lead-{couplet.id}-{each}" for each in couplet.leads], *room, OF_SIZES if sizes_only else SMALLEST)
    layout = "undrawn" if not drawn else "stacked" if stacked else "abreast"
    return el(
        "article",
        el(
            "p",
            el("span", str(couplet.number), class_="wm-number"),
            _from(key, couplet),
            el("span", writer.power(magnification), class_="wm-power"),
            class_="wm-where",
        ),
        el("h3", plain(library, couplet.asks), id=f"couplet-{couplet.id}", tabindex="-1"),
        el("p", writer.rich(couplet.look), class_="wm-look"),
        el(
            "ul",
            *(
                _lead(writer, key, couplet, lead, plate if drawn else None, number)
                for number, (lead, plate) in enumerate(zip(couplet.leads.values(), shown.plates, strict=True), 1)
            ),
            class_=f"wm-leads wm-{layout} wm-of-{len(drawings)}",
            role="list",
        ),
        el("p", "No drawing yet.", class_="wm-aside wm-more") if not drawn else None,
        el("p", "These drawings are not at one scale: read the bar under each.", class_="wm-aside") if not shown.one_scale else None,
        moving,
        writer.said(couplet.note, "div") if couplet.note else None,
        el("p", "More on ", join((writer.link(each) for each in couplet.characters), ", "), class_="wm-aside wm-more"),
        class_="wm-couplet",
        data_couplet=couplet.id,
    )


def _from(key: Key, couplet: Couplet) -> Html | None:
    """The leads that come here, as a printed key gives them, so that one can also go back."""
    before = [
        el("a", letter(key, each, lead), href=f"#couplet-{each.id}")
        for each in key.couplets.values()
        for lead in each.leads.values()
        if lead.couplet == couplet.id
    ]
    return el("span", "from ", join(before, ", "), class_="wm-from") if before else None


def _lead(writer: Writer, key: Key, couplet: Couplet, lead: Lead, plate: Html | None, number: int) -> Html:
    href = f"#couplet-{lead.couplet}" if lead.couplet else writer.place(lead.goes_to)
    return el(
        "li",
        el(
            "a",
            el("span", letter(key, couplet, lead), class_="wm-letter"),
            el("kbd", str(number), class_="wm-press", aria_hidden="true"),
            el("span", plate, class_="wm-picture", aria_hidden="true") if plate else None,
            el("span", plain(writer.library, lead.text), class_="wm-lead-text"),
            el("span", *_goes(writer.library, key, lead), class_="wm-goes"),
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


def _end(writer: Writer, key: Key, end: str) -> Html:
    """What an end is: its name, its functional group, what would tell more, and what to take care of."""
    library = writer.library
    comes = [
        el("a", letter(key, couplet, lead), href=f"#couplet-{couplet.id}")
        for couplet in key.couplets.values()
        for lead in couplet.leads.values()
        if lead.goes_to == end and not lead.couplet
    ]
    entry = library.entries.get(end)
    head = el("h3", writer.link(end), id=f"end-{end}", tabindex="-1")
    reached = el("p", "Reached from ", join(comes, ", "), class_="wm-aside wm-reached")
    if entry is None:
        return el("article", head, el("p", "Another key: it goes on from here."), reached, class_="wm-end", data_end=end)
    drawing = of_entry(library, entry)
    return el(
        "article",
        head,
        el("p", el("i", entry.scientific), class_="wm-names") if entry.scientific else None,
        el("div", feeding_words(library, entry.feeding), " ", writer.mark(entry.feeding_basis), class_="wm-feeding")
        if entry.feeding
        else None,
        el("figure", single(drawing, f"end-{end}-plate", *PORTRAIT), class_="wm-portrait", aria_hidden="true") if drawing else None,
        el("p", writer.rich(entry.summary)),
        *_means(writer, entry),
        el("p", el("strong", "What would tell: "), writer.rich(entry.would_tell)) if entry.would_tell else None,
        *(writer.brief_caution(each) for each in entry.cautions if each not in key.cautions),
        reached,
        class_="wm-end",
        data_end=end,
    )


def _means(writer: Writer, entry: Entry) -> Iterator[Html]:
    """What an end tells about the soil, in brief: its own first word, and that of the nearest group that holds it."""
    for teller, said in meaning(writer.library, entry):
        who = "What it means: " if teller is entry else join(["As all of ", writer.link(teller.id), ": "])
        yield el("div", el("strong", who), writer.rich(said.text), " ", writer.mark(said.basis), class_="wm-means")
