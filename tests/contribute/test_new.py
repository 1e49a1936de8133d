"""A newcomer adds things: what is asked, what is said, what is written, and what is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from keytool.library import load
from tests.conftest import everything_found
from tests.contribute.helping import part, run

BUTTON = (
    "--like",
    "shirt-button",
    "--common",
    "Tarn End button",
    "--summary",
    "An invented button of the Tarn End market garden.",
    "--commonness",
    "rare",
    "--contributor",
    "Ilse Okafor",
    "--reviewed",
    "2026-11-25",
    "--shows",
    "holes=four",
    "--shows",
    "width=14..16mm",
    "--shows",
    "rim=raised",
    "--yes",
)
ANSWERED = [
    "--scientific",
    "-",
    "--id",
    "tarn-end-button",
    "--kind",
    "object",
    "--theme",
    "debris",
    "--within",
    "button",
    "--basis",
    "memory",
    "--feeding",
    "-",
]
"""What is asked besides, answered, so that nothing is left to be asked but what a test types."""
FILE = "keydata/entries/debris/tarn-end-button.yaml"


@pytest.fixture
def parted(mini: Path) -> Path:
    return part(mini)


def words(text: str) -> str:
    """What was said, without the line breaks of its width."""
    return " ".join(text.split())


def snapshot(root: Path) -> dict[str, bytes]:
    return {str(path.relative_to(root)): path.read_bytes() for path in sorted(root.rglob("*")) if path.is_file()}


def test_a_thing_that_collides_is_told_with_what_both_show_and_nothing_is_written(mini: Path) -> None:
    before = snapshot(mini)
    result = run(mini, "new", "entry", *BUTTON)
    said = words(result.output)
    assert result.exit_code == 1
    assert "COLLISION: it comes out at Shirt button, which does not hold Tarn End button." in said
    assert "Both show: 'four holes'; width 14 to 16 mm; 'raised rim'." in said
    assert "They differ in width (Tarn End button: width 14 to 16 mm; Shirt button: width 8 to 12 mm), but no bench quantity" in said
    assert "so nothing was written" in said
    assert snapshot(mini) == before


def test_the_couplet_that_parts_them_is_added_and_every_proof_holds(parted: Path) -> None:
    result = run(parted, "new", "entry", *BUTTON, "--shows", "light=shiny", "--couplet")
    said = words(result.output)
    assert result.exit_code == 0, result.output
    assert "They differ in light (Tarn End button: 'shiny'; Shirt button: 'dull')." in said
    assert "behind 'raised' of couplet 3 (rim) in keydata/keys/buttons.yaml" in said
    assert "4 Shiny → Tarn End button." in said
    assert "Every check passes and every proof holds." in said
    assert everything_found(load(parted)) == []
    key = (parted / "keydata/keys/buttons.yaml").read_text("utf-8")
    assert "        couplet: tarn-end-button-light\n" in key
    text = (parted / FILE).read_text("utf-8")
    assert text.startswith("# yaml-language-server: $schema=../../../build/schemas/entry.schema.json\n")
    assert "  # Light: Does it shine? One or more of: shiny, dull; or any: true.\n  light: {states: [shiny], basis: " in text


def test_a_couplet_is_asked_for_and_may_be_refused(parted: Path) -> None:
    before = snapshot(parted)
    answers = [each for each in BUTTON if each != "--yes"]
    result = run(
        parted,
        "new",
        "entry",
        *answers,
        "--shows",
        "light=shiny",
        *ANSWERED,
        typed="no\n",
    )
    assert "Add this couplet? yes or no? [no]" in words(result.output)
    assert result.exit_code == 1
    assert snapshot(parted) == before


def test_written_even_so_and_parted_later_by_the_couplet_command(parted: Path) -> None:
    assert run(parted, "new", "entry", *BUTTON, "--shows", "light=shiny", "--even-so").exit_code == 0
    assert {each.check for each in everything_found(load(parted))} == {"proof"}
    result = run(parted, "new", "couplet", "--for", "tarn-end-button", "--yes")
    assert result.exit_code == 0, result.output
    assert everything_found(load(parted)) == []


def test_a_conversation_asks_what_the_keys_ask_on_the_way(mini: Path) -> None:
    typed = [
        "shirt button",
        "Davit's button",
        "-",
        "",
        "",
        "",
        "",
        "Another invented button.",
        "",
        "2",
        "-",
        "two, five",
        "two",
        "9..11 mm | common-practice; as taught",
        "flat",
        "Davit Roe",
        "2026-11-25",
    ]
    result = run(mini, "new", "entry", "--even-so", typed="\n".join(typed) + "\n")
    said = words(result.output)
    assert result.exit_code == 0, result.output
    assert "Holes: How many holes are there? 1 none (no hole) 2 two (two holes) 3 four (four holes) Shirt button: four holes." in said
    assert "'five' is not a state of 'holes'. Allowed: none, two, four, or any." in said
    assert "How it is sewn on" not in said, "its group says that"
    entry = load(mini).files.by_id["entry", "davit-s-button"].data
    assert entry["characters"] == {
        "holes": {"states": ["two"], "basis": {"kind": "memory"}},
        "width": {"low": 9, "high": 11, "unit": "mm", "basis": {"kind": "common-practice", "note": "as taught"}},
        "rim": {"states": ["flat"], "basis": {"kind": "memory"}},
    }


def test_the_basis_of_the_nearest_entry_is_never_taken_over(mini: Path) -> None:
    run(
        mini,
        "new",
        "entry",
        "--like",
        "press-stud",
        "--common",
        "Other stud",
        "--summary",
        "An invented stud.",
        "--commonness",
        "rare",
        "--would-tell",
        "A lamp.",
        "--contributor",
        "Davit Roe",
        "--shows",
        "sewn=by-rim",
        "--shows",
        "width=6..15",
        "--yes",
        "--even-so",
    )
    assert load(mini).files.by_id["entry", "other-stud"].data["characters"]["sewn"]["basis"] == {"kind": "memory"}


def test_an_input_that_ends_writes_nothing_and_says_where(mini: Path) -> None:
    before = snapshot(mini)
    result = run(mini, "new", "entry", typed="shirt-button\nTarn End button\n")
    assert result.exit_code == 2
    assert "The input ended at the question 'Its scientific name" in words(result.output)
    assert snapshot(mini) == before


def test_b_goes_back_and_a_question_mark_tells_how_to_see_it(parted: Path) -> None:
    typed = [
        "shirt-button",
        "Davit's buton",
        "b",
        "Davit's button",
        "-",
        "",
        "",
        "",
        "",
        "Another invented button.",
        "",
        "2",
        "-",
        "?",
        "four",
        "b",
        "two",
        "9..11 mm",
        "flat",
        "shiny",
        "Davit Roe",
        "",
    ]
    result = run(parted, "new", "entry", "--even-so", typed="\n".join(typed) + "\n")
    assert result.exit_code == 0, result.output
    assert "Turn the button until light falls through it. - no hole: Nothing shines through." in words(result.output)
    assert words(result.output).count("Its scientific name") == 2, "asked again after going back over it, and not a third time"
    data = load(parted).files.by_id["entry", "davit-s-button"].data
    assert data["names"] == {"common": "Davit's button"}
    assert data["characters"]["holes"]["states"] == ["two"]


def test_what_is_like_a_group_is_proposed_to_stand_within_it(mini: Path) -> None:
    answers = [each for each in BUTTON if each not in ("--like", "shirt-button")]
    result = run(mini, "new", "entry", "--like", "button", *answers, "--even-so")
    assert result.exit_code == 0, result.output
    data = load(mini).files.by_id["entry", "tarn-end-button"].data
    assert (data["kind"], data["within"]) == ("object", ["button"])


def test_there_is_nothing_before_the_first_question(mini: Path) -> None:
    result = run(mini, "new", "entry", typed="b\n")
    assert "This is the first question." in words(result.output)


NAMED = ["", "A button", "-", "", "object", "debris", "-"]


@pytest.mark.parametrize(
    ("typed", "message", "question"),
    [
        (["", "A <b>bold</b> button"], "The line holds a character that plain text does not need", "Its common name, or"),
        (["", "A\x1b[D button"], "The answer holds signs that cannot be read", "Its common name, or"),
        (["", "A button", "-", "coat-button"], "keydata/entries/debris/coat-button.yaml stands already. Choose another --id", "Its id?"),
        (["", "A button", "-", "buttons"], "keydata/keys/buttons.yaml stands already. Choose another --id.", "Its id?"),
        (["", "A button", "-", "no"], "'no' cannot be an id.", "Its id?"),
        ([*NAMED, "q" * 1300], "'summary' is 1300 characters long. Allowed: at most", "What does one see"),
        ([*NAMED, "Sum.", "", "rare", "", "Ilse Okafor", "30.11.2026"], "'30.11.2026' is not a date.", "The date,"),
    ],
)
def test_a_wrong_answer_is_told_at_once_and_asked_for_again(mini: Path, typed: list[str], message: str, question: str) -> None:
    said = words(run(mini, "new", "entry", typed="\n".join(typed) + "\n").output)
    assert message in said
    assert f"The input ended at the question '{question}" in said


def test_what_was_answered_is_given_back_as_a_command_that_asks_for_the_rest(parted: Path) -> None:
    import shlex

    typed = ["Davit's button", "-", "", "", "", "", "Another invented button.", "", "2", "-", "2", "9..11 mm"]
    stopped = run(parted, "new", "entry", "--like", "shirt-button", "--even-so", typed="\n".join(typed) + "\n")
    assert stopped.exit_code == 2
    command = shlex.split(stopped.output.split("To go on from there:")[1])
    assert command[:7] == ["new", "entry", "--like", "shirt-button", "--even-so", "--common", "Davit's button"]
    result = run(parted, *command, typed="flat\nshiny\nDavit Roe\n\n")
    assert result.exit_code == 0, result.output
    data = load(parted).files.by_id["entry", "davit-s-button"].data
    assert data["characters"]["holes"]["states"] == ["two"]
    assert data["characters"]["width"]["high"] == 11


def test_ctrl_c_gives_back_what_was_answered(mini: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from keytool.contribute.entry_talk import EntryTalk

    def pressed(self: EntryTalk, words: str) -> str:
        raise KeyboardInterrupt

    monkeypatch.setattr(EntryTalk, "_new_id", pressed)
    before = snapshot(mini)
    result = run(mini, "new", "entry", typed="shirt-button\nA button\n-\n\n")
    assert result.exit_code == 1
    assert "Stopped. Nothing was written." in words(result.output)
    assert "--like shirt-button --common 'A button' --scientific -" in words(result.output)
    assert snapshot(mini) == before


def test_a_collision_that_is_left_gives_back_what_was_answered(parted: Path) -> None:
    answers = [each for each in BUTTON if each not in ("--yes", "--contributor", "Ilse Okafor")]
    result = run(
        parted,
        "new",
        "entry",
        *answers,
        "--shows",
        "light=shiny",
        *ANSWERED,
        typed="Ilse Okafor\nno\n",
    )
    assert "so nothing was written" in words(result.output)
    assert result.output.rstrip().endswith("--contributor 'Ilse Okafor'")


@pytest.mark.parametrize(
    "words_",
    [
        ("new", "entry", *BUTTON),
        (
            "photo",
            "add",
            "x.jpg",
            "--entry",
            "coat-button",
            "--author",
            "Davit Roe",
            "--licence",
            "cc0-1.0",
            "--shows",
            "A button.",
            "--um-per-pixel",
            "0.5",
        ),
    ],
)
def test_the_copy_that_came_with_the_program_is_not_written_to(mini: Path, words_: tuple[str, ...]) -> None:
    installed = mini.rename(mini.parent / "_bundled")
    before = snapshot(installed)
    result = run(installed, *words_)
    assert result.exit_code == 2
    assert "Name your own copy, the folder that holds keydata/: wetmount --library FOLDER" in words(result.output)
    assert snapshot(installed) == before


def test_what_cannot_be_taken_is_told_before_anything_is_asked(mini: Path) -> None:
    result = run(mini, "new", "entry", "--shows", "hole=four")
    assert result.exit_code == 2
    assert "There is no character 'hole'. Did you mean 'holes'?" in words(result.output)
    assert "nearest to" not in result.output


def test_a_part_of_a_name_lists_what_holds_it() -> None:
    from keytool.contribute.parse_answer import NotUnderstood
    from keytool.contribute.talk import ids_of

    many = {f"thing-{n}": f"Thing {n}" for n in range(40)} | {"coat-button": "Coat button", "shirt-button": "Shirt button"}
    with pytest.raises(NotUnderstood, match=r"Is it one of these: Coat button; Shirt button\?"):
        ids_of(many)("Button")
    with pytest.raises(NotUnderstood, match="there are 42, which 'wetmount list' shows"):
        ids_of(many)("zzzz")


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (("--shows", "holes=five"), "'five' is not a state of 'holes'. Allowed: none, two, four, or any."),
        (("--shows", "width=14..16µL"), "'µL' is no unit for 'width'. Allowed: µm, mm"),
        (("--shows", "width=wide"), "'wide' is no measure of 'width'"),
        (("--shows", "width=16..14mm"), "16 is more than 14"),
        (("--shows", "halo=green"), "There is no character 'halo'"),
        (("--shows", "holes"), "'holes' is not NAME=WHAT"),
        (("--basis", "hearsay"), "'hearsay' is no kind of basis"),
        (("--basis", "published:somebody:seen"), "There is no source 'somebody'"),
        (("--basis", "published:demo-source"), "Write published:SOURCE:HOW"),
        (("--commonness", "comon"), "Did you mean 'common'?"),
        (("--within", "buton"), "Did you mean 'Button'?"),
        (("--id", "Tarn End"), "'Tarn End' cannot be an id"),
        (("--mistaken-for", "ghost=by looking"), "There is no entry 'ghost'"),
        (("--reviewed", "25.11.2026"), "'25.11.2026' is not a date."),
        (("--common", "caf\udce9"), "The answer holds signs that cannot be read"),
        (("--shows", "holes=t\udce9"), "The answer holds signs that cannot be read"),
        (("--shows", "holes=?"), "'?' is not a state of 'holes'"),
        (("--summary", "a <b>bold</b> one"), "The text holds a character that plain text does not need"),
        (("--basis", "published:demo-source:seen"), "The value is called 'seen', but 'demo-source' is marked 'not-read'"),
    ],
)
def test_a_wrong_answer_gets_one_clear_message_and_writes_nothing(mini: Path, change: tuple[str, str], message: str) -> None:
    before = snapshot(mini)
    result = run(mini, "new", "entry", *BUTTON, *change)
    assert result.exit_code in (1, 2)
    assert message in words(result.output), result.output
    assert "Traceback" not in result.output
    assert snapshot(mini) == before


def test_with_yes_a_missing_answer_is_named_by_its_option(mini: Path) -> None:
    result = run(mini, "new", "entry", "--common", "Tarn End button", "--yes")
    assert result.exit_code == 2
    assert "--kind is missing." in words(result.output)


def test_an_entry_that_stands_is_not_written_over_without_replace(mini: Path) -> None:
    first = run(mini, "new", "entry", *BUTTON, "--id", "coat-button")
    assert first.exit_code == 2
    assert "keydata/entries/debris/coat-button.yaml stands already" in words(first.output)
    assert run(mini, "new", "entry", *BUTTON, "--id", "coat-button", "--replace", "--shows", "width=20..35mm").exit_code == 0
    assert load(mini).library.entries["coat-button"].common == "Tarn End button"


def test_what_it_is_mistaken_for_is_written_into_both(mini: Path) -> None:
    result = run(
        mini,
        "new",
        "entry",
        *BUTTON,
        "--even-so",
        "--mistaken-for",
        "shank-button=A shank button has a loop at its back.",
        "--mistaken-for",
        "cuff-button=A cuff button has a flat edge.",
    )
    assert result.exit_code == 0, result.output
    loaded = load(mini)
    assert {each.check for each in everything_found(loaded)} == {"proof"}
    for other in ("shank-button", "cuff-button"):
        assert "tarn-end-button" in [each.entry for each in loaded.library.entries[other].mistaken_for]


def test_a_state_goes_into_its_character_an_entry_and_the_leads(mini: Path) -> None:
    words_ = (
        "new",
        "state",
        "--character",
        "holes",
        "--name",
        "three holes",
        "--id",
        "three",
        "--about",
        "Three holes in a triangle.",
        "--entries",
        "coat-button",
        "--yes",
    )
    refused = run(mini, *words_)
    assert refused.exit_code == 2
    assert "--lead buttons/holes/LEAD is missing. Buttons, couplet 1" in words(refused.output)
    result = run(mini, *words_, "--lead", "buttons/holes/open")
    assert result.exit_code == 0, result.output
    loaded = load(mini)
    assert everything_found(loaded) == []
    assert list(loaded.library.characters["holes"].states) == ["none", "two", "four", "three"]
    assert loaded.files.by_id["entry", "coat-button"].data["characters"]["holes"]["states"] == ["two", "four", "three"]


def test_a_couplet_by_hand_goes_where_it_is_told(mini: Path) -> None:
    result = run(
        mini,
        "new",
        "couplet",
        "--key",
        "buttons",
        "--behind",
        "size/wide",
        "--id",
        "many-holes",
        "--by",
        "holes",
        "--asks",
        "How many holes?",
        "--lead",
        "two | Two | two | end:coat-button",
        "--lead",
        "more | More | otherwise | end:coat-button",
        "--yes",
    )
    assert result.exit_code == 0, result.output
    loaded = load(mini)
    assert everything_found(loaded) == []
    assert loaded.library.keys["buttons"].couplets["size"].leads["wide"].couplet == "many-holes"


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"--behind": "size/huge"}, "'size' has no lead 'huge'. It has: wide, narrow."),
        ({"--behind": "nowhere/x"}, "'buttons' has no couplet 'nowhere'"),
        ({"--id": "rim"}, "'rim' is a couplet of this key already"),
        ({"--lead": "two | Two | two"}, "'two | Two | two' is no lead"),
        ({"--lead": "two | Two | two | off:coat-button"}, "'off:coat-button' is nowhere to go"),
        ({"--lead": "two | Two | seven | end:coat-button"}, "'seven' is not a state of 'holes'"),
    ],
)
def test_a_wrong_couplet_gets_one_clear_message(mini: Path, change: dict[str, str], message: str) -> None:
    before = snapshot(mini)
    good = {
        "--key": "buttons",
        "--behind": "size/wide",
        "--id": "many-holes",
        "--asks": "How many holes?",
        "--by": "holes",
        "--lead": "two | Two | two | end:coat-button",
    }
    options = [part for pair in {**good, **change}.items() for part in pair]
    result = run(mini, "new", "couplet", *options, "--lead", "more | More | otherwise | end:coat-button", "--yes")
    assert result.exit_code in (1, 2)
    assert message in words(result.output), result.output
    assert snapshot(mini) == before


def test_look_alikes_are_set_side_by_side_with_the_characters_in_which_they_differ(mini: Path) -> None:
    result = run(
        mini,
        "new",
        "look-alike",
        "--entries",
        "shirt-button, cuff-button",
        "--about",
        "Both are small.",
        "--decisive",
        "Feel the edge: it stands up on a shirt button.",
        "--yes",
    )
    assert result.exit_code == 0, result.output
    loaded = load(mini)
    assert [each for each in everything_found(loaded) if each.severity.value == "problem"] == []
    made = loaded.library.look_alikes["shirt-button-or-cuff-button"]
    assert made.title == "Shirt button or cuff button?"
    assert made.characters == ("rim",)
    again = run(mini, "new", "look-alike", "--entries", "shirt-button, cuff-button", "--about", "x y", "--decisive", "x y", "--yes")
    assert "stands already" in again.output


def test_nothing_is_half_written_when_a_file_cannot_be(parted: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from keytool.contribute import dry_run

    before = snapshot(parted)
    whole = dry_run.save

    def full(path: Path, data: bytes) -> None:
        if "buttons" in path.name:
            raise OSError(28, "No space left on device", str(path))
        whole(path, data)

    monkeypatch.setattr(dry_run, "save", full)
    result = run(parted, "new", "entry", *BUTTON, "--shows", "light=shiny", "--couplet")
    assert result.exit_code == 1
    assert "No space left on device" in result.output
    assert snapshot(parted) == before


def test_a_key_written_on_one_line_is_refused_with_what_to_add(parted: Path) -> None:
    path = parted / "keydata/keys/buttons.yaml"
    text = path.read_text("utf-8")
    head, couplets = text.split("couplets:\n")
    import yaml

    from keytool.contribute.yaml_text import flow

    path.write_text(f"{head}couplets: {flow(yaml.safe_load('couplets:' + chr(10) + couplets)['couplets'])}\n", "utf-8")
    result = run(parted, "new", "entry", *BUTTON, "--shows", "light=shiny", "--couplet")
    assert result.exit_code == 1
    assert "couplets is not written with one name to a line. Add by hand:" in words(result.output)


def test_the_same_answers_give_the_same_bytes(parted: Path, tmp_path: Path) -> None:
    import shutil

    other = shutil.copytree(parted, tmp_path / "other")
    for root in (parted, other):
        assert run(root, "new", "entry", *BUTTON, "--shows", "light=shiny", "--couplet").exit_code == 0
    assert snapshot(parted) == snapshot(other)
