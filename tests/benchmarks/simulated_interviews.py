"""Whole interviews about ovens drawn from the program's own tables, now and in an earlier tree.

    python -m tests.benchmarks.simulated_interviews --ovens 200
    python -m tests.benchmarks.simulated_interviews --ovens 1000 --before ../earlier-tree --jobs 2

Simulated: the ovens behave exactly as belief expects. The tables show consistency, what can be told apart, and what
it takes; never how often the program would be right about real ovens. Both trees meet the same ovens and the same
answers, and are judged by this tree's costs.
"""

import argparse
import json
import os
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import asdict, dataclass
from pathlib import Path
from statistics import fmean, median
from typing import Any

from assistant.authoring.simulated_interview import REGION
from assistant.authoring.simulated_ovens import DrawnOven, How, draw_ovens
from assistant.belief.decision import decision_of
from assistant.belief.hypotheses import compile_evidence_model
from assistant.knowledge.load import load_knowledge
from tests.benchmarks.scored_interviews import Judge, Score, score

ROOT = Path(__file__).parents[2]
PLAYER = Path(__file__).with_name("played_interviews.py")

Results = list[dict[str, Any]]


@dataclass(frozen=True)
class Run:
    """One column of the tables: one tree at one rate of mistakes."""

    name: str
    tree: Path
    mistakes: float


def own_judge() -> Judge:
    knowledge = load_knowledge(ROOT / "rules", None)
    return Judge(knowledge, compile_evidence_model(knowledge), decision_of(knowledge, REGION), REGION)


def played(run: Run, ovens: Path, unsure: float, folder: Path) -> Results:
    """Played in a process of its own, which imports that tree's `assistant`."""
    results = folder / f"{run.name.replace(' ', '-')}.json"
    command = [sys.executable, "-P", str(PLAYER), str(run.tree), str(ovens), str(results)]
    options = ["--mistakes", str(run.mistakes), "--unsure", str(unsure)]
    environment = {**os.environ, "PYTHONPATH": str(run.tree), "OPENBLAS_NUM_THREADS": "1"}
    subprocess.run([*command, *options], check=True, env=environment, cwd=run.tree)
    found: Results = json.loads(results.read_text("utf-8"))
    return found


def scored(judge: Judge, ovens: Sequence[DrawnOven], results: Results) -> list[Score]:
    return [score(judge, oven.hypothesis, each) for oven, each in zip(ovens, results, strict=True)]


def share(scores: Sequence[Score], holds: Callable[[Score], bool]) -> str:
    return f"{100 * fmean(holds(each) for each in scores):.1f} %" if scores else "-"


def at(values: Sequence[float], percent: int) -> float:
    ordered = sorted(values)
    return ordered[min(len(ordered) - 1, len(ordered) * percent // 100)]


def spread(values: Sequence[float]) -> str:
    return f"{median(values):.0f} / {at(values, 90):.0f} / {max(values):.0f}"


def rows_of(scores: Sequence[Score]) -> dict[str, str]:
    single = [each for each in scores if len(each.hypothesis) <= 1]
    double = [each for each in scores if len(each.hypothesis) > 1]
    minutes = [each.minutes for each in scores]
    return {
        "interviews": str(len(scores)),
        "one cause or none: named first": share(single, lambda s: s.first_right),
        "one cause or none: among first three": share(single, lambda s: s.any_in_three),
        f"several causes ({len(double)}): one named first": share(double, lambda s: s.first_right),
        "several causes: one among first three": share(double, lambda s: s.any_in_three),
        "several causes: all among first three": share(double, lambda s: s.all_in_three),
        "mean probability of the first name": f"{100 * fmean(s.sure for s in scores):.1f} %",
        "first name right, of all": share(scores, lambda s: s.first_right),
        "ending serves all that is there": share(scores, lambda s: s.served),
        "ending is the cheapest possible": share(scores, lambda s: s.cheapest),
        "visit or stop though no fault": share(scores, lambda s: s.needless_visit),
        "no visit though a fault": share(scores, lambda s: s.missed),
        "stop though nothing dangerous": share(scores, lambda s: s.false_stop),
        "mean cost of the ending": f"{fmean(s.ending_cost for s in scores):.2f}",
        "mean effort of the questions": f"{fmean(s.effort for s in scores):.2f}",
        "mean of both": f"{fmean(s.ending_cost + s.effort for s in scores):.2f}",
        "questions until ripe: median / 90 % / most": spread([s.until_ripe for s in scores]),
        "questions with those for the visit": spread([s.asked for s in scores]),
        "minutes before anything hot: median / 90 %": f"{median(minutes):.1f} / {at(minutes, 90):.1f}",
        "interviews with a hot test": share(scores, lambda s: s.hot),
    }


def print_table(title: str, columns: dict[str, dict[str, str]]) -> None:
    """Rows of the same names side by side."""
    names = list(next(iter(columns.values())))
    first = max(map(len, names))
    widths = {column: max(len(column), *map(len, rows.values())) for column, rows in columns.items()}
    print(f"\n{title}")
    print(" " * first + "".join(f"  {column:>{widths[column]}}" for column in columns))
    for name in names:
        print(f"{name:<{first}}" + "".join(f"  {rows[name]:>{widths[c]}}" for c, rows in columns.items()))


def print_by_cause(title: str, scores: Sequence[Score]) -> None:
    """Each cause where it is alone: how it fares, and what is named first and done instead."""
    print(f"\n{title}")
    print(f"{'cause':<32} {'n':>4} {'first':>6} {'three':>6} {'served':>7} {'asked':>5}  first instead; wrong endings")
    by_cause: dict[str, list[Score]] = {}
    for each in scores:
        if len(each.hypothesis) <= 1:
            by_cause.setdefault("".join(each.hypothesis) or "none", []).append(each)
    for cause, those in sorted(by_cause.items(), key=lambda item: fmean(s.served for s in item[1])):
        others = Counter(s.first for s in those if not s.first_right).most_common(3)
        endings = Counter(" ".join((s.action, s.remedy)).strip() for s in those if not s.served).most_common(2)
        told = ", ".join(f"{name} {number}" for name, number in others)
        ended = ", ".join(f"{name} {number}" for name, number in endings)
        print(
            f"{cause:<32} {len(those):>4} {share(those, lambda s: s.first_right):>6}"
            f" {share(those, lambda s: s.any_in_three):>6} {share(those, lambda s: s.served):>7}"
            f" {median(s.until_ripe for s in those):>5.0f}  {told}; {ended}"
        )


def print_questions(title: str, columns: dict[str, Results]) -> None:
    """How often each question was asked, the most often first."""
    shares = {
        name: Counter(q["id"] for each in results for q in each["asked"] if q["stage"] not in ("look", "visit"))
        for name, results in columns.items()
    }
    total = {name: len(results) for name, results in columns.items()}
    ids = sorted({q for counted in shares.values() for q in counted}, key=lambda q: -max(c[q] for c in shares.values()))
    print_table(title, {n: {q: f"{100 * shares[n][q] / total[n]:.0f} %" for q in ids} for n in columns})


def runs_of(before: Path | None, rates: Sequence[float]) -> list[Run]:
    trees = {"now": ROOT} | ({"before": before.resolve()} if before else {})
    return [Run(f"{name} {rate:g} %", tree, rate) for rate in rates for name, tree in reversed(trees.items())]


def main() -> None:
    chosen = options()
    judge = own_judge()
    how: How = chosen.drawn
    ovens = draw_ovens(judge.knowledge, judge.model, how, chosen.ovens, chosen.seed)
    runs = runs_of(chosen.before, [float(rate) for rate in chosen.mistakes.split(",")])
    with tempfile.TemporaryDirectory() as kept:
        folder = chosen.keep or Path(kept)
        saved = folder / "ovens.json"
        saved.write_text(json.dumps([asdict(oven) for oven in ovens]), "utf-8")
        with ThreadPoolExecutor(chosen.jobs) as pool:
            found = list(pool.map(lambda run: played(run, saved, chosen.unsure, folder), runs))
    results = {run.name: each for run, each in zip(runs, found, strict=True)}
    scores = {name: scored(judge, ovens, each) for name, each in results.items()}
    what = f"simulated, {chosen.ovens} ovens drawn {how}, seed {chosen.seed}, not sure {chosen.unsure:g} %"
    print_table(f"Interviews ({what}); columns: tree and mistakes on top", {n: rows_of(s) for n, s in scores.items()})
    first = [run.name for run in runs if run.mistakes == runs[0].mistakes]
    for name in first:
        print_by_cause(f"By cause, {name} ({what})", scores[name])
    print_questions(f"Interviews in which each question is asked ({what})", {name: results[name] for name in first})


def options() -> argparse.Namespace:
    arguments = argparse.ArgumentParser(description="Play simulated interviews.")
    arguments.add_argument("--ovens", type=int, default=200)
    arguments.add_argument("--seed", type=int, default=1)
    arguments.add_argument("--drawn", choices=("faulty", "asked_about", "each_cause"), default="faulty")
    arguments.add_argument("--mistakes", default="0,5,10", help="percent of wrong answers on top, with commas")
    arguments.add_argument("--unsure", type=float, default=10.0, help="percent of reporting questions")
    arguments.add_argument("--before", type=Path, help="the root of an earlier tree")
    arguments.add_argument("--jobs", type=int, default=1, help="processes at once")
    arguments.add_argument("--keep", type=Path, help="a folder for the ovens and what was played")
    return arguments.parse_args()


if __name__ == "__main__":
    main()
