"""Photographs on pages: taken in by the command, shown with what belongs to them, and hostile words stay words."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from PIL import Image

from keytool.cli.photo import photo_command
from keytool.cli.site import extras
from keytool.library import load
from keytool.pages import pages
from keytool.pages.downloads import as_json
from keytool.pages.photos import photo_files

SHOWS = "A coat button from above; four holes & a rim."


@pytest.fixture
def pictured(mini: Path, tmp_path: Path) -> Path:
    """The mini library with one photograph of a coat button, dark on the left."""
    image = Image.new("RGB", (900, 600), (30, 40, 30))
    image.paste((230, 230, 220), (450, 0, 900, 600))
    image.save(tmp_path / "button.png")
    given = ["add", str(tmp_path / "button.png"), "--entry", "coat-button", "--author", "Davit Roe", "--licence", "cc-by-4.0"]
    result = CliRunner().invoke(photo_command, [*given, "--shows", SHOWS, "--um-per-pixel", "0.5"], obj=mini)
    assert result.exit_code == 0, result.output
    return mini


def page(root: Path, id: str) -> str:
    return next(each.text for each in pages(load(root).library) if each.path == f"entries/{id}.md")


def test_the_page_shows_it_with_author_licence_bar_and_basis(pictured: Path):
    text = page(pictured, "coat-button")
    assert 'src="../photos/coat-button/coat-button-1.page.jpg"' in text and 'width="900" height="600"' in text
    assert 'alt="A coat button from above; four holes &amp; a rim."' in text
    assert "Photograph: Davit Roe, " in text and ">CC BY 4.0</span>. Bar 100 µm" in text
    assert "as stated by the author" in text, "what the scale rests on"
    assert "wm-photo" not in page(pictured, "shirt-button")


def test_the_picture_goes_to_the_site_as_it_stands(pictured: Path):
    loaded = load(pictured)
    files = photo_files(loaded)
    assert list(files) == ["photos/coat-button/coat-button-1.page.jpg"]
    assert files == {path: content for path, content in extras(loaded).files.items() if path.startswith("photos/")}
    (pictured / "keydata/photos/coat-button/coat-button-1.page.jpg").unlink()
    assert photo_files(load(pictured)) == {}


def test_the_download_names_it(pictured: Path):
    import json

    photo = json.loads(as_json(load(pictured).library))["photos"]["coat-button-1"]
    assert (photo["author"], photo["licence"], photo["page"]["bar"]) == ("Davit Roe", "cc-by-4.0", 100)


@pytest.mark.browser
def test_it_is_seen_in_the_built_site(pictured: Path, tmp_path: Path, visit: Any):
    from keytool.pages.build import build_site

    build_site(pictured, tmp_path / "site", extras)
    seen = visit((tmp_path / "site/entries/coat-button.html").as_uri(), viewport={"width": 360, "height": 740})
    image = seen.page.locator(".wm-photo img")
    image.scroll_into_view_if_needed()
    image.evaluate("each => each.decode()")
    assert image.evaluate("each => each.naturalWidth") == 900
    assert seen.page.evaluate("document.documentElement.scrollWidth") <= 360
    assert seen.said == []
