from datetime import UTC, datetime, timedelta

import pytest

from assistant.errors import Refused, SessionUnknown
from assistant.interview.access_code import hash_code, new_code
from assistant.interview.taking_up import MOST_FAILED_TRIES, WITHIN, session_by_code, session_by_id
from assistant.store.memory import MemoryStore
from tests.store.samples import started

NOON = datetime(2030, 5, 1, 12, tzinfo=UTC)
CODE = new_code(lambda count: b"right".ljust(count, b"!"))
WRONG = new_code(lambda count: b"wrong".ljust(count, b"!"))


@pytest.fixture
def log() -> MemoryStore:
    log = MemoryStore()
    started(log, code_hash=hash_code(CODE))
    return log


def tried(log: MemoryStore, times: int, typed: str = WRONG) -> None:
    for second in range(times):
        with pytest.raises(SessionUnknown):
            session_by_code(log, typed, NOON + timedelta(seconds=second))


def test_after_too_many_wrong_codes_the_right_one_isnt_taken_either_until_time_has_passed(log: MemoryStore) -> None:
    tried(log, MOST_FAILED_TRIES)
    with pytest.raises(Refused) as refused:
        session_by_code(log, CODE, NOON + timedelta(minutes=1))
    assert (refused.value.code, refused.value.details) == ("too_many_codes", {"minutes": 10})
    later = NOON + WITHIN + timedelta(seconds=MOST_FAILED_TRIES)
    assert session_by_code(log, CODE, later).code_hash == hash_code(CODE)


def test_wrong_beginnings_of_ids_count_as_wrong_codes_do(log: MemoryStore) -> None:
    for second in range(MOST_FAILED_TRIES):
        with pytest.raises(SessionUnknown):
            session_by_id(log, f"{second:08x}", NOON + timedelta(seconds=second))
    for take, right in ((session_by_id, log.ids_after("", 1)[0][:8]), (session_by_code, CODE)):
        with pytest.raises(Refused, match="too_many_codes"):
            take(log, right, NOON + timedelta(minutes=1))


def test_fewer_wrong_codes_dont_count_against_anybody(log: MemoryStore) -> None:
    tried(log, MOST_FAILED_TRIES - 1)
    assert session_by_code(log, CODE, NOON + timedelta(minutes=1)).code_hash == hash_code(CODE)


def test_what_cant_be_a_code_isnt_counted(log: MemoryStore) -> None:
    tried(log, 2 * MOST_FAILED_TRIES, "hello")
    assert log.failed_tries(NOON, NOON + WITHIN) == 0


def test_tries_that_a_clock_running_ahead_left_lock_nobody_out(log: MemoryStore) -> None:
    tried(log, MOST_FAILED_TRIES)
    a_year_before = NOON - timedelta(days=365)
    assert session_by_code(log, CODE, a_year_before).code_hash == hash_code(CODE)
