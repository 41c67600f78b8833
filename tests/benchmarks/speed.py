"""Start, turn and memory of the chat, as ratios or medians of one run.

    python -m tests.benchmarks.speed

The first question is timed in a real pseudo-terminal: from starting the command until its text is on the screen.
"""

import os
import pty
import random
import select
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # as the program itself does, before numpy is loaded

from assistant.chat.pages import Pages
from assistant.interview.assess import assess
from assistant.interview.commands import Command, GiveAnswer, SayNotSure, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script, script_of
from assistant.interview.state import State
from assistant.interview.view import QuestionView, look
from assistant.knowledge.load import load_knowledge
from assistant.store.memory import MemoryStore
from assistant.wording.languages import Languages

ROOT = Path(__file__).parents[2]
STARTS = 25
TALKS = 30


def seconds_of_bare_python() -> float:
    began = time.perf_counter()
    subprocess.run([sys.executable, "-c", "pass"], check=True)
    return time.perf_counter() - began


class ChatInTerminal:
    """`ovenside` in a pseudo-terminal, with its own data and cache folders."""

    def __init__(self, home: Path) -> None:
        environment = {**os.environ, "XDG_CACHE_HOME": str(home), "XDG_DATA_HOME": str(home), "TERM": "xterm"}
        self.began = time.perf_counter()
        self.pid, self.terminal = pty.fork()
        if self.pid == 0:
            os.execve(sys.executable, [sys.executable, "-m", "assistant"], environment)  # noqa: S606

    def read_until(self, text: str) -> float:
        """Seconds since the start until the text was on the screen."""
        screen = b""
        while text.encode() not in screen:
            screen += os.read(self.terminal, 65_536)
        return time.perf_counter() - self.began

    def type(self, line: str) -> None:
        os.write(self.terminal, line.encode() + b"\r")

    def peak_memory_mb(self) -> float:
        status = Path(f"/proc/{self.pid}/status").read_text()
        kib = next(line.split()[1] for line in status.splitlines() if line.startswith("VmHWM"))
        return int(kib) / 1024

    def end(self) -> None:
        """Press Ctrl-C until it is gone: a key pressed while the terminal is being set up may be dropped."""
        try:
            while True:
                if not select.select([self.terminal], [], [], 0.5)[0]:
                    os.write(self.terminal, b"\x03")
                elif not os.read(self.terminal, 65_536):
                    break
        except OSError:
            pass
        os.close(self.terminal)
        os.waitpid(self.pid, 0)


def start_ratio(home: Path, question: str) -> None:
    bare, first = [], []
    for _ in range(STARTS):
        bare.append(seconds_of_bare_python())
        chat = ChatInTerminal(home)
        first.append(chat.read_until(question))
        chat.end()
    ratio = statistics.median(first) / statistics.median(bare)
    print(f"bare python: median {1000 * statistics.median(bare):.1f} ms")
    print(f"first question on the terminal: median {1000 * statistics.median(first):.1f} ms, {ratio:.1f}x bare python")


def first_start(question: str) -> None:
    with tempfile.TemporaryDirectory() as home:
        chat = ChatInTerminal(Path(home))
        print(f"first start after a change of the rules: {1000 * chat.read_until(question):.0f} ms")
        chat.end()


def memory(home: Path, question: str) -> None:
    """Peak memory of a chat that takes a few answers."""
    chat = ChatInTerminal(home)
    chat.read_until(question)
    for number in range(6):
        time.sleep(1.5 if number == 0 else 0.3)
        chat.type("none of these" if number == 0 else "not sure")
    time.sleep(1)
    print(f"peak memory of one chat: {chat.peak_memory_mb():.0f} MB")
    chat.end()


def turn(script: Script) -> None:
    """Findings, belief and the next view from scratch, over random talks."""
    chance = random.Random(1)
    milliseconds: list[float] = []
    for _ in range(TALKS):
        record = SessionRecord(session_id="0" * 32, code_hash=str(chance.random()), name=None, created_at=utc_now())
        conversation = Conversation(script, MemoryStore(), record)
        conversation.start(Start("householder", "great_britain", "en-GB", "single"))
        while isinstance(view := timed_look(script, conversation.state, milliseconds), QuestionView):
            conversation.do(_random_answer(view, chance))
    milliseconds.sort()
    print(
        f"compute per turn ({script.evaluator.name}): median {statistics.median(milliseconds):.2f} ms, "
        f"99th percentile {milliseconds[int(len(milliseconds) * 0.99)]:.2f} ms, {len(milliseconds)} turns"
    )


def timed_look(script: Script, state: State, milliseconds: list[float]) -> object:
    began = time.perf_counter()
    view = look(script, assess(script, state))
    milliseconds.append(1000 * (time.perf_counter() - began))
    return view


def _random_answer(view: QuestionView, chance: random.Random) -> Command:
    if view.about_danger and view.kind == "choices":
        return GiveAnswer(view.id, ["none"])
    if view.kind == "choice":
        return GiveAnswer(view.id, chance.choice(view.choices))
    if view.kind == "choices":
        return GiveAnswer(view.id, [chance.choice(view.choices)])
    return SayNotSure(view.id)


def main() -> None:
    knowledge = load_knowledge(ROOT / "rules", None)
    sentences = Languages(ROOT / "locales", knowledge).sentences("en-GB", "great_britain")
    question = Pages(sentences).opening().question[:20]
    first_start(question)
    with tempfile.TemporaryDirectory() as home:
        warm = ChatInTerminal(Path(home))
        warm.read_until(question)
        warm.end()
        start_ratio(Path(home), question)
        memory(Path(home), question)
    turn(script_of(knowledge))


if __name__ == "__main__":
    main()
