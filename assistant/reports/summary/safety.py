"""What stands first on an engineer's page: danger, and whether the oven is off."""

from collections.abc import Iterator

from assistant.interview.danger import Stop
from assistant.knowledge.danger_questions import DANGER_NOW, OVEN_IS_OFF, UNSURE, sign_question_id
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Items, Pairs, Paragraph

ASKED_BESIDE = ("ever_tripped", "look_over")


def off(told: Told) -> Iterator[Block]:
    """Which sign, since when and told as what; whether it was taken back; whether somebody said that the oven is off;
    and what else was asked about danger.
    """
    danger = told.assessment.danger
    is_off = told.state.answers.get(OVEN_IS_OFF)
    if danger.off_confirmed and is_off is not None:
        how = told.given(is_off)
        yield Paragraph(told.say("off_confirmed", how=how, when=told.time(is_off.recorded_at)), "strong")
    else:
        yield Paragraph(told.say("off_not_confirmed" if danger.stops else "off_not_told"), "strong")
    for stop in danger.stops:
        yield Paragraph(_stands(told, stop), "danger")
    for sign_id in danger.withdrawn:
        when = told.at(told.state.reached.get(sign_id, 0))
        yield Paragraph(told.say("sign_withdrawn", sign=_sign(told, sign_id), when=when), "danger")
    yield Pairs(tuple(_asked(told)))
    if danger.stops:
        yield Paragraph(told.say("steps_on_page_two"), "quiet")


def _asked(told: Told) -> Iterator[tuple[str, str]]:
    danger = told.assessment.danger
    for sign_id in (*(stop.sign_id for stop in danger.stops), *danger.withdrawn):
        if (given := told.answer(sign_question_id(sign_id))) is not None:
            yield told.say("told_as"), given
    asked = told.answer(DANGER_NOW)
    if asked is not None and not danger.stops and not danger.withdrawn:
        yield told.say("asked_about_danger"), told.say("none_told")
    for name in ASKED_BESIDE:
        if (given := told.answer(name)) is not None:
            yield told.label(name), given


def steps_told(told: Told) -> Iterator[Block]:
    """What whoever told of danger was told to do, in its order."""
    steps = told.sentences.verdict(told.verdict).steps
    if told.assessment.danger.stops and steps:
        yield Items(steps, numbered=True)


def _stands(told: Told, stop: Stop) -> str:
    name = {"sign": "sign_told", "finding": "sign_found", "belief": "sign_likely"}[stop.source]
    return told.say(name, sign=_sign(told, stop.sign_id), when=told.at(stop.since))


def _sign(told: Told, sign_id: str) -> str:
    known = sign_id if sign_id in told.script.knowledge.signs else UNSURE
    return told.sentences.wording.say(f"sign-{known}", **told.sentences.lines)
