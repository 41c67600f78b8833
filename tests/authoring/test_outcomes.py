import io
import sys

import pytest

from assistant.authoring.outcomes import GIVEN_UP, Recording, asking_at_the_terminal
from assistant.errors import SessionMovedOn
from assistant.interview.commands import RecordOutcome
from assistant.interview.events import OutcomeRecorded
from assistant.store.memory import MemoryStore
from tests.authoring.visited import CODE, NOW, Typed, keep_session
from tests.interview.told import told

ID = "a1" * 16
MENDED = RecordOutcome(result="mended", cause_found="base_element_open")


@pytest.fixture
def log():
    log = MemoryStore()
    keep_session(log, ID, code=CODE)
    keep_session(log, "b2" * 16)
    return log


@pytest.fixture
def recorded(log, knowledge, sentences):
    """What recording prints, its exit status, and what the log holds then."""

    def recorded(typed=ID, command=MENDED, ask=None):
        out = io.StringIO()
        status = Recording(log, knowledge, sentences.wording, out).record(typed, command, NOW, ask)
        return status, out.getvalue(), [event.happening for event in log.events_of(OutcomeRecorded, ID)]

    return recorded


@pytest.mark.parametrize("typed", [ID, "a1a", "A1A1", CODE, CODE.lower().replace("-", " ")])
def test_a_session_is_found_by_its_code_or_by_the_first_characters_of_its_id(recorded, typed):
    assert recorded(typed) == (
        0,
        "Recorded of session a1a1a1a1: mended, it works again. Cause found: the heater below has stopped working.\n",
        [told(part_fitted=None, minutes=None, text="")],
    )


@pytest.mark.parametrize("typed", ["", "c", CODE.replace("7", "8")])
def test_an_unknown_session_is_a_sentence(recorded, typed):
    assert recorded(typed) == (1, "There is no such session. “ovenside sessions list” shows what is there.\n", [])


def test_all_that_is_told_is_kept(recorded):
    command = RecordOutcome(
        "Mended", "base element open", "shelf_position", "base_element", "40", "it hummed", "visited"
    )
    assert recorded(command=command)[2] == [told(causes_found=("base_element_open", "shelf_position"))]


def test_what_shows_nothing_is_said_not_to_count(recorded):
    status, text, kept = recorded(command=RecordOutcome(result="back_within_30_days"))
    assert (status, len(kept)) == (0, 1)
    assert text.endswith("so it isn't counted.\n")


def test_a_later_outcome_stands_behind_the_earlier_one(recorded):
    recorded()
    assert [each.result for each in recorded(command=RecordOutcome(result="back_within_30_days"))[2]] == [
        "mended",
        "back_within_30_days",
    ]


def test_every_mistake_is_a_sentence_with_the_nearest_name_and_nothing_is_recorded(recorded):
    command = RecordOutcome("mendet", "base_element", "", "base_elemnt", "soon", "card 4111 1111 1111 1111")
    status, text, kept = recorded(command=command)
    *mistakes, last = text.splitlines()
    assert (status, kept, last) == (1, [], "Nothing was recorded.")
    beginnings = (
        "There is no result “mendet”. Use one of: mended, ",
        "There is no cause “base_element” in these rules.",
        "There is no part “base_elemnt” in these rules.",
        "“soon” can't be the minutes. Give a whole number from 1 to 1,440.",
        "The note holds what may be the number of a bank card.",
    )
    assert [line[: len(begin)] for line, begin in zip(mistakes, beginnings, strict=True)] == list(beginnings)
    assert [line.split()[-1] for line in mistakes[:3]] == ["“mended”?", "“base_element_open”?", "“base_element”?"]
    assert "4111" not in text


def test_without_a_result_and_without_questions_there_is_a_sentence(recorded):
    status, text, kept = recorded(command=RecordOutcome())
    assert (status, kept) == (1, [])
    assert text.startswith("It wasn't told how it ended. Give a result, one of: mended, advised")


def test_what_is_missing_is_asked_for(recorded):
    status, text, kept = recorded(
        command=RecordOutcome(), ask=Typed("1", "base element open", "", "1", "40", "it hummed")
    )
    assert (status, kept) == (0, [told()])
    assert text.startswith("Session a1a1a1a1, begun 2026-03-31 15:00 UTC. Enter skips a question; Ctrl-C leaves")


def test_what_was_told_on_the_command_line_is_not_asked_again(recorded):
    asked = Typed("", "it hummed")
    command = RecordOutcome("mended", "base_element_open", "ring_element_open", "base_element", "", "")
    status, _, kept = recorded(command=command, ask=asked)
    assert (status, asked.left) == (0, [])
    assert kept == [told(causes_found=("base_element_open", "ring_element_open"), minutes=None)]


def test_what_was_told_wrongly_on_the_command_line_is_said_before_anything_is_asked(recorded):
    asked = Typed("1")
    status, text, kept = recorded(command=RecordOutcome(result="fixed"), ask=asked)
    assert (status, kept, asked.left) == (1, [], ["1"])
    assert text.startswith("There is no result “fixed”.")


@pytest.mark.parametrize(
    ("command", "said"),
    [
        (RecordOutcome("", "base_element_open", "base_element_open"), "The second cause is the same as the first one."),
        (RecordOutcome("", "", "base_element_open"), "There is a second cause, but no first one."),
        (RecordOutcome("no_access", "base_element_open"), "With “no_access” no cause can be said to be found."),
    ],
)
def test_what_no_answer_could_put_right_is_said_before_anything_is_asked(recorded, command, said):
    asked = Typed("1")
    status, text, kept = recorded(command=command, ask=asked)
    assert (status, kept, asked.left) == (1, [], ["1"])
    assert text.startswith(said)


def test_a_result_that_contradicts_the_cause_told_loses_nothing(recorded):
    command = RecordOutcome(cause_found="base_element_open", part_fitted="base_element", note="it hummed")
    status, text, kept = recorded(command=command, ask=Typed("no access", "mended", "", "40"))
    assert (status, kept) == (0, [told()])
    assert "With “no_access” no cause can be said to be found." in text


@pytest.mark.parametrize("after", range(6))
@pytest.mark.parametrize("leaving", [KeyboardInterrupt, EOFError])
def test_leaving_the_form_anywhere_records_nothing_and_says_so(recorded, leaving, after):
    lines = ("1", "base element open", "", "1", "40")[:after]
    status, text, kept = recorded(command=RecordOutcome(), ask=Typed(*lines, leaving()))
    assert (status, kept) == (GIVEN_UP, [])
    assert text.endswith("\nNothing was recorded.\n")


def test_without_a_result_the_form_records_nothing(recorded):
    assert recorded(command=RecordOutcome(), ask=Typed(""))[::2] == (GIVEN_UP, [])


def test_what_was_recorded_before_is_shown_first(recorded):
    recorded(command=RecordOutcome("mended", "base_element_open", "", "base_element", "40", "it hummed\nand whirred"))
    _, text, _ = recorded(command=RecordOutcome(), ask=Typed(KeyboardInterrupt()))
    assert text.splitlines()[1:8] == [
        "Something was recorded before. What you tell now takes its place in counting; both stay in the session.",
        "What came of it, told on 2026-03-31: mended, it works again",
        "    cause found: the heater below has stopped working",
        "    part fitted: heater below",
        "    40 minutes at the oven",
        "    note: it hummed",
        "    and whirred",
    ]


def test_a_session_that_moves_on_meanwhile_is_a_sentence(recorded, log, monkeypatch):
    def moved_on(*_):
        raise SessionMovedOn(ID, 2, 3)

    monkeypatch.setattr(log, "append", moved_on)
    status, text, kept = recorded()
    assert (status, kept) == (1, [])
    assert text == "Somebody else wrote in this session meanwhile. Nothing was recorded; please do it again.\n"


def test_nobody_is_asked_where_nobody_sits_at_a_terminal(monkeypatch):
    monkeypatch.setattr(sys, "stdin", io.StringIO("1\n"))
    assert asking_at_the_terminal(plain=False) is None


class Screen(io.StringIO):
    def isatty(self):
        return True


@pytest.mark.parametrize(("kind", "plain"), [("dumb", False), ("xterm", True)])
def test_a_terminal_that_can_do_nothing_is_asked_plainly_and_any_other_on_request(monkeypatch, kind, plain):
    screen = Screen()
    monkeypatch.setattr(sys, "stdin", Screen("mended\n"))
    monkeypatch.setattr(sys, "stdout", screen)
    monkeypatch.setenv("TERM", kind)
    ask = asking_at_the_terminal(plain=plain)
    assert ask("> ") == "mended"
    assert screen.getvalue() == "> "
    with pytest.raises(EOFError):
        ask("> ")
