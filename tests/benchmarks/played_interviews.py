"""Plays drawn ovens through whole conversations of whichever tree `assistant` is imported from.

    python -P tests/benchmarks/played_interviews.py TREE OVENS.json RESULTS.json --mistakes 5 --unsure 10

The lines that play are always this tree's, read by their path, so that an earlier tree is played by the same ones:
run it with PYTHONPATH=TREE.
"""

import argparse
import importlib.util
import json
from pathlib import Path
from types import ModuleType

from assistant.interview.script import script_of
from assistant.knowledge.load import load_knowledge

PLAYER = Path(__file__).parents[2] / "assistant" / "authoring" / "simulated_interview.py"


def player() -> ModuleType:
    spec = importlib.util.spec_from_file_location("simulated_interview", PLAYER)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def main() -> None:
    arguments = argparse.ArgumentParser(description="Play drawn ovens through one tree.")
    arguments.add_argument("tree", type=Path)
    arguments.add_argument("ovens", type=Path)
    arguments.add_argument("results", type=Path)
    arguments.add_argument("--mistakes", type=float, default=0.0, help="percent")
    arguments.add_argument("--unsure", type=float, default=10.0, help="percent")
    chosen = arguments.parse_args()
    script = script_of(load_knowledge(chosen.tree.resolve() / "rules", None))
    ovens = json.loads(chosen.ovens.read_text("utf-8"))
    play = player().play
    results = [play(script, oven, chosen.mistakes / 100, chosen.unsure / 100) for oven in ovens]
    chosen.results.write_text(json.dumps(results), "utf-8")


if __name__ == "__main__":
    main()
