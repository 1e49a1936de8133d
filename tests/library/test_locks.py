"""What a hostile or damaged file may hold stays outside: each case was found by attack, and passes no more.

Contexts of output and what must be escaped in each: OWASP Cross Site Scripting Prevention Cheat Sheet (general knowledge, from memory).
"""

from __future__ import annotations

import os
import pickle
from pathlib import Path

import pytest
from PIL import Image

from keytool.library import load, root
from keytool.library.checks import dates, photos
from keytool.library.disk_cache import recall, remember
from keytool.library.finding import Finding, Place
from keytool.library.model import Term
from keytool.library.report import MOST_SHOWN, as_text
from keytool.library.save import save
from keytool.library.yaml_file import YamlFile, read_yaml
from tests.conftest import everything_found


def said(text: str, tmp_path: Path) -> list[str]:
    path = tmp_path / "file.yaml"
    path.write_text(text, "utf-8")
    return [f"{each.place.line}:{each.place.column} {each.message}" for each in read_yaml(path, "file.yaml").findings]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ('a: "\\U00110000"', "1:4 '\\U00110000' stands for no character."),
        ('a: "\\UFFFFFFFF"', "1:4 '\\UFFFFFFFF' stands for no character."),
        ('a: "red \\e[31m"', "1:4 An invisible character, U+001B."),
        ('b: 1\na: "\\u009b31m"', "2:4 An invisible character, U+009B."),
        ('a: "B\\u202egnp.exe"', "1:4 An invisible character, U+202E."),
        ('a: "\\ud800"', "1:4 An invisible character, U+D800."),
        ('a: "\\0"', "1:4 An invisible character, U+0000."),
        ('"k\\u200b": 1', "1:1 An invisible character, U+200B."),
        ("a: \u3164", "1:4 An invisible character, U+3164."),
        ('a: "   "', "1:4 A text of nothing but spaces."),
    ],
)
def test_what_an_escape_smuggles_in_is_refused_with_its_place(text: str, message: str, tmp_path: Path) -> None:
    (found,) = said(text, tmp_path)
    assert found.replace("1:5", "1:4", 1) == message


@pytest.mark.parametrize("text", ['a: "one\\ntwo"', "a: |\n  one\n  two\n", 'a: "40 µm × 2"', "a: 'C:\\U00110000'"])
def test_ordinary_texts_of_several_lines_are_taken(text: str, tmp_path: Path) -> None:
    assert said(text, tmp_path) == []


@pytest.mark.parametrize("day", ["2026-02-31", "2026-11-31", "2099-01-01", "9999-12-31"])
def test_a_day_that_cannot_be_is_found(day: str, mini: Path) -> None:
    path = next((mini / "keydata/entries").rglob("*.yaml"))
    lines = [f'reviewed: "{day}"' if each.startswith("reviewed:") else each for each in path.read_text("utf-8").splitlines()]
    path.write_text("\n".join(lines) + "\n", "utf-8")
    (found,) = dates.check(load(mini))
    assert day in found.message and found.place.line == lines.index(f'reviewed: "{day}"') + 1


def test_a_pattern_ends_where_the_text_ends(tmp_path: Path) -> None:
    schema = load(root()).schemas
    lines = {"plain": "bobbin", "broken": "bobbin\n"}
    wrong = {name: schema.findings("terms", YamlFile("t", {"bobbin": {"term": text, "means": "A reel."}})) for name, text in lines.items()}
    assert not wrong["plain"] and wrong["broken"]


def test_a_long_list_with_one_double_is_read_in_one_go(tmp_path: Path) -> None:
    """20,000 ids took 34 s when every one was held against all before it; the suite would show that."""
    schema = load(root()).schemas
    cautions = [f"c{n}" for n in range(20_000)]
    found = schema.findings("key", YamlFile("k", {"cautions": [*cautions, "c0"]}))
    assert any("names 'c0' twice" in each.message for each in found)


def test_a_report_shows_no_sign_that_a_terminal_would_act_on_and_has_an_end() -> None:
    many = [Finding("x", Place(f"a\x1b[2J{n}\n.yaml"), "B\u202egnp") for n in range(MOST_SHOWN + 5)]
    text = as_text(many)
    assert "\x1b" not in text and "\u202e" not in text and "\\x1b[2J" in text
    assert "... and 5 more." in text and text.endswith(f"{MOST_SHOWN + 5} problems.")


def test_a_link_in_the_library_is_refused_and_not_followed(mini: Path, tmp_path: Path) -> None:
    secret = tmp_path / "secret.yaml"
    secret.write_text("password: rosebud\n", "utf-8")
    (mini / "keydata/entries/buttons/leak.yaml").parent.mkdir(exist_ok=True)
    (mini / "keydata/entries/buttons/leak.yaml").symlink_to(secret)
    (found,) = [each for each in everything_found(load(mini)) if "leak" in each.place.file]
    assert found.message == "This is a link to another place." and "rosebud" not in found.tip


class _Runs:
    def __reduce__(self) -> tuple[object, tuple[str]]:
        return (os.system, ("touch planted",))


def test_what_is_planted_in_the_cache_is_not_run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    remember("library", "k", {"term": Term("bobbin", "bobbin", (), "A reel.", False)})
    assert recall("library", "k")["term"].means == "A reel."
    remember("library", "k", _Runs())  # with a right digest, as whoever can write there can make one
    assert recall("library", "k") is None
    (tmp_path / "wetmount" / "k.library").write_bytes(pickle.dumps(_Runs()))
    assert recall("library", "k") is None
    assert not (tmp_path / "planted").exists()


def test_a_garbled_cache_is_not_believed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    remember("library", "k", {"words": "Four stiff head bristles"})
    path = tmp_path / "wetmount" / "k.library"
    whole = path.read_bytes()
    for at in range(len(whole)):
        path.write_bytes(whole[:at] + bytes([whole[at] ^ 0x5A]) + whole[at + 1 :])
        assert recall("library", "k") is None, at
    path.write_bytes(whole)
    path.chmod(0o666)
    assert recall("library", "k") is None, "anyone could have written it"


def test_without_a_home_nothing_is_remembered_and_nothing_fails(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("XDG_CACHE_HOME", raising=False)

    def no_home() -> Path:
        raise RuntimeError("Could not determine home directory.")

    monkeypatch.setattr(Path, "home", no_home)
    remember("library", "k", 1)
    assert recall("library", "k") is None


def test_a_device_is_not_replaced_by_a_file(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    with pytest.raises(OSError, match="no plain file"):
        save(pipe, b"card")
    assert pipe.is_fifo() and [each.name for each in tmp_path.iterdir()] == ["pipe"]


@pytest.fixture
def photo(mini: Path, tmp_path: Path) -> Path:
    """A library with one photograph; the path of its page picture."""
    from click.testing import CliRunner

    from keytool.cli import main

    Image.effect_noise((900, 600), 40).convert("RGB").save(tmp_path / "coat.png")
    asked = [
        "--entry",
        "coat-button",
        "--author",
        "Davit Roe",
        "--licence",
        "cc-by-4.0",
        "--shows",
        "A coat button.",
        "--um-per-pixel",
        "0.5",
    ]
    result = CliRunner().invoke(main, ["--library", str(mini), "photo", "add", str(tmp_path / "coat.png"), *asked])
    assert result.exit_code == 0, result.output
    return mini / "keydata/photos/coat-button/coat-button-1.page.jpg"


def test_a_picture_that_tells_where_it_was_taken_does_not_pass(mini: Path, photo: Path) -> None:
    assert list(photos.check(load(mini))) == []
    exif = Image.Exif()
    exif.get_ifd(0x8825)[1] = "N"
    with Image.open(photo) as opened:
        opened.save(photo, exif=exif)
    (found,) = photos.check(load(mini))
    assert "carries more than its pixels: " in found.message and "exif" in found.message


def test_a_picture_that_is_a_link_or_another_picture_does_not_pass(mini: Path, photo: Path, tmp_path: Path) -> None:
    with Image.open(photo) as opened:
        opened.resize((300, 200)).save(photo)
    (found,) = photos.check(load(mini))
    assert "is 300 × 200 pixels, but the record says" in found.message
    (tmp_path / "secret.jpg").write_bytes(b"secret")
    photo.unlink()
    photo.symlink_to(tmp_path / "secret.jpg")
    assert any("not there as a file of its own" in each.message for each in photos.check(load(mini)))
