"""Work spread over processes."""

import os
import signal
import subprocess
import sys
import time
from contextlib import contextmanager, suppress
from pathlib import Path

import pytest

from assistant.authoring.processes import processors, spread
from tests.conftest import ROOT


class Multiplier:
    def __init__(self, factor):
        self.factor = factor

    def __call__(self, number):
        if number < 0:
            raise ValueError(number)
        return self.factor * number


@pytest.mark.parametrize("jobs", [1, 2])
def test_results_come_in_the_order_of_the_tasks(jobs):
    assert list(spread(Multiplier, (3,), range(20), jobs, 4)) == [3 * number for number in range(20)]


@pytest.mark.parametrize("jobs", [1, 2])
def test_what_goes_wrong_in_a_process_goes_wrong_here(jobs):
    with pytest.raises(ValueError, match="-1"):
        list(spread(Multiplier, (3,), [1, -1, 2], jobs, 1))


def test_there_is_at_least_one_processor():
    assert processors() >= 1


def heed_ctrl_c():
    """As in a terminal, also where these tests run in the background of a shell, which ignores it."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


@contextmanager
def killed_at_the_end(process):
    """With its children, if it is still there."""
    try:
        yield
    finally:
        with suppress(ProcessLookupError):
            os.killpg(process.pid, signal.SIGKILL)


@pytest.mark.skipif(not Path("/proc/self/task").exists(), reason="the system doesn't list children")
def test_ctrl_c_ends_all_processes_without_a_word():
    """The signal goes to the whole group, as from a terminal, while the processes are being started."""
    with (
        subprocess.Popen(
            [sys.executable, "-m", "assistant", "rules", "coverage", "--ovens", "400"],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            cwd=ROOT,
            start_new_session=True,
            preexec_fn=heed_ctrl_c,
        ) as process,
        killed_at_the_end(process),
    ):
        children = Path(f"/proc/{process.pid}/task/{process.pid}/children")
        while process.poll() is None and len(children.read_text().split()) < len(("tracker", "one")):
            time.sleep(0.01)
        os.killpg(process.pid, signal.SIGINT)
        said, complained = process.communicate(timeout=60)
    assert (process.returncode, said, complained) == (130, "", "")
