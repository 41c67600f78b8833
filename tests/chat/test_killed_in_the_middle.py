"""A chat in a process of its own that is killed while a small light is watched, and gone on with by its code."""

import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from assistant.authoring.cases import read_case
from assistant.interview.access_code import hash_code
from assistant.interview.commands import GiveAnswer, SayNotSure, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script
from assistant.interview.state import State, fold
from assistant.interview.view import QuestionView
from assistant.store import open_store
from tests.conftest import ROOT
from tests.interview.fit import GATE
from tests.record_readme import CODE

SESSION = "c" * 32


@pytest.fixture
def store(script: Script, tmp_path: Path) -> str:
    """A store with a conversation that waits for the small light to be watched."""
    where = str(tmp_path / "sessions.db")
    case = read_case(ROOT / "tests/cases/everything_pale_over_the_years.yaml")
    answers = {**case["answers"], "hot_gate": GATE}
    record = SessionRecord(session_id=SESSION, code_hash=hash_code(CODE), name=None, created_at=utc_now())
    conversation = Conversation(script, open_store(where), record)
    conversation.start(Start("householder", "great_britain", "en-GB", "single"))
    while isinstance(view := conversation.view(), QuestionView) and view.kind != "lamp_log":
        known = view.id in answers
        conversation.do(GiveAnswer(view.id, answers[view.id]) if known else SayNotSure(view.id))
    assert isinstance(view, QuestionView)
    return where


def _kept(store: str) -> State:
    return fold(open_store(store).read(SESSION))


@contextmanager
def _resumed(store: str, kept: Path) -> Iterator["subprocess.Popen[bytes]"]:
    folders = {"XDG_DATA_HOME": str(Path(store).parent / "data"), "XDG_CACHE_HOME": str(kept)}
    words = ["resume", CODE, "--store", store, "--plain"]
    process = subprocess.Popen(
        [sys.executable, "-m", "assistant", *words],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        cwd=ROOT,
        env={**os.environ, **folders},
    )
    with process:
        try:
            yield process
        finally:
            process.kill()


def _type(process: "subprocess.Popen[bytes]", line: str) -> None:
    assert process.stdin is not None
    process.stdin.write(f"{line}\n".encode())
    process.stdin.flush()


def _read_until(process: "subprocess.Popen[bytes]", awaited: str) -> str:
    """What it wrote up to there, its line breaks as spaces. Fails if it ends before."""
    assert process.stdout is not None
    read = b""
    while awaited not in " ".join(read.decode("utf-8", "replace").split()):
        more = os.read(process.stdout.fileno(), 4096)
        assert more, read.decode("utf-8", "replace")
        read += more
    return " ".join(read.decode("utf-8", "replace").split())


def test_a_killed_lamp_watch_is_gone_on_with_after_asking_whether_it_is_still_on(store: str, kept: Path) -> None:
    with _resumed(store, kept) as killed:
        _read_until(killed, "Type “begin” in the moment")
        _type(killed, "begin")
        _read_until(killed, "The clock runs.")
        _type(killed, "out")
        _read_until(killed, "the light went out")
        killed.send_signal(signal.SIGKILL)
        assert killed.wait() == -signal.SIGKILL
    before = _kept(store).measuring["lamp_watch"]
    assert len(before.lines) == 1
    with _resumed(store, kept) as again:
        asked = _read_until(again, "3 Something is unusual")
        assert "You were in the middle of a test with a hot oven. How is it now?" in asked
        assert "1 It is on, somebody was with it all the time" in asked
        assert "the light went out" not in asked
        _type(again, "1")
        assert before.lines[0].split(" ")[0] in _read_until(again, "the light went out")
        _type(again, "stop")
        assert "please turn it off now" in _read_until(again, "To go on later")
    assert _kept(store).measuring["lamp_watch"] == before


def test_whoever_comes_back_to_an_oven_that_is_off_measures_no_more(store: str, kept: Path) -> None:
    with _resumed(store, kept) as killed:
        _read_until(killed, "Type “begin” in the moment")
        _type(killed, "begin")
        _read_until(killed, "The clock runs.")
        killed.send_signal(signal.SIGKILL)
        killed.wait()
    with _resumed(store, kept) as again:
        _read_until(again, "3 Something is unusual")
        _type(again, "2")
        _read_until(again, "Turn the oven off now")
        _type(again, "stop")
        _read_until(again, "To go on later")
    assert _kept(store).measuring == {}
    assert "lamp_watch" not in _kept(store).answers
