"""The bar: seen at a terminal, by nobody else."""

import io
import os
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.authoring.progress import progress

ROOT = Path(__file__).parents[2]
WORK = """
from assistant.authoring.progress import progress
with progress("interviews", 3) as done:
    for _ in range(3):
        done()
print("ready")
"""


def test_nothing_is_written_where_nobody_looks(monkeypatch):
    silent = io.StringIO()
    monkeypatch.setattr(sys, "stderr", silent)
    with progress("interviews", 2) as done:
        done()
        done()
    assert silent.getvalue() == ""


@pytest.mark.skipif(os.name != "posix", reason="needs a pseudo terminal")
def test_a_terminal_shows_how_far_it_is():
    import pty

    ours, theirs = pty.openpty()
    process = subprocess.Popen(
        [sys.executable, "-c", WORK],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=theirs,
        cwd=ROOT,
        env={**os.environ, "TERM": "xterm", "PYTHONPATH": str(ROOT)},
    )
    printed, _ = process.communicate(timeout=30)
    os.close(theirs)
    shown = b""
    while chunk := _read(ours):
        shown += chunk
    os.close(ours)
    assert process.returncode == 0
    assert printed == b"ready\n"
    assert b"interviews" in shown
    assert b"100.0%" in shown
    assert b"\x1b[6n" not in shown, "asks the terminal where its cursor is: the reply would be typed to the shell"
    assert b"Traceback" not in shown


def _read(end):
    try:
        return os.read(end, 4096)
    except OSError:
        return b""
