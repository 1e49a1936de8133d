"""Guides: something done at the bench, step by step, each caution at its step."""

from __future__ import annotations

from keytool.library.model import Guide, Library, Step
from keytool.library.wording import plain
from keytool.pages.abundance_table import GUIDE, abundance_table
from keytool.pages.html import Html, el
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer


def guides_page(library: Library) -> Page:
    """All guides, with what each is about."""
    writer = Writer(library, "guides/index.md")
    rows = (
        el("li", el("a", el("strong", each.title), el("span", plain(library, each.about)), href=writer.place(each.id)))
        for each in library.guides.values()
    )
    blocks = [heading(1, "At the bench"), el("ul", *rows, class_="links", role="list")]
    return page("guides/index.md", "keydata/guides", "At the bench", blocks, kind="s-guides")


def guide_page(library: Library, guide: Guide) -> Page:
    """One guide."""
    writer = Writer(library, f"guides/{guide.id}.md")
    at_steps = {step.caution: step for step in reversed(guide.steps) if step.caution}
    blocks: list[str] = [
        heading(1, guide.title),
        el("p", writer.rich(guide.about), class_="lead"),
        *(writer.caution(each) for each in guide.cautions if each not in at_steps),
        el("ol", *(_step(writer, step, first=at_steps.get(step.caution) is step) for step in guide.steps), class_="wm-method"),
    ]
    if guide.notes:
        blocks += [heading(2, "Notes", "notes"), el("ul", *(writer.said(each) for each in guide.notes), class_="wm-list")]
    if guide.id == GUIDE:
        blocks += abundance_table(writer)
    return page(
        f"guides/{guide.id}.md",
        library.files["guide", guide.id],
        guide.title,
        blocks,
        description=plain(library, guide.about),
    )


def _step(writer: Writer, step: Step, *, first: bool) -> Html:
    """A step; its caution stands in full at the first step that has it, and in one line, linked to the whole, at those after it."""
    told = writer.caution if first else writer.brief_caution
    return el(
        "li",
        el("p", el("strong", writer.rich(step.do))),
        el("div", el("span", writer.rich(step.why), class_="t"), " ", writer.mark(step.basis), class_="wm-said"),
        told(step.caution) if step.caution else None,
        id=f"step-{step.id}",
    )
