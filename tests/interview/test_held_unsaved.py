"""What a front end may hold while its log can't be written."""

from collections.abc import Sequence

import pytest

from assistant.errors import SessionMovedOn, StoreUnreadable
from assistant.interview.commands import GiveAnswer, SkipQuestion, Start
from assistant.interview.conversation import Conversation
from assistant.interview.events import Event
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script
from assistant.store.memory import MemoryStore
from tests.store.samples import event, record


class _Failing(MemoryStore):
    away = False

    def create(self, session: SessionRecord, events: Sequence[Event]) -> None:
        self._look()
        super().create(session, events)

    def append(self, session_id: str, expected_sequence: int, events: Sequence[Event]) -> None:
        self._look()
        super().append(session_id, expected_sequence, events)

    def _look(self) -> None:
        if self.away:
            raise StoreUnreadable("memory:", "not_reached")


@pytest.fixture
def log() -> _Failing:
    return _Failing()


@pytest.fixture
def conversation(script: Script, log: _Failing) -> Conversation:
    begun = Conversation(script, log, record())
    begun.hold_unsaved()
    begun.start(Start("householder", "great_britain", "en-GB", "single"), keep_at_once=False)
    return begun


def test_what_cannot_be_written_waits_and_is_written_with_the_next(conversation: Conversation, log: _Failing) -> None:
    conversation.do(GiveAnswer("danger_now", ["none"]))
    log.away = True
    conversation.do(SkipQuestion("whose_oven"))
    assert (len(conversation.unsaved), conversation.stored) == (1, False)
    log.away = False
    conversation.do(SkipQuestion("which_dishes"))
    assert (conversation.unsaved, conversation.stored) == ((), True)
    assert [each.sequence for each in log.read(conversation.record.session_id)] == [1, 2, 3, 4]


def test_even_the_beginning_may_wait(conversation: Conversation, log: _Failing) -> None:
    log.away = True
    conversation.do(GiveAnswer("danger_now", ["none"]))
    assert not conversation.save()
    log.away = False
    assert conversation.save()
    assert len(log.read(conversation.record.session_id)) == 2


def test_what_was_written_without_an_answer_is_not_written_twice(conversation: Conversation, log: _Failing) -> None:
    conversation.do(GiveAnswer("danger_now", ["none"]))
    log.away = True
    conversation.do(SkipQuestion("whose_oven"))
    log.away = False
    log.append(conversation.record.session_id, 2, conversation.unsaved)
    conversation.do(SkipQuestion("which_dishes"))
    assert [each.sequence for each in log.read(conversation.record.session_id)] == [1, 2, 3, 4]
    assert conversation.stored


def test_who_wrote_meanwhile_is_not_overwritten(conversation: Conversation, log: _Failing) -> None:
    conversation.do(GiveAnswer("danger_now", ["none"]))
    log.away = True
    conversation.do(SkipQuestion("whose_oven"))
    log.away = False
    session_id = conversation.record.session_id
    log.append(session_id, 2, [event(session_id, 3)])
    with pytest.raises(SessionMovedOn):
        conversation.save()
    assert len(conversation.unsaved) == 1
    conversation.refresh()
    assert (conversation.unsaved, conversation.state.sequence) == ((), 3)


def test_nothing_is_held_unless_it_was_asked_for(script: Script, log: _Failing) -> None:
    careful = Conversation(script, log, record())
    careful.start(Start("householder", "great_britain", "en-GB", "single"))
    log.away = True
    with pytest.raises(StoreUnreadable):
        careful.do(SkipQuestion("whose_oven"))
    assert (careful.unsaved, careful.state.sequence) == ((), 1)
