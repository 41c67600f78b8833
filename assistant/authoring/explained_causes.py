"""Causes, observables and pairs in sentences: what belief makes of them."""

from collections.abc import Iterator

import numpy as np

from assistant.authoring.explained import Book, Parts, distribution, listed, numbers, percent, says, used
from assistant.authoring.explained_physics import changes, measured
from assistant.authoring.places import from_effect
from assistant.authoring.separation import pairs_of_causes
from assistant.authoring.simulated_interview import ROLE
from assistant.belief.hypotheses import CHOSEN, NOT_CHOSEN, EvidenceModel
from assistant.belief.instruments import seen_by
from assistant.belief.learning import base_rates
from assistant.belief.posterior import DECIBANS_PER_NAT
from assistant.interview.script import question_of_key
from assistant.knowledge.model import Cause, Distribution, Effect, Observable, Pair
from assistant.wording.sentences import Sentences

MOST_WEIGHTS = 8
MOST_NEAR = 5
LEAST_TOLD = 0.5
"""Decibans: an answer that weighs less tells nothing."""


def explain_cause(book: Book, cause_id: str, cause: Cause) -> Parts:
    yield "says", _cause_says(book, cause_id, cause)
    yield "shows", _shows(book, cause_id, cause)
    effect = book.script.knowledge.effects.get(str(cause.effect))
    yield "physical", changes(book, cause.physical, effect.physical if effect else None, str(cause.effect))
    yield "measured", measured(book, cause.physical)
    weights = sorted(weights_of_answers(book.script.evidence_model, cause_id), key=lambda each: -each[2])
    yield "for", _weights(book, [each for each in weights if each[2] >= LEAST_TOLD][:MOST_WEIGHTS])
    yield "against", _weights(book, [each for each in weights[::-1] if each[2] <= -LEAST_TOLD][:MOST_WEIGHTS])
    yield "near", _nearest(book, cause_id)
    yield "numbers", numbers(book, _own_of(book, cause_id, cause))
    yield "used", used(book, "causes", cause_id)


def _own_of(book: Book, cause_id: str, cause: Cause) -> Cause:
    """The cause with what its own file says it shows."""
    own = {n: shown for n, shown in cause.shows.items() if not from_effect(book.script.knowledge, cause_id, n)}
    return cause.model_copy(update={"shows": own})


def _cause_says(book: Book, cause_id: str, cause: Cause) -> Iterator[str]:
    yield from says(book, cause.note, f"cause-{cause_id}", "explain")
    if cause.kind == "fault":
        yield book.say("fault", who=book.who(cause.mended_by), urgency=cause.urgency)
    else:
        yield book.say("habit", remedy=str(cause.act or cause.advice))
    for name, value in (
        ("part", {"part": cause.part}),
        ("needs", {"parts": listed(cause.needs)}),
        ("dangerous", {"sign": cause.danger}),
        ("look_alikes", {"names": listed(cause.look_alikes)}),
        ("masks", {"names": listed(cause.masks)}),
        ("excludes", {"names": listed(cause.excludes)}),
    ):
        if all(value.values()):
            yield book.say(name, **{key: str(each) for key, each in value.items()})
    rate = base_rates(book.script.knowledge)[cause_id]
    if rate != cause.base_rate.share:
        yield book.say("learned", percent=percent(rate))
    yield book.say("can_mislead", note=cause.can_mislead)


def _shows(book: Book, cause_id: str, cause: Cause) -> Iterator[str]:
    """Its own rows, and those that come from its effect."""
    for name, shown in cause.shows.items():
        said = _against_normal(book, name, shown)
        taken_over = from_effect(book.script.knowledge, cause_id, name)
        yield book.say("from_effect", row=said, effect=str(cause.effect)) if taken_over else said


def _against_normal(book: Book, name: str, shown: Distribution) -> str:
    observable = book.script.knowledge.observables[name]
    return distribution(book, name, shown, observable.states, observable.normal)


def explain_effect(book: Book, effect_id: str, effect: Effect) -> Parts:
    yield "says", _effect_says(book, effect)
    yield "shows", (_against_normal(book, name, shown) for name, shown in effect.shows.items())
    yield "physical", changes(book, effect.physical)
    yield "measured", measured(book, effect.physical)
    yield "has_effect", _causes_with(book, effect_id, effect)
    yield "numbers", numbers(book, effect)


def _effect_says(book: Book, effect: Effect) -> Iterator[str]:
    yield from says(book, effect.note, "")
    if effect.masks:
        yield book.say("masks", names=listed(effect.masks))


def _causes_with(book: Book, effect_id: str, effect: Effect) -> Iterator[str]:
    """Each with the rows in which its own file says otherwise."""
    for cause_id, cause in book.script.knowledge.causes.items():
        if cause.effect == effect_id:
            otherwise = [name for name in effect.shows if not cause.shows_as(effect, name)]
            yield book.say("cause_but_for", cause=cause_id, names=listed(otherwise)) if otherwise else cause_id


def weights_of_answers(model: EvidenceModel, cause: str) -> Iterator[tuple[str, str, float]]:
    """(report, code, decibans): by how much each answer speaks for the cause against everything else.

    Before anything else is told, whatever else may be there too: ten times the logarithm of how much likelier the
    answer is among all ovens with the cause than among all without it (I. J. Good 1950).
    """
    with_it = model.members[:, model.causes.index(cause)]
    there, not_there = (model.prior_odds * which for which in (with_it, ~with_it))
    for report, name in model.observable_of.items():
        table = model.report_given[report] @ model.state_given[name]
        told = np.log(table @ there / there.sum()) - np.log(table @ not_there / not_there.sum())
        for code, weight in zip(model.codes[report], told, strict=True):
            if code != NOT_CHOSEN:
                yield report, code, float(weight * DECIBANS_PER_NAT)


def _weights(book: Book, weights: list[tuple[str, str, float]]) -> Iterator[str]:
    sentences = Sentences(book.wording, book.script.knowledge, None)
    for report, code, decibans in weights:
        question_id = question_of_key(report)
        value = report.split("__")[1] if code == CHOSEN and "__" in report else code
        label = value
        if book.script.knowledge.questions[question_id].is_measurement:
            label = book.told(f"explain-outcome_{value}") or value
        elif book.told(f"question-{question_id}"):
            label = sentences.given(question_id, value)
        yield book.say("weight", decibans=f"{decibans:+5.1f}", question=question_id, answer=f"{value} ({label})")


def _nearest(book: Book, cause_id: str) -> Iterator[str]:
    knowledge = book.script.knowledge
    pairs = pairs_of_causes(knowledge, book.script.evidence_model, knowledge.roles[ROLE].asked_up_to)
    for pair in [pair for pair in pairs if cause_id in pair.causes][:MOST_NEAR]:
        (other,) = (each for each in pair.causes if each != cause_id)
        told_by = pair.told_by.removeprefix(seen_by(""))
        yield book.say("pair", decibans=f"{pair.least:5.1f}", cause=other, observable=told_by)


def explain_observable(book: Book, name: str, observable: Observable) -> Parts:
    yield "says", says(book, observable.note, f"observable-{name}")
    yield "states", _states(book, name, observable)
    yield "reported", _reported(book, name)
    yield "causes", _causes_that_differ(book, name, observable)
    yield "numbers", numbers(book, observable)
    yield "used", used(book, "observables", name)


def _states(book: Book, name: str, observable: Observable) -> Iterator[str]:
    kind = "observable_ordered" if observable.ordered else "observable_pattern"
    yield book.say(kind, states=listed(observable.states))
    yield distribution(book, "normal", observable.normal, observable.states)


def _reported(book: Book, name: str) -> Iterator[str]:
    for question_id, question in book.script.knowledge.questions.items():
        if question.observable == name:
            yield book.say("reported_by", question=question_id, care=question.care.value)
        for choice_id, choice in question.choices.items():
            if name in choice.said_when:
                yield book.say("reported_item", question=question_id, answer=choice_id)


def _causes_that_differ(book: Book, name: str, observable: Observable) -> Iterator[str]:
    for cause_id, cause in book.script.knowledge.causes.items():
        if name in cause.shows:
            yield distribution(book, cause_id, cause.shows[name], observable.states)


def explain_pair(book: Book, pair_id: str, pair: Pair) -> Parts:
    yield "says", _pair_says(book, pair)
    yield (
        "shows",
        (
            distribution(book, name, shown, observable.states, observable.normal)
            for name, shown in pair.shows.items()
            for observable in [book.script.knowledge.observables[name]]
        ),
    )
    yield "numbers", numbers(book, pair)


def _pair_says(book: Book, pair: Pair) -> Iterator[str]:
    yield book.say("note", note=pair.note)
    if pair.together is not None:
        first, second = pair.causes
        yield book.say("together", first=first, second=second, percent=percent(pair.together.share))
    yield book.say("can_mislead", note=pair.can_mislead)
