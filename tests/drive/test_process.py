"""`ovenside drive` as a program of its own: streams, kills, broken lines."""

import random
import subprocess
from collections import Counter
from pathlib import Path

from tests.benchmarks.driven_kills import Outcome, kill_once
from tests.benchmarks.fuzzed_lines import FAILURES, fuzz
from tests.drive.driven import COMMAND, Driven, catalogue

FUZZED_LINES = 600
KILLS = 5


def test_a_conversation_goes_on_in_another_process(tmp_path: Path) -> None:
    first = Driven(tmp_path / "s.db")
    first.ask({"session": "k", "type": "start"})
    before = first.ask({"session": "k", "type": "answer", "id": "danger_now", "value": ["none"]})
    assert first.end() == ""
    second = Driven(tmp_path / "s.db")
    assert second.ask({"session": "k", "type": "start"}) == before
    assert second.end() == ""


def test_a_last_line_without_a_break_is_answered(tmp_path: Path) -> None:
    done = subprocess.run(
        [*COMMAND, "--store", str(tmp_path / "s.db")], input=b'{"session":"k","type":"start"}', capture_output=True
    )
    assert done.stdout.count(b"\n") == 1
    assert b'"danger_now"' in done.stdout


def test_a_store_that_cannot_be_used_is_said_plainly(tmp_path: Path) -> None:
    broken = tmp_path / "s.db"
    broken.write_bytes(b"this is no database, whatever its name says" * 40)
    done = subprocess.run([*COMMAND, "--store", str(broken)], input=b"", capture_output=True)
    assert done.returncode == 1
    assert b"Traceback" not in done.stderr
    assert done.stderr.count(b"\n") == 1


def test_a_reader_that_goes_away_is_no_traceback(tmp_path: Path) -> None:
    driven = Driven(tmp_path / "s.db")
    driven.ask({"session": "k", "type": "start"})
    assert driven.process.stdout is not None
    driven.process.stdout.close()
    driven.send({"session": "k", "type": "start"})
    assert driven.process.stdin is not None
    driven.process.stdin.close()
    assert driven.process.stderr is not None
    said = driven.process.stderr.read()
    driven.process.wait(30)
    driven.process.stderr.close()
    assert said == b""


def test_fuzzed_lines_are_each_answered_by_one_sound_line(tmp_path: Path) -> None:
    counts: Counter[str] = fuzz(FUZZED_LINES, seed=3, store=tmp_path / "s.db")
    assert counts["answered"] == FUZZED_LINES
    assert {name: counts[name] for name in FAILURES} == dict.fromkeys(FAILURES, 0)
    assert counts["type question"] > 20
    assert counts["type problem"] > 20


def test_killed_drivers_lose_nothing_they_acknowledged(tmp_path: Path) -> None:
    outcome = Outcome()
    chance = random.Random(5)
    questions = catalogue()
    for _ in range(KILLS):
        kill_once(tmp_path / "s.db", questions, chance, outcome)
    assert (outcome.kills, outcome.lost, outcome.unreadable) == (KILLS, 0, 0)
    assert outcome.acknowledged > 50
