"""Scripts and styles as a browser fetches them: what a page needs of each in one file, without comments."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping

from keytool.pages.page import Asset

LIVE_FIELD = (
    *("chance", "physics", "steps", "move-swim", "move-crawl", "move-soft", "move-flow", "move-held", "field"),
    *("shapes", "pen", "deforms", "drawn", "look-bells", "look-specks", "picture"),
)
"""The scripts in `site/assets/live-field` that move and draw a field, in the order they are loaded; they share one object."""
LIVE_FIELD_PAGE = ("page-parts", "page-words", "page-controls", "page-run")
"""Those that put it into a page, after the others."""

IDENTIFY = (*(f"identify/{name}.js" for name in ("dom", "words", "say", "verdict")), "engine.js")
"""What both identifying pages share, in the order it is loaded."""

BUNDLES: Mapping[str, tuple[str, ...]] = {
    "wetmount.css": (
        *(f"css/{name}.css" for name in ("tokens", "frame", "parts", "entry", "lists", "look-alikes", "cards", "find-list")),
        "live-field/live-field.css",
        "css/print.css",
    ),
    "count.css": ("css/count.css",),
    "count.js": tuple(
        f"bench/{name}.js"
        for name in (
            *("distributions", "counts", "results", "results-json", "sheet", "csv"),
            *("dom", "store", "plot", "report-words", "report", "count-page"),
        )
    ),
    "measure.js": tuple(
        f"bench/{name}.js" for name in ("dom", "field-edge", "stage-lines", "photo-measures", "micrometer-part", "measure-page")
    ),
    "frame.js": ("frame.js", "offline.js", "find.js"),
    "lists.js": ("lists.js",),
    "entry.js": ("field-views.js", "eyepiece.js"),
    "key.css": ("css/key.css",),
    "fit.js": ("identify/fit.js",),
    "key.js": (*IDENTIFY, "identify/walk-page.js", "eyepiece.js"),
    "describe.css": ("css/key.css", "css/look.css"),
    "describe.js": (*IDENTIFY, "identify/describe-page.js"),
    "cards.js": ("card-form.js",),
    "live-field.js": tuple(f"live-field/{name}.js" for name in (*LIVE_FIELD, *LIVE_FIELD_PAGE)),
}
"""Each bundle under `assets/` and the files under `site/assets` it is made of, in their order."""


def bundled(written: Iterable[Asset]) -> list[Asset]:
    """The assets with every source of a bundle replaced by the bundle; whatever no bundle names stays as it is.

    Raises:
        KeyError: a bundle names a file that is not there.
    """
    by_path = {each.path: each for each in written}
    made = []
    for name, sources in BUNDLES.items():
        parts = [by_path[f"assets/{source}"] for source in sources]
        made.append(Asset(f"assets/{name}", _joined(name, parts), parts[0].source))
    taken = {f"assets/{source}" for sources in BUNDLES.values() for source in sources}
    return [*(each for path, each in by_path.items() if path not in taken), *made]


def _joined(name: str, parts: Iterable[Asset]) -> bytes:
    smaller = _css if name.endswith(".css") else _js
    return "\n".join(smaller(each.content.decode()) for each in parts).encode() + b"\n"


def _css(text: str) -> str:
    """A style sheet without comments and without space that means nothing."""
    text = re.sub(r"/\*.*?\*/", "", text, flags=re.DOTALL)
    text = re.sub(r"\s+", " ", text)
    return re.sub(r" ?([{};,]) ?", r"\1", text).replace(": ", ":").replace(";}", "}").strip()


def _js(text: str) -> str:
    """A script without comments that stand on lines of their own, and without indents; a licence (`/*!`) stays."""
    return "\n".join(_lines(text))


def _lines(text: str) -> Iterator[str]:
    in_comment = in_template = False
    for line in text.splitlines():
        bare = line.strip()
        if in_template or in_comment:
            if in_template:
                yield line
            in_template = in_template != (line.count("`") % 2 == 1)
            in_comment = in_comment and "*/" not in line
            continue
        if bare.startswith("/*") and not bare.startswith("/*!"):
            in_comment = "*/" not in bare
            rest = bare.partition("*/")[2].strip()
            if rest:
                yield rest
            continue
        if bare and not bare.startswith("//"):
            in_template = line.count("`") % 2 == 1
            yield bare
