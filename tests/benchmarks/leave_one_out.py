"""Does 'something else' rise when the cause that is there was never written down?

    python -m tests.benchmarks.leave_one_out --ovens 100 --answers 12 --seed 1

Simulated: for each cause, ovens that have it are drawn from the whole model, the complaint and some answers told, and
weighed by a model that lacks it. The questions are those that the lacking model finds worth most, one step ahead and
whatever their effort; with `--at-random` any. `--causes` leaves out so many of them, evenly spread. `--breadth` and
`--rate` try other values of something else's breadth and base rate.
"""

import argparse
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import fmean

import numpy as np

from assistant.authoring.simulated_answers import draw_complaint
from assistant.authoring.simulated_ovens import draw_reply, draw_states
from assistant.belief.decision import Decision, decision_of
from assistant.belief.hypotheses import (
    CHOSEN,
    NOTHING_WRONG,
    SOMETHING_ELSE,
    EvidenceModel,
    compile_evidence_model,
)
from assistant.belief.posterior import Posterior, posterior
from assistant.belief.value import MASS_DROPPED, Candidate, look_ahead, one_step
from assistant.interview.verdict import NONE
from assistant.knowledge.load import load_knowledge
from assistant.knowledge.model import Knowledge
from tests.benchmarks.small_networks import COMPLAINT, without_causes

ROOT = Path(__file__).parents[2]


@dataclass(frozen=True)
class Lacking:
    """What is left when a cause was never written down."""

    model: EvidenceModel
    decision: Decision


@dataclass(frozen=True)
class Seen:
    """One oven: something else's probability, what is named first, and whether it is among the first three."""

    probability: float
    first: str
    in_three: bool


@dataclass(frozen=True)
class LeftOut:
    """One cause: its ovens as the model without it sees them, and as the whole one does."""

    cause: str
    without: Sequence[Seen]
    whole: Sequence[Seen]
    found_by_whole: float


def with_something_else(knowledge: Knowledge, breadth: float | None, rate: float | None) -> Knowledge:
    """Other values, in percent; None leaves the rules' own."""
    settings = knowledge.settings
    changed = {
        name: getattr(settings, name).model_copy(update={"value": value})
        for name, value in (("something_else_breadth", breadth), ("something_else", rate))
        if value is not None
    }
    return knowledge.model_copy(update={"settings": settings.model_copy(update=changed)})


@dataclass(frozen=True)
class Asking:
    """How questions are picked: `number` of them, at random or by what they are worth to the model that is lacking."""

    number: int
    at_random: bool
    region: str = "great_britain"


def draw_evidence(
    knowledge: Knowledge,
    whole: EvidenceModel,
    cause: str,
    lacking: Lacking,
    asking: Asking,
    chance: np.random.Generator,
) -> dict[str, str]:
    """The complaint about an oven that has the cause, and answers to some questions."""
    states = draw_states(knowledge, whole, (cause,), chance)
    said = draw_complaint(COMPLAINT, whole, knowledge, (cause,), states, chance)
    items = tuple(f"{COMPLAINT}__{item}__" for item in said)
    told = {report: CHOSEN for report in whole.observable_of if report.startswith(items)}
    open_ones = [question_id for question_id in knowledge.questions if question_id in whole.observable_of]
    for _ in range(asking.number):
        question_id = _pick(open_ones, lacking, told, asking, chance)
        open_ones.remove(question_id)
        told[question_id] = draw_reply(whole, question_id, knowledge, states, chance).code
    return told


def _pick(
    open_ones: list[str], lacking: Lacking, told: dict[str, str], asking: Asking, chance: np.random.Generator
) -> str:
    if asking.at_random:
        return open_ones[int(chance.integers(len(open_ones)))]
    outlook = look_ahead(lacking.model, told, posterior(lacking.model, told), open_ones, MASS_DROPPED)
    candidates = [Candidate(question_id, effort=0.0, minutes=1.0) for question_id in open_ones]
    worths = one_step(lacking.decision, outlook, candidates, range(len(lacking.decision.actions)))
    return max(worths, key=lambda worth: (round(worth.value, 2), worth.bits_per_minute)).question_id


def named(belief: Posterior) -> list[str]:
    """As verdicts name them, most probable first: causes by their marginals, none, and something else."""
    found = {NONE: belief.of_set(NOTHING_WRONG), **{cause: belief.of(cause) for cause in belief.model.causes}}
    return sorted(found, key=lambda name: -round(found[name], 9))


def seen(belief: Posterior) -> Seen:
    names = named(belief)
    return Seen(belief.of(SOMETHING_ELSE), names[0], SOMETHING_ELSE in names[:3])


def leave_out(knowledge: Knowledge, whole: EvidenceModel, cause: str, ovens: int, asking: Asking, seed: int) -> LeftOut:
    few = without_causes(knowledge, {cause})
    lacking = Lacking(compile_evidence_model(few), decision_of(few, asking.region))
    chance = np.random.default_rng([seed, whole.causes.index(cause)])
    told = [draw_evidence(knowledge, whole, cause, lacking, asking, chance) for _ in range(ovens)]
    by_whole = [posterior(whole, each) for each in told]
    return LeftOut(
        cause,
        [seen(posterior(lacking.model, each)) for each in told],
        [seen(belief) for belief in by_whole],
        fmean(cause in named(belief)[:3] for belief in by_whole),
    )


def print_table(title: str, found: Sequence[LeftOut]) -> None:
    print(f"\n{title}")
    head = f"{'cause left out':<32} {'something else in three':>24} {'its probability':>18}  {'found by':>8}"
    print(
        head
        + f"\n{'':<32} {'without':>12} {'whole':>11} {'without':>9} {'whole':>8}  {'whole':>8}  named first without it"
    )
    every = LeftOut(
        "all",
        [each for left in found for each in left.without],
        [each for left in found for each in left.whole],
        fmean(left.found_by_whole for left in found),
    )
    for left in (*sorted(found, key=lambda each: fmean(s.in_three for s in each.without)), every):
        firsts = ", ".join(f"{name} {number}" for name, number in Counter(s.first for s in left.without).most_common(3))
        print(
            f"{left.cause:<32} {_share(left.without, _rose):>12} {_share(left.whole, _rose):>11}"
            f" {_share(left.without, _probability):>9} {_share(left.whole, _probability):>8}"
            f"  {100 * left.found_by_whole:>6.1f} %  {firsts}"
        )


def _rose(oven: Seen) -> float:
    return float(oven.in_three)


def _probability(oven: Seen) -> float:
    return oven.probability


def _share(ovens: Sequence[Seen], of: Callable[[Seen], float]) -> str:
    return f"{100 * fmean(map(of, ovens)):.1f} %"


def main() -> None:
    arguments = argparse.ArgumentParser(description="Leave each cause out of the model in turn.")
    arguments.add_argument("--ovens", type=int, default=100, help="of each cause")
    arguments.add_argument("--causes", type=int, help="so many of them; else all")
    arguments.add_argument("--answers", type=int, default=12, help="beside the complaint")
    arguments.add_argument("--at-random", action="store_true", help="any questions")
    arguments.add_argument("--seed", type=int, default=1)
    arguments.add_argument("--breadth", type=float, help="percent; else the rules'")
    arguments.add_argument("--rate", type=float, help="percent; else the rules'")
    chosen = arguments.parse_args()
    knowledge = with_something_else(load_knowledge(ROOT / "rules", None), chosen.breadth, chosen.rate)
    whole = compile_evidence_model(knowledge)
    asking = Asking(chosen.answers, chosen.at_random)
    causes = spread(list(knowledge.causes), chosen.causes)
    found = [leave_out(knowledge, whole, cause, chosen.ovens, asking, chosen.seed) for cause in causes]
    settings = knowledge.settings
    values = f"breadth {settings.something_else_breadth.value:g} %, rate {settings.something_else.value:g} %"
    answers = f"{chosen.answers} {'random' if chosen.at_random else 'telling'} answers"
    what = f"{chosen.ovens} ovens a cause, {answers}, {values}, seed {chosen.seed}"
    each = "each cause" if len(causes) == len(knowledge.causes) else f"{len(causes)} of {len(knowledge.causes)} causes"
    print_table(f"Simulated: {each} left out in turn ({what})", found)


def spread(causes: Sequence[str], number: int | None) -> Sequence[str]:
    """So many of them, from all over the list; all, where no number is given."""
    if number is None or number >= len(causes):
        return causes
    return [causes[place * len(causes) // number] for place in range(number)]


if __name__ == "__main__":
    main()
