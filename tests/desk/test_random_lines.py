"""Lines in any order, on the desk as it is and on desks with a defect put in."""

import random
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from assistant.desk import panels
from assistant.desk.begin import StoredCalls
from assistant.desk.call import Call
from assistant.desk.desk import Desk
from assistant.store.memory import MemoryStore
from assistant.wording.languages import Languages
from tests.desk.random_lines import CHECKS, breaches

LINES = 40


def _desk(calls: StoredCalls, languages: Languages) -> tuple[Desk, MemoryStore]:
    log = MemoryStore()
    return Desk(replace(calls, log=log), languages.sentences("en-GB", "great_britain")), log


@pytest.mark.parametrize("seed", range(20))
def test_whatever_is_typed_in_whatever_order_nothing_is_breached(
    calls: StoredCalls, languages: Languages, seed: int
) -> None:
    desk, log = _desk(calls, languages)
    assert list(breaches(desk, log, random.Random(seed), LINES)) == []


def _anything_may_be_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Call, "may_reopen", lambda self, question_id: True)


def _the_call_goes_on_in_danger(monkeypatch: pytest.MonkeyPatch) -> None:
    """As if whatever stands had been isolated."""
    monkeypatch.setattr(Call, "question", property(lambda self: self._view_of(self.reopened or "what_goes_wrong")))


def _likelihoods_among_what_is_read_out(monkeypatch: pytest.MonkeyPatch) -> None:
    real = panels.asked
    monkeypatch.setattr(panels, "asked", lambda call: [*real(call), *panels.causes(call)])


def _one_event_is_left_out(monkeypatch: pytest.MonkeyPatch) -> None:
    real = MemoryStore.append

    def append(self: MemoryStore, session_id: str, expected: int, events: Any) -> None:
        real(self, session_id, expected, events[:-1] if len(events) > 1 else events)

    monkeypatch.setattr(MemoryStore, "append", append)


def _deaf(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Call, "hear", lambda self, line: [])


@pytest.mark.parametrize(
    ("defect", "check"),
    [
        (_anything_may_be_asked, "nothing_beyond_care"),
        (_the_call_goes_on_in_danger, "danger_comes_first"),
        (_likelihoods_among_what_is_read_out, "no_figures_are_read_out"),
        (_one_event_is_left_out, "the_log_is_what_is_shown"),
        (_deaf, "danger_is_never_missed"),
    ],
)
def test_a_seeded_defect_is_caught_by_the_check_that_is_there_for_it(
    calls: StoredCalls,
    languages: Languages,
    monkeypatch: pytest.MonkeyPatch,
    defect: Callable[[pytest.MonkeyPatch], None],
    check: str,
) -> None:
    assert check in CHECKS
    defect(monkeypatch)
    found = (name for seed in range(40) for name, _ in breaches(*_desk(calls, languages), random.Random(seed), LINES))
    assert check in found
