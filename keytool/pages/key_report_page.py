"""The report on the keys, for those who add to them: what each asks against the least that could do, and where it misleads most."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.identify import compiled
from keytool.identify.quality import Quality, quality
from keytool.library.model import Library
from keytool.library.wording import name_of, plain
from keytool.pages.html import Html, el
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer

PATH = "contribute/key-report.md"
SOURCE = "keydata/keys"


def key_report_page(library: Library) -> Page:
    """One part for each key, the one that asks most for its bound first."""
    writer = Writer(library, PATH)
    model = compiled(library)
    blocks: list[str] = [heading(1, "Report on the keys"), *_about()]
    for each in sorted((quality(model, key) for key in library.keys), key=lambda each: (-round(each.ratio, 9), each.key)):
        blocks += _key(library, writer, each)
    description = "What each key asks on average against the least that could do, where most is lost, and what is hardest to part."
    return page(PATH, SOURCE, "Report on the keys", blocks, description=description)


def _about() -> Iterator[Html]:
    yield el(
        "p",
        "Worked out from the files, with every entry as common as it says and every character misread as often as it says. "
        "Most of those figures are estimates, so read the report as a pointer to what to mend first, not as a measurement.",
    )
    yield el(
        "ul",
        el("li", el("b", "Questions: "), "how many are asked on average until the key ends."),
        el(
            "li",
            el("b", "Bound: "),
            "no key with couplets as wide can ask fewer; the entropy of its ends (Shannon 1948, from memory). "
            "A key far above it asks too much of what is common.",
        ),
        el("li", el("b", "Most is lost: "), "the question at which most walks leave the right way, because it is misread."),
        el(
            "li",
            el("b", "Hardest to part: "),
            "the two entries with different ends whose looks overlap most, at the characters the key asks.",
        ),
    )
    yield el(
        "p", "With ", el("code", "wetmount check --report"), " you get the same, and what another order of the same questions would ask."
    )


def _key(library: Library, writer: Writer, each: Quality) -> list[str]:
    key = library.keys[each.key]
    worst = key.couplets[each.worst]
    whole = f"keys/whole/{key.id}.html"
    lines = [
        el(
            "li",
            el("b", f"{each.questions:.1f} questions"),
            f" on average; the bound is {each.bound:.1f}, so it asks {each.ratio:.1f} times as many.",
        ),
        el(
            "li",
            f"Most is lost at {worst.number}, ",
            el("a", plain(library, worst.asks), href=writer.href(whole, f"couplet-{worst.id}")),
            f": {100 * each.lost:.0f} of 100 walks.",
        ),
    ]
    if each.pair[0]:
        one, other = (el("a", name_of(library, id), href=writer.href(f"entries/{id}.html")) for id in each.pair)
        lines.append(el("li", "Hardest to part: ", one, " and ", other, f"; their looks overlap to {100 * each.alike:.0f} in 100."))
    return [heading(2, key.title, key.id), el("ul", *lines)]
