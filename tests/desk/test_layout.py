"""What fits on which screen."""

import pytest

from assistant.desk.desk import Desk
from assistant.desk.layout import Laid, as_text, laid_desk
from assistant.knowledge.danger_questions import DANGER_NOW
from tests.desk.conftest import typed
from tests.desk.test_desk import WELL

SIZES = [(80, 22), (132, 50), (60, 22), (40, 10)]


def _wide(laid: Laid) -> int:
    return max(len("".join(text for _, text in row)) for row in laid.rows)


@pytest.mark.parametrize(("columns", "rows"), SIZES)
def test_every_state_keeps_within_the_screen(desk: Desk, columns: int, rows: int) -> None:
    for line in (*WELL, "5", "2", ".find oven", "", ".calls", ".why", ".view", "there are sparks in it", "yes"):
        desk.take(line)
        laid = laid_desk(desk, columns, rows)
        assert _wide(laid) <= columns
        assert len(laid.rows) <= max(rows, 10)


def test_the_first_question_of_danger_is_all_there_on_80_by_24(desk: Desk) -> None:
    call = typed(desk, ".new", "nobody is hurt")
    laid = laid_desk(desk, 80, 22)
    for _, label in call.read_out.question_by_id(DANGER_NOW).choices:
        assert label in as_text(laid.rows)
    assert (laid.above, laid.below) == (0, 0) or laid.below == 0


def test_figures_stand_on_the_side_that_is_not_read_out(desk: Desk) -> None:
    typed(desk, *WELL, "5")
    for row in laid_desk(desk, 80, 22).rows[1:]:
        left, _, right = ("".join(text for _, text in row)).partition(" │ ")
        assert " % " not in left
        assert len(right) <= 34


def test_while_danger_is_not_isolated_the_steps_are_read_from_their_first(desk: Desk) -> None:
    call = typed(desk, ".new", "nobody is hurt", "7", "as hot plastic")
    steps = call.read_out.verdict(call.verdict).steps
    assert steps
    laid = laid_desk(desk, 80, 22)
    assert steps[0][:40] in as_text(laid.rows)
    assert "NOT TO BE READ OUT" not in as_text(laid.rows)


def test_one_may_look_up_and_down_and_no_further(desk: Desk) -> None:
    typed(desk, *WELL, "5")
    shown = laid_desk(desk, 80, 14)
    assert shown.above > 0
    top = laid_desk(desk, 80, 14, scrolled=10_000)
    assert top.above == 0
    bottom = laid_desk(desk, 80, 14, scrolled=-10_000)
    assert bottom.below == 0


def test_a_narrow_screen_has_no_side(desk: Desk) -> None:
    typed(desk, *WELL, "5")
    assert "│" not in as_text(laid_desk(desk, 60, 22).rows)


def test_what_a_customer_dictates_cannot_act_on_the_screen(desk: Desk) -> None:
    typed(desk, ".new", "nobody is hurt", "none of these", "Ada\x1b[31m\u202e", "0700 900 100")
    text = as_text(laid_desk(desk, 80, 22).rows)
    assert "Ada" in text
    assert "\x1b" not in text
    assert "\u202e" not in text


def test_in_danger_the_question_and_all_its_choices_stay_while_the_steps_are_scrolled(desk: Desk) -> None:
    call = typed(desk, ".new", "nobody is hurt", "sparks")
    question = call.read_out.question_by_id("oven_is_off")
    for scrolled in (0, -5, -100):
        laid = laid_desk(desk, 80, 22, scrolled)
        for _, label in question.choices:
            assert label in as_text(laid.rows)
    assert laid.below == 0


def test_what_a_complaint_may_be_is_all_there_on_80_by_24(desk: Desk) -> None:
    call = typed(desk, *WELL)
    shown = as_text(laid_desk(desk, 80, 22).rows)
    for _, label in call.read_out.question_by_id("what_goes_wrong").choices:
        assert label in shown


@pytest.mark.parametrize("columns", [60, 80])
def test_everything_known_is_read_in_full_on_any_screen(desk: Desk, columns: int) -> None:
    told = "on the left behind the cupboard where the boiler used to be, and the door opens to the window side"
    typed(desk, *WELL, f".note {told}", ".view", ".all")
    assert told in " ".join(as_text(laid_desk(desk, columns, 40).rows).split())
    typed(desk, ".view", ".view")
    assert ("Known so far" in as_text(laid_desk(desk, 60, 40).rows)) is True


def test_the_latest_fact_stands_first_under_its_own_number(desk: Desk) -> None:
    typed(desk, *WELL, "5", ".view")
    rows = as_text(laid_desk(desk, 80, 22).rows).splitlines()
    first = next(row for row in rows if "  6  " in row)
    assert rows.index(first) < next(number for number, row in enumerate(rows) if "  5  " in row and "│" in row)
