"""Cases read from files, and held as interviews."""

import pytest

from assistant.authoring.cases import NotACase, begin, begin_case, hold, read_case, read_cases
from assistant.errors import Refused
from assistant.interview.script import script_of
from tests.belief import tiny

SCRIPT = script_of(tiny.easily_asked())
REGION = next(iter(SCRIPT.knowledge.regions))


def test_scalars_stay_text_until_a_question_wants_a_number(tmp_path):
    path = tmp_path / "hot.yaml"
    path.write_text("note: x\nanswers: {temperature_reached: 170.5, browning_seen: yes}\n")
    case = read_case(path)
    assert case["answers"] == {"temperature_reached": "170.5", "browning_seen": "yes"}
    held = hold(begin(SCRIPT, REGION), {"temperature_reached": "170.5", "browning_seen": "evenly"})
    assert held.refused == ()
    assert {"danger_now", "temperature_reached"} <= set(held.asked)


def test_what_a_case_does_not_answer_is_not_sure():
    conversation = begin(SCRIPT, REGION)
    held = hold(conversation, {})
    assert {conversation.state.status(q) for q in held.asked if q != "danger_now"} == {"not_sure"}


def test_an_answer_that_the_rules_do_not_take_is_named_and_not_sure():
    conversation = begin(SCRIPT, REGION)
    held = hold(conversation, {"temperature_reached": "lukewarm", "browning_seen": "purple"})
    assert set(held.refused) == {"temperature_reached", "browning_seen"} & set(held.asked)
    assert held.refused
    assert all(conversation.state.status(q) == "not_sure" for q in held.refused)


def test_a_case_may_be_an_engineers():
    assert begin_case(SCRIPT, {"role": "engineer"}, REGION).state.role == "engineer"
    assert begin_case(SCRIPT, {}, REGION).state.role == "householder"
    with pytest.raises(Refused, match="unknown_role"):
        begin_case(SCRIPT, {"role": "cat"}, REGION)


@pytest.mark.parametrize(
    ("content", "code"),
    [
        ("answers: [", "not_yaml"),
        ("\x00", "not_yaml"),
        ("- a", "no_answers"),
        ("note: x", "no_answers"),
        ("answers: none", "no_answers"),
        ("answers: {a: {b: c}}", "no_answers"),
    ],
)
def test_what_is_no_case_is_said_with_its_place(tmp_path, content, code):
    path = tmp_path / "a.yaml"
    path.write_text(content)
    with pytest.raises(NotACase) as raised:
        read_cases(tmp_path)
    assert (raised.value.where, raised.value.code) == (str(path), code)


def test_a_folder_without_cases_is_said_to_be_so(tmp_path):
    for folder, code in ((tmp_path, "none"), (tmp_path / "gone", "no_folder")):
        with pytest.raises(NotACase) as raised:
            read_cases(folder)
        assert raised.value.code == code
    (tmp_path / "folder.yaml").mkdir()
    with pytest.raises(NotACase) as raised:
        read_cases(tmp_path)
    assert raised.value.code == "unreadable"
