"""Every number marked `assumed`, moved to each end of its range alone: which cases would end otherwise.

The cases' answers stay as they were given, so a number that only decides which question is asked next can't change
anything here: ASKING_ONLY. Of the others, a base rate touches every case, a likelihood those that report its
observable, a price or a threshold only the choice among endings.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from assistant.authoring.assumed_cases import AnsweredCase, Ended, difference
from assistant.authoring.cases import begin_case, hold
from assistant.authoring.places import (
    Path,
    figures_of,
    figures_within,
    file_of,
    observables_shown,
    with_figure,
    with_figure_at,
)
from assistant.authoring.processes import processors, spread
from assistant.belief.decision import decision_of
from assistant.belief.hypotheses import EvidenceModel, compile_evidence_model, with_knowledge, with_rates
from assistant.belief.learning import base_rates
from assistant.interview.script import Script, script_of
from assistant.interview.state import State
from assistant.knowledge.figures import Figure
from assistant.knowledge.likelihoods import NotADistribution
from assistant.knowledge.model import Knowledge

ASSUMED = "assumed"
KINDS = ("causes", "effects", "pairs", "observables", "questions", "signs")
"""Of entries with likelihoods, as fields of Knowledge."""
ASKING_ONLY = frozenset({"minutes", "patience", "way_opens", "danger_asked_above", "danger_told_above"})
COSTS_OF_ASKING = frozenset({"minute", "question", "care"})
OF_PRIORS = frozenset({"something_else", "something_else_breadth", "asked_about"})
FEWEST_FOR_PROCESSES = 200
AT_ONCE = 8


@dataclass(frozen=True)
class Number:
    """A figure, in which entry it stands, and where in it. `kind`: the field of Knowledge."""

    kind: str
    entry_id: str
    path: Path
    figure: Figure

    @property
    def file(self) -> str:
        match self.kind:
            case "settings":
                return "belief.yaml"
            case kind:
                return file_of(kind, self.entry_id)

    @property
    def asking_only(self) -> bool:
        """Whether it only decides which question is asked next."""
        if self.kind == "regions":
            return self.path[1] in COSTS_OF_ASKING
        return self.kind in ("settings", "questions") and self.path[0] in ASKING_ONLY


@dataclass(frozen=True)
class End:
    """One end of a number's range: the cases that end otherwise, and how; and what moves most, in which case.

    `possible`: false where the number can't stand there, since a distribution would no longer add up.
    """

    value: float
    otherwise: Mapping[str, Ended]
    moved: float
    moved_most: str
    possible: bool = True


@dataclass(frozen=True)
class Swayed:
    """What a number does at the ends of its range."""

    number: Number
    ends: tuple[End, ...]

    @property
    def cases(self) -> tuple[str, ...]:
        """The cases that end otherwise at one end or the other."""
        return tuple(dict.fromkeys(case for end in self.ends for case in end.otherwise))

    @property
    def moved(self) -> float:
        return max((end.moved for end in self.ends), default=0.0)


@dataclass(frozen=True)
class Assumed:
    """`swayed`: every number that was moved, those that change most cases first. `as_it_is`: how each case ends."""

    swayed: tuple[Swayed, ...]
    asking_only: int
    as_it_is: Mapping[str, Ended]


def assumed_numbers(knowledge: Knowledge, region: str) -> Iterator[Number]:
    """Every one where it is written: of the causes, their effects, pairs, observables, questions and danger signs, of
    belief, and of what things cost in the region.
    """
    for kind in KINDS:
        for entry_id, path, figure in figures_of(knowledge, kind):
            if figure.source == ASSUMED:
                yield Number(kind, entry_id, path, figure)
    for path, figure in figures_within(knowledge.settings):
        if figure.source == ASSUMED:
            yield Number("settings", "", path, figure)
    for path, figure in figures_within(knowledge.regions[region].costs):
        if figure.source == ASSUMED:
            yield Number("regions", region, ("costs", *path), figure)


def assumed(
    knowledge: Knowledge, cases: Mapping[str, Mapping[str, Any]], region: str, jobs: int, done: Callable[[], None]
) -> Assumed:
    """Hold the cases' interviews, then move every number, in so many processes; `done` is called after each."""
    states: dict[str, State] = {}
    for name, state in zip(cases, spread(_Holder, (knowledge, region), cases.values(), jobs, 1), strict=True):
        states[name] = state
        done()
    numbers = list(assumed_numbers(knowledge, region))
    telling = [number for number in numbers if not number.asking_only]
    found = []
    for swayed in spread(Mover, (knowledge, states), telling, jobs, AT_ONCE):
        found.append(swayed)
        done()
    found.sort(key=lambda each: (-len(each.cases), -round(each.moved, 9)))
    as_it_is = {name: case.as_it_is for name, case in Mover(knowledge, states).cases.items()}
    return Assumed(tuple(found), len(numbers) - len(telling), as_it_is)


def steps(knowledge: Knowledge, cases: Mapping[str, Any], region: str) -> int:
    """How often `done` will be called."""
    return len(cases) + sum(not number.asking_only for number in assumed_numbers(knowledge, region))


def processes_for(number_of_steps: int) -> int:
    """As many as there are processors to use, one where it wouldn't pay."""
    return processors() if number_of_steps >= FEWEST_FOR_PROCESSES else 1


class _Holder:
    """Holds one case's interview after the other; what is left is the session's state."""

    def __init__(self, knowledge: Knowledge, region: str) -> None:
        self._script = script_of(knowledge)
        self._region = region

    def __call__(self, case: Mapping[str, Any]) -> State:
        conversation = begin_case(self._script, case, self._region)
        hold(conversation, case["answers"])
        return conversation.state


class Mover:
    """Moves one number after the other, over all cases."""

    def __init__(self, knowledge: Knowledge, states: Mapping[str, State]) -> None:
        self._script = script_of(knowledge)
        self.cases = {name: AnsweredCase(self._script, state) for name, state in states.items()}

    def __call__(self, number: Number) -> Swayed:
        ends: Sequence[float] = number.figure.range or ()
        return Swayed(number, tuple(self._at(number, value) for value in dict.fromkeys(ends)))

    def _at(self, number: Number, value: float) -> End:
        try:
            script = self.script_with(number, value)
        except NotADistribution:
            return End(value, {}, 0.0, "", possible=False)
        change = difference(self._script.evidence_model, script.evidence_model)
        decides = script.knowledge is not self._script.knowledge and number.kind in ("settings", "regions")
        otherwise: dict[str, Ended] = {}
        moved, most = 0.0, ""
        for name, case in self.cases.items():
            if not (decides or case.touched_by(change)):
                continue
            ended, by = case.under(script, change)
            if ended != case.as_it_is:
                otherwise[name] = ended
            if by > moved:
                moved, most = by, name
        return End(value, otherwise, moved, most)

    def script_with(self, number: Number, value: float) -> Script:
        """The rules with that number there. Raises NotADistribution."""
        knowledge = with_number(self._script.knowledge, number, value)
        model = _model_with(self._script.evidence_model, knowledge, number)
        decisions = self._script.decisions
        if number.kind in ("settings", "regions"):
            decisions = {region: decision_of(knowledge, region) for region in knowledge.regions}
        return replace(self._script, knowledge=knowledge, evidence_model=model, decisions=decisions)


def with_number(knowledge: Knowledge, number: Number, value: float) -> Knowledge:
    """The knowledge with that value at the number's place; its range stays as it is, and nothing is checked."""
    figure = number.figure.model_copy(update={"value": value})
    if number.kind == "settings":
        return knowledge.model_copy(update={"settings": with_figure(knowledge.settings, number.path, figure)})
    return with_figure_at(knowledge, number.kind, number.entry_id, number.path, figure)


def _model_with(model: EvidenceModel, knowledge: Knowledge, number: Number) -> EvidenceModel:
    """Only what hangs on the number is computed anew."""
    first = number.path[0]
    match number.kind:
        case "causes" | "pairs" if first != "shows":
            return with_rates(model, knowledge, base_rates(knowledge))
        case kind if kind in KINDS:
            return with_knowledge(model, knowledge, observables_shown(kind, number.entry_id, number.path))
        case "settings" if first in OF_PRIORS:
            return with_rates(model, knowledge, base_rates(knowledge))
        case "settings" if first == "words":
            return compile_evidence_model(knowledge, base_rates(knowledge))
    return model
