"""What the hand-written pages of the guide for contributors have filled in: `<!-- contribute-form -->` and the like."""

from __future__ import annotations

from collections.abc import Callable
from html import escape
from pathlib import Path

from keytool.contribute.reference import reference
from keytool.contribute.schemas import kinds
from keytool.library import Loaded

EXAMPLE = "contribute/example-entry.yaml"
"""The commented example, under `site/pages`; it is checked by a test as it stands."""
SCRIPTS = (
    "text",
    "rules",
    "ways",
    "parting",
    "dom",
    "find",
    "controls",
    "giving",
    "mistaken",
    "figure",
    "couplet",
    "entry-form",
    "look-alike-form",
    "photo-form",
    "couplet-form",
    "state-form",
    "start",
)
"""The scripts of the form under `site/assets/contribute`, each of which uses those before it."""


def slots(loaded: Loaded, pages: Path) -> dict[str, str]:
    """HTML for each slot of the pages under `pages` (`site/pages`): the form, the example, the fields, the schemas."""
    fills: dict[str, Callable[[], str]] = {
        "contribute-form": _form,
        "contribute-example": lambda: _example(pages),
        "contribute-fields": lambda: reference(loaded),
        "contribute-schemas": lambda: _schemas(loaded),
    }
    return {name: fill() for name, fill in fills.items()}


def _form() -> str:
    """Where the script builds the form, and what stands there without it."""
    names = ("contribute-data", *(f"contribute/{name}" for name in SCRIPTS))
    scripts = "".join(f'<script defer src="../assets/{name}.js"></script>' for name in names)
    return (
        '<link rel="stylesheet" href="../assets/contribute/form.css">'
        "<div data-contribute><p>The form needs JavaScript. Without it, copy the example entry into a text editor, change it, "
        f"and send the file.</p></div>{scripts}"
    )


def _example(pages: Path) -> str:
    return f'<pre tabindex="0"><code>{escape((pages / EXAMPLE).read_text("utf-8"), quote=False)}</code></pre>'


def _schemas(loaded: Loaded) -> str:
    items = "".join(f'<li><a href="../schemas/{kind}.schema.json">{kind}.schema.json</a></li>' for kind in kinds(loaded))
    return f"<ul>{items}</ul>"
