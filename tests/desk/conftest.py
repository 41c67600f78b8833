"""A desk on a store in memory, with invented customers."""

from pathlib import Path

import pytest

from assistant.desk.begin import StoredCalls
from assistant.desk.call import Call
from assistant.desk.desk import Desk
from assistant.interview.script import Script
from assistant.store.memory import MemoryStore
from assistant.wording.languages import Languages

LOCALES = Path(__file__).parents[2] / "locales"


@pytest.fixture
def log() -> MemoryStore:
    return MemoryStore()


@pytest.fixture(scope="session")
def languages(script: Script) -> Languages:
    return Languages(LOCALES, script.knowledge)


@pytest.fixture
def calls(script: Script, log: MemoryStore, languages: Languages) -> StoredCalls:
    return StoredCalls(script, log, languages, "en-GB", "en-GB", "great_britain")


@pytest.fixture
def desk(calls: StoredCalls, languages: Languages) -> Desk:
    return Desk(calls, languages.sentences("en-GB", "great_britain"))


def typed(desk: Desk, *lines: str) -> Call:
    """The lines, one by one; and the call that is on the line then."""
    for line in lines:
        desk.take(line)
    assert desk.call is not None
    return desk.call


def asked(desk: Desk) -> str:
    """The id of the question that is open."""
    assert desk.call is not None
    assert desk.call.question is not None
    return desk.call.question.id
