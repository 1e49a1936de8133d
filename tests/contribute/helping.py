"""What the tests of contributing share: a command run on a library, and a library on which an addition collides.

No conftest.py: a second one of that name would hide the first from the tests that import it.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from click.testing import CliRunner, Result

from keytool.cli.impact import impact_command
from keytool.cli.new import new_command
from keytool.cli.photo import photo_command
from keytool.cli.take import take_command
from keytool.contribute.form import form_script
from keytool.contribute.page_slots import SCRIPTS
from keytool.library import Loaded

SCRIPT_FOLDER = Path(__file__).parents[2] / "site/assets/contribute"
COMMANDS = {"new": new_command, "impact": impact_command, "photo": photo_command, "take": take_command}


def run(root: Path, *words: str, typed: str = "") -> Result:
    """What a command says and how it ends: run(root, "new", "entry", "--yes")."""
    return CliRunner().invoke(COMMANDS[words[0]], list(words[1:]), obj=root, input=typed)


def part(mini: Path) -> Path:
    """The mini library, changed so that light parts a shiny button from the shirt button, which is dull."""
    _replace(mini / "keydata/characters/light.yaml", "magnification: 400", "magnification: 40")
    _replace(mini / "keydata/entries/debris/sewing-thing.yaml", "light: {any: true,", "light: {states: [dull],")
    return mini


def _replace(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new), "utf-8")


@contextmanager
def opened_form(browser: Any, loaded: Loaded, folder: Path) -> Iterator[Any]:
    """The form of a library in a page opened from a file, on a telephone; nothing may be asked of the network."""
    (folder / "contribute-data.js").write_bytes(form_script(loaded))
    for file in SCRIPT_FOLDER.iterdir():
        shutil.copy(file, folder)
    scripts = "".join(f'<script defer src="{name}.js"></script>' for name in ("contribute-data", *SCRIPTS))
    (folder / "form.html").write_text(
        f"""<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Form</title>
        <meta name="viewport" content="width=device-width"><link rel="stylesheet" href="form.css">{scripts}</head>
        <body style="font: 16px/1.5 sans-serif"><main><h1>A form</h1>
        <div data-contribute><p>without script</p></div></main></body></html>""",
        "utf-8",
    )
    context = browser.new_context(viewport={"width": 360, "height": 740}, accept_downloads=True)
    page, asked = context.new_page(), []
    page.on("request", lambda request: asked.append(request.url))
    page.on("pageerror", lambda error: asked.append(f"error: {error}"))
    page.on("dialog", lambda dialog: dialog.accept())
    page.goto((folder / "form.html").as_uri())
    yield page
    assert all(url.startswith(("file://", "blob:")) for url in asked), asked
    context.close()


def text_of(page: Any) -> str:
    """What the form gives."""
    return str(page.text_content(".wm-form pre[aria-label^='The ']:last-of-type"))


def taken(root: Path, text: str) -> None:
    """Takes over what the form gave, in one command."""
    path = root.parent / "given.txt"
    path.write_text(text, "utf-8")
    result = run(root, "take", str(path), "--yes", "--even-so")
    assert result.exit_code == 0, result.output


def typed(form: Any, field: str, words: str) -> None:
    """Types into a field and leaves it, so that it is judged."""
    form.fill(field, words)
    form.dispatch_event(field, "change")


def is_large_and_named(form: Any) -> None:
    """Holds a form to targets of 48 pixels, to the width of a telephone, and to the rules of accessibility."""
    from axe_playwright_python.sync_playwright import Axe

    small = form.evaluate("""() => [...document.querySelectorAll('button, select, input:not([type=checkbox]), textarea, summary, .wm-choices label')]
        .filter(each => each.offsetParent && each.getBoundingClientRect().height < 48).map(each => each.outerHTML)""")
    assert small == []
    assert form.evaluate("document.documentElement.scrollWidth") <= 360
    found = (
        Axe()
        .run(form, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"], "resultTypes": ["violations"]})
        .response["violations"]
    )
    assert [(each["id"], [node["html"] for node in each["nodes"]]) for each in found] == []
