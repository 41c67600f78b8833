import sqlite3
import sys
from contextlib import closing
from pathlib import Path

import pytest

from assistant.store.sqlite import SqliteStore
from tests.benchmarks.killed_writers import Acknowledged, Outcome, _look, expected_event, lost_events, run
from tests.store.samples import record

SESSION = "a" * 32


@pytest.mark.skipif(sys.platform == "win32", reason="there is no SIGKILL")
def test_killed_writers_lose_nothing_they_had_acknowledged(tmp_path: Path) -> None:
    outcome = run(tmp_path, kills=12, seed=7)
    assert (outcome.kills, outcome.lost, outcome.unreadable) == (12, 0, 0)
    assert outcome.acknowledged > 12
    assert outcome.before_the_first < 12


def _kept(path: Path, count: int) -> SqliteStore:
    store = SqliteStore(path)
    store.create(record(session_id=SESSION), [expected_event(SESSION, n) for n in range(1, count + 1)])
    return store


def test_the_comparison_sees_a_missing_event(path: Path) -> None:
    with closing(_kept(path, 4)) as store:
        assert lost_events(store, Acknowledged(SESSION, appended=4)) == (0, 0)
        assert lost_events(store, Acknowledged(SESSION, appended=3)) == (0, 1)
        assert lost_events(store, Acknowledged(SESSION, appended=6)) == (2, 0)
        assert lost_events(store, Acknowledged("nobody", appended=1)) == (1, 0)


def test_the_comparison_sees_a_changed_event_and_text_that_came_back(path: Path) -> None:
    with closing(_kept(path, 4)) as store:
        assert lost_events(store, Acknowledged(SESSION, appended=4, erased=3)) == (2, 0)
        with closing(sqlite3.connect(path, isolation_level=None)) as connection:
            connection.execute("UPDATE events SET actor = 'somebody' WHERE sequence = 3")
        assert lost_events(store, Acknowledged(SESSION, appended=4)) == (1, 0)


def test_a_store_that_cannot_be_opened_is_counted(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path.parent.mkdir()
    path.write_text("no database at all")
    outcome = Outcome()
    _look(path, [], outcome)
    assert outcome.unreadable == 1
    assert "not_a_database" in capsys.readouterr().err
