"""Whether the next question hangs on which kernel does the arithmetic: two processes, two kernels, the same talks.

    python -m tests.benchmarks.same_picks --talks 200

Each talk is with an oven whose causes are drawn by their prior odds and which is answered for as the rules say;
every question put and every ending is compared. Linux only: the kernel's name is read from the loaded library.
"""

import argparse
import ctypes
import json
import os
import random
import subprocess
import sys
from math import prod
from pathlib import Path

ROOT = Path(__file__).parents[2]
KERNELS = ("Haswell", "Prescott")


def kernel_in_use():
    """The name that the linear algebra behind numpy gives to its kernel, or None where it has none."""
    import numpy  # noqa: F401 - loads the library

    paths = {line.split()[-1] for line in Path("/proc/self/maps").read_text().splitlines() if "openblas" in line}
    for path in paths:
        library = ctypes.CDLL(path)
        for name in ("scipy_openblas_get_corename64_", "openblas_get_corename64_", "openblas_get_corename"):
            if hasattr(library, name):
                getattr(library, name).restype = ctypes.c_char_p
                return getattr(library, name)().decode()
    return None


class Oven:
    """Causes drawn by their prior odds; what is asked is answered as they would have it."""

    def __init__(self, script, chance):
        model = script.evidence_model
        self.model, self.chance, self.questions = model, chance, script.knowledge.questions
        self.column = chance.choices(range(len(model.hypotheses)), list(model.prior_odds))[0]
        self.states = {}

    def answer(self, view):
        from assistant.interview.commands import GiveAnswer, SayNotSure

        if view.about_danger:
            return GiveAnswer(view.id, ["none"]) if view.kind == "choices" else SayNotSure(view.id)
        if view.id in self.model.codes and self.chance.random() < 0.9:
            return GiveAnswer(view.id, self._value(view.id, self._code(view.id)))
        if view.id == "which_appliance":
            return GiveAnswer(view.id, view.choices[0])
        if view.kind == "choice":
            return GiveAnswer(view.id, self.chance.choice(view.choices))
        if view.kind == "choices":
            return GiveAnswer(view.id, [self._complaint(view)])
        return SayNotSure(view.id)

    def _complaint(self, view):
        """One of several answers, the likelier the more often it is said of such an oven."""
        weights = []
        for choice_id in view.choices:
            items = [f"{view.id}__{choice_id}__{n}" for n in self.questions[view.id].choices[choice_id].said_when]
            said = [self.model.report_given[i][0, self._state(self.model.observable_of[i])] for i in items]
            weights.append(prod(said) if said else 0.05)
        return self.chance.choices(view.choices, weights)[0]

    def _state(self, name):
        if name not in self.states:
            weights = self.model.state_given[name][:, self.column]
            self.states[name] = self.chance.choices(range(len(weights)), list(weights))[0]
        return self.states[name]

    def _code(self, report):
        chances = self.model.report_given[report][:, self._state(self.model.observable_of[report])]
        return self.chance.choices(self.model.codes[report], list(chances))[0]

    def _value(self, question_id, code):
        """A number of that band, or the code itself."""
        number = self.questions[question_id].number
        if number is None:
            return code
        below = number.bands[code].below
        return number.most if below is None else max(number.least, below - 0.5)


def talk(script, seed):
    """Every question in its order, and how it ends."""
    from assistant.interview.commands import Start
    from assistant.interview.conversation import Conversation, utc_now
    from assistant.interview.log import SessionRecord
    from assistant.interview.view import QuestionView, look
    from assistant.store.memory import MemoryStore

    chance = random.Random(seed)
    oven = Oven(script, chance)
    record = SessionRecord(session_id="0" * 32, code_hash=str(seed), name=None, created_at=utc_now())
    conversation = Conversation(script, MemoryStore(), record)
    conversation.start(Start("householder", "great_britain", "en-GB", "single"))
    put = []
    while isinstance(view := look(script, conversation.assessment), QuestionView):
        put.append(view.id)
        conversation.do(oven.answer(view))
    return [*put, json.dumps([view.action, sorted(view.details.items())], default=str).replace(" ", "")]


def say_picks(talks):
    from assistant.interview.script import script_of
    from assistant.knowledge.load import load_knowledge

    script = script_of(load_knowledge(ROOT / "rules", None))
    print(kernel_in_use())
    for seed in range(talks):
        print(*talk(script, seed))


def picks_under(kernel, talks):
    """The kernel in use, and the lines of the talks."""
    environment = {**os.environ, "OPENBLAS_CORETYPE": kernel, "OPENBLAS_NUM_THREADS": "1", "PYTHONHASHSEED": "0"}
    command = [sys.executable, "-m", "tests.benchmarks.same_picks", "--say", "--talks", str(talks)]
    done = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True, check=True)
    kernel_used, *lines = done.stdout.splitlines()
    return kernel_used, lines


def main():
    parser = argparse.ArgumentParser(description=str(__doc__).splitlines()[0])
    parser.add_argument("--talks", type=int, default=200)
    parser.add_argument("--say", action="store_true", help="one process's talks, for the other to compare")
    arguments = parser.parse_args()
    if arguments.say:
        say_picks(arguments.talks)
        return
    (first, one), (second, other) = (picks_under(kernel, arguments.talks) for kernel in KERNELS)
    questions = sum(len(line.split()) - 1 for line in one)
    differing = sum(a != b for a, b in zip(one, other, strict=True))
    print(f"kernels {first} and {second}: {len(one)} talks, {questions} questions, {differing} talks differ")


if __name__ == "__main__":
    main()
