"""The walk in the terminal: typed answers, piped answers, and what is said when the input ends."""

import json
import os
import re
import subprocess
import sys
from itertools import pairwise
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from keytool.cli import main
from keytool.identify.doubt import CHANGE, NOTHING_OUT
from keytool.library import Library


def walked(root: Path, typed: str, *options: str) -> Result:
    return CliRunner().invoke(main, ["--library", str(root), "walk", "buttons", *options], input=typed)


def test_numbers_lead_to_an_end(mini: Path) -> None:
    result = walked(mini, "2\n2\n1\n")
    assert result.exit_code == 0
    assert "Shirt button" in result.output
    assert "This walk: buttons#holes=open/size=narrow/rim=raised" in result.output


def test_back_takes_the_last_answer_back(mini: Path) -> None:
    assert "Coat button" in walked(mini, "2\n2\nb\n1\n").output


def test_back_at_the_first_question_says_so(mini: Path) -> None:
    assert "This is the first question." in walked(mini, "b\n1\n").output


def test_a_question_mark_tells_how_to_see_it(mini: Path) -> None:
    output = walked(mini, "?\n1\n").output
    assert "Turn the button until light falls through it." in output
    assert "Holes: " not in output and "four holes: Four holes in a square." in output


def test_another_word_is_answered_with_what_can_be_typed(mini: Path) -> None:
    assert "“perhaps” is not an answer here. Type 1, 2, u, b, ? or q." in walked(mini, "perhaps\n1\n").output


def test_cannot_tell_is_an_answer_and_may_end_undecided(mini: Path) -> None:
    result = walked(mini, "u\nu\nu\n")
    assert result.exit_code == 0
    assert "It cannot be settled between these, most likely first:" in result.output


def test_of_several_ends_each_is_a_line_the_likeliest_first_and_the_question_left_open_is_named() -> None:
    output = CliRunner().invoke(main, ["walk", "naked-amoebae"], input="2\n2\nu\n2\n").output
    last = output[output.index("It cannot be settled") :]
    chances = [int(each) for each in re.findall(r"about (\d+) %", last)]
    assert len(chances) == 2 and chances == sorted(chances, reverse=True)
    assert len(last.splitlines()) < 14, "the likeliest is still on a screen of 24 lines"
    assert "They share members, so the figures overlap." in last
    assert "Look again at “How does its front move on?”" in " ".join(last.split())


def test_an_end_says_what_it_means_for_the_soil_also_by_its_group_and_explains_its_marks() -> None:
    output = " ".join(CliRunner().invoke(main, ["walk", "nematode-mouthparts"], input="2\n1\n3\n1\n").output.split())
    assert "As all of “Bacterial feeder with a terminal bulb”: Bacterial feeders crop bacteria and set free the nitrogen" in output
    assert "◌ from memory" in output


def test_an_end_that_is_not_likely_is_a_perhaps(library: Library) -> None:
    said = {key: CliRunner().invoke(main, ["walk", key], input="1\n" * 12).output for key in library.keys}
    for output in said.values():
        for sure in re.findall(r"How sure: (.*?), about", output):
            assert ("Perhaps: " in output) == (sure in ("possible", "doubtful"))
    assert any("Perhaps: " in output for output in said.values()) and any("How sure: fairly sure" in output for output in said.values())


def test_the_next_key_does_not_ask_again_what_is_settled_nor_repeat_a_caution() -> None:
    output = CliRunner().invoke(main, ["walk", "first-look"], input="3\n1\n2\n").output
    assert "Settled already: 1 Has it legs, is it a plain worm, or neither of the two? Legs along its body" in " ".join(output.split())
    assert "“Is there an animal inside the skin?”" in output
    assert output.count("Germs in soil and compost") == 1


def test_cannot_tell_says_that_it_rules_nothing_out(mini: Path) -> None:
    output = walked(mini, "u\n2\n").output
    assert output.count(NOTHING_OUT) == 1, "an answer that tells something is not told off"


def test_a_jump_of_the_number_is_explained(library: Library) -> None:
    """The numbers of the questions are those printed; where one is not the next, a line before it says why."""
    jumps = 0
    for key in library.keys:
        output = CliRunner().invoke(main, ["walk", key], input="u\nu\nu\n").output
        asked = [int(found[1]) for found in re.finditer(r"^(\d+) +\S", output, re.MULTILINE)]
        assert len(asked) == 4, key
        for left, (before, now) in enumerate(pairwise(asked), 1):
            words = f"Question 1 left open; {now} tells most now." if left == 1 else f"{left} questions left open; {now} tells most now."
            assert (words in output) == (now != before + 1), (key, asked)
            jumps += now != before + 1
    assert jumps > 3


def test_a_number_that_follows_is_not_explained(mini: Path) -> None:
    assert "tells most now" not in walked(mini, "2\n2\n1\n").output


def test_several_cannot_tells_in_a_row_send_the_hand_to_the_microscope() -> None:
    def said(typed: str) -> str:
        return CliRunner().invoke(main, ["walk", "small-animals"], input=typed).output

    assert CHANGE not in said("u\n")
    assert CHANGE in said("u\nu\n")
    assert "Rack the condenser up" in said("u\nu\n")
    assert CHANGE not in said("u\n2\nu\n"), "not in a row"


def test_json_prints_only_the_record_on_standard_output(mini: Path) -> None:
    result = walked(mini, "2\n2\n1\n", "--json")
    record = json.loads(result.stdout)
    assert record["finished"] is True
    assert [end["id"] for end in record["ends"]] == ["shirt-button"]
    assert [each["lead"] for each in record["legs"][0]["answers"]] == ["open", "narrow", "raised"]
    assert "Can light be seen" in result.stderr


def test_the_end_of_the_input_says_where_it_stopped_and_how_to_go_on(mini: Path) -> None:
    result = walked(mini, "2\n")
    assert result.exit_code == 1
    assert "The input ended at “Is it 18 mm wide or more?”." in result.output
    assert "wetmount walk 'buttons#holes=open'" in result.output


def test_a_walk_goes_on_from_an_address(mini: Path) -> None:
    assert "Cuff button" in walked(mini, "2\n", "--from", "holes=open/size=narrow").output


def test_an_address_with_the_key_in_it_will_do(mini: Path) -> None:
    result = CliRunner().invoke(main, ["--library", str(mini), "walk", "buttons#holes=open/size=narrow"], input="2\n")
    assert "Cuff button" in result.output


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["walk", "butons"], "There is no key 'butons'. Did you mean 'buttons'?"),
        (["walk", "buttons", "--from", "rim=flat"], "'rim' is not asked there; the question is 'holes'."),
        (["show", "shirt-buton"], "Did you mean 'shirt-button'?"),
        (["card", "--key", "nothing"], "There is no key 'nothing'."),
        (["card", "--key", "buttons", "--paper", "A44"], "There is no paper 'A44'. Did you mean 'A4'?"),
        (["card", "--key", "buttons", "--field", "forty"], "'forty' is not a field diameter."),
    ],
)
def test_what_is_not_there_is_said_with_what_is_near(mini: Path, arguments: list[str], says: str) -> None:
    result = CliRunner().invoke(main, ["--library", str(mini), *arguments])
    assert result.exit_code == 2
    assert says in " ".join(result.output.split())


def test_a_folder_without_a_library_is_named(tmp_path: Path) -> None:
    result = CliRunner().invoke(main, ["--library", str(tmp_path), "list"])
    assert result.exit_code == 2
    assert "There is no keydata folder in" in result.output


def test_nothing_is_made_from_a_library_with_problems(mini: Path) -> None:
    (mini / "keydata/keys/buttons.yaml").write_text("id: buttons\n", "utf-8")
    result = CliRunner().invoke(main, ["--library", str(mini), "walk", "buttons"])
    assert result.exit_code == 1
    assert "Run 'wetmount check' to see all." in result.output


@pytest.mark.parametrize("settings", [{"LC_ALL": "C", "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"}, {"NO_COLOR": "1"}, {"TERM": "dumb"}])
def test_a_real_process_speaks_to_any_terminal(settings: dict[str, str]) -> None:
    result = subprocess.run(
        [sys.executable, "-m", "keytool.cli", "show", "nematode-mouthparts"],
        capture_output=True,
        check=True,
        env={**os.environ, **settings},
    )
    assert b"\x1b[" not in result.stdout
    if "LC_ALL" in settings:
        assert result.stdout.isascii()
        assert b"?m" not in result.stdout


def test_the_two_keys_are_walked_in_one_go_to_an_entry() -> None:
    """First look hands a nematode on to Nematode mouthparts; one record holds both."""
    result = CliRunner().invoke(main, ["walk", "first-look", "--json"], input="u\n" * 60)
    record = json.loads(result.stdout)
    assert record["finished"] is True
    assert record["legs"][0]["key"] == "first-look"
