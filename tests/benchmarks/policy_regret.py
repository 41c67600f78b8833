"""Ways of choosing questions against the best one, in small networks where the best one can be found.

    python -m tests.benchmarks.policy_regret --networks 40 --seed 1

Simulated: networks are drawn from the project's own causes and questions, and as many with numbers drawn at random.
Expected cost: the effort of the questions and the ending. The best policy is found by dynamic programming over every
set of answers. All but 'all questions' and 'no question' stop where two steps ahead (one step ahead: where one)
no question is worth its effort.
"""

import argparse
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import fmean, median

import numpy as np

from assistant.knowledge.load import load_knowledge
from assistant.knowledge.model import Knowledge
from tests.benchmarks.best_policy import ASKED_ANOTHER, ASKED_IN_VAIN, POLICIES, STOPPED_EARLY, Problem, ours
from tests.benchmarks.small_networks import Network, draw_network, randomised

ROOT = Path(__file__).parents[2]
KINDS = ("of the project", "random")
TARGET = 1.02


def draw_networks(
    knowledge: Knowledge, kind: str, number: int, seed: int, causes: int, questions: int
) -> list[Network]:
    found = []
    for each in range(number):
        chance = np.random.default_rng([seed, each, KINDS.index(kind)])
        network = draw_network(knowledge, chance, causes, questions)
        found.append(network if kind == KINDS[0] else randomised(network, chance))
    return found


@dataclass(frozen=True)
class Regret:
    """One network. `cost`: policy -> its expected cost; `losses`: where ours loses, in money.

    `dearer`: how often knowing more makes the ending dearer, and out of how many.
    """

    best: float
    unasked: float
    cost: dict[str, float]
    losses: dict[str, float]
    dearer: tuple[int, int]


def regret_of(network: Network, policies: Sequence[str]) -> Regret:
    problem = Problem(network)
    cost = {name: problem.cost_of(POLICIES[name]) for name in policies}
    unasked = float(problem.ending[problem.start])
    return Regret(problem.best_cost, unasked, cost, problem.losses(ours), problem.dearer_for_knowing())


def share(part: float, whole: float) -> str:
    return f"{100 * part / whole:.1f} %" if whole > 0 else "-"


def print_ratios(title: str, found: Sequence[Regret]) -> None:
    print(f"\n{title}")
    head = "expected cost / best policy"
    print(f"{head:<28} {'mean':>7} {'median':>7} {'worst':>7} {f'over {TARGET}':>10} {'of what asking can save':>24}")
    possible = sum(each.unasked - each.best for each in found)
    for name in found[0].cost:
        values = [each.cost[name] / each.best for each in found]
        over = f"{sum(value > TARGET for value in values)} of {len(values)}"
        saved = share(sum(each.unasked - each.cost[name] for each in found), possible)
        print(f"{name:<28} {fmean(values):>7.4f} {median(values):>7.4f} {max(values):>7.4f} {over:>10} {saved:>24}")
    total = sum(sum(each.losses.values()) for each in found)
    for kind in (STOPPED_EARLY, ASKED_IN_VAIN, ASKED_ANOTHER):
        lost = sum(each.losses.get(kind, 0.0) for each in found)
        print(f"ours loses as it {kind}: {lost / len(found):.3f} in money a network, {share(lost, total)}")
    dearer, looked_at = (sum(counts) for counts in zip(*(each.dearer for each in found), strict=True))
    print(f"a free answer makes the ending dearer on average: {dearer} of {looked_at} ({share(dearer, looked_at)})")


def main() -> None:
    arguments = argparse.ArgumentParser(description="Compare ways of asking with the best one.")
    arguments.add_argument("--networks", type=int, default=40, help="of each kind")
    arguments.add_argument("--seed", type=int, default=1)
    arguments.add_argument("--causes", type=int, default=10, help="at most")
    arguments.add_argument("--questions", type=int, default=8, help="at most")
    chosen = arguments.parse_args()
    knowledge = load_knowledge(ROOT / "rules", None)
    for kind in KINDS:
        networks = draw_networks(knowledge, kind, chosen.networks, chosen.seed, chosen.causes, chosen.questions)
        found = [regret_of(network, tuple(POLICIES)) for network in networks]
        questions, causes = (
            fmean(map(len, each)) for each in zip(*((n.questions, n.model.causes) for n in networks), strict=True)
        )
        sizes = f"on average {questions:.1f} questions, {causes:.1f} causes with something else"
        print_ratios(f"Simulated, {chosen.networks} networks {kind}, {sizes}, seed {chosen.seed}", found)


if __name__ == "__main__":
    main()
