"""How many live in a gram of several kinds of sample, as a table under the guide that says why such norms mislead."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.bench.wording import figures
from keytool.library.model import Library
from keytool.pages.html import Html, el, join
from keytool.pages.page import heading
from keytool.pages.page_writer import Writer

GUIDE = "how-many-is-normal"


def abundance_table(writer: Writer) -> Iterator[Html]:
    """The heading and the table; nothing where the library says nothing of it."""
    library: Library = writer.library
    bench = library.bench
    lines = [line for line in bench.tally if any(line in each.things for each in bench.abundances.values())]
    if not lines:
        return
    yield heading(2, "In a gram, by kind of sample", "table")
    yield el("p", "What eight samples in ten lie between. Mostly estimates: orders of magnitude, not norms. Compost liquid is per mL.")
    head = el("tr", el("td"), *(el("th", library.vocabulary["sample-kind"][kind].label, scope="col") for kind in bench.abundances))
    rows = [
        el("tr", el("th", bench.tally[line].label, scope="row"), *(_cell(writer, kind, line) for kind in bench.abundances))
        for line in lines
    ]
    yield el(
        "div", el("table", el("thead", head), el("tbody", *rows)), class_="wide scrolls", tabindex="0", role="region", aria_label="Table"
    )


def _cell(writer: Writer, kind: str, line: str) -> Html:
    found = writer.library.bench.abundances[kind].things.get(line)
    if found is None:
        return el("td", el("span", "not said", class_="unseen"))
    return el("td", join([f"{figures(found.low, 1)} to {figures(found.high, 1)} ", writer.mark(found.basis)]))
