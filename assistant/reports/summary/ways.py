"""The ways of heating that may be used until a visit, and those that are left alone, by what was told of each."""

from collections.abc import Iterator
from dataclasses import dataclass

from assistant.interview.answers import still_fits
from assistant.interview.choice import LIKELY_ENOUGH
from assistant.reports.summary.session import Told

FUNCTIONS = "functions_on_oven"
GOOD = "normal"
"""The state of whatever a question about a way of heating asks for, when all is well."""
HEATERS = {"top": {"top_element", "grill_element"}, "base": {"base_element"}, "rear": {"ring_element"}}
"""By the place that a question speaks of."""


@dataclass(frozen=True)
class Ways:
    """Ids of ways of heating, in the order of the rules; what nothing is known of is in neither."""

    to_use: tuple[str, ...]
    to_leave: tuple[str, ...]


def ways_told(told: Told) -> Ways:
    """To use: told to heat well wherever it heats, and in no need of a part that has likely failed. To leave: the
    contrary of either.
    """
    knowledge = told.script.knowledge
    badly, on_knob = {way for way, _ in _told(told, good=False)}, set(_on_knob(told))
    well = {way for way in knowledge.ovens.functions if _heats_everywhere(told, way)}
    faults = (knowledge.causes[cause] for cause, p in told.verdict.causes if p >= LIKELY_ENOUGH)
    parts = {cause.part for cause in faults if cause.kind == "fault"}
    order = tuple(knowledge.ovens.functions)
    suspected = {way for way in order if parts.intersection(knowledge.ovens.uses(way, told.kind))}
    leave = badly | suspected & (on_knob | well)
    return Ways(tuple(w for w in order if w in well - leave), tuple(w for w in order if w in leave))


def _heats_everywhere(told: Told, way: str) -> bool:
    used = set(told.script.knowledge.ovens.uses(way, told.kind))
    heated = {place for place, heaters in HEATERS.items() if used & heaters}
    return bool(heated) and heated <= {place for of_way, place in _told(told, good=True) if of_way == way}


def _told(told: Told, *, good: bool) -> Iterator[tuple[str, str]]:
    """Each way of heating and place of a heater that an answer speaks of, for good or for ill."""
    for question_id, question in told.script.knowledge.questions.items():
        answer = told.state.answers.get(question_id)
        if question.speaks_of is None or answer is None or answer.status != "answered":
            continue
        if question.speaks_of.place not in HEATERS:
            continue
        chosen = question.choices.get(answer.value) if isinstance(answer.value, str) else None
        if chosen is not None and chosen.means and (set(chosen.means) == {GOOD}) is good:
            yield question.speaks_of.way, question.speaks_of.place


def _on_knob(told: Told) -> tuple[str, ...]:
    answer = told.state.answers.get(FUNCTIONS)
    if answer is None or not still_fits(told.script.knowledge.questions.get(FUNCTIONS), answer.value):
        return ()
    return tuple(map(str, answer.value)) if isinstance(answer.value, tuple) else ()
