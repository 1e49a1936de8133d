"""The whole printed key on a page of its own: for paper, for study, and for a browser without scripts."""

from __future__ import annotations

from keytool.identify import Ground
from keytool.library.wording import plain
from keytool.pages.couplets import Place, couplet_html
from keytool.pages.figure_files import FigureFiles
from keytool.pages.html import el
from keytool.pages.key_ends import end_html
from keytool.pages.key_page import before
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer
from keytool.pages.practice_and_published import voices_on
from keytool.pages.shortcuts import shortcuts


def whole_key_page(ground: Ground, figures: FigureFiles) -> Page:
    """Every couplet in order, each lead linked to where it goes, then every end."""
    library, key = ground.library, ground.key
    writer = Writer(library, f"keys/whole/{key.id}.md")
    place = Place()
    ends = dict.fromkeys(lead.goes_to for couplet in key.couplets.values() for lead in couplet.leads.values() if not lead.couplet)
    title = f"{key.title}: the whole key"
    voices = list(voices_on(writer, (each for each in library.voices.values() if key.id in each.keys)))
    return page(
        f"keys/whole/{key.id}.md",
        library.files["key", key.id],
        title,
        [
            heading(1, title),
            el(
                "p",
                el("a", "One question at a time", href=writer.href(f"keys/{key.id}.html")),
                ", with pictures to tap.",
                class_="wm-one-by-one",
            ),
            el("link", rel="stylesheet", href=writer.href("assets/key.css")),
            before(writer, key, is_open=True),
            el(
                "section",
                *(couplet_html(writer, figures, key, couplet, place, None, now=False) for couplet in key.couplets.values()),
                class_="part wm-key wm-whole",
                data_whole_key=key.id,
                aria_label="The questions",
            ),
            el(
                "section",
                el("h2", "Where this key ends", id="ends"),
                el("div", *(end_html(writer, key, end, place) for end in ends), class_="wm-ends"),
                class_="part wm-ends-part",
                aria_label="The ends",
            ),
            *shortcuts(writer, key),
            *([heading(2, "Where practice and print differ", "voices"), *voices] if voices else []),
        ],
        description=f"{plain(library, key.about)} All questions on one page.",
        kind="s-whole-key",
    )
