"""What an agent types, and what comes of it: events and state first, words second."""

from collections.abc import Sequence
from dataclasses import replace

import pytest

from assistant.desk.begin import StoredCalls
from assistant.desk.call import Call
from assistant.desk.desk import Desk, Left
from assistant.desk.layout import as_text, laid_desk
from assistant.desk.panels import asked as asked_panel
from assistant.desk.panels import calls as listed_calls
from assistant.desk.panels import conversation as conversation_panel
from assistant.desk.panels import danger_banner, ways_back
from assistant.errors import StoreUnreadable
from assistant.interview.access_code import hash_code
from assistant.interview.commands import GiveAnswer, SayNotSure, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.events import Event
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script
from assistant.interview.state import fold
from assistant.knowledge.model import Care
from assistant.store.memory import MemoryStore
from assistant.wording.languages import Languages
from tests.desk.conftest import asked, typed

WELL = (".new", "nobody is hurt", "none of these", "Ada", "0700 900 100", "none of these")
"""A call up to the interview's own first question."""


def _said(desk: Desk) -> str:
    return " ".join(each.text for each in desk.notices)


def test_a_call_begins_with_who_is_hurt_then_danger_then_who_speaks(desk: Desk) -> None:
    order = []
    for line in WELL:
        typed(desk, line)
        order.append(asked(desk))
    assert order[:5] == ["anyone_hurt", "danger_now", "who_is_speaking", "call_back_number", "pressing_need"]
    assert order[5] == "what_goes_wrong"


def test_a_shock_told_first_of_all_stands_as_danger(desk: Desk) -> None:
    call = typed(desk, ".new", "yes, from electricity")
    assert [stop.sign_id for stop in call.conversation.assessment.danger.stops] == ["shock"]
    assert call.at_verdict
    assert asked(desk) == "oven_is_off"


def test_an_answer_goes_to_the_store_before_the_next_question(desk: Desk, log: MemoryStore) -> None:
    call = typed(desk, *WELL)
    kept = log.read(call.conversation.record.session_id)
    assert len(kept) == call.conversation.state.sequence
    assert {event.role for event in kept} == {"agent"}


def test_a_question_is_found_by_any_word_and_answered_out_of_order(desk: Desk) -> None:
    call = typed(desk, *WELL, ".find whose oven")
    assert desk.picking[0] == "whose_oven"
    typed(desk, "1")
    assert asked(desk) == "whose_oven"
    typed(desk, "rented")
    assert call.conversation.state.answers["whose_oven"].value == "rented"
    assert asked(desk) == "what_goes_wrong"


def test_a_slip_of_the_finger_still_finds_and_the_only_one_found_is_asked_at_once(desk: Desk) -> None:
    typed(desk, *WELL, ".find guarentee")
    assert asked(desk) == "guarantee"
    assert desk.picking == ()


def test_nothing_beyond_a_householders_care_is_ever_found_or_asked(desk: Desk, script: Script) -> None:
    call = typed(desk, *WELL)
    questions = script.knowledge.questions
    beyond = [each for each, question in questions.items() if question.care is Care.ENGINEER]
    assert beyond
    for question_id in beyond:
        typed(desk, f".find {call.own.question_by_id(question_id).text}")
        assert question_id not in desk.picking
        assert call.reopen(question_id)
        assert call.reopened is None


def test_a_hot_test_is_not_found_before_its_gate(desk: Desk) -> None:
    typed(desk, *WELL, ".find watch small front light")
    assert "lamp_watch" not in desk.picking


def test_a_changed_answer_shows_what_moved(desk: Desk) -> None:
    call = typed(desk, *WELL, "5")
    before = dict(call.causes)
    number = call.answered.index("what_goes_wrong") + 1
    typed(desk, f".change {number}", "6")
    assert call.before == before
    assert dict(call.causes) != before
    assert call.conversation.state.answers["what_goes_wrong"].value == ("pale_on_top",)


def test_a_second_call_is_parked_and_comes_back_where_it_was(desk: Desk) -> None:
    first = typed(desk, *WELL)
    was = asked(desk)
    second = typed(desk, ".new", "1")
    assert second is not first
    assert typed(desk, ".park") is first
    assert asked(desk) == was
    assert typed(desk, ".take 2") is second


def test_a_call_goes_on_at_another_desk_by_its_code_and_nothing_is_asked_twice(
    desk: Desk, calls: StoredCalls, languages: Languages
) -> None:
    call = typed(desk, *WELL, "5")
    other = Desk(calls, languages.sentences("en-GB", "great_britain"))
    taken = typed(other, f".take {call.code.lower().replace('-', ' ')}")
    assert asked(other) == asked(desk)
    assert taken.answered == call.answered


def test_a_householders_own_session_is_taken_over_in_the_agents_role(
    desk: Desk, calls: StoredCalls, log: MemoryStore
) -> None:
    call = calls.begin()
    started = Conversation(calls.script, log, call.conversation.record)
    from assistant.interview.commands import Start

    started.start(Start("householder", "great_britain", "en-GB", "single"))
    started.do(GiveAnswer("danger_now", ["none"]))
    typed(desk, f".take {call.code}", "Ada")
    events = log.read(call.conversation.record.session_id)
    assert [event.role for event in events] == ["householder", "householder", "agent"]


def test_a_call_held_under_other_rules_says_so_until_it_goes_on(
    desk: Desk, calls: StoredCalls, log: MemoryStore
) -> None:
    call = typed(desk, *WELL)
    events = log.read(call.conversation.record.session_id)
    old = replace(call.conversation.record, session_id="0" * 32, code_hash=hash_code("0000-0000-0000-0001"))
    log.create(
        old,
        [replace(e, session_id="0" * 32, event_id=f"{n}", rules_fingerprint="f" * 64) for n, e in enumerate(events)],
    )
    typed(desk, ".take 0000-0000-0000-0001")
    assert "other rules" in _said(desk)
    typed(desk, "5", ".take 2")
    assert "other rules" not in _said(desk)


def test_a_code_that_nobody_has_is_said_in_a_sentence(desk: Desk) -> None:
    desk.take(".take 0000-0000-0000-0000")
    assert _said(desk) == "No call has that code."


def test_who_went_on_elsewhere_is_shown_and_nothing_is_overwritten(
    desk: Desk, calls: StoredCalls, languages: Languages
) -> None:
    call = typed(desk, *WELL)
    other = Desk(calls, languages.sentences("en-GB", "great_britain"))
    typed(other, f".take {call.code}", "5")
    typed(desk, "6")
    assert "The bottom of food stays pale" in _said(desk)
    assert call.conversation.state.answers["what_goes_wrong"].value == ("pale_below",)


def test_danger_typed_into_a_conflict_is_not_lost(desk: Desk, calls: StoredCalls, languages: Languages) -> None:
    call = typed(desk, *WELL)
    other = Desk(calls, languages.sentences("en-GB", "great_britain"))
    typed(other, f".take {call.code}", "5")
    typed(desk, "there are sparks")
    assert "sparks" in call.conversation.state.heard


@pytest.mark.parametrize("line", ["there are sparks in it", ".sparks in it"])
def test_danger_is_heard_in_any_line(desk: Desk, line: str) -> None:
    call = typed(desk, *WELL, line)
    assert "sparks" in call.conversation.state.heard
    assert any(each.urgent for each in desk.notices)


def test_danger_is_not_skipped(desk: Desk) -> None:
    typed(desk, ".new", "1", ".skip")
    assert asked(desk) == "danger_now"


def test_a_note_is_added_to_those_before_and_refuses_a_cards_number(desk: Desk) -> None:
    call = typed(desk, *WELL, ".note rings twice", ".note has a dog")
    assert call.conversation.state.texts["call_notes"] == "rings twice; has a dog"
    typed(desk, ".note card 4111 1111 1111 1111")
    assert call.conversation.state.texts["call_notes"] == "rings twice; has a dog"
    assert "card" in _said(desk)


def test_a_call_that_ended_is_finished_and_says_its_code(desk: Desk) -> None:
    call = typed(desk, *WELL)
    for question, line in (("call_ended", "dropped"),):
        call.reopened = question
        typed(desk, line)
    assert call.ended


def test_an_empty_line_and_nonsense_change_nothing(desk: Desk) -> None:
    call = typed(desk, *WELL)
    before = call.conversation.state.sequence
    for line in ("", "   ", "qwertz", ".", ".xyz", "999999999999999999999", "\x1b[2J", "." * 500):
        typed(desk, line)
    assert call.conversation.state.sequence == before


def test_the_beginning_of_a_word_is_enough_where_it_is_clear(desk: Desk) -> None:
    typed(desk, ".ne", "1")
    assert asked(desk) == "danger_now"
    typed(desk, ".c")
    assert ".calls" in _said(desk)
    assert ".change" in _said(desk)


class _Away(MemoryStore):
    away = False

    def append(self, session_id: str, expected_sequence: int, events: Sequence[Event]) -> None:
        if self.away:
            raise StoreUnreadable("memory:", "not_reached")
        super().append(session_id, expected_sequence, events)


def test_what_the_store_cannot_take_just_now_is_said_and_saved_later(script: Script, languages: Languages) -> None:
    log = _Away()
    source = StoredCalls(script, log, languages, "en-GB", "en-GB", "great_britain")
    desk = Desk(source, languages.sentences("en-GB", "great_britain"))
    call = typed(desk, *WELL)
    log.away = True
    typed(desk, "5")
    assert "not saved yet" in _said(desk)
    desk.take(".leave")
    assert "isn't saved" in _said(desk)
    log.away = False
    typed(desk, ".save")
    assert log.last_sequence(call.conversation.record.session_id) == call.conversation.state.sequence
    with pytest.raises(Left):
        desk.take(".leave")


def test_two_languages_read_out_in_the_customers_and_tell_in_the_agents(
    script: Script, log: MemoryStore, languages: Languages
) -> None:
    source = StoredCalls(script, log, languages, "en-GB", "x-marked", "great_britain")
    desk = Desk(source, languages.sentences("en-GB", "great_britain"))
    call: Call = typed(desk, ".new", "nobody is hurt")
    assert call.read_out.wording.lang == "x-marked"
    assert call.own.wording.lang == "en-GB"
    assert asked(desk) == "danger_now"


def test_what_the_customer_told_in_between_is_there_when_the_call_is_taken_back(
    desk: Desk, calls: StoredCalls, languages: Languages
) -> None:
    call = typed(desk, *WELL)
    typed(desk, ".new", "1")
    other = Desk(calls, languages.sentences("en-GB", "great_britain"))
    typed(other, f".take {call.code}", "there are flames now")
    typed(desk, ".take 1")
    assert desk.call is call
    assert "fire" in call.conversation.state.heard
    assert call.danger_unsettled


@pytest.mark.parametrize("back", ["code", "park"])
def test_every_way_back_to_a_call_looks_again(desk: Desk, calls: StoredCalls, languages: Languages, back: str) -> None:
    call = typed(desk, *WELL, ".new", "1")
    first = desk.calls[0]
    other = Desk(calls, languages.sentences("en-GB", "great_britain"))
    typed(other, f".take {first.code}", "there are sparks")
    typed(desk, f".take {first.code}" if back == "code" else ".park")
    assert desk.call is first is not call
    assert "sparks" in first.conversation.state.heard


def test_danger_told_at_another_desk_is_seen_while_nobody_types(
    desk: Desk, calls: StoredCalls, languages: Languages
) -> None:
    call = typed(desk, *WELL)
    other = Desk(calls, languages.sentences("en-GB", "great_britain"))
    typed(other, f".take {call.code}", "there are sparks")
    assert desk.look_again()
    assert "sparks" in call.conversation.state.heard
    assert "danger was heard" in _said(desk)
    assert not desk.look_again()


def test_yes_is_asked_back_where_somebody_is_hurt_and_then_said_what_to_do(desk: Desk) -> None:
    call = typed(desk, ".new", "yes")
    assert "anyone_hurt" not in call.conversation.state.answers
    typed(desk, "yes, in another way")
    assert call.somebody_is_hurt
    assert "999" in _said(desk)
    assert "SOMEBODY IS HURT" in str(danger_banner(desk))


def test_a_number_that_is_not_in_the_list_answers_nothing(desk: Desk) -> None:
    call = typed(desk, ".new", "1", "5", ".find sparks")
    before, listed = call.conversation.state.sequence, desk.picking
    typed(desk, "99")
    assert call.conversation.state.sequence == before
    assert desk.picking == listed


def test_danger_is_heard_in_a_note_too(desk: Desk) -> None:
    call = typed(desk, *WELL, ".note there are sparks in it now")
    assert "sparks" in call.conversation.state.heard
    assert "call_notes" in call.conversation.state.texts


@pytest.mark.parametrize("sign", ["1", "2"])
def test_who_has_to_get_out_is_asked_neither_fee_nor_read_back(desk: Desk, sign: str) -> None:
    typed(desk, ".new", "1", sign)
    assert "Everybody goes out" in str(danger_banner(desk))
    order = []
    for line in ("Ada", "0700 900 100", "1"):
        order.append(asked(desk))
        typed(desk, line)
    assert order == ["who_is_speaking", "call_back_number", "call_ended"]


def test_a_code_that_is_told_is_good_even_before_the_first_answer(
    desk: Desk, calls: StoredCalls, languages: Languages
) -> None:
    call = typed(desk, ".new", ".code")
    other = Desk(calls, languages.sentences("en-GB", "great_britain"))
    other.take(f".take {call.code}")
    assert other.call is not None


def test_a_call_parked_in_danger_says_so(desk: Desk) -> None:
    typed(desk, ".new", "1", "5")
    desk.take(".park")
    assert "NOT SETTLED" in _said(desk)
    assert "DANGER NOT SETTLED" in str(listed_calls(desk))


def test_who_leaves_is_told_the_codes_of_calls_that_may_go_on(desk: Desk) -> None:
    call = typed(desk, *WELL)
    assert call.code in str(ways_back(desk))


def test_the_numbers_of_facts_stay_when_one_is_changed(desk: Desk) -> None:
    call = typed(desk, *WELL, "5")
    before = call.answered
    typed(desk, f".change {before.index('what_goes_wrong') + 1}", "6")
    assert call.answered == before


def test_a_line_that_was_not_understood_stays_to_be_put_right(desk: Desk) -> None:
    typed(desk, *WELL, "qwertz")
    assert any(notice.line_stays for notice in desk.notices)


@pytest.mark.parametrize(
    "line",
    [
        "my wife burned her hand on the door",
        "yes her hand is burnt",
        "somebody is bleeding",
        "he is hurt",
        "she's unconscious",
        "yes a bit",
    ],
)
def test_whoever_is_hurt_is_heard_in_the_words_that_people_use(desk: Desk, line: str) -> None:
    call = typed(desk, ".new", line)
    assert call.conversation.state.answers["anyone_hurt"].value == "otherwise"
    assert "SOMEBODY IS HURT" in str(danger_banner(desk))


def test_an_injury_told_later_counts_too_and_the_question_stays(desk: Desk) -> None:
    call = typed(desk, *WELL, "it stays cold and my son burnt his arm")
    assert call.somebody_is_hurt
    assert "999" in _said(desk)
    assert asked(desk) == "what_goes_wrong"


@pytest.mark.parametrize("line", ["I burnt my cake", "the pizza is burnt", "nobody is hurt", "the cut out has gone"])
def test_what_happened_to_the_food_hurts_nobody(desk: Desk, line: str) -> None:
    call = typed(desk, *WELL, line)
    assert not call.somebody_is_hurt


def test_a_shock_told_where_it_is_asked_who_is_hurt_is_both(desk: Desk) -> None:
    call = typed(desk, ".new", "she got a shock off the knob")
    assert call.conversation.state.answers["anyone_hurt"].value == "by_electricity"
    assert [stop.sign_id for stop in call.conversation.assessment.danger.stops] == ["shock"]


def test_who_is_hurt_is_asked_as_soon_as_danger_told_first_is_clear(desk: Desk) -> None:
    typed(desk, ".new", "there are flames")
    assert asked(desk) == "sign_fire"
    typed(desk, "yes now")
    assert asked(desk) == "anyone_hurt"


@pytest.mark.parametrize(
    ("told", "line", "stands"),
    [
        ("flames", "yes now", True),
        ("flames", "there is a fire in the oven", True),
        ("flames", "no they are out now", True),
        ("flames", "no flames", False),
        ("I smell gas", "just a bit", True),
        ("I smell gas", "not any more", True),
        ("there is smoke", "yes now", True),
        ("there is smoke", "it stopped", True),
        ("there is smoke", "steam", False),
        ("it sparks", "not any more", True),
    ],
)
def test_the_short_replies_that_people_give_to_danger_are_understood(
    desk: Desk, told: str, line: str, stands: bool
) -> None:
    call = typed(desk, *WELL, told, line)
    assert bool(call.conversation.assessment.danger.stops) is stands
    assert not call.conversation.assessment.danger.open_questions


def test_a_kitchen_full_of_smoke_is_asked_for_flames_first(desk: Desk) -> None:
    typed(desk, ".new", "nobody", "the kitchen is full of smoke")
    assert asked(desk) == "sign_fire"
    assert "everybody goes out" in str(danger_banner(desk))


def test_a_lesser_sign_that_is_open_keeps_nobody_from_being_asked_who_is_hurt(desk: Desk) -> None:
    typed(desk, ".new", "the kitchen's full of smoke!", "yes flames")
    order = []
    for line in ("nobody", "Jo", "0700 900"):
        order.append(asked(desk))
        typed(desk, line)
    assert [*order, asked(desk)] == ["anyone_hurt", "who_is_speaking", "call_back_number", "call_ended"]


def test_words_around_a_danger_are_kept_for_when_the_question_is_asked_again(desk: Desk) -> None:
    line = "it's pale beneath and there's a smell of hot plastic now"
    call = typed(desk, *WELL, line)
    assert asked(desk) == "sign_hot_plastic_smell"
    typed(desk, "3")
    assert asked(desk) == "what_goes_wrong"
    assert line in as_text(laid_desk(desk, 132, 40).rows)
    assert line in str(call.conversation.state.texts["call_notes"])


def test_what_is_told_when_nothing_is_asked_is_noted(desk: Desk) -> None:
    call = typed(desk, ".new", "1", "1", "Ada", "0700", "3", "the fire brigade is here")
    assert call.conversation.state.texts["call_notes"] == "the fire brigade is here"


def test_who_cannot_say_whether_it_is_off_is_asked_twice_and_then_how_to_call_them_back(desk: Desk) -> None:
    call = typed(desk, ".new", "nobody", "sparks")
    order = []
    for line in (".unsure", ".unsure", "Ada", "0700 900 100"):
        order.append(asked(desk))
        typed(desk, line)
    assert order == ["oven_is_off", "oven_is_off", "who_is_speaking", "call_back_number"]
    assert call.danger_unsettled
    assert "not yet confirmed off" in str(danger_banner(desk))


def test_a_number_after_the_list_of_calls_takes_that_call(desk: Desk) -> None:
    first = typed(desk, *WELL)
    typed(desk, ".new", "nobody", "16")
    assert typed(desk, ".calls", "1") is first
    assert "what_goes_wrong" not in first.conversation.state.answers


def test_a_parked_call_is_taken_by_the_name_of_who_speaks(desk: Desk) -> None:
    first = typed(desk, *WELL)
    typed(desk, ".new")
    assert typed(desk, ".take ada") is first


def test_a_yes_to_the_fee_is_no_agreement(desk: Desk) -> None:
    call = typed(desk, *WELL)
    call.reopen("fee_told")
    typed(desk, "yes")
    assert asked(desk) == "fee_told"
    assert "fee_told" not in call.conversation.state.answers


def test_what_was_agreed_stands_beside_the_question_whether_it_was_read_back(desk: Desk) -> None:
    call = typed(desk, *WELL)
    call.reopen("read_back")
    shown = as_text(laid_desk(desk, 100, 40).rows)
    assert "Speaking: Ada" in shown
    assert "0700 900 100" in shown


@pytest.mark.parametrize("line", [".change 0000019", ".change 00", ".take 00000001", ".take 99999999"])
def test_numbers_that_no_list_has_change_nothing(desk: Desk, line: str) -> None:
    call = typed(desk, *WELL)
    answers = call.conversation.state.answers
    assert typed(desk, line) is call
    assert call.conversation.state.answers == answers
    typed(desk, "", ".find oven", "0000019")
    assert "The list has" in _said(desk)


class Away(MemoryStore):
    """A store that fails while it is `away`."""

    away = False

    def append(self, session_id: str, expected_sequence: int, events: Sequence[Event]) -> None:
        if self.away:
            raise StoreUnreadable("memory:", "disk_full")
        super().append(session_id, expected_sequence, events)


@pytest.fixture
def two_desks(script: Script, languages: Languages) -> tuple[Away, Desk, Desk]:
    """One store; the first call is on the line at both."""
    log = Away()
    calls = StoredCalls(script, log, languages, "en-GB", "en-GB", "great_britain", pause_s=0)
    one, other = (Desk(calls, languages.sentences("en-GB", "great_britain")) for _ in range(2))
    call = typed(one, *WELL)
    typed(other, f".take {call.code}")
    return log, one, other


@pytest.mark.parametrize("then", [".save", ".code", "2", ""])
def test_danger_that_waited_for_the_store_counts_though_somebody_else_went_on(
    two_desks: tuple[Away, Desk, Desk], then: str
) -> None:
    log, one, other = two_desks
    log.away = True
    typed(one, "there are flames", "yes now", ".note gone out into the garden")
    log.away = False
    typed(other, "5")
    call = typed(one, then, ".save")
    assert [stop.sign_id for stop in call.conversation.assessment.danger.stops] == ["fire"]
    assert call.conversation.state.answers["what_goes_wrong"].value == ("pale_below",)
    assert "gone out into the garden" in str(call.conversation.state.texts["call_notes"])
    assert fold(log.read(call.conversation.record.session_id)).answers == call.conversation.state.answers


def test_a_note_typed_into_a_conflict_is_added_to_the_others(two_desks: tuple[Away, Desk, Desk]) -> None:
    _, one, other = two_desks
    typed(other, ".note ring twice")
    call = typed(one, ".note the key is with the neighbour")
    assert call.conversation.state.texts["call_notes"] == "ring twice; the key is with the neighbour"


def test_an_answer_typed_into_a_conflict_stays_in_the_line(two_desks: tuple[Away, Desk, Desk]) -> None:
    _, one, other = two_desks
    typed(other, "5")
    typed(one, "6")
    assert any(notice.line_stays for notice in one.notices)


@pytest.mark.parametrize("then", [".code", ".save", "2"])
def test_a_call_erased_while_something_waited_goes_on_and_gives_no_code(
    two_desks: tuple[Away, Desk, Desk], then: str
) -> None:
    log, one, _ = two_desks
    log.away = True
    call = typed(one, "5")
    log.away = False
    log.erase(call.conversation.record.session_id)
    typed(one, then)
    assert "erased by somebody else" in _said(one)
    typed(one, ".code")
    assert str(call.code) not in _said(one)


def test_a_call_is_taken_up_by_its_id_after_a_crash(desk: Desk, calls: StoredCalls, languages: Languages) -> None:
    call = typed(desk, *WELL)
    other = Desk(calls, languages.sentences("en-GB", "great_britain"))
    again = typed(other, f".take {call.conversation.record.session_id[:8]}")
    assert again.conversation.state.answers == call.conversation.state.answers
    typed(other, ".code")
    assert call.conversation.record.session_id[:12] in _said(other)


def test_an_engineers_test_and_the_agents_notes_are_not_on_the_side_that_is_read_out(
    calls: StoredCalls, desk: Desk, script: Script
) -> None:
    code = "7K3M-QX8D-0ZRT-5WAB"
    record = SessionRecord(session_id="a" * 32, code_hash=hash_code(code), name=None, created_at=utc_now())
    conversation = Conversation(script, calls.log, record)
    conversation.start(Start("engineer", "great_britain", "en-GB", "single"))
    test = next(each for each, question in script.knowledge.questions.items() if question.care is Care.ENGINEER)
    choice = next(iter(script.knowledge.questions[test].choices), None)
    conversation.do(GiveAnswer(test, choice) if choice else SayNotSure(test))
    call = typed(desk, f".take {code}", ".note ring twice")
    shown = [paragraph.text for paragraph in conversation_panel(call)]
    assert not any(call.own.question_by_id(test).text in each for each in shown)
    assert not any("ring twice" in each for each in shown)


def test_the_one_choice_that_is_asked_back_is_taken_by_yes(desk: Desk) -> None:
    call = typed(desk, *WELL)
    call.reopen("whose_oven")
    typed(desk, "it's mine")
    assert "Did they mean" in _said(desk)
    assert "whose_oven" not in call.conversation.state.answers
    typed(desk, "yes")
    assert "whose_oven" in call.conversation.state.answers


def test_an_oven_left_on_at_the_end_is_asked_once_more(desk: Desk) -> None:
    call = typed(desk, *WELL)
    call.reopen("off_at_the_end")
    typed(desk, "it is on")
    assert asked(desk) == "off_at_the_end"
    assert "must not stay on" in _said(desk)
    typed(desk, "off")
    assert call.conversation.state.answers["off_at_the_end"].value == "off"


def test_off_is_asked_again_after_another_sign_however_often_it_was_asked_before(desk: Desk) -> None:
    typed(desk, ".new", "nobody", "sparks", "still on", "still on")
    assert asked(desk) == "who_is_speaking"
    typed(desk, ".find is the oven off now")
    call = typed(desk, ".change 3", "the breaker") if asked(desk) != "oven_is_off" else typed(desk, "the breaker")
    assert call.conversation.assessment.danger.off_confirmed
    typed(desk, "my granddaughter got a tingle off it", "yes a tingle")
    assert asked(desk) in ("anyone_hurt", "oven_is_off")


def test_the_fee_is_not_told_while_the_oven_may_be_live(desk: Desk) -> None:
    call = typed(desk, ".new", "2", "still on", "still on", "Ada", "0700 900 100")
    assert not call.conversation.assessment.danger.off_confirmed
    assert asked(desk) == "read_back"


def test_where_everybody_goes_out_they_do_so_before_anything_is_asked(desk: Desk) -> None:
    call = typed(desk, *WELL, "I smell gas")
    assert "Go outside now" in asked_panel(call)[0].text
    call = typed(desk, "yes now")
    assert "First they go out" in asked_panel(call)[0].text


def test_who_came_on_the_line_is_said_when_another_call_is_parked(desk: Desk) -> None:
    typed(desk, *WELL, ".new", ".park")
    assert "On the line now: Ada" in _said(desk)


def test_not_now_answers_a_question_about_danger(desk: Desk) -> None:
    typed(desk, *WELL, "I smell gas", "not now")
    assert [stop.sign_id for stop in desk.calls[0].conversation.assessment.danger.stops] == ["gas_smell"]


@pytest.mark.parametrize("before", [WELL, (".new", "nobody", "sparks"), (".new",)])
def test_a_call_may_be_ended_at_any_time(desk: Desk, before: Sequence[str]) -> None:
    call = typed(desk, *before, ".end")
    assert asked(desk) == "call_ended"
    typed(desk, "dropped")
    assert call.ended


def test_who_did_not_hear_is_told_how_to_look(desk: Desk) -> None:
    call = typed(desk, *WELL, "what?")
    assert call.question is not None
    assert call.read_out.question(call.question).how in _said(desk)


def test_danger_told_instead_of_a_telephone_number_is_all_that_is_spoken_of(desk: Desk) -> None:
    typed(desk, ".new", "nobody", "none of these", "Ada", "there are sparks!")
    assert "telephone number is wanted" not in _said(desk)
    assert asked(desk) == "sign_sparks"
