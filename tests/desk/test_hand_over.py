"""A call that was begun at a desk goes on at the customer's own screen."""

import io
import re
import sys
from contextlib import closing
from pathlib import Path

import pytest

from assistant import cli
from assistant.store.sqlite import SqliteStore
from tests.desk.test_desk import WELL


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "sessions.db"


@pytest.fixture
def code(path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> str:
    """Of a call with a note, that was left."""
    monkeypatch.setattr(sys, "stdin", io.StringIO("\n".join([*WELL, ".note calls every week", ".leave"]) + "\n"))
    assert cli.run(["desk", "--plain", "--store", str(path)]) == 0
    (told,) = re.findall(r"([0-9A-Z-]{19})  Ada", capsys.readouterr().out)
    return told


@pytest.mark.parametrize(("role", "acts_as"), [(None, "householder"), ("engineer", "engineer")])
def test_who_goes_on_acts_in_their_own_role_and_sees_nothing_of_the_desks_own(
    path: Path,
    code: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    role: str | None,
    acts_as: str,
) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO("5\nchange\nstop\n"))
    chosen = ["--role", role] if role else []
    assert cli.run(["resume", code, "--plain", "--store", str(path), *chosen]) == 0
    shown = capsys.readouterr().out
    assert "calls every week" not in shown
    assert "call you back" not in shown
    assert "What goes wrong with the oven?" in shown
    with closing(SqliteStore(path)) as store:
        told = store.read(store.find_by_code(code).session_id)
    assert told[-1].role == acts_as
    assert {event.role for event in told} == {"agent", acts_as}


def test_a_shared_store_gives_nobody_the_latest_of_everybody(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, path: Path, code: str
) -> None:
    monkeypatch.setattr("assistant.chat.begin.is_shared", lambda url: True)
    assert cli.run(["resume", "--plain", "--store", str(path)]) == 1
    told = capsys.readouterr()
    assert "type the code" in told.err
    assert "Ada" not in told.out
