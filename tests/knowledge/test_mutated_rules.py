"""A small run of the damaged-rules benchmark, and proof that it sees what it looks for."""

import sys

import pytest

from tests.benchmarks import mutated_rules
from tests.knowledge.broken import SOUND


def test_damaged_rules_never_crash_hang_or_print_another_form():
    counts = mutated_rules.run(SOUND, files=60, seed=7, command_every=60)
    assert {fault: counts[fault] for fault in mutated_rules.FAULTS} == dict.fromkeys(mutated_rules.FAULTS, 0)
    assert counts["changed"] > 50
    assert counts["refused"] > 40
    assert counts["real commands"] == 1


def test_a_traceback_is_counted(monkeypatch):
    def raising(*_):
        raise KeyError("x")

    monkeypatch.setattr(mutated_rules, "check", raising)
    assert mutated_rules.run(SOUND, files=2, seed=1, command_every=0)["traceback"] == 2


@pytest.mark.skipif(sys.platform == "win32", reason="there are no alarms there")
def test_a_hang_is_counted(monkeypatch):
    def endless(*_):
        while True:
            pass

    monkeypatch.setattr(mutated_rules, "check", endless)
    monkeypatch.setattr(mutated_rules, "MOST_SECONDS", 1)
    assert mutated_rules.run(SOUND, files=1, seed=1, command_every=0)["hang"] == 1


@pytest.mark.parametrize(
    ("output", "status", "kinds"),
    [
        ("f:1:2: note: found x, expected y\n1 mistake.\n", 1, []),
        ("f:1:2: note: found x, expected y\n1 mistake.\n", 0, ["status"]),
        ("26 rule files read, no mistakes.\n", 1, ["status"]),
        ("f:1: note: found x, expected y\n1 mistake.\n", 1, ["form"]),
        ("f:1:2: note: found x, expected y\n", 1, ["form"]),
        ("", 0, ["form", "status"]),
    ],
)
def test_faults_of_form_and_status_are_counted(output, status, kinds):
    assert [fault.split(":")[0] for fault in mutated_rules.faults_of_output(output, status)] == kinds
