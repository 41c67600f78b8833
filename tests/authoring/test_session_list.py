import io

import pytest

from assistant.authoring.session_list import erase, list_all, show
from assistant.errors import StoreUnreadable
from assistant.interview.events import InterviewFinished, TextAnswered
from assistant.store.memory import MemoryStore
from tests.authoring.visited import keep_session
from tests.interview.told import told

ID = "a1" * 16


@pytest.fixture
def log():
    log = MemoryStore()
    back = told(result="back_within_30_days", causes_found=(), part_fitted=None, minutes=None, text="")
    keep_session(log, ID, InterviewFinished(), told(minutes=1, text="it hummed\nand whirred"), back)
    return log


@pytest.fixture
def shown(log, sentences):
    def shown():
        out = io.StringIO()
        assert show(log, sentences, "a1", out) == 0
        return out.getvalue().splitlines()

    return shown


def test_every_outcome_is_shown_behind_the_answers(shown):
    assert shown()[2:] == [
        "What came of it, told on 2026-03-31: mended, it works again",
        "    cause found: the heater below has stopped working",
        "    part fitted: heater below",
        "    1 minute at the oven",
        "    note: it hummed",
        "    and whirred",
        "What came of it, told on 2026-03-31: back within 30 days, so what was found before is not to be trusted",
    ]


def test_of_a_note_that_was_erased_it_is_said_that_it_was(shown, log):
    log.erase_text(ID)
    assert shown()[5:7] == ["    1 minute at the oven", "    (erased)"]
    assert not any("hummed" in line for line in shown())


def test_a_cause_and_a_part_that_are_gone_from_the_words_are_told_by_their_ids(sentences):
    log, out = MemoryStore(), io.StringIO()
    keep_session(log, ID, told(causes_found=("gone_since",), part_fitted="gone_too", result="given_up"))
    show(log, sentences, "a1", out)
    assert "given_up\n    cause found: gone_since\n    part fitted: gone_too\n" in out.getvalue()


def test_what_was_told_moves_no_cursor_and_hides_nothing(sentences):
    log, out = MemoryStore(), io.StringIO()
    note = told(text="a \x1b[2J\nb\u2028\u202ec")
    words = TextAnswered(question_id="anything_else", text="one \x1b]0;x\x07\ntwo\x85\u202ethree")
    keep_session(log, ID, words, note, told(causes_found=("gone\x1b[1m",)))
    assert show(log, sentences, "a1", out) == 0
    assert not {"\x1b", "\x07", "\x85", "\u2028", "\u202e"} & set(out.getvalue())
    assert "    one \ufffd]0;x\ufffd\n    two three\n" in out.getvalue()
    assert "    note: a \ufffd[2J\n    b c\n" in out.getvalue()


def test_an_erasure_that_may_have_left_traces_is_not_said_to_have_changed_nothing(log, sentences, monkeypatch):
    out = io.StringIO()

    def left(session_id):
        raise StoreUnreadable("somewhere", "traces_left", "locked")

    monkeypatch.setattr(log, "erase", left)
    assert erase(log, sentences.wording, "a1", out) == 1
    assert out.getvalue().startswith("What was to be erased is gone from the store, but traces of it may be left")
    assert "another program has locked it. They go" in out.getvalue()


def test_a_finished_session_with_an_outcome_is_listed_as_finished(log, sentences):
    out = io.StringIO()
    list_all(log, sentences.wording, out)
    assert out.getvalue() == "a1a1a1a1  begun 2026-03-31 15:00 UTC, 5 entries, finished\n"


def test_erasing_a_session_erases_its_outcomes(log, sentences):
    assert erase(log, sentences.wording, "a1", io.StringIO()) == 0
    assert log.sessions() == []
