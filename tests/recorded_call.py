"""Plays a call at the desk in a real terminal, as the README shows it: the keys, and the screens that came."""

import fcntl
import os
import pty
import re
import select
import struct
import sys
import tempfile
import termios
import time
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import pyte

from assistant.desk.begin import StoredCalls
from assistant.desk.desk import Desk
from assistant.interview.script import Script, script_of
from assistant.knowledge.load import load_knowledge
from assistant.store.memory import MemoryStore
from assistant.wording.languages import Languages
from tests.told_household import TYPED

ROOT = Path(__file__).parent.parent
COLUMNS, ROWS = 80, 24
QUIET_S, SHOWN_QUIET_S = 0.1, 3.0
"""A screen that hasn't changed for so long is whole: one that is shown, with what is thought of meanwhile."""
LONGEST_S = 60.0
ENTER = "\r"
CODE_KEY = "\x1b[19~"
"""F8."""
CODE = "7K3M-QX8D-0ZRT-5WAB"
ID = "7f3a2b1c"


@dataclass(frozen=True)
class Step:
    """Keys, and whether they say what the customer told, whose key strokes don't count."""

    keys: str
    told: bool = True
    shown: bool = False

    @property
    def strokes(self) -> int:
        """As a person presses them; a function key is one."""
        return 1 if self.keys.startswith("\x1b") else len(self.keys)


def own(keys: str, *, shown: bool = False) -> Step:
    return Step(keys, told=False, shown=shown)


# The invented household: sponges raw underneath since the weekend, scones with the fan are fine.
TOLD: Mapping[str, str] = {
    "anyone_hurt": "1",
    "danger_now": "16",
    "who_is_speaking": "Ada",
    "call_back_number": "0700 900 100",
    "pressing_need": "4",
    **{question_id: lines[-1] for question_id, lines in TYPED.items() if question_id != "danger_now"},
    "underside_pale": "white, soft or raw",
    "off_at_the_end": "1",
}
OWN_ANSWERS: Mapping[str, str] = {"fee_told": "1", "read_back": "1", "call_ended": "2"}
"""What the agent answers for themself at the end."""
SHOWN = ("what_goes_wrong", "bottom_heat_alone", "fee_told")
"""The screens on which these are asked stand in the README, and the last one."""
MOST_STEPS = 80


@cache
def project() -> tuple[Script, Languages]:
    """The project's rules and words."""
    knowledge = load_knowledge(ROOT / "rules", None)
    return script_of(knowledge), Languages(ROOT / "locales", knowledge)


@cache
def call() -> tuple[Step, ...]:
    """The keys of the whole call, from picking up to handing over."""
    script, languages = project()
    source = StoredCalls(script, MemoryStore(), languages, "en-GB", "en-GB", "great_britain")
    desk = Desk(source, languages.sentences("en-GB", "great_britain"))
    steps = [own(".new" + ENTER)]
    desk.take(".new")
    while desk.call is not None and (question := desk.call.question) is not None:
        if len(steps) > MOST_STEPS:
            raise RuntimeError(f"the call doesn't end: {question.id} after {steps[-1].keys!r}")
        line = OWN_ANSWERS.get(question.id) or TOLD.get(question.id, "not sure")
        if question.id in SHOWN:
            steps[-1] = replace(steps[-1], shown=True)
        steps.append(Step(line + ENTER, told=question.id not in OWN_ANSWERS))
        desk.take(line)
    return (*steps, own(CODE_KEY, shown=True))


class Played:
    """The desk in a terminal of its own."""

    def __init__(self, store: Path) -> None:
        self._screen = pyte.Screen(COLUMNS, ROWS)
        self._stream = pyte.ByteStream(self._screen)
        command = [sys.executable, "-m", "assistant", "desk", "--store", str(store)]
        environment = {**os.environ, "TERM": "xterm-256color", "PYTHONPATH": str(ROOT), "NO_COLOR": "1"}
        self._process, self._terminal = pty.fork()
        if self._process == 0:
            os.execve(sys.executable, command, environment)  # noqa: S606 - the program itself
        fcntl.ioctl(self._terminal, termios.TIOCSWINSZ, struct.pack("HHHH", ROWS, COLUMNS, 0, 0))

    def press(self, keys: str, quiet_s: float) -> list[str]:
        """The screen that follows, once it is quiet."""
        before = list(self._screen.display)
        os.write(self._terminal, keys.encode())
        return self.settled(before, quiet_s)

    def settled(self, before: Sequence[str] = (), quiet_s: float = SHOWN_QUIET_S) -> list[str]:
        """Raises TimeoutError for a screen that is never quiet, stays empty, or stays as it was `before`."""
        gives_up_at, changed_at = time.monotonic() + LONGEST_S, time.monotonic()
        while time.monotonic() < gives_up_at:
            ready, _, _ = select.select([self._terminal], [], [], 0.05)
            if ready:
                self._stream.feed(os.read(self._terminal, 65536))
                changed_at = time.monotonic()
            elif time.monotonic() - changed_at > quiet_s and self._is_new(before):
                return [line.rstrip() for line in self._screen.display]
        raise TimeoutError("the screen doesn't settle")

    def _is_new(self, before: Sequence[str]) -> bool:
        now = self._screen.display
        return any(line.strip() for line in now) and list(now) != list(before)

    def leave(self) -> int:
        """The exit status."""
        os.write(self._terminal, b"\x03")
        try:
            while os.read(self._terminal, 65536):
                pass
        except OSError:  # the other end is closed
            pass
        os.close(self._terminal)
        return os.waitstatus_to_exitcode(os.waitpid(self._process, 0)[1])


def without_chance(lines: list[str]) -> list[str]:
    """Ids and codes that are drawn anew in each call are shown as one of them."""
    text = "\n".join(lines)
    text = re.sub(r"\b(?:[0-9A-Z]{4}-){3}[0-9A-Z]{4}\b", CODE, text)
    return re.sub(r"(?<=· )[0-9a-f]{8}(?= ·)", ID, text).split("\n")


def played(steps: Sequence[Step]) -> Iterator[tuple[Step, list[str]]]:
    with tempfile.TemporaryDirectory() as folder:
        desk = Played(Path(folder) / "sessions.db")
        desk.settled()
        for step in steps:
            yield step, without_chance(desk.press(step.keys, SHOWN_QUIET_S if step.shown else QUIET_S))
        if desk.leave() != 0:
            raise RuntimeError("the desk didn't end well")


def strokes_of_ones_own(steps: Sequence[Step]) -> int:
    return sum(step.strokes for step in steps if not step.told)


def recorded_call() -> str:
    """The screens that are shown, and how many keys the agent pressed beyond what the customer told."""
    steps = call()
    screens = ["\n".join(screen).rstrip() for step, screen in played(steps) if step.shown]
    rule = "\n" + "─" * COLUMNS + "\n"
    told = sum(step.told for step in steps)
    count = f"{told} answers of the customer; {strokes_of_ones_own(steps)} key strokes of the agent beyond them"
    return f"{rule.join(screens)}{rule}{count}"


if __name__ == "__main__":
    print(recorded_call())
