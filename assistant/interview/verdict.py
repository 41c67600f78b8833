"""Assessment -> the verdict, from one closed list, with what it rests on and what would change it."""

from dataclasses import dataclass

from assistant.belief.hypotheses import NOTHING_WRONG, SOMETHING_ELSE, Hypothesis
from assistant.belief.posterior import Posterior
from assistant.interview.assess import Assessment
from assistant.interview.changes import Change, changes_of
from assistant.interview.choice import Action, Choice, Details, choose
from assistant.interview.danger import Stop
from assistant.interview.reasons import Reason, answer_reasons, explanations
from assistant.interview.script import Script

NONE = "none"
"""Stands for nothing wrong where causes are named."""

WORTH_A_TIP = 0.05
"""A way of use from here on is worth a word."""

MOVABLE = ("use_differently", "do_one_thing", "all_normal", "book_visit", "maker_seller_or_landlord_first")


@dataclass(frozen=True)
class Verdict:
    """`details` holds ids only; `causes` are marginals, `hypotheses` exclusive, both most probable first.

    `named`: the causes with their marginals, and among them nothing wrong and something else.
    """

    action: Action
    details: Details
    stops: tuple[Stop, ...]
    causes: tuple[tuple[str, float], ...]
    hypotheses: tuple[tuple[Hypothesis, float], ...]
    named: tuple[tuple[str, float], ...]
    because: tuple[Reason, ...]
    would_change: tuple[Change, ...] = ()

    @property
    def leading(self) -> str:
        """The likeliest cause; NONE or SOMETHING_ELSE where that is likelier."""
        return self.named[0][0]


def named_causes(belief: Posterior) -> tuple[tuple[str, float], ...]:
    """Causes with their marginals, and with them nothing wrong and something else; most probable first."""
    others = ((NONE, belief.of_set(NOTHING_WRONG)), (SOMETHING_ELSE, belief.of(SOMETHING_ELSE)))
    return tuple(sorted((*others, *belief.causes()), key=lambda each: -round(each[1], 9)))


def _because(script: Script, assessment: Assessment, choice: Choice) -> tuple[Reason, ...]:
    if not choice.believed:
        return choice.because
    reasons = (*choice.because, *answer_reasons(script, assessment), *explanations(assessment))
    once: dict[tuple[str, str], Reason] = {}
    for reason in reasons:
        key = reason.kind, reason.id
        if key not in once or once[key].decibans is None:
            once[key] = reason
    return tuple(once.values())


def give_verdict(script: Script, assessment: Assessment, *, with_changes: bool = True) -> Verdict:
    """A crisp stop outranks everything; then what is outside; then the least expected cost, as far as danger lets.

    Most of the time goes into what would change it.
    """
    choice = choose(script, assessment)
    belief = assessment.posterior
    return Verdict(
        action=choice.action,
        details={**choice.details, **_always_told(script, assessment, choice.action)},
        stops=assessment.danger.stops,
        causes=belief.causes(),
        hypotheses=belief.ranked(),
        named=named_causes(belief),
        because=_because(script, assessment, choice),
        would_change=changes_of(script, assessment, choice.action) if with_changes and choice.action in MOVABLE else (),
    )


def _always_told(script: Script, assessment: Assessment, action: Action) -> dict[str, tuple[str, ...]]:
    """What no verdict leaves out: signs that were taken back, the tips of the findings, and for who is told that
    nothing points to a fault, ways of use that may be it all the same.
    """
    withdrawn = assessment.danger.withdrawn
    told = {"withdrawn_signs": withdrawn} if withdrawn else {}
    if assessment.danger.open or withdrawn:
        return told
    advice = [a for effect in assessment.effects.values() for a in effect.advises]
    if action == "all_normal":
        causes = script.knowledge.causes
        likely = [causes[cause_id] for cause_id, p in assessment.posterior.causes() if p >= WORTH_A_TIP]
        advice += [cause.advice for cause in likely if cause.advice]
    return told | {"tips": tuple(dict.fromkeys(advice))} if advice else told
