"""The full screen by its keys, without a terminal."""

import pytest
from prompt_toolkit.application import create_app_session
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from assistant.desk.desk import Desk
from assistant.desk.full_screen import FullScreen

LEAVE = "\x03"


def pressed(desk: Desk, keys: str) -> None:
    """The keys one after the other, and then the desk is left."""
    with create_pipe_input() as read, create_app_session(input=read, output=DummyOutput()):
        read.send_text(keys + LEAVE)
        FullScreen(desk, colour=False, read=read, write=DummyOutput()).run()


@pytest.mark.timeout(60)
def test_a_call_by_keys_alone(desk: Desk) -> None:
    pressed(desk, ".new\r1\r16\rAda\r0700\r4\r")
    assert desk.call is not None
    assert list(desk.call.conversation.state.answers) == [
        "anyone_hurt", "danger_now", "who_is_speaking", "call_back_number", "pressing_need",
    ]  # fmt: skip


@pytest.mark.timeout(60)
def test_a_key_puts_the_word_before_what_is_typed(desk: Desk) -> None:
    find, note = "\x1bOQ", "\x1bOS"
    pressed(desk, f".new\r1\r16\r{note}rings twice\r{find}whose oven\r1\r2\r")
    assert desk.call is not None
    state = desk.call.conversation.state
    assert state.texts["call_notes"] == "rings twice"
    assert state.answers["whose_oven"].value == "rented"


@pytest.mark.timeout(60)
def test_parking_by_key_leaves_what_is_being_typed(desk: Desk) -> None:
    park = "\x1b[17~"
    pressed(desk, f".new\r1\r.new\r1\r1{park}6\r")
    assert desk.on_line == 0
    assert desk.call is not None
    assert desk.call.conversation.state.answers["danger_now"].value == ("none",)


@pytest.mark.timeout(60)
def test_what_was_not_understood_is_replaced_by_the_next_answer(desk: Desk) -> None:
    pressed(desk, ".new\r1\r16\rAda\r0700\r4\rxyzzy\r5\r")
    assert desk.call is not None
    assert desk.call.conversation.state.answers["what_goes_wrong"].value == ("pale_below",)


@pytest.mark.timeout(60)
def test_what_was_not_understood_can_be_put_right(desk: Desk) -> None:
    pressed(desk, ".new\r1\r16\rAda\r0700\r4\r55\r\x7f\r")
    assert desk.call is not None
    assert desk.call.conversation.state.answers["what_goes_wrong"].value == ("pale_below",)


@pytest.mark.timeout(60)
def test_a_key_turns_what_is_typed_already_into_a_note(desk: Desk) -> None:
    note = "\x1bOS"
    pressed(desk, f".new\r1\r16\rthe dog barks{note}\r")
    assert desk.call is not None
    assert desk.call.conversation.state.texts["call_notes"] == "the dog barks"
