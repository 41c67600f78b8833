"""Does what a householder measures bring belief nearer to what is wrong?

    python -m tests.benchmarks.measured_accuracy --ovens 2000 --seed 1 --model second --processes 2

Simulated. Ovens with one cause, or none, are drawn by the rules' base rates among the causes that the second oven
model knows. Their householders answer the program's own questions from the rules' tables, and then measure. Ovens of
the second model, which is built otherwise than the one belief is computed by, show how that belief stands a wrong
structure; `--model first` draws from belief's own model with other seeds and shows only how it stands other
parameters and careless writing. Neither says how often the program is right at real ovens. What is answered and what
is measured are drawn apart, given the cause: where a mild fault both shows mildly and measures mildly, real ovens
tell less than these.
"""

import argparse
import tempfile
from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from functools import partial
from pathlib import Path
from statistics import fmean

import numpy as np

from assistant.authoring.processes import spread
from assistant.authoring.simulated_endings import is_served
from assistant.authoring.simulated_interview import LANG, ROLE, answer_to
from assistant.authoring.simulated_ovens import DrawnOven, draw_oven, oven_with_cause
from assistant.belief.hypotheses import EvidenceModel, compile_evidence_model
from assistant.interview.assess import Assessment, assess
from assistant.interview.choice import choose
from assistant.interview.commands import Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script, script_of
from assistant.interview.state import Answer, State
from assistant.interview.verdict import Verdict, named_causes
from assistant.knowledge.load import load_knowledge
from assistant.store.memory import MemoryStore
from tests.benchmarks.measured_ovens import KNOWN_CAUSES, MEASURES, NONE, Model, Written, written_at

ROOT = Path(__file__).parents[2]
UNSURE = 0.1
AT_ONCE = 50
"""Ovens that are simulated together."""

ARMS: Mapping[str, tuple[str, ...]] = {
    "symptoms": (),
    "+ lamp": ("lamp_watch",),
    "+ lamp, low": ("lamp_watch_low",),
    "+ lamp, fan": ("lamp_watch_fan",),
    "+ all lamps": ("lamp_watch", "lamp_watch_low", "lamp_watch_fan"),
    "+ thermometer": ("thermometer_log",),
    "+ bread": ("bread_tray",),
    "+ all": MEASURES,
}


@dataclass(frozen=True)
class Score:
    """One oven with some measurements. `place`: of the true cause among the named ones, from 0.

    `alike`: a cause that heats in the same way, or the true one, is named first. `sure`: the first name's
    probability; `true`: the true cause's.
    """

    place: int
    alike: bool
    served: bool
    sure: float
    true: float
    first: str


Result = tuple[str, dict[str, Score]]
"""The true cause, and its score with each set of measurements."""


@dataclass(frozen=True)
class Bench:
    """`tables` draws householders' answers; it is belief without measurements."""

    script: Script
    tables: EvidenceModel
    model: Model
    seed: int


def bench(model: Model, seed: int, cache: Path | None) -> Bench:
    knowledge = load_knowledge(ROOT / "rules", None)
    return Bench(script_of(knowledge, cache), compile_evidence_model(knowledge), model, seed)


def drawn_causes(tables: EvidenceModel, number: int, seed: int) -> list[str]:
    """By prior odds, each alone or none."""
    names = [NONE, *KNOWN_CAUSES]
    odds = np.array([tables.prior_odds[tables.place_of[() if name == NONE else (name,)]] for name in names])
    chosen = np.random.default_rng([seed, 3]).choice(len(names), size=number, p=odds / odds.sum())
    return [names[each] for each in chosen]


def begin(model: Model, seed: int, cache: Path | None) -> Callable[[tuple[int, tuple[str, ...]]], list[Result]]:
    """Of (the first oven's number, their causes) -> how belief fares."""
    return partial(scored, bench(model, seed, cache))


def scored(at: Bench, task: tuple[int, tuple[str, ...]]) -> list[Result]:
    first, causes = task
    written = written_at(at.model, at.script.knowledge, causes, at.seed, first)
    return [
        (cause, _scores(at, cause, first + n, lines))
        for n, (cause, lines) in enumerate(zip(causes, written, strict=True))
    ]


def _scores(at: Bench, cause: str, number: int, written: Written) -> dict[str, Score]:
    state = interviewed(at, _householder(at, cause, number))
    return {
        arm: _score(at.script, cause, assess(at.script, measured_too(state, {q: written[q] for q in measures})))
        for arm, measures in ARMS.items()
    }


def _householder(at: Bench, cause: str, number: int) -> DrawnOven:
    knowledge = at.script.knowledge
    if cause == NONE:  # where each cause comes in turn, the first of every round is sound
        return draw_oven(knowledge, at.tables, "each_cause", number * (len(at.tables.causes) + 1), at.seed)
    return oven_with_cause(knowledge, at.tables, cause, number, at.seed)


def interviewed(at: Bench, oven: DrawnOven) -> State:
    """The interview by the program's own choice of questions, up to its verdict; nothing is measured in it."""
    record = SessionRecord(session_id="0" * 32, code_hash="0", name=None, created_at=utc_now())
    conversation = Conversation(at.script, MemoryStore(), record)
    conversation.start(Start(ROLE, oven.region, LANG, "single"))
    plain = asdict(oven)
    while (question_id := _asked_for(conversation)) is not None:
        conversation.do(answer_to(at.script, question_id, plain, mistakes=0.0, unsure=UNSURE))
    return conversation.state


def _asked_for(conversation: Conversation) -> str | None:
    view = conversation.view()
    if isinstance(view, Verdict):
        then = view.details.get("then")
        return str(then) if then else None
    return view.id


def measured_too(state: State, written: Written) -> State:
    """The state with these measurements among the answers, whatever care was allowed."""
    told = {
        question_id: Answer(question_id, "answered", lines, state.sequence + 1 + n, utc_now())
        for n, (question_id, lines) in enumerate(written.items())
    }
    return replace(state, answers={**state.answers, **told}, sequence=state.sequence + len(told))


def _score(script: Script, cause: str, assessment: Assessment) -> Score:
    named = named_causes(assessment.posterior)
    names = [name for name, _ in named]
    choice = choose(script, assessment)
    decision = script.decision(assessment.state.region)
    ending = {"action": choice.action, "details": {"who": "", **choice.details}}
    return Score(
        place=names.index(cause),
        alike=_heats_alike(script, cause, names[0]),
        served=is_served(script.knowledge, decision, () if cause == NONE else (cause,), ending),
        sure=named[0][1],
        true=dict(named)[cause],
        first=names[0],
    )


def _heats_alike(script: Script, cause: str, other: str) -> bool:
    causes = script.knowledge.causes
    if cause == other or cause not in causes or other not in causes:
        return cause == other
    return causes[cause].physical is not None and causes[cause].physical == causes[other].physical


def rows_of(results: Sequence[Result], arm: str) -> dict[str, str]:
    scores = [found[arm] for _, found in results]
    before = [found["symptoms"] for _, found in results]
    gained = [float(now.place == 0) - float(then.place == 0) for now, then in zip(scores, before, strict=True)]
    error = float(np.std(gained, ddof=1)) / len(gained) ** 0.5 if len(gained) > 1 else 0.0
    return {
        "true cause first": _share(score.place == 0 for score in scores),
        "  gained on symptoms, points": f"{100 * fmean(gained):+.1f} ± {100 * error:.1f}",
        "true one or one that heats alike first": _share(score.alike for score in scores),
        "true cause among first three": _share(score.place < 3 for score in scores),
        "mean probability of the first name": f"{100 * fmean(score.sure for score in scores):.1f} %",
        "mean bits that the true cause lacks": f"{fmean(-np.log2(max(score.true, 1e-12)) for score in scores):.2f}",
        "true cause below 1 %": _share(score.true < 0.01 for score in scores),
        "verdict serves what is there": _share(score.served for score in scores),
    }


def _share(truths: Iterable[bool]) -> str:
    return f"{100 * fmean(map(float, truths)):.1f} %"


def print_columns(title: str, columns: Mapping[str, Mapping[str, str]]) -> None:
    rows = list(next(iter(columns.values())))
    first = max(map(len, rows))
    print(f"\n{title}\n" + " " * first + "".join(f"  {name:>13}" for name in columns))
    for row in rows:
        print(f"{row:<{first}}" + "".join(f"  {column[row]:>13}" for column in columns.values()))


def print_by_cause(results: Sequence[Result]) -> None:
    print("\nTrue cause first, by cause; and what was first instead with all measurements")
    print(" " * 32 + "  ovens" + "".join(f"  {arm:>13}" for arm in ARMS))
    for cause, number in Counter(cause for cause, _ in results).most_common():
        those = [found for each, found in results if each == cause]
        shares = "".join(f"  {_share(found[arm].place == 0 for found in those):>13}" for arm in ARMS)
        instead = Counter(found["+ all"].first for found in those if found["+ all"].place > 0).most_common(3)
        print(f"{cause:<32}  {number:>5}{shares}  {', '.join(f'{name} {n}' for name, n in instead)}")


def main() -> None:
    chosen = options()
    with tempfile.TemporaryDirectory() as kept:
        cache = chosen.cache or Path(kept)
        at = bench(chosen.model, chosen.seed, cache)
        for instrument in at.script.evidence_model.instruments.values():
            instrument.prepare()
        causes = drawn_causes(at.tables, chosen.ovens, chosen.seed)
        tasks = [(n, tuple(causes[n : n + AT_ONCE])) for n in range(0, len(causes), AT_ONCE)]
        results = [
            each
            for part in spread(begin, (chosen.model, chosen.seed, cache), tasks, chosen.processes, 1)
            for each in part
        ]
    what = {
        "second": "of another structure than belief's own model: robust against a wrong model?",
        "first": "of belief's own model, other draws: robust against other parameters only",
    }[chosen.model]
    title = f"Simulated, {len(results)} ovens {what} Seed {chosen.seed}. None of them is a real oven."
    print_columns(title, {arm: rows_of(results, arm) for arm in ARMS})
    print_by_cause(results)


def options() -> argparse.Namespace:
    arguments = argparse.ArgumentParser(description="Weigh simulated measurements at simulated ovens.")
    arguments.add_argument("--ovens", type=int, default=200)
    arguments.add_argument("--seed", type=int, default=1)
    arguments.add_argument("--model", choices=("second", "first"), default="second")
    arguments.add_argument("--processes", type=int, default=1)
    arguments.add_argument("--cache", type=Path, help="a folder where simulated ovens are kept between runs")
    return arguments.parse_args()


if __name__ == "__main__":
    main()
