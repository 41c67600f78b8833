"""What the household does after a stop: what holds in any case, and apart from it what only switches the oven off."""

from collections.abc import Iterator

from assistant.interview.choice import steps_in_parts
from assistant.knowledge.danger_questions import OVEN_IS_OFF
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Items, Paragraph

FIRE_SERVICE = "fire_service"


def steps(told: Told) -> Iterator[Block]:
    """In the order of the rules, each stretch under its own heading; nothing where no sign stands.

    Who said that the oven is off isn't told to switch it off again, only how to see that it isn't.
    """
    danger = told.assessment.danger
    if not danger.stops:
        return
    parts = steps_in_parts(told.script.knowledge, danger.stops)
    if danger.off_confirmed:
        yield Paragraph(_is_off(told), "strong")
    if danger.off_confirmed and parts.until_off:
        yield from _stretch(told, "in_any_case", (*parts.first, *parts.then))
        how = str(told.state.answers[OVEN_IS_OFF].value)
        yield Paragraph(told.say("still_lit", how=how, **told.sentences.lines))
    elif parts.until_off:
        yield from _stretch(told, "first_in_any_case", parts.first)
        yield from _stretch(told, "only_if_not_off", parts.until_off)
        yield from _stretch(told, "then_in_any_case", parts.then)
    else:
        yield from _stretch(told, "in_any_case", parts.first)


def whom_to_ring(told: Told) -> Iterator[Block]:
    """One order for everybody: who is hurt, who looks at it, and whoever is told."""
    if told.assessment.danger.stops:
        yield Items(tuple(_in_order(told)), numbered=True)


def _in_order(told: Told) -> Iterator[str]:
    who, lines = str(told.verdict.details["who"]), told.sentences.lines
    yield told.say("ring_hurt", **lines)
    yield told.say("ring_medical")
    if who != FIRE_SERVICE:
        yield told.say("ring_who", id=who, who=told.sentences.who(told.verdict), **lines)
    if told.is_rented:
        yield told.say("ring_landlord")
    elif may_be_under_guarantee(told):
        yield told.say("ring_guarantee")


def may_be_under_guarantee(told: Told) -> bool:
    """Whether it was told, or nobody has said that there is none."""
    guarantee = told.state.answers.get("guarantee")
    return guarantee is None or guarantee.value != "no"


def _is_off(told: Told) -> str:
    answer = told.state.answers[OVEN_IS_OFF]
    return told.say("already_off", how=told.given(answer), when=told.time(answer.recorded_at))


def _stretch(told: Told, heading: str, step_ids: tuple[str, ...]) -> Iterator[Block]:
    if step_ids:
        say, lines = told.sentences.wording.say, told.sentences.lines
        yield Paragraph(told.say(heading), "strong")
        yield Items(tuple(say(f"step-{step}", **lines) for step in step_ids), numbered=True)
