"""How brown bread became, typed in the chat."""

import pytest

from assistant.interview.commands import GiveAnswer
from assistant.interview.conversation import Conversation
from assistant.wording.languages import Languages
from tests.chat.watched import IF_ON, Watch, flat, watched


@pytest.fixture
def bake(at_the_lamp_watch: Conversation, languages: Languages) -> Watch:
    """Types to the bread's question, opened by hand."""
    at_the_lamp_watch.do(GiveAnswer("bread_tray", ["top 333 332 222", "underside 110 100 000"]))
    return lambda *lines: watched(at_the_lamp_watch, languages, (0, "back"), *lines)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("99", "9 is no shade. Shades go from 0 for white to 5 for burnt."),
        ("top 337 332 622, underside 110 100 000", "7, 6 are no shades."),
        ("top 333", "For the tops we count 3 figures. Each side needs nine"),
    ],
)
def test_figures_that_are_no_shade_are_named(
    at_the_lamp_watch: Conversation, languages: Languages, typed: str, said: str
) -> None:
    at_the_lamp_watch.do(GiveAnswer("bread_tray", ["top 333 332 222", "underside 110 100 000"]))
    fed = watched(at_the_lamp_watch, languages, (0, "back"), (5, typed))
    assert said in flat(fed)
    assert fed.answer("bread_tray") == ("top 333 332 222", "underside 110 100 000")


@pytest.mark.parametrize("typed", ["not sure", "skip", "back", "change", "i smell burning"])
def test_whoever_leaves_the_bread_is_told_to_turn_the_oven_off_first(bake: Watch, typed: str) -> None:
    fed = bake((5, typed))
    after = flat(fed).rpartition(f"> {typed}")[2].strip()
    assert after.startswith(IF_ON)
    assert bool(fed.state.heard) == ("burning" in typed)


def test_the_bread_has_no_clock_and_begin_says_so(bake: Watch) -> None:
    fed = bake((5, "begin"))
    assert "There is no clock here for this one. Set a kitchen timer for 25 minutes" in flat(fed)
    assert fed.state.measuring == {}


TOP, UNDER = "top 333 332 222", "underside 110 100 000"
STOOD = (TOP, UNDER)
OTHER = ("top 333 333 333", "underside 222 110 000")


@pytest.mark.parametrize(
    "typed",
    ["333333333 222110000", "333 333 333 / 222 110 000", "333333333222110000", "333 333 333, 222 110 000"],
)
@pytest.mark.parametrize(("said", "answer"), [("yes", OTHER), ("no", STOOD)])
def test_figures_without_names_are_asked_back_in_the_order_that_was_asked_for(
    bake: Watch, typed: str, said: str, answer: tuple[str, ...]
) -> None:
    fed = bake((5, typed), (9, said))
    assert "Are the tops 333 333 333, and the undersides 222 110 000?" in flat(fed)
    assert fed.answer("bread_tray") == answer


@pytest.mark.parametrize("then", ["underside 222 110 000", "222110000", "222 110 000"])
def test_a_side_that_comes_alone_waits_for_the_other_one(bake: Watch, then: str) -> None:
    fed = bake((5, "top 333 333 333"), (9, then))
    assert "We have the tops. Now the undersides, nine figures too." in flat(fed)
    assert fed.answer("bread_tray") == OTHER


def test_the_side_that_waits_may_be_put_right(bake: Watch) -> None:
    fed = bake((5, "underside 222 110 001"), (7, "underside 222 110 000"), (9, "top 333 333 333"))
    assert fed.answer("bread_tray") == (OTHER[1], OTHER[0])


def test_a_side_that_waits_is_forgotten_by_whoever_leaves(bake: Watch) -> None:
    fed = bake((5, "top 333 333 333"), (7, "back"), (9, "222 110 000"))
    assert fed.answer("bread_tray") == STOOD


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("top 333 333 333", "Now the undersides"),
        ("brown on top and white below", "Please type figures here, not words"),
        ("top 333 333, underside 222 110 000", "For the tops we count 6 figures. Each side needs nine"),
        ("top 333 333 333, underside 222", "For the undersides we count 3 figures."),
        ("333 333 33 / 2 222 110 000", "We count 18 figures. Each side needs nine"),
        ("1", "We count one figure."),
        ("333 333 333", "Is that the tops or the undersides?"),
        ("top 333 333 333, top 222 110 000", "That side is given twice"),
        ("top 333 333 33-, underside 222 110 000", "A slice has one side only."),
    ],
)
def test_a_slip_is_told_what_is_missing_and_nothing_of_a_hot_oven(bake: Watch, typed: str, said: str) -> None:
    after = flat(bake((5, typed), (9, "stop"))).rpartition(f"> {typed}")[2].partition("> stop")[0]
    assert said in after
    assert "off now" not in after
    assert "compared" not in after


def test_once_both_sides_are_there_the_oven_is_spoken_of_calmly(bake: Watch) -> None:
    fed = bake((5, ", ".join(OTHER)))
    assert flat(fed).partition(f"> {', '.join(OTHER)}")[2].strip().startswith(IF_ON)
