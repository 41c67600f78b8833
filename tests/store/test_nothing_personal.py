"""Errors, notices and logs tell nothing of what people told."""

import logging
from collections.abc import Callable, Iterator
from contextlib import closing

import pytest

from assistant.errors import OvensideError
from assistant.interview.log import EventLog
from assistant.store.postgres import PostgresStore
from tests.store.samples import started, text_event

TOLD = ("Olive Wren", "01632 960147")


def mistakes(log: EventLog) -> Iterator[Callable[[], object]]:
    """Each is refused, with what somebody told in hand."""
    session = started(log)
    told = text_event(session.session_id, 2, " ".join(TOLD), message_id="m")
    log.append(session.session_id, 1, [told])
    again = text_event(session.session_id, 3, " ".join(TOLD), event_id=told.event_id)
    yield lambda: log.append(session.session_id, 1, [told])
    yield lambda: log.append(session.session_id, 2, [again])
    yield lambda: log.append(session.session_id, 2, [text_event(session.session_id, 3, TOLD[0], message_id="m")])
    yield lambda: log.append(session.session_id, 2, [text_event(session.session_id, 3, f"{TOLD[0]}\udcff")])
    yield lambda: log.append("nobody", 0, [text_event("nobody", 1, TOLD[0])])
    yield lambda: log.find_by_code("7K3M-QX8D-0ZRT-5WAB")


def test_no_error_of_a_store_and_nothing_logged_holds_what_was_told(
    log: EventLog, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.DEBUG)
    seen = []
    for mistake in mistakes(log):
        with pytest.raises(OvensideError) as raised:
            mistake()
        error: BaseException | None = raised.value
        while error is not None:
            seen.append(str(error))
            error = error.__cause__
    assert len(seen) >= 6
    assert not [each for each in [*seen, caplog.text] for told in TOLD if told in each]


def test_a_server_is_told_to_log_no_values_with_an_error(empty_server: str) -> None:
    with closing(PostgresStore(empty_server)) as store:
        shown = store._connection.execute("SHOW log_parameter_max_length_on_error").fetchone()
        assert shown == ("0",)
