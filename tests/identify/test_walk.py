"""A walk is its answers; the same answers always stand at the same place."""

from pathlib import Path

import pytest

from keytool.identify import CANNOT_TELL, Answer, Ground, NoSuchAnswer, address, answers_at, arrivals, ground, stand
from keytool.library import Library, load


@pytest.fixture
def buttons(mini: Path) -> Ground:
    library = load(mini).library
    return ground(library, library.keys["buttons"])


def test_it_begins_at_the_first_couplet_with_everything_possible(buttons: Ground) -> None:
    standing = stand(buttons, ())
    assert (standing.asks, standing.ends, len(standing.possible)) == ("holes", (), 4)


def test_answers_lead_to_an_end(buttons: Ground) -> None:
    standing = stand(buttons, answers_at(buttons, "holes=open/size=narrow/rim=raised"))
    assert (standing.is_over, standing.ends, standing.possible) == (True, ("shirt-button",), ("shirt-button",))


def test_back_is_the_walk_without_its_last_answer(buttons: Ground) -> None:
    answers = answers_at(buttons, "holes=open/size=narrow")
    assert stand(buttons, answers[:-1]).asks == "size"


def test_an_address_gives_back_the_walk_it_was_made_from(buttons: Ground) -> None:
    where = f"holes=open/size={CANNOT_TELL}/rim=flat"
    assert address(answers_at(buttons, where)) == where


def test_cannot_tell_keeps_everything_possible_and_asks_what_splits_best(buttons: Ground) -> None:
    standing = stand(buttons, answers_at(buttons, "holes=cannot-tell"))
    assert len(standing.possible) == 4
    assert standing.asks == "size"  # it parts the coat button and, by its readings, the shank button from the rest


def test_cannot_tell_to_everything_stops_undecided_with_all_ends(buttons: Ground) -> None:
    answers = ()
    for _ in range(4):
        standing = stand(buttons, answers)
        if standing.is_over:
            break
        answers = answers_at(buttons, "/".join(filter(None, [address(answers), f"{standing.asks}=cannot-tell"])))
    assert standing.is_over
    assert set(standing.ends) == {"shank-button", "coat-button", "shirt-button", "cuff-button"}
    assert standing.ends[0] == "shirt-button"  # the commonest


def test_after_cannot_tell_no_question_takes_an_open_one_for_granted(library: Library) -> None:
    for key in library.keys.values():
        it = ground(library, key)
        standing, answers = stand(it, ()), ()
        while standing.asks and len(answers) < 6:
            answers = (*answers, Answer(standing.asks, CANNOT_TELL))
            standing = stand(it, answers)
            asked_before = {each.couplet for each in answers}
            behind = {id for id, each in key.couplets.items() for lead in each.leads.values() if lead.couplet == standing.asks}
            assert not standing.asks or behind & asked_before, (key.id, address(answers))


def test_an_answer_after_cannot_tell_leaves_out_what_does_not_fit(buttons: Ground) -> None:
    standing = stand(buttons, answers_at(buttons, "holes=open/size=cannot-tell/rim=raised"))
    assert set(standing.possible) == {"shirt-button", "coat-button"}


def test_two_answers_about_one_number_are_taken_together(buttons: Ground) -> None:
    """A coat button may be 20 to 35 mm: "narrow" leaves nothing of that."""
    assert "coat-button" not in stand(buttons, answers_at(buttons, "holes=open/size=narrow")).possible


def test_chances_add_up_and_never_rule_anything_out_for_good(buttons: Ground) -> None:
    chance = stand(buttons, answers_at(buttons, "holes=open/size=narrow/rim=raised")).chance
    assert sum(chance.values()) == pytest.approx(1)
    assert min(chance.values()) > 0


def test_an_end_names_its_nearest_rival_and_the_look_that_would_expose_a_mistake(buttons: Ground) -> None:
    answers = answers_at(buttons, "holes=open/size=narrow/rim=raised")
    (arrival,) = arrivals(buttons, answers, stand(buttons, answers))
    assert arrival.sure > 0.9
    assert (arrival.rivals[0].end, arrival.rivals[0].couplet) == ("cuff-button", "rim")


@pytest.mark.parametrize(
    ("where", "says"),
    [
        ("pockets=open", "'pockets' is not a couplet of buttons."),
        ("holes=square", "'square' is not an answer to 'holes'. Answers: closed, open, cannot-tell."),
        ("rim=flat", "'rim' is not asked there; the question is 'holes'."),
        ("holes=closed/rim=flat", "'rim' is not asked there; the walk is over."),
        ("holes=open/holes=open", "'holes' is not asked there; the question is 'size'."),
    ],
)
def test_an_address_that_does_not_fit_says_why(buttons: Ground, where: str, says: str) -> None:
    with pytest.raises(NoSuchAnswer) as error:
        answers_at(buttons, where)
    assert str(error.value) == says
