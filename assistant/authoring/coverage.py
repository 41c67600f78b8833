"""For each cause, interviews about ovens that have it alone: what they make of it. Simulated from the rules' tables.

Each interview hangs on the seed, the cause and its number alone, so neither the number of processes nor the choice of
causes changes any of them.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import asdict, dataclass
from statistics import median

from assistant.authoring.processes import processors, spread
from assistant.authoring.separation import Pair, pairs_of_causes
from assistant.authoring.simulated_endings import STOP, is_served
from assistant.authoring.simulated_interview import ROLE, play
from assistant.authoring.simulated_ovens import oven_with_cause
from assistant.interview.script import Script, script_of
from assistant.knowledge.danger_questions import is_danger_question
from assistant.knowledge.model import Knowledge

FEWEST_FOR_PROCESSES = 60
"""Interviews: with fewer, starting processes takes longer than it saves."""
AT_ONCE = 4
LEADS_ENOUGH = 0.8
IN_THREE = 3


@dataclass(frozen=True)
class Plan:
    """What to simulate. `mistakes`: the share of answers that are mistaken on top of what the tables say."""

    causes: tuple[str, ...]
    ovens: int
    seed: int
    mistakes: float
    region: str


@dataclass(frozen=True)
class Played:
    """One interview about an oven that has that cause: in which region, what was asked, the names that led, whether
    it was stopped for danger, whether it was served.
    """

    cause: str
    region: str
    asked: tuple[str, ...]
    first_names: tuple[str, ...]
    stopped: bool
    served: bool


@dataclass(frozen=True)
class Covered:
    """One cause. `leads`, `in_three`, `served` and `stopped` count interviews; `instead`: the other names that led,
    how often. `region`: where these ovens stand.
    """

    cause: str
    ovens: int
    leads: int
    in_three: int
    served: int
    questions_median: float
    questions_most: int
    instead: tuple[tuple[str, int], ...]
    stopped: int = 0
    region: str = ""

    @property
    def leads_too_seldom(self) -> bool:
        return self.leads < LEADS_ENOUGH * self.ovens


@dataclass(frozen=True)
class Coverage:
    """`pairs`: all of them, the hardest to tell apart first. `never_asked`: questions of the rules, in their order;
    neither those about danger, which are asked only where danger is told, nor those that only others may be asked.
    """

    plan: Plan
    causes: tuple[Covered, ...]
    pairs: tuple[Pair, ...]
    never_asked: tuple[str, ...]

    def nearest(self, cause: str) -> Pair | None:
        """The pair of that cause with the one that is hardest to tell from it."""
        return next((pair for pair in self.pairs if cause in pair.causes), None)


def coverage(knowledge: Knowledge, plan: Plan, jobs: int, done: Callable[[], None]) -> Coverage:
    """Play all of the plan in so many processes; `done` is called after each interview."""
    played: dict[str, list[Played]] = {cause: [] for cause in plan.causes}
    asked: set[str] = set()
    for each in _interviews(knowledge, plan, jobs):
        played[each.cause].append(each)
        asked.update(each.asked)
        done()
    script = script_of(knowledge)
    limit = knowledge.roles[ROLE].asked_up_to
    return Coverage(
        plan,
        tuple(_covered(cause, interviews) for cause, interviews in played.items()),
        pairs_of_causes(knowledge, script.evidence_model, limit),
        tuple(
            question_id
            for question_id, question in knowledge.questions.items()
            if question_id not in asked and not is_danger_question(question_id) and question.care.rank <= limit.rank
        ),
    )


def processes_for(interviews: int) -> int:
    """As many as there are processors to use, one where it wouldn't pay."""
    return processors() if interviews >= FEWEST_FOR_PROCESSES else 1


def _interviews(knowledge: Knowledge, plan: Plan, jobs: int) -> Iterator[Played]:
    tasks = [(cause, number) for cause in plan.causes for number in range(plan.ovens)]
    return spread(_Player, (knowledge, plan), tasks, jobs, AT_ONCE)


class _Player:
    def __init__(self, knowledge: Knowledge, plan: Plan) -> None:
        self._script: Script = script_of(knowledge)
        self._plan = plan

    def __call__(self, task: tuple[str, int]) -> Played:
        cause, number = task
        script, plan = self._script, self._plan
        oven = oven_with_cause(script.knowledge, script.evidence_model, cause, number, plan.seed, plan.region)
        found = play(script, asdict(oven), plan.mistakes, unsure=0.0)
        return Played(
            cause,
            oven.region,
            tuple(question["id"] for question in found["asked"]),
            tuple(name for name, _ in found["named"][:IN_THREE]),
            found["action"] == STOP,
            is_served(script.knowledge, script.decision(oven.region), (cause,), found),
        )


def _covered(cause: str, interviews: Sequence[Played]) -> Covered:
    instead = Counter(each.first_names[0] for each in interviews if each.first_names[0] != cause)
    questions = [len(each.asked) for each in interviews]
    return Covered(
        cause=cause,
        ovens=len(interviews),
        leads=sum(each.first_names[0] == cause for each in interviews),
        in_three=sum(cause in each.first_names for each in interviews),
        served=sum(each.served for each in interviews),
        questions_median=median(questions),
        questions_most=max(questions),
        instead=tuple(instead.most_common()),
        stopped=sum(each.stopped for each in interviews),
        region=interviews[0].region,
    )
