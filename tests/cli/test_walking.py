"""The walk in the terminal: typed answers, piped answers, and what is said when the input ends."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from keytool.cli import main
from keytool.library import Library


def walked(root: Path, typed: str, *options: str) -> Result:
    return CliRunner().invoke(main, ["--library", str(root), "walk", "buttons", *options], input=typed)


def test_numbers_lead_to_an_end(mini: Path) -> None:
    result = walked(mini, "2\n2\n1\n")
    assert result.exit_code == 0
    assert "Shirt button" in result.output
    assert "This walk: wetmount walk --from 'key:buttons/holes=open/size=narrow/rim=raised'" in result.output


def test_back_takes_the_last_answer_back(mini: Path) -> None:
    assert "Coat button" in walked(mini, "2\n2\nb\n1\n").output


def test_back_at_the_first_question_says_so(mini: Path) -> None:
    assert "This is the first question." in walked(mini, "b\n1\n").output


def test_a_question_mark_tells_how_to_see_it(mini: Path) -> None:
    output = walked(mini, "?\n1\n").output
    assert "Turn the button until light falls through it." in output
    assert "Holes: " not in output and "four holes: Four holes in a square." in output


def test_another_word_is_answered_with_what_can_be_typed(mini: Path) -> None:
    assert "“perhaps” is not an answer here. Type 1, 2, u, b, +, =, ? or q." in walked(mini, "perhaps\n1\n").output


def test_digits_without_end_are_no_answer(mini: Path) -> None:
    result = walked(mini, "9" * 100_000 + "\n00000002\n1\n")
    assert result.exit_code == 0, result.exception
    assert " ".join(result.output.split()).count("is not an answer here") == 2


def test_cannot_tell_is_an_answer_and_may_end_undecided(mini: Path) -> None:
    result = walked(mini, "u\n" * 9)
    assert result.exit_code == 0
    assert "Shirt button" in result.output and "%" in result.output


def test_an_open_end_is_one_line_few_names_and_the_look_that_settles_most() -> None:
    output = CliRunner().invoke(main, ["walk", "naked-amoebae"], input="u\n" * 9 + "q\n").output
    last = " ".join(output[output.rindex("> u") : output.index("This walk:")].split())
    assert "Naked amoeba:" in last and "together" in last
    assert 1 <= len(re.findall(r"(\d+) %[,;]", last)) <= 7


def test_an_end_says_what_it_means_for_the_soil_also_by_its_group_and_explains_its_marks() -> None:
    output = " ".join(CliRunner().invoke(main, ["walk", "nematode-mouthparts"], input="2\n1\n3\n1\n").output.split())
    assert "As all of “Bacterial feeder with a terminal bulb”: Bacterial feeders crop bacteria and set free the nitrogen" in output
    assert "◌ from memory" in output


def test_one_scale_of_words_says_how_sure(library: Library) -> None:
    words = {word.label: float(word.get("from")) for word in library.vocabulary["sureness"].values()}
    for key in library.keys:
        output = CliRunner().invoke(main, ["walk", key], input="1\n" * 12).output
        for label, figure in re.findall(r": ([a-z ]+), (\d+) %", " ".join(output.split())):
            above = min((least for least in words.values() if least > words[label]), default=1.0)
            assert words[label] - 0.006 <= int(figure) / 100 <= above + 0.006, (key, label, figure)


def test_the_next_key_does_not_ask_again_what_is_settled_nor_repeat_a_caution() -> None:
    output = CliRunner().invoke(main, ["walk", "first-look"], input="3\n1\n2\n+ own-movement=moves\n").output
    assert "Settled already: 1 Has it legs, is it a plain worm, or neither of the two? Legs along its body" in " ".join(output.split())
    assert "Taken as likely, 98 %: 2 Is there an animal inside the skin?" in " ".join(output.split()), "what moves is no empty skin"
    assert "“What are its legs like?”" in output
    assert output.count("Germs in soil and compost") == 1


def test_cannot_tell_says_that_it_rules_nothing_out(mini: Path) -> None:
    output = walked(mini, "u\n2\n").output
    assert output.count("Cannot tell rules nothing out.") == 1, "an answer that tells something is not told off"


def test_what_a_later_question_looks_at_is_asked_in_its_own_words_while_an_earlier_one_is_open(mini: Path) -> None:
    """The question itself would take for granted what could not be told."""
    output = walked(mini, "", "--from", "holes=cannot-tell/saw:width=15000/saw:sewn=cannot-tell/saw:light=cannot-tell").output
    assert "?   Is there a rim?" in output


def test_after_cannot_tell_the_next_question_is_that_of_the_key_where_it_tells_enough(mini: Path) -> None:
    output = walked(mini, "u\nu\n").output
    assert [int(found[1]) for found in re.finditer(r"^(\d+) +\S", output, re.MULTILINE)] == [1, 2, 3]
    assert "tells most now" not in output


def test_anything_else_seen_is_taken_at_any_time_and_changes_what_is_likely(mini: Path) -> None:
    result = walked(mini, "2\n+ rim=flat\n2\n")
    assert "Taken: Rim: flat edge" in result.output
    assert "Cuff button" in result.output
    assert "rim=raised" not in result.output.split("This walk:")[1], "what was told is not asked again"


def test_what_it_may_be_now_is_said_on_demand(mini: Path) -> None:
    assert "%" in walked(mini, "2\n=\n").output


def test_after_an_end_one_can_go_back(mini: Path) -> None:
    output = walked(mini, "2\n2\n1\nb\n2\n").output
    assert output.count("This walk:") == 2
    assert "rim=flat" in output.split("This walk:")[2]


def test_every_printed_address_is_taken_again(mini: Path) -> None:
    first = walked(mini, "2\n+ rim=flat\nq\n").output
    address = re.search(r"--from '([^']+)'", " ".join(first.split()))
    assert address
    again = CliRunner().invoke(main, ["--library", str(mini), "walk", "--from", address[1]], input="2\n")
    assert again.exit_code == 0 and "Cuff button" in again.output


def test_rubbish_in_an_address_is_named_and_the_rest_kept(mini: Path) -> None:
    result = walked(mini, "2\n", "--from", "holes=open/__proto__=x/size=narrow/saw:nothing=at-all")
    assert "Left out: There is no question of buttons '__proto__'." in " ".join(result.output.split())
    assert "Cuff button" in result.output


def test_a_number_that_follows_is_not_explained(mini: Path) -> None:
    assert "tells most now" not in walked(mini, "2\n2\n1\n").output


def test_several_cannot_tells_in_a_row_send_the_hand_to_the_microscope() -> None:
    def said(typed: str) -> str:
        return CliRunner().invoke(main, ["walk", "small-animals"], input=typed).output

    assert "Stuck? Try this at the microscope" not in said("u\n")
    assert "Stuck? Try this at the microscope" in said("u\nu\n")
    assert "Rack the condenser up" in said("u\nu\n")
    assert "Stuck? Try this at the microscope" not in said("u\n2\nu\n"), "not in a row"


def test_json_prints_only_the_record_on_standard_output(mini: Path) -> None:
    result = walked(mini, "2\n2\n1\n", "--json")
    record = json.loads(result.stdout)
    assert record["finished"] is True
    assert record["arrived"] == "shirt-button" and record["verdict"]["id"] == "shirt-button"
    assert [each["lead"] for each in record["legs"][0]["answers"]] == ["open", "narrow", "raised"]
    assert "Can light be seen" in result.stderr


def test_the_end_of_the_input_says_where_it_stopped_and_how_to_go_on(mini: Path) -> None:
    result = walked(mini, "2\n")
    assert result.exit_code == 1
    assert "The input ended at “Is it 18 mm wide or more?”." in result.output
    assert "wetmount walk --from 'key:buttons/holes=open'" in result.output


def test_a_walk_goes_on_from_an_address(mini: Path) -> None:
    assert "Cuff button" in walked(mini, "2\n", "--from", "holes=open/size=narrow").output


def test_an_address_with_the_key_in_it_will_do(mini: Path) -> None:
    result = CliRunner().invoke(main, ["--library", str(mini), "walk", "buttons#holes=open/size=narrow"], input="2\n")
    assert "Cuff button" in result.output


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["walk", "butons"], "There is no key 'butons'. Did you mean 'buttons'?"),
        (["describe", "hols=two"], "There is no character 'hols'. Did you mean 'holes'?"),
        (["describe", "holes=tow"], "'tow' is no state of 'holes'. Did you mean 'two'?"),
        (["describe", "width=3 s"], "'s' is no unit for 'width'."),
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


def test_where_most_is_likely_the_walk_goes_on_and_says_so() -> None:
    output = " ".join(CliRunner().invoke(main, ["walk", "first-look"], input="1\n2\nu\nu\n").output.split())
    assert re.search(r"Most of what is still likely, \d\d %, belongs to the key “Threads”: the walk goes on there. b goes back.", output)


def test_what_it_eats_never_adds_up_to_more_than_all() -> None:
    output = " ".join(CliRunner().invoke(main, ["describe", "mouth=spear", "gullet=middle-bulb"]).output.split())
    (said,) = re.findall(r"Lives most likely as: (.*?) What it means", output)
    assert "bacterial" not in said, "what pierces with a spear eats no bacteria"
    assert sum(int(each) for each in re.findall(r"(\d+) %", said)) <= 100


def test_what_is_taken_as_likely_is_said_and_asked_after_all_on_demand() -> None:
    output = CliRunner().invoke(main, ["walk"], input="3\n2\nn\n2\n").output
    assert "Taken as likely" in output
    assert "Is it still there?" in output[output.index("> n") :]
    assert "Debris and faults" in output[output.index("> n") :]
