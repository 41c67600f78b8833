"""What every store promises, asked of each of them."""

from datetime import datetime, timedelta, timezone
from threading import Thread
from typing import Any

import pytest

from assistant.errors import Refused, SessionMovedOn, SessionUnknown, StoreUnreadable
from assistant.interview.access_code import hash_code
from assistant.interview.events import (
    AnswerWithdrawn,
    DangerHeard,
    InterviewFinished,
    NotSureAnswered,
    OutcomeRecorded,
    QuestionAnswered,
    QuestionSkipped,
    TextAnswered,
)
from assistant.interview.log import Appending, EventLog
from tests.interview.told import told
from tests.store.conftest import Opening
from tests.store.samples import NOON, STARTED, event, numbered_code, record, started, text_event, without_text

HAPPENINGS = [
    STARTED,
    QuestionAnswered(question_id="symptoms", value=("burnt_top", "raw_middle")),
    QuestionAnswered(question_id="mains", value="single_phase"),
    QuestionAnswered(question_id="reached", value=180.5, given=356.9, given_unit="fahrenheit"),
    QuestionAnswered(question_id="nothing_ticked", value=()),
    TextAnswered(question_id="anything_else", text="it hums"),
    TextAnswered(question_id="already_erased", text=None),
    TextAnswered(question_id="said_nothing", text=""),
    NotSureAnswered(question_id="mains"),
    QuestionSkipped(question_id="mains"),
    AnswerWithdrawn(question_id="mains"),
    DangerHeard(sign_id="smoke", clear=False),
    InterviewFinished(),
    told(),
    told(causes_found=(), part_fitted=None, minutes=None, text=""),
    told(text=None),
]

HARD_TEXTS = [
    "straße, façade, 烤箱, печь, فرن",
    "e\u0301 stays apart from \u00e9",
    "a\0b",
    "\ufeffmark, \u202eback to front, \U0001f525",
    "line\r\nline\n\ttab ",
    "'); DROP TABLE events; --",
    "x" * 100_000,
]


def test_what_was_kept_is_read_back_equal(log: EventLog) -> None:
    session = record()
    events = [event(session.session_id, n, what) for n, what in enumerate(HAPPENINGS, start=1)]
    log.create(session, events[:1])
    log.append(session.session_id, 1, events[1:4])
    log.append(session.session_id, 4, events[4:])
    assert log.read(session.session_id) == tuple(events)


@pytest.mark.parametrize("text", HARD_TEXTS, ids=range(len(HARD_TEXTS)))
def test_text_is_kept_to_the_letter(log: EventLog, text: str) -> None:
    session = started(log, name=text)
    log.append(session.session_id, 1, [text_event(session.session_id, 2, text, message_id=text)])
    kept = log.read(session.session_id)[-1]
    assert isinstance(kept.happening, TextAnswered)
    assert (kept.happening.text, kept.message_id) == (text, text)
    assert log.find_by_name(text) == session
    assert log.seen_message(session.session_id, text)


@pytest.mark.parametrize(
    "changes",
    [
        {"happening": TextAnswered(question_id="q", text="half \ud83d")},
        {"happening": QuestionAnswered(question_id="q", value="half \ud83d")},
        {"message_id": "\udcff"},
        {"actor": "\udcff"},
    ],
)
def test_lone_surrogates_are_refused_and_nothing_of_the_batch_is_kept(log: EventLog, changes: dict[str, Any]) -> None:
    session = started(log)
    batch = [event(session.session_id, 2), event(session.session_id, 3, **changes)]
    with pytest.raises(Refused, match="not_unicode"):
        log.append(session.session_id, 1, batch)
    assert len(log.read(session.session_id)) == 1


def test_a_name_with_a_lone_surrogate_is_refused(log: EventLog) -> None:
    with pytest.raises(Refused, match="not_unicode"):
        started(log, name="\udcff")
    assert log.sessions() == []


def test_looking_for_lone_surrogates_finds_nothing(log: EventLog) -> None:
    session = started(log, name="\ufffd")
    assert log.find_by_name("\udcff") is None
    assert not log.seen_message(session.session_id, "\udcff")
    for search in (log.find_by_id_prefix, log.read, log.erase, log.erase_text, log.find_by_code):
        with pytest.raises(SessionUnknown):
            search("\udcff")


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_numbers_that_are_none_are_refused(log: EventLog, value: float) -> None:
    session = started(log)
    with pytest.raises(Refused, match="not_finite"):
        log.append(
            session.session_id,
            1,
            [event(session.session_id, 2, QuestionAnswered(question_id="q", value=value))],
        )
    assert len(log.read(session.session_id)) == 1


@pytest.mark.parametrize("expected", [0, 1, 3])
def test_a_writer_who_has_not_seen_the_last_event_changes_nothing(log: EventLog, expected: int) -> None:
    session = started(log)
    log.append(session.session_id, 1, [event(session.session_id, 2)])
    before = log.read(session.session_id)
    with pytest.raises(SessionMovedOn) as caught:
        log.append(session.session_id, expected, [event(session.session_id, expected + 1)])
    assert (caught.value.expected_sequence, caught.value.found_sequence) == (expected, 2)
    assert log.read(session.session_id) == before


def test_appending_nothing_checks_the_sequence_only(log: EventLog) -> None:
    session = started(log)
    log.append(session.session_id, 1, [])
    with pytest.raises(SessionMovedOn):
        log.append(session.session_id, 2, [])
    assert len(log.read(session.session_id)) == 1


def test_events_with_gaps_or_of_another_session_are_a_mistake(log: EventLog) -> None:
    session = started(log)
    with pytest.raises(ValueError, match="belongs"):
        log.append(session.session_id, 1, [event(session.session_id, 2), event(session.session_id, 4)])
    with pytest.raises(ValueError, match="belongs"):
        log.append(session.session_id, 1, [event("another", 2)])
    assert len(log.read(session.session_id)) == 1


def test_times_without_a_zone_are_a_mistake(log: EventLog) -> None:
    naive = NOON.replace(tzinfo=None)
    with pytest.raises(ValueError, match="zone"):
        started(log, created_at=naive)
    session = started(log)
    with pytest.raises(ValueError, match="zone"):
        log.append(session.session_id, 1, [event(session.session_id, 2, recorded_at=naive)])


def test_times_of_other_zones_are_kept_as_the_same_moment_in_utc(log: EventLog) -> None:
    session = started(log)
    elsewhere = datetime(2026, 3, 1, 17, 45, 0, 7, tzinfo=timezone(timedelta(hours=5, minutes=45)))
    log.append(session.session_id, 1, [event(session.session_id, 2, recorded_at=elsewhere)])
    kept = log.read(session.session_id)[-1].recorded_at
    assert kept == elsewhere
    assert kept.utcoffset() == timedelta(0)


def test_a_clock_that_goes_backwards_does_not_change_the_order(log: EventLog) -> None:
    session = started(log)
    events = [
        event(session.session_id, n, recorded_at=NOON - timedelta(hours=n), event_id=f"{9 - n}") for n in range(2, 9)
    ]
    for one in events:
        log.append(session.session_id, one.sequence - 1, [one])
    assert [kept.sequence for kept in log.read(session.session_id)] == list(range(1, 9))
    assert log.sessions()[0].last_at == NOON - timedelta(hours=8)


def test_two_writers_racing_never_double_or_lose_an_event(opening: Opening) -> None:
    session = started(opening())
    session_id, each = session.session_id, 40
    acknowledged: list[str] = []

    def write(log: EventLog, actor: str) -> None:
        written = 0
        while written < each:
            seen = log.read(session_id)[-1].sequence
            batch = [event(session_id, seen + 1, actor=actor), event(session_id, seen + 2, actor=actor)]
            try:
                log.append(session_id, seen, batch)
            except SessionMovedOn:
                continue
            acknowledged.extend(one.event_id for one in batch)
            written += 1

    writers = [Thread(target=write, args=(opening(), actor)) for actor in ("first", "second")]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    kept = opening().read(session_id)
    assert [one.sequence for one in kept] == list(range(1, 4 * each + 2))
    assert sorted(one.event_id for one in kept[1:]) == sorted(acknowledged)
    assert all(first.actor == second.actor for first, second in zip(kept[1::2], kept[2::2], strict=True))


def test_a_store_opened_in_one_thread_serves_others(log: EventLog) -> None:
    session = started(log)
    failures: list[Exception] = []

    def write() -> None:
        try:
            log.append(session.session_id, 1, [event(session.session_id, 2)])
        except Exception as error:  # noqa: BLE001 - whatever it is, the test shows it
            failures.append(error)

    thread = Thread(target=write)
    thread.start()
    thread.join()
    assert failures == []
    assert len(log.read(session.session_id)) == 2


def test_a_session_starts_with_an_event(log: EventLog) -> None:
    with pytest.raises(ValueError, match="starts"):
        log.create(record(), [])


def test_a_session_is_created_once(log: EventLog) -> None:
    session = started(log)
    again = record(session_id=session.session_id)
    with pytest.raises(SessionMovedOn):
        log.create(again, [event(session.session_id, 1)])
    assert log.find_by_id_prefix(session.session_id) == session
    assert len(log.read(session.session_id)) == 1


def test_names_and_codes_are_taken_once(log: EventLog) -> None:
    first = started(log, name="bakery-7")
    with pytest.raises(Refused, match="name_taken"):
        started(log, name="bakery-7")
    with pytest.raises(Refused, match="code_taken"):
        started(log, code_hash=first.code_hash)
    assert [summary.session_id for summary in log.sessions()] == [first.session_id]


def test_an_event_is_kept_once(log: EventLog) -> None:
    session, other = started(log), started(log)
    one = event(session.session_id, 2, event_id="same")
    log.append(session.session_id, 1, [one])
    with pytest.raises(Refused, match="event_repeated"):
        log.append(other.session_id, 1, [event(other.session_id, 2), event(other.session_id, 3, event_id="same")])
    with pytest.raises(Refused, match="event_repeated"):
        log.append(other.session_id, 1, [event(other.session_id, n, event_id="twin") for n in (2, 3)])
    assert len(log.read(other.session_id)) == 1


def test_a_message_is_taken_once_and_may_cause_several_events(log: EventLog) -> None:
    session, other = started(log), started(log)
    batch = [event(session.session_id, n, message_id="m1") for n in (2, 3)]
    assert not log.seen_message(session.session_id, "m1")
    log.append(session.session_id, 1, batch)
    assert log.seen_message(session.session_id, "m1")
    assert not log.seen_message(other.session_id, "m1")
    assert not log.seen_message("nobody", "m1")
    with pytest.raises(Refused, match="message_repeated"):
        log.append(
            session.session_id,
            3,
            [event(session.session_id, 4), event(session.session_id, 5, message_id="m1")],
        )
    assert log.read(session.session_id)[1:] == tuple(batch)
    log.append(other.session_id, 1, [event(other.session_id, 2, message_id="m1")])


@pytest.mark.parametrize("disguise", [str.lower, lambda code: code.replace("-", ""), lambda code: f"  {code}\n"])
def test_a_session_is_found_by_its_code_however_typed(log: EventLog, disguise: Any) -> None:
    code = numbered_code(0x10_0000_DEAD_BEEF)
    session = started(log, code_hash=hash_code(code))
    started(log)
    assert log.find_by_code(disguise(code)) == session
    assert log.find_by_code(disguise(code.replace("0", "O"))) == session


@pytest.mark.parametrize("typed", ["", "hello", "0000-0000-0000-0001", "0000-0000-0000-000U"])
def test_a_code_nobody_has_finds_no_session(log: EventLog, typed: str) -> None:
    started(log)
    with pytest.raises(SessionUnknown):
        log.find_by_code(typed)


def test_free_texts_are_read_page_by_page_in_their_order(log: EventLog) -> None:
    for session_id in ("b", "a", "c"):
        started(log, session_id=session_id)
        texts = [text_event(session_id, n, f"{session_id}{n}") for n in (2, 3)]
        log.append(session_id, 1, [*texts, event(session_id, 4)])
    first = log.texts_after("", 0, 3)
    assert first == [("a", 2, "a2"), ("a", 3, "a3"), ("b", 2, "b2")]
    assert log.texts_after("b", 2, 9) == [("b", 3, "b3"), ("c", 2, "c2"), ("c", 3, "c3")]
    log.erase_text("b")
    assert [text for *_, text in log.texts_after("a", 3, 9)] == ["c2", "c3"]


def test_failed_tries_are_counted_in_a_stretch_of_time_and_forgotten_outside_it(opening: Opening) -> None:
    log, other = opening(), opening()
    for minute in (0, 5, 10):
        log.note_failed_try(NOON + timedelta(minutes=minute), NOON)
    assert other.failed_tries(NOON, NOON + timedelta(minutes=10)) == 3
    assert other.failed_tries(NOON + timedelta(minutes=1), NOON + timedelta(minutes=9)) == 1
    log.note_failed_try(NOON + timedelta(minutes=7), NOON + timedelta(minutes=5))
    assert other.failed_tries(NOON - timedelta(days=1), NOON + timedelta(days=1)) == 2


def test_a_session_is_found_by_its_exact_name(log: EventLog) -> None:
    session = started(log, name="Bakery")
    started(log)
    assert log.find_by_name("Bakery") == session
    assert log.find_by_name("bakery") is None
    assert log.find_by_name("") is None


def test_a_session_is_found_by_the_start_of_its_id_if_no_other_starts_so(log: EventLog) -> None:
    first, second = started(log, session_id="ab12"), started(log, session_id="ab99")
    assert log.find_by_id_prefix("ab1") == first
    assert log.find_by_id_prefix("ab99") == second
    for prefix in ("ab", "", "b12", "ab123", "%", "ab1_", "_b12"):
        with pytest.raises(SessionUnknown):
            log.find_by_id_prefix(prefix)


def test_an_empty_prefix_is_nobodys_even_with_one_session(log: EventLog) -> None:
    started(log)
    with pytest.raises(SessionUnknown):
        log.find_by_id_prefix("")


def test_sessions_are_listed_the_latest_created_first(log: EventLog) -> None:
    middle = started(log, created_at=NOON, name="middle")
    oldest = started(log, created_at=NOON - timedelta(days=1))
    twin = started(log, created_at=NOON)
    log.append(oldest.session_id, 1, [event(oldest.session_id, 2), event(oldest.session_id, 3, InterviewFinished())])
    listed = log.sessions()
    assert [one.session_id for one in listed] == [twin.session_id, middle.session_id, oldest.session_id]
    assert [(one.events, one.finished, one.name) for one in listed] == [
        (1, False, None),
        (1, False, "middle"),
        (3, True, None),
    ]
    assert listed[2].created_at == NOON - timedelta(days=1)
    assert listed[2].last_at == NOON + timedelta(seconds=3)
    log.append(oldest.session_id, 3, [event(oldest.session_id, 4)])
    assert not log.sessions()[2].finished
    listed = log.sessions()
    assert log.sessions(limit=2) == listed[:2]
    assert log.sessions(limit=0) == log.sessions(limit=-1) == []
    assert log.sessions(limit=10**30) == listed


def test_an_erased_session_is_gone_and_the_others_stay(log: EventLog) -> None:
    session, other = started(log, name="gone"), started(log)
    log.append(session.session_id, 1, [text_event(session.session_id, 2, "so long", message_id="m1", event_id="e")])
    log.erase(session.session_id)
    for forgotten in (log.read, log.erase, log.erase_text, log.find_by_id_prefix):
        with pytest.raises(SessionUnknown):
            forgotten(session.session_id)
    with pytest.raises(SessionUnknown):
        log.append(session.session_id, 2, [event(session.session_id, 3)])
    assert log.find_by_name("gone") is None
    assert not log.seen_message(session.session_id, "m1")
    assert [one.session_id for one in log.sessions()] == [other.session_id]
    assert len(log.read(other.session_id)) == 1
    again = started(log, name="gone", code_hash=session.code_hash)
    log.append(again.session_id, 1, [event(again.session_id, 2, event_id="e", message_id="m1")])


def test_erasing_the_text_leaves_the_log(log: EventLog) -> None:
    session, other = started(log), started(log)
    for one in (session, other):
        log.append(one.session_id, 1, [text_event(one.session_id, 2, "it hums"), event(one.session_id, 3)])
    before, untouched = log.read(session.session_id), log.read(other.session_id)
    log.erase_text(session.session_id)
    log.erase_text(session.session_id)
    assert log.read(session.session_id) == tuple(map(without_text, before)) != before
    assert log.read(other.session_id) == untouched
    log.append(session.session_id, 3, [text_event(session.session_id, 4, "once more")])
    assert log.read(session.session_id)[3].happening == TextAnswered(question_id="anything_else", text="once more")


def test_a_session_nobody_made_is_unknown(log: EventLog) -> None:
    for search in (log.read, log.erase, log.erase_text, log.find_by_id_prefix):
        with pytest.raises(SessionUnknown):
            search("nobody")
    with pytest.raises(SessionUnknown):
        log.append("nobody", 0, [event("nobody", 1)])


def test_a_closed_log_says_so(log: EventLog) -> None:
    session = started(log)
    log.close()
    log.close()
    with pytest.raises(StoreUnreadable, match="closed"):
        log.read(session.session_id)
    with pytest.raises(StoreUnreadable, match="closed"):
        log.append(session.session_id, 1, [event(session.session_id, 2)])


def test_appendings_to_several_sessions_are_kept_together(log: EventLog) -> None:
    first, second = started(log), started(log)
    log.append_all(
        Appending(session.session_id, 1, [event(session.session_id, 2, told())]) for session in (first, second)
    )
    assert [log.last_sequence(session.session_id) for session in (first, second)] == [2, 2]


def test_of_appendings_that_fail_nothing_is_kept(log: EventLog) -> None:
    first, second = started(log), started(log)
    fine = Appending(first.session_id, 1, [event(first.session_id, 2, event_id="e", message_id="m")])

    def until_it_fails():  # type: ignore[no-untyped-def]
        yield fine
        assert log.last_sequence(first.session_id) == 2
        raise ArithmeticError

    failing: list[tuple[Any, type[Exception]]] = [
        (until_it_fails(), ArithmeticError),
        ([fine, Appending(second.session_id, 2, [event(second.session_id, 3)])], SessionMovedOn),
        ([fine, Appending("nobody", 1, [event("nobody", 2)])], SessionUnknown),
        ([fine, Appending(second.session_id, 1, [event(second.session_id, 2, event_id="e")])], Refused),
    ]
    for appendings, error in failing:
        with pytest.raises(error):
            log.append_all(appendings)
        assert [len(log.read(session.session_id)) for session in (first, second)] == [1, 1]
        assert not log.seen_message(first.session_id, "m")
    log.append_all([fine])
    assert log.seen_message(first.session_id, "m")


def test_the_last_sequence_of_nobody_is_unknown(log: EventLog) -> None:
    assert log.last_sequence(started(log).session_id) == 1
    with pytest.raises(SessionUnknown):
        log.last_sequence("nobody")


def test_events_of_a_kind_come_by_their_time_and_in_a_session_by_sequence(log: EventLog) -> None:
    first, second = started(log, session_id="b1"), started(log, session_id="a1")
    late, early = NOON + timedelta(hours=2), NOON + timedelta(hours=1)
    log.append("b1", 1, [event("b1", 2, told(minutes=1), recorded_at=late)])
    log.append("b1", 2, [event("b1", 3), event("b1", 4, told(minutes=2), recorded_at=early)])
    log.append("a1", 1, [event("a1", 2, told(minutes=3), recorded_at=late)])
    minutes = [one.happening.minutes for one in log.events_of(OutcomeRecorded)]  # type: ignore[attr-defined]
    assert minutes == [2, 3, 1]
    of_one = log.events_of(OutcomeRecorded, first.session_id)
    assert of_one == (log.read("b1")[1], log.read("b1")[3])
    assert log.events_of(InterviewFinished) == log.events_of(OutcomeRecorded, "nobody") == ()
    assert len(log.events_of(OutcomeRecorded, second.session_id)) == 1


def test_an_outcome_leaves_a_finished_session_finished_and_an_open_one_open(log: EventLog) -> None:
    finished, still_open = started(log), started(log)
    log.append(finished.session_id, 1, [event(finished.session_id, 2, InterviewFinished())])
    for session in (finished, still_open):
        after = log.last_sequence(session.session_id)
        log.append(session.session_id, after, [event(session.session_id, after + 1, told())])
    assert {one.session_id: (one.events, one.finished) for one in log.sessions()} == {
        finished.session_id: (3, True),
        still_open.session_id: (2, False),
    }


def test_erasing_the_text_erases_the_note_and_leaves_the_outcome(log: EventLog) -> None:
    session = started(log)
    log.append(session.session_id, 1, [event(session.session_id, 2, told(text="so says Aunt Agatha"))])
    log.erase_text(session.session_id)
    assert log.read(session.session_id)[1].happening == told(text=None)


def test_the_fingerprint_is_the_same_wherever_a_session_is_kept(log: EventLog) -> None:
    from assistant.store.memory import MemoryStore

    session, beside = record(), MemoryStore()
    events = [event(session.session_id, n, what) for n, what in enumerate(HAPPENINGS, start=1)]
    for store in (log, beside):
        store.create(session, events[:2])
        store.append(session.session_id, 2, events[2:])
    kept = log.kept_fingerprint(session.session_id)
    assert kept is not None
    assert len(kept) == 64
    assert kept == log.reckoned_fingerprint(session.session_id) == beside.kept_fingerprint(session.session_id)


def test_erasing_the_text_leaves_the_fingerprint(log: EventLog) -> None:
    session = started(log)
    log.append(session.session_id, 1, [text_event(session.session_id, 2, "it hums")])
    before = log.kept_fingerprint(session.session_id)
    log.erase_text(session.session_id)
    assert log.reckoned_fingerprint(session.session_id) == before


def test_two_sessions_have_two_fingerprints(log: EventLog) -> None:
    first, second = started(log), started(log)
    assert log.kept_fingerprint(first.session_id) != log.kept_fingerprint(second.session_id)


def test_ids_come_in_their_order_page_by_page(log: EventLog) -> None:
    made = sorted(started(log).session_id for _ in range(5))
    pages, last = [], ""
    while page := log.ids_after(last, 2):
        pages.append(page)
        last = page[-1]
    assert pages == [made[:2], made[2:4], made[4:]]


def test_a_session_is_untouched_since_its_latest_event(log: EventLog) -> None:
    old, lately = started(log), started(log)
    log.append(lately.session_id, 1, [event(lately.session_id, 2, recorded_at=NOON + timedelta(days=9))])
    assert log.untouched_since(NOON + timedelta(days=1), 10) == [old.session_id]
    assert set(log.untouched_since(NOON + timedelta(days=10), 10)) == {old.session_id, lately.session_id}
    assert log.untouched_since(NOON, 10) == []


def test_what_nobody_touched_is_erased_so_many_at_a_time(log: EventLog) -> None:
    old = sorted(started(log, name=f"name {n}").session_id for n in range(3))
    lately = started(log)
    log.append(lately.session_id, 1, [event(lately.session_id, 2, recorded_at=NOON + timedelta(days=9))])
    log.append(old[0], 1, [text_event(old[0], 2, "it hums", event_id="e")])
    moment = NOON + timedelta(days=1)
    assert log.erase_untouched(NOON, 9) == []
    assert [log.erase_untouched(moment, 2) for _ in range(3)] == [old[:2], old[2:], []]
    log.sweep()
    assert log.ids_after("", 9) == [lately.session_id]
    assert log.texts_after("", 0, 9) == log.names_after("", 9) == []
    log.append(lately.session_id, 2, [event(lately.session_id, 3, event_id="e")])


def test_a_session_made_lately_is_no_old_one_whatever_its_events_say(log: EventLog) -> None:
    session = started(log, created_at=NOON + timedelta(days=2))
    assert log.untouched_since(NOON + timedelta(days=1), 9) == log.erase_untouched(NOON + timedelta(days=1), 9) == []
    assert log.ids_after("", 9) == [session.session_id]


def test_two_who_erase_what_is_old_share_it_and_what_is_gone_on_with_stays(opening: Opening) -> None:
    log = opening()
    old = {started(log).session_id for _ in range(40)}
    touched = set(sorted(old)[::4])
    erased: list[str] = []

    def erase() -> None:
        own = opening()
        while page := own.erase_untouched(NOON + timedelta(days=1), 3):
            erased.extend(page)

    def touch() -> None:
        own = opening()
        for session_id in sorted(touched, reverse=True):
            try:
                own.append(session_id, 1, [event(session_id, 2, recorded_at=NOON + timedelta(days=9))])
            except SessionUnknown:
                touched.discard(session_id)

    writers = [Thread(target=each) for each in (erase, touch, erase)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    erase()
    assert sorted(erased) == sorted(old - touched)
    assert set(log.ids_after("", 99)) == touched
    assert all(log.last_sequence(each) == 2 for each in touched)


def test_names_come_in_the_order_of_their_sessions_page_by_page(log: EventLog) -> None:
    for session_id, name in (("b", "Bäckerei"), ("a", "kitchen"), ("c", None), ("d", "'); --\0")):
        started(log, session_id=session_id, name=name)
    assert log.names_after("", 2) == [("a", "kitchen"), ("b", "Bäckerei")]
    assert log.names_after("b", 9) == [("d", "'); --\0")]


def test_tries_from_before_a_moment_are_forgotten(log: EventLog) -> None:
    for minute in (0, 5, 10):
        log.note_failed_try(NOON + timedelta(minutes=minute), NOON)
    log.forget_tries(NOON + timedelta(minutes=5))
    assert log.failed_tries(NOON, NOON + timedelta(minutes=10)) == 2
