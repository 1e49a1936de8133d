"""The site as MkDocs builds it: whole or not at all, the same every time, and with no link that leads nowhere."""

from __future__ import annotations

import base64
import hashlib
import re
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urldefrag

import pytest
from mkdocs.config import load_config
from mkdocs.structure.files import get_files

from keytool.library import load
from keytool.pages import assets, pages, write
from keytool.pages.build import SiteNotBuilt, build_site, plain_config

ROOT = Path(__file__).parents[2]


class Links(HTMLParser):
    """What one page links to and loads, and the anchors it has."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.links: list[str] = []
        self.loads: list[str] = []
        self.anchors: set[str] = set()
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if "id" in given:
            self.anchors.add(given["id"])
        if tag == "a" and "href" in given:
            self.links.append(given["href"])
        if tag in ("script", "img", "source") and given.get("src"):
            self.loads.append(given["src"])
        if tag == "link" and given.get("rel") in ("stylesheet", "icon", "preload"):
            self.loads.append(given["href"])


def test_the_output_is_never_the_folder_of_the_sources():
    config = load_config(str(ROOT / "mkdocs.yml"))
    assert Path(config.site_dir) == ROOT / "build" / "site"
    assert config.use_directory_urls is False and config.strict is True


def test_the_plugin_hands_over_what_is_written(mini_root: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv("WETMOUNT_ROOT", str(mini_root))
    config = load_config(str(ROOT / "mkdocs.yml"))
    config.plugins.on_config(config)
    files = config.plugins.on_files(get_files(config), config=config)
    given = {file.src_uri: file.content_bytes for file in files}
    library = load(mini_root).library
    expected = {each.path: each.text.encode() for each in pages(library)} | {each.path: each.content for each in assets(library)}
    assert {path: given.get(path) for path in expected} == expected
    assert all((ROOT / "site/pages" / path).is_file() for path in given.keys() - expected.keys()), "the rest is written by hand"


def test_every_script_and_style_a_page_asks_for_is_handed_over(mini_root: Path):
    """The card form once named the script by the name it had before it was bundled, and did nothing."""
    library = load(mini_root).library
    there = {each.path for each in assets(library)}
    asked = {
        (each.path, found)
        for each in pages(library)
        for found in re.findall(r'(?:src|href)="(?:\.\./)*(assets/[^"]+\.(?:js|css))"', each.text)
    }
    assert ("cards.md", "assets/cards.js") in asked
    assert sorted((page, path) for page, path in asked if path not in there) == []


def test_each_page_knows_the_file_it_is_edited_in(mini_root: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv("WETMOUNT_ROOT", str(mini_root))
    monkeypatch.setenv("REPO_URL", "https://example.org/soil")
    monkeypatch.setenv("EDIT_URI", "edit/main/")
    out = mini_root.parent / "edited"
    build_site(mini_root, out)
    assert (
        'href="https://example.org/soil/edit/main/keydata/entries/debris/coat-button.yaml"'
        in (out / "entries/coat-button.html").read_text()
    )
    assert 'href="https://example.org/soil/edit/main/site/pages/about.md"' in (out / "about.html").read_text()


def test_two_builds_give_the_same_bytes(mini_root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    trees = []
    for name in ("one", "two"):
        monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache" / name))  # so that neither is remembered from the other
        build_site(mini_root, tmp_path / name)
        trees.append(
            {path.relative_to(tmp_path / name).as_posix(): path.read_bytes() for path in (tmp_path / name).rglob("*") if path.is_file()}
        )
    assert trees[0].keys() == trees[1].keys()
    assert [path for path in trees[0] if trees[0][path] != trees[1][path]] == []
    assert not [path for path in tmp_path.iterdir() if path.name.startswith(".")], "nothing is left beside the site"


def test_a_library_with_problems_leaves_the_old_site_whole(mini: Path, tmp_path: Path):
    out = tmp_path / "site"
    build_site(mini, out)
    before = (out / "index.html").read_bytes()
    entry = mini / "keydata" / "entries" / "debris" / "coat-button.yaml"
    entry.write_text(entry.read_text().replace("within: [button]", "within: [buton]"))
    with pytest.raises(SiteNotBuilt) as error:
        build_site(mini, out)
    assert "keydata/entries/debris/coat-button.yaml:" in error.value.message and "buton" in error.value.message
    assert "Traceback" not in error.value.message
    assert (out / "index.html").read_bytes() == before
    assert [each.name for each in tmp_path.iterdir() if each.name.startswith(".")] == []


def test_a_folder_that_is_no_site_is_not_replaced(mini: Path, tmp_path: Path):
    (tmp_path / "thesis.txt").write_text("years of work")
    with pytest.raises(SiteNotBuilt, match="holds no site"):
        build_site(mini, tmp_path)
    assert (tmp_path / "thesis.txt").read_text() == "years of work"


def test_every_link_and_anchor_leads_somewhere_and_nothing_is_loaded_from_elsewhere(site: Path):
    read = {path: Links(path.read_text(encoding="utf-8")) for path in site.rglob("*.html") if path.name != "404.html"}
    assert len(read) > 20
    for path, found in read.items():
        for address in found.loads:
            assert ":" not in address and (path.parent / unquote(address)).is_file(), (path, address)
        for link in found.links:
            if link.startswith(("https://squidfunk", "mailto:")):
                continue
            target, anchor = urldefrag(link)
            there = (path.parent / unquote(target)).resolve() if target else path
            there = there / "index.html" if there.is_dir() else there
            assert there in read or (there.suffix != ".html" and there.is_file()), (path.relative_to(site), link)
            assert not anchor or "=" in anchor or anchor in read[there].anchors, (path.relative_to(site), link)


def test_no_page_names_another_server(site: Path):
    for path in site.rglob("*.html"):
        text = path.read_text(encoding="utf-8")
        assert "Content-Security-Policy" in text and "googleapis" not in text and "unpkg" not in text, path


def test_no_page_may_run_a_script_that_is_not_a_file_of_the_site_or_named_by_its_hash(site: Path):
    """Content Security Policy Level 3: a script in the page runs only where the policy holds the SHA-256 of its text."""
    for path in site.rglob("*.html"):
        text = path.read_text("utf-8")
        policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]*)"', text)
        assert policy and "'unsafe-inline'" not in policy[1].split("script-src")[1].split(";")[0], path
        for attributes, script in re.findall(r"<script\b([^>]*)>(.*?)</script>", text, re.DOTALL):
            if "src=" not in attributes and "application/json" not in attributes:
                digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
                assert f"'sha256-{digest}'" in policy[1], path
        assert not re.search(r"<\w+\b[^>]*\son\w+=", re.sub(r"<script.*?</script>", "", text, flags=re.DOTALL)), path


def test_the_description_of_a_page_stays_inside_its_attribute(mini: Path, tmp_path: Path):
    """A summary with straight quotes once closed the attribute, and could send a visitor to another site."""
    entry = mini / "keydata" / "entries" / "debris" / "coat-button.yaml"
    text = entry.read_text("utf-8")
    hostile = "summary: '0;url=https://elsewhere.example/\" http-equiv=\"refresh'"
    entry.write_text(re.sub(r"(?m)^summary: .*$", hostile, text), "utf-8")
    build_site(mini, tmp_path / "site")
    heads = Metas((tmp_path / "site/entries/coat-button.html").read_text("utf-8")).found
    assert {each.get("http-equiv") for each in heads} <= {None, "Content-Security-Policy"}
    assert any(each.get("name") == "description" and "elsewhere.example" in each["content"] for each in heads)


class Metas(HTMLParser):
    """The `<meta>` elements of a page."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[dict[str, str]] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "meta":
            self.found.append({name: value or "" for name, value in attrs})


def test_nothing_of_the_frame_of_the_theme_is_carried_along(site: Path):
    names = [path.relative_to(site).as_posix() for path in site.rglob("*")]
    assert not [each for each in names if "javascripts" in each or "stylesheets" in each or each.endswith(".map")]


def test_a_plain_mkdocs_builds_the_written_pages(mini_root: Path, tmp_path: Path):
    """The way out should the plugin ever no longer load: written pages, the same theme and navigation, no plugin of ours."""
    from mkdocs.commands.build import build

    write(load(mini_root).library, tmp_path / "docs")
    (tmp_path / "mkdocs.yml").write_text(plain_config(mini_root), "utf-8")
    config = load_config(str(tmp_path / "mkdocs.yml"), site_dir=str(tmp_path / "out"))
    assert "wetmount" not in config.plugins
    build(config)
    assert (tmp_path / "out/keys/buttons.html").is_file() and (tmp_path / "out/entries/coat-button.html").is_file()
    assert "--plate" in (tmp_path / "out/assets/wetmount.css").read_text("utf-8")


def test_what_other_faces_add_is_on_the_site(site: Path):
    """The guide for contributors, its form and schemas: handed over by whoever builds the site."""
    assert (site / "assets/contribute-data.js").is_file()
    assert (site / "schemas/entry.schema.json").is_file()
    assert "data-contribute" in (site / "contribute/form.html").read_text("utf-8")


def test_a_remembered_site_is_the_same_and_one_changed_byte_makes_it_anew(mini: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))

    def built() -> dict[str, bytes]:
        build_site(mini, tmp_path / "out")
        return {
            path.relative_to(tmp_path / "out").as_posix(): path.read_bytes() for path in (tmp_path / "out").rglob("*") if path.is_file()
        }

    made = built()
    with monkeypatch.context() as nothing_is_made:
        nothing_is_made.setattr("keytool.pages.build._build", lambda *how: pytest.fail("it was made again"))
        assert built() == made
    monkeypatch.setenv("SITE_URL", "https://soil.example/")
    with monkeypatch.context() as nothing_is_drawn:
        nothing_is_drawn.setattr("keytool.pages.site_cache.build_site", lambda *how: pytest.fail("it was drawn again"))
        assert b"https://soil.example/" in built()["index.html"]
    monkeypatch.delenv("SITE_URL")
    cautions = mini / "keydata/cautions.yaml"
    cautions.write_text(cautions.read_text("utf-8").replace("Needles prick.,", "Needles prick and roll.,"), "utf-8")
    assert b"prick and roll" in built()["cautions.html"]
