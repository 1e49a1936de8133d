"""Every command: it helps, it lists, it shows, it checks."""

import io
import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from keytool.cli import COMMANDS, main
from keytool.cli.show import Showing
from keytool.cli.terminal import Terminal
from keytool.library import Library

README = Path(__file__).parents[2] / "README.md"


def run(*arguments: str) -> str:
    result = CliRunner().invoke(main, list(arguments))
    assert result.exit_code == 0, result.output
    return result.output


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help_and_stands_in_the_readme(command: str) -> None:
    text = run(command, "--help")
    assert len(text.splitlines()) > 6
    assert f"wetmount {command}" in README.read_text("utf-8")


def test_the_answers_piped_in_the_readme_come_to_an_end_and_print_the_record() -> None:
    [(answers, arguments)] = re.findall(r"^printf '(.*)' \| wetmount (walk .*--json)", README.read_text("utf-8"), re.MULTILINE)
    result = CliRunner().invoke(main, arguments.split(), input=answers.replace("\\n", "\n"))
    assert result.exit_code == 0, result.output
    record = json.loads(result.stdout)
    assert len(record["legs"][-1]["answers"]) == answers.count("\\n") and record["finished"] and record["names"]


@pytest.mark.parametrize("what", ["entries", "keys", "characters", "sources", "terms", "cautions"])
def test_list_gives_each_by_id_and_as_json(what: str, library: Library) -> None:
    held = getattr(library, what)
    assert [row["id"] for row in json.loads(run("list", what, "--json"))] == list(held)
    assert len(run("list", what).splitlines()) == len(held)


def test_show_speaks_of_everything_in_the_library(library: Library) -> None:
    for shelf in (library.entries, library.keys, library.characters, library.sources, library.terms, library.cautions, library.quantities):
        for id in shelf:
            said = io.StringIO()
            Showing(library, Terminal(said)).show(id)
            assert len(said.getvalue()) > 20
            assert not re.search(r"\{[a-z-]+\}|\[\[", said.getvalue())


def test_show_gives_every_statement_its_mark_and_says_what_it_means(library: Library) -> None:
    text = run("show", "pratylenchus")
    for statement in library.entries["pratylenchus"].statements.values():
        assert library.characters[statement.character].name in text
    assert "published, value" in text


def test_show_says_first_what_is_the_entrys_own_and_last_what_its_groups_share(library: Library) -> None:
    text = run("show", "pratylenchus")
    own, shared = text.index("What it shows"), text.index("As all of: Nematode")
    for statement in library.entries["pratylenchus"].statements.values():
        at = text.index(f"- {library.characters[statement.character].name}: ")
        assert (at > shared) if statement.stated_by == "nematode" else (own < at < shared)
    assert text.rindex("Caution, ") < shared


def test_check_is_clean_and_counts() -> None:
    text = " ".join(run("check").split())
    for word in ("keys", "couplets", "entries", "sources", "proofs"):
        assert re.search(rf"[1-9][0-9]* {word}", text)


def test_check_gives_its_findings_as_json_and_exits_1(mini: Path) -> None:
    (mini / "keydata/terms.yaml").write_text("shank: {term: shank}\n", "utf-8")
    result = CliRunner().invoke(main, ["--library", str(mini), "check", "--format", "json"])
    assert result.exit_code == 1
    (finding,) = [each for each in json.loads(result.output)["findings"] if each["severity"] == "problem"]
    assert (finding["file"], finding["line"], finding["message"]) == ("keydata/terms.yaml", 1, "'means' is missing in 'shank'.")


def test_a_card_is_written_whole_or_not_at_all(mini: Path, tmp_path: Path) -> None:
    card = tmp_path / "card.pdf"
    card.write_bytes(b"the old card")
    result = CliRunner().invoke(main, ["--library", str(mini), "card", "--key", "nothing", "-o", str(card)])
    assert result.exit_code == 2
    assert card.read_bytes() == b"the old card"
    result = CliRunner().invoke(main, ["--library", str(mini), "card", "--key", "buttons", "-o", str(card)])
    assert result.exit_code == 0, result.output
    assert card.read_bytes().startswith(b"%PDF-")
    assert [path.name for path in tmp_path.iterdir() if "card" in path.name] == ["card.pdf"]


def test_a_card_that_cannot_be_written_says_so_in_one_line(mini: Path, tmp_path: Path) -> None:
    result = CliRunner().invoke(main, ["--library", str(mini), "card", "--key", "buttons", "-o", str(tmp_path / "nowhere" / "card.pdf")])
    assert result.exit_code == 1
    assert "Traceback" not in result.output
    assert "nowhere" in result.output
