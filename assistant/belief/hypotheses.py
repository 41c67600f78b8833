"""The evidence model as arrays: hypotheses, P(state | hypothesis), P(report | state)."""

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, field, replace
from functools import cached_property
from math import prod
from typing import Protocol

import numpy as np
import numpy.typing as npt

from assistant.belief.combination import Floats, Shown, sets_of_causes, states_given
from assistant.belief.remembered import Remembered
from assistant.knowledge.likelihoods import Words, share_of, shares
from assistant.knowledge.model import Distribution, Knowledge, Observable, Question

NOTHING_WRONG: tuple[str, ...] = ()
SOMETHING_ELSE = "something_else"
CHOSEN, NOT_CHOSEN = "yes", "no"

LEAST_SOUND = 0.05
"""At least so many of the ovens asked about count as sound, whatever the rates of all causes add up to."""

Hypothesis = tuple[str, ...]


@dataclass(frozen=True)
class Priors:
    """How probable sets of causes are, before any complaint; odds against nothing wrong.

    `at_large`: cause -> its odds in ovens at large. `beside`: (first, second) -> the second's odds beside the first,
    where they come together. `asked_about`: how many times as often an oven with something wrong is asked about.
    `never`: pairs that can't be there together. `unnamed`: the odds of something else, among those asked about.
    """

    faults: tuple[str, ...] = ()
    habits: tuple[str, ...] = ()
    at_large: Mapping[str, float] = field(default_factory=dict)
    beside: Mapping[tuple[str, str], float] = field(default_factory=dict)
    asked_about: float = 1.0
    never: frozenset[frozenset[str]] = frozenset()
    unnamed: float = 0.0

    def odds_of(self, hypothesis: Hypothesis) -> float:
        """Base rates are of ovens asked about, and one with something wrong is asked about more often, whether one
        thing is wrong or two. So in ovens at large the odds of each cause are so many times smaller; there they
        multiply. In a pair that comes together, the second's odds are those beside the first.
        """
        own = {cause_id: self.at_large[cause_id] for cause_id in hypothesis}
        for (first, second), odds in self.beside.items():
            if first in own and second in own:
                own[second] = odds
        return prod(own.values()) * self.asked_about if own else 1.0


MOST_ROWS = 256


def _remembered_rows() -> Remembered[Floats]:
    return Remembered(MOST_ROWS)


class Instrument(Protocol):
    """A measuring question, and the observables whose reports it takes the place of."""

    def replaces(self, written: str) -> tuple[str, ...]: ...

    @property
    def ready(self) -> bool: ...

    def prepare(self) -> object: ...


class Measurements(Protocol):
    """What was measured at one oven, weighed together; `written`: measuring question -> the lines."""

    def log_likelihoods(self, written: Mapping[str, str]) -> Mapping[str, Floats]:
        """Of each measurement, (H,) what it adds to those before it."""
        ...

    def error_decibans(self, written: Mapping[str, str], new: Set[str], first: int, second: int) -> float:
        """The standard error of how far the `new` ones speak for the first hypothesis against the second."""
        ...


class NothingMeasured:
    """Where no question measures."""

    def log_likelihoods(self, written: Mapping[str, str]) -> Mapping[str, Floats]:
        return {}

    def error_decibans(self, written: Mapping[str, str], new: Set[str], first: int, second: int) -> float:
        return 0.0


@dataclass(frozen=True)
class EvidenceModel:
    """Everything belief needs, compiled once. H hypotheses, C causes (the unnamed one last), S states.

    `hypotheses`: exclusive sets of causes: nothing wrong, one cause, two faults, a fault and a habit, something else.
    `prior_odds`: (H,), odds against nothing wrong, before any complaint.
    `state_given`: observable -> (S, H), columns sum to 1.
    `report_given`: report -> (answers, S), columns sum to 1; rows in the order of the report's codes. A report is
    a question, or one answer of a question with several and one observable that it speaks of (`item_key` of
    `item_key`), whose codes are CHOSEN and NOT_CHOSEN.
    `weighed`: log-likelihoods that were computed already, by their reports. `shown`: observable -> what each named
    cause shows by itself. `priors`: what the prior odds are made of. `instruments`: measuring questions, whose answers
    aren't codes but what was written down, and whose `state_given` are outcomes foreseen; `measurements`: what they
    tell together.
    """

    causes: tuple[str, ...]
    hypotheses: tuple[Hypothesis, ...]
    prior_odds: Floats
    state_given: Mapping[str, Floats]
    report_given: Mapping[str, Floats]
    codes: Mapping[str, tuple[str, ...]]
    observable_of: Mapping[str, str]
    needs: Mapping[str, tuple[str, ...]]
    shown: Mapping[str, Shown] = field(default_factory=dict)
    priors: Priors = field(default_factory=Priors)
    instruments: Mapping[str, Instrument] = field(default_factory=dict)
    measurements: Measurements = field(default_factory=NothingMeasured, compare=False)
    weighed: Remembered[Floats] = field(default_factory=_remembered_rows, compare=False, repr=False)

    @cached_property
    def members(self) -> npt.NDArray[np.bool_]:
        """(H, C): which causes each hypothesis holds."""
        return membership(self.hypotheses, self.causes)

    @cached_property
    def held(self) -> Floats:
        """(H, C) of 0 and 1: `members` as numbers."""
        return self.members.astype(np.float64)

    @cached_property
    def log_prior_odds(self) -> Floats:
        found: Floats = np.log(self.prior_odds)
        return found

    @cached_property
    def place_of(self) -> Mapping[Hypothesis, int]:
        """Hypothesis -> its row."""
        return {hypothesis: number for number, hypothesis in enumerate(self.hypotheses)}


def membership(hypotheses: tuple[Hypothesis, ...], causes: tuple[str, ...]) -> npt.NDArray[np.bool_]:
    """(H, C) of truths."""
    place = {cause: number for number, cause in enumerate(causes)}
    held = np.zeros((len(hypotheses), len(causes)), dtype=np.bool_)
    rows = [row for row, hypothesis in enumerate(hypotheses) for _ in hypothesis]
    held[rows, [place[cause] for hypothesis in hypotheses for cause in hypothesis]] = True
    return held


def item_key(question_id: str, choice_id: str) -> str:
    """The name of one answer of a question with several, as a report and as a fact."""
    return f"{question_id}__{choice_id}"


def compile_evidence_model(knowledge: Knowledge, rates: Mapping[str, float] | None = None) -> EvidenceModel:
    """`rates`: base rates of the causes as shares of one; without, those that the causes' own files give."""
    priors = _priors(knowledge, rates or expert_rates(knowledge))
    named = sets_of_causes(priors.faults, priors.habits, priors.never)
    members = membership(named, tuple(knowledge.causes))
    shown = {name: _shown(name, knowledge) for name in knowledge.observables}
    reports = dict(_reports(knowledge))
    return EvidenceModel(
        causes=(*knowledge.causes, SOMETHING_ELSE),
        hypotheses=(*named, (SOMETHING_ELSE,)),
        prior_odds=_prior_odds(named, priors),
        state_given={
            name: np.column_stack((states_given(each, members), _unnamed(each, priors, knowledge)))
            for name, each in shown.items()
        },
        report_given={report: table for report, (_, _, table) in reports.items()},
        codes={report: codes for report, (_, codes, _) in reports.items()},
        observable_of={report: name for report, (name, _, _) in reports.items()},
        needs={cause_id: cause.needs for cause_id, cause in knowledge.causes.items()},
        shown=shown,
        priors=priors,
    )


def with_rates(model: EvidenceModel, knowledge: Knowledge, rates: Mapping[str, float]) -> EvidenceModel:
    """The model of the same knowledge with other base rates, quicker than compiling it anew."""
    priors = _priors(knowledge, rates)
    return replace(
        model,
        prior_odds=_prior_odds(model.hypotheses[:-1], priors),
        state_given={
            name: np.column_stack((table[:, :-1], _unnamed(model.shown[name], priors, knowledge)))
            if name in model.shown
            else table
            for name, table in model.state_given.items()
        },
        priors=priors,
        weighed=_remembered_rows(),
    )


def with_knowledge(model: EvidenceModel, knowledge: Knowledge, observables: Sequence[str]) -> EvidenceModel:
    """The model of knowledge that differs in these observables' tables and in reports; rates stay as they were."""
    shown = {name: _shown(name, knowledge) for name in observables}
    tables = {
        name: np.column_stack((states_given(each, model.members[:-1, :-1]), _unnamed(each, model.priors, knowledge)))
        for name, each in shown.items()
    }
    return replace(
        model,
        state_given={**model.state_given, **tables},
        report_given={**model.report_given, **{report: table for report, (_, _, table) in _reports(knowledge)}},
        shown={**model.shown, **shown},
        weighed=_remembered_rows(),
    )


def expert_rates(knowledge: Knowledge) -> dict[str, float]:
    """Cause -> the share of ovens asked about that have it, as its file says."""
    return {cause_id: cause.base_rate.share for cause_id, cause in knowledge.causes.items()}


def _priors(knowledge: Knowledge, rates: Mapping[str, float]) -> Priors:
    causes = knowledge.causes
    more_often = knowledge.settings.asked_about.value
    unnamed = knowledge.settings.something_else.share
    sound = max(1 - sum(rates.values()) - unnamed, LEAST_SOUND)
    return Priors(
        faults=tuple(cause_id for cause_id, cause in causes.items() if cause.kind == "fault"),
        habits=tuple(cause_id for cause_id, cause in causes.items() if cause.kind == "habit"),
        at_large={cause_id: rates[cause_id] / sound / more_often for cause_id in causes},
        beside={pair.causes: _odds(pair.together.share) for pair in knowledge.pairs.values() if pair.together},
        asked_about=more_often,
        never=frozenset(frozenset((cause_id, other)) for cause_id, cause in causes.items() for other in cause.excludes),
        unnamed=unnamed / sound,
    )


def _prior_odds(named: Sequence[Hypothesis], priors: Priors) -> Floats:
    return np.array([*map(priors.odds_of, named), priors.unnamed])


def _odds(share: float) -> float:
    return share / (1 - share)


def _shown(name: str, knowledge: Knowledge) -> Shown:
    observable = knowledge.observables[name]
    words = knowledge.settings.words
    causes = knowledge.causes
    place = {cause_id: number for number, cause_id in enumerate(causes)}

    def as_shares(distribution: Distribution) -> Floats:
        return np.array(shares(distribution, observable.states, words))

    normal = as_shares(observable.normal)
    masks = [name in cause.masks for cause in causes.values()]
    return Shown(
        ordered=observable.ordered,
        normal=normal,
        alone=np.array([as_shares(c.shows[name]) if name in c.shows else normal for c in causes.values()]),
        speaks=np.array([name in cause.shows for cause in causes.values()]) | masks,
        masks=np.array(masks),
        pairs={
            (place[pair.causes[0]], place[pair.causes[1]]): as_shares(pair.shows[name])
            for pair in knowledge.pairs.values()
            if name in pair.shows
        },
    )


def _unnamed(shown: Shown, priors: Priors, knowledge: Knowledge) -> Floats:
    """(S,). Something else predicts a mixture of what the causes predict, broadened towards anything.

    The mixture is flattened by a power, 1 at no breadth and 0 at a breadth of 100 %. So what nearly no cause shows
    stays rare: a cause that we don't know seldom shows the very sign of one that we know.
    """
    breadth = knowledge.settings.something_else_breadth.share
    weights = np.array([priors.at_large[cause_id] for cause_id in knowledge.causes])
    flattened: Floats = ((weights / weights.sum()) @ shown.alone) ** (1 - breadth)
    broadened: Floats = flattened / flattened.sum()
    return broadened


def _reports(knowledge: Knowledge) -> Iterator[tuple[str, tuple[str, tuple[str, ...], Floats]]]:
    """Report -> its observable, its codes and (answers, S)."""
    words = knowledge.settings.words
    for question_id, question in knowledge.questions.items():
        if question.observable is not None:
            table = _report_given(question, knowledge.observables[question.observable], words)
            yield question_id, (question.observable, codes_of(question), table)
        for choice_id, choice in question.choices.items():
            for name, said_when in choice.said_when.items():
                chosen = np.array([share_of(said_when[state], words) for state in knowledge.observables[name].states])
                key = item_key(item_key(question_id, choice_id), name)
                yield key, (name, (CHOSEN, NOT_CHOSEN), np.array((chosen, 1 - chosen)))


def codes_of(question: Question) -> tuple[str, ...]:
    """The codes that an answer is reported by: the bands of a number, or all choices but 'mine hasn't one'."""
    if question.number is not None:
        return tuple(question.number.bands)
    return tuple(code for code, choice in question.choices.items() if not choice.is_no_report)


def _report_given(question: Question, observable: Observable, words: Words) -> Floats:
    """(answers, S), from the explicit table or from what each answer means and how often it's mistaken.

    An answer that means the state shares 1 - mistakes with others that mean it; the rest share the mistakes.
    """
    codes = codes_of(question)
    if question.table is not None:
        return np.array([shares(question.table[state], codes, words) for state in observable.states]).T
    assert question.mistakes is not None
    mistaken = share_of(question.mistakes, words)
    means = np.array([[state in _meaning(question, code) for state in observable.states] for code in codes])
    right = means.sum(axis=0)
    wrong = len(codes) - right
    share_right = np.where(wrong > 0, 1 - mistaken, 1.0) / right
    share_wrong = mistaken / np.maximum(wrong, 1)
    table: Floats = np.where(means, share_right, share_wrong)
    return table


def _meaning(question: Question, code: str) -> tuple[str, ...]:
    if question.number is not None:
        return question.number.bands[code].means
    return question.choices[code].means
