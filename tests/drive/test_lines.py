"""The protocol, line by line, against the driver in this process."""

import json
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from assistant.drive.lines import catalogue
from assistant.drive.protocol import FIELDS, MOST_BYTES
from assistant.drive.schema import VALUES, protocol_schema
from assistant.drive.serve import MOST_SESSIONS_IN_MEMORY, Driver
from assistant.interview.script import Script
from assistant.knowledge.model import Knowledge
from assistant.store.memory import MemoryStore
from assistant.wording.languages import Languages
from assistant.wording.sentences import Sentences

ROOT = Path(__file__).parents[2]
DEFAULTS = {"lang": "en-GB", "region": "great_britain"}
Send = Callable[..., dict[str, Any]]

SCHEMA = protocol_schema()
IN = Draft202012Validator({"$defs": SCHEMA["$defs"], "$ref": "#/$defs/in"})
OUT = Draft202012Validator({"$defs": SCHEMA["$defs"], "$ref": "#/$defs/out"})


@pytest.fixture
def driver(script: Script, languages: Languages) -> Driver:
    return Driver(script, MemoryStore(), languages, DEFAULTS)


@pytest.fixture
def send(driver: Driver) -> Send:
    """Sends one message and checks that the answer follows the schema."""

    def send(type_: str, session: str = "kitchen", **fields: Any) -> dict[str, Any]:
        answer = driver.answer_line(json.dumps({"session": session, "type": type_, **fields}).encode())
        OUT.validate(json.loads(json.dumps(answer)))
        return answer

    return send


def test_a_session_starts_with_danger(send: Send) -> None:
    answer = send("start")
    assert answer["type"] == "question"
    assert answer["id"] == "danger_now"
    assert answer["kind"] == "choices"
    assert answer["open_danger"] is True
    assert answer["choices"][-1]["id"] == "none"


def test_an_answer_leads_to_the_next_question(send: Send) -> None:
    send("start")
    answer = send("answer", id="danger_now", value=["none"])
    assert (answer["type"], answer["open_danger"]) == ("question", False)


def test_a_stop_comes_with_its_steps_and_the_question_that_confirms_it(send: Send) -> None:
    send("start")
    answer = send("answer", id="danger_now", value=["sparks"])
    assert answer["action"] == "stop_and_isolate"
    assert answer["stop"] == {"source": "sign", "ids": ["sparks"]}
    assert answer["details"]["then"] == "oven_is_off"
    assert len(answer["details"]["steps"]) == len(answer["details"]["step_texts"]) > 0
    assert send("answer", id="oven_is_off", value="off_at_breaker")["type"] == "question"


def test_finish_gives_the_verdict_and_an_answer_reopens(send: Send) -> None:
    send("start")
    send("answer", id="danger_now", value=["none"])
    verdict = send("finish")
    assert verdict["type"] == "verdict"
    assert sum(h["probability"] for h in verdict["hypotheses"]) == pytest.approx(1, abs=0.01)
    assert {"none", "something_else"} <= {h["causes"][0] for h in verdict["hypotheses"]}
    assert send("answer", id="which_appliance", value="electric_oven")["type"] == "question"


def test_any_question_may_be_answered_at_any_time(send: Send) -> None:
    send("start")
    answer = send("answer", id="underside_pale", value="white_or_raw")
    assert answer["id"] == "danger_now"


@pytest.mark.parametrize("type_", ["answer", "not_sure", "skip"])
def test_an_engineers_test_is_taken_from_an_engineer_alone(send: Send, driver: Driver, type_: str) -> None:
    told = {"value": "open"} if type_ == "answer" else {}
    for role in ("householder", "agent"):
        send("start", role, role=role)
        refused = send(type_, role, id="test_top_element", **told)
        assert (refused["type"], refused["code"], refused["open"]) == ("problem", "not_for_role", "danger_now")
        assert "test_top_element" in refused["text"]
        assert "test_top_element" not in driver._open[role].state.answers
    send("start", "engineer", role="engineer")
    assert send(type_, "engineer", id="test_top_element", **told)["type"] == "question"
    assert "test_top_element" in driver._open["engineer"].state.answers


def test_danger_in_words_beside_an_engineers_test_is_heard(send: Send) -> None:
    send("start")
    send("answer", id="danger_now", value=["none"])
    assert send("answer", id="test_top_element", value="there are sparks")["id"] == "sign_sparks"


def test_a_known_session_resumes_where_it_was(send: Send, driver: Driver) -> None:
    send("start")
    before = send("answer", id="danger_now", value=["none"])
    driver._open.clear()
    assert send("start") == before


def test_a_session_that_left_memory_goes_on(send: Send, driver: Driver) -> None:
    send("start", "first")
    for number in range(MOST_SESSIONS_IN_MEMORY):
        send("start", f"other{number}")
    assert "first" not in driver._open
    assert send("answer", "first", id="danger_now", value=["none"])["type"] == "question"


def test_a_repeated_message_is_answered_again_and_stored_once(send: Send, driver: Driver) -> None:
    send("start")
    first = send("answer", id="danger_now", value=["none"], message_id="m1")
    stored = driver._open["kitchen"].state.sequence
    assert send("answer", id="danger_now", value=["none"], message_id="m1") == first
    assert driver._open["kitchen"].state.sequence == stored


def test_an_id_used_for_something_else_is_refused_and_danger_in_it_is_heard(send: Send, driver: Driver) -> None:
    send("start")
    send("answer", id="danger_now", value=["none"], message_id="m1")
    refused = send("answer", id="complaint_in_own_words", value="there are sparks", message_id="m1")
    assert (refused["code"], refused["open"]) == ("message_id_reused", "sign_sparks")


@pytest.mark.parametrize(
    ("fields", "code"),
    [
        ({"id": "complaint_in_own_words", "value": "x" * 2000 + " and there are sparks"}, "text_too_long"),
        ({"id": "no_such_question", "value": "there are sparks"}, "unknown_question"),
        ({"id": "what_goes_wrong", "value": ["there are sparks"]}, "unknown_choice"),
        ({"id": "complaint_in_own_words", "value": "there are sparks", "unit": "minutes"}, "unit_without_number"),
    ],
)
def test_danger_in_an_answer_that_is_refused_is_heard(send: Send, fields: dict[str, Any], code: str) -> None:
    send("start")
    send("answer", id="danger_now", value=["none"])
    problem = send("answer", **fields)
    assert (problem["code"], problem["open"]) == (code, "sign_sparks")


def test_what_another_process_stored_is_seen(script: Script, languages: Languages) -> None:
    log = MemoryStore()
    one, other = Driver(script, log, languages, DEFAULTS), Driver(script, log, languages, DEFAULTS)

    def say(driver: Driver, **fields: Any) -> dict[str, Any]:
        return driver.answer_line(json.dumps({"session": "k", **fields}).encode())

    say(one, type="start")
    assert say(other, type="start")["id"] == "danger_now"
    assert say(other, type="answer", id="danger_now", value=["shock"])["type"] == "verdict"
    moved = say(one, type="answer", id="which_appliance", value="electric_oven")
    assert moved["code"] == "session_moved_on"
    assert say(one, type="start")["type"] == "verdict"
    log.erase(log.find_by_name("k").session_id)  # type: ignore[union-attr]
    assert say(one, type="finish")["code"] == "not_started"
    assert say(one, type="start")["id"] == "danger_now"


def test_sessions_do_not_touch_each_other(send: Send) -> None:
    send("start", "one")
    send("start", "two")
    send("answer", "one", id="danger_now", value=["sparks"])
    assert send("start", "two")["id"] == "danger_now"
    assert send("start", "one")["type"] == "verdict"


def test_text_that_speaks_of_danger_opens_its_question_and_is_kept(send: Send, driver: Driver) -> None:
    send("start")
    send("answer", id="danger_now", value=["none"])
    said = "the top browns but I got a tingle off the handle"
    answer = send("answer", id="complaint_in_own_words", value=said, message_id="m7")
    assert answer["id"] == "sign_shock"
    assert answer["open_danger"] is True
    assert driver._open["kitchen"].state.texts["complaint_in_own_words"] == said


def test_words_that_are_no_choice_but_speak_of_danger_are_heard(send: Send) -> None:
    send("start")
    send("answer", id="danger_now", value=["none"])
    assert send("answer", id="which_appliance", value="there is smoke coming out")["id"] == "sign_smoke"


@pytest.mark.parametrize(
    ("line", "code"),
    [
        (b"", "empty_line"),
        (b"   \t ", "empty_line"),
        (b"\xff\xfe", "not_utf8"),
        (b"{", "not_json"),
        (b"[" * 50_000, "not_json"),
        (b'{"a":' + b"9" * 5000 + b"}", "not_json"),
        (b"[]", "not_an_object"),
        (b"null", "not_an_object"),
        (b"{}", "field_missing"),
        (b'{"session":"s"}', "field_missing"),
        (b'{"session":5,"type":"start"}', "field_wrong"),
        (b'{"session":"","type":"start"}', "field_wrong"),
        (b'{"session":"a\\u0000b","type":"start"}', "field_wrong"),
        (b'{"session":"\\ud800","type":"start"}', "field_wrong"),
        (b'{"session":"s","type":"begin"}', "unknown_type"),
        (b'{"session":"s","type":["start"]}', "unknown_type"),
        (b'{"session":"s","type":"start","role":"king"}', "unknown_role"),
        (b'{"session":"s","type":"start","region":"atlantis"}', "unknown_region"),
        (b'{"session":"s","type":"start","lang":"tlh"}', "unknown_language"),
        (b'{"session":"s","type":"start","cavity":"third"}', "field_wrong"),
        (b'{"session":"s","type":"start","colour":"red"}', "unknown_field"),
        (b'{"session":"s","type":"answer","id":"danger_now"}', "field_missing"),
        (b'{"session":"nobody","type":"finish"}', "not_started"),
        (b"x" * (MOST_BYTES + 1), "line_too_long"),
    ],
)
def test_a_line_that_cannot_be_taken_is_told_why(driver: Driver, line: bytes, code: str) -> None:
    answer = driver.answer_line(line)
    OUT.validate(answer)
    assert (answer["type"], answer["code"]) == ("problem", code)
    assert answer["text"]


def test_a_problem_names_the_question_that_stays_open(send: Send) -> None:
    send("start")
    problem = send("answer", id="danger_now", value="12")
    assert (problem["type"], problem["code"], problem["open"]) == ("problem", "choices_expected", "danger_now")


def test_the_role_of_a_session_stays(send: Send) -> None:
    send("start", role="agent")
    assert send("start", role="householder")["code"] == "role_differs"


def test_the_catalogue_names_everything(knowledge: Knowledge, sentences: Sentences) -> None:
    listed = catalogue(knowledge, sentences)
    assert [q["id"] for q in listed["questions"]] == list(knowledge.questions)
    assert [c["id"] for c in listed["causes"]] == list(knowledge.causes)
    screen = next(q for q in listed["questions"] if q["id"] == "danger_now")
    assert set(screen["danger"]) == {s for s, sign in knowledge.signs.items() if sign.on_screen}
    assert all(set(q) == {"id", "kind", "text", "choices", "unit", "care", "danger"} for q in listed["questions"])


def test_the_schema_is_sound_and_knows_every_message() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert {form["properties"]["type"]["const"] for form in SCHEMA["$defs"]["in"]["oneOf"]} == set(FIELDS)
    IN.validate({"session": "s", "type": "answer", "id": "age_of_oven", "value": 3, "unit": "years"})
    assert not IN.is_valid({"session": "s", "type": "answer", "id": "age_of_oven"})
    assert set(VALUES) == {"choice", "choices", "number", "text", "lamp_log", "temperature_log", "browning"}


def test_a_measurement_is_a_list_of_lines_and_a_bad_one_is_said_to_be_so(send: Send) -> None:
    send("start")
    send("answer", id="danger_now", value=["none"])
    send("answer", id="what_goes_wrong", value=["too_cold_or_slow"])
    refused = send("answer", id="lamp_watch", value=["9:10 out", "7:40 lit", "20:00 end"])
    assert (refused["type"], refused["code"]) == ("problem", "time_goes_back")
    assert send("answer", id="lamp_watch", value="7:40 out")["code"] == "lines_expected"
    assert (
        send("answer", id="lamp_watch", value=["6:00 out", "11:00 lit", "12:00 out", "20:00 end"])["type"] != "problem"
    )
    verdict = send("finish")
    assert verdict["causes"][0]["id"] == "thermostat_drifted_low"
    assert "lamp_watch" in [reason["id"] for reason in verdict["because"]]


def test_in_the_made_up_language_every_text_that_goes_out_is_marked(send: Send) -> None:
    question = send("start", lang="x-marked")
    texts = [question["text"], *(choice["text"] for choice in question["choices"])]
    texts.append(send("answer", id="danger_now", value="12")["text"])
    stop = send("answer", id="danger_now", value=["sparks"])
    texts += [stop["details"]["headline"], stop["details"]["explanation"], *stop["details"]["step_texts"]]
    texts += [reason["text"] for reason in stop["because"]]
    assert len(texts) > 20
    assert [text for text in texts if not (text.startswith("⟦") and text.endswith("⟧"))] == []


def test_danger_is_kept_though_another_process_was_first(script: Script, languages: Languages) -> None:
    log = MemoryStore()
    one, other = Driver(script, log, languages, DEFAULTS), Driver(script, log, languages, DEFAULTS)

    def say(driver: Driver, **fields: Any) -> dict[str, Any]:
        return driver.answer_line(json.dumps({"session": "k", **fields}).encode())

    say(one, type="start")
    say(other, type="start")
    say(other, type="answer", id="danger_now", value=["none"])
    moved = say(one, type="answer", id="complaint_in_own_words", value="it gives me an electric shock")
    assert (moved["code"], moved["open"]) == ("session_moved_on", "sign_shock")
    assert say(one, type="finish")["id"] == "sign_shock"


def test_danger_under_a_reused_id_is_heard(send: Send, driver: Driver) -> None:
    send("start")
    send("answer", id="danger_now", value=["none"])
    send("answer", id="which_appliance", value="there is a lot of smoke", message_id="m1")
    again = send("answer", id="which_appliance", value="I got an electric shock", message_id="m1")
    assert again["code"] == "message_id_reused"
    assert driver._open["kitchen"].state.heard.keys() == {"smoke", "shock"}


def test_a_language_without_all_its_words_is_a_problem_and_no_crash(script: Script, tmp_path: Path) -> None:
    shutil.copytree(ROOT / "locales", tmp_path / "locales")
    (tmp_path / "locales" / "de-DE").mkdir()
    (tmp_path / "locales" / "de-DE" / "chat.ftl").write_text("words-yes = ja\n")
    driver = Driver(script, MemoryStore(), Languages(tmp_path / "locales", script.knowledge), DEFAULTS)
    answer = driver.answer_line(b'{"session":"k","type":"start","lang":"de-DE"}')
    assert answer["code"] == "language_incomplete"
    assert driver.answer_line(b'{"session":"k","type":"start"}')["id"] == "danger_now"
