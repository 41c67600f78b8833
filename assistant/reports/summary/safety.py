"""What stands first on an engineer's page: danger, and whether the oven is off."""

from collections.abc import Iterator

from assistant.interview.choice import steps_for
from assistant.interview.danger import STILL_ON, Stop
from assistant.knowledge.danger_questions import DANGER_NOW, OVEN_IS_OFF, UNSURE, sign_question_id
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Items, Pairs, Paragraph

ASKED_BESIDE = ("ever_tripped", "look_over")


def off(told: Told) -> Iterator[Block]:
    """Which sign, since when and told as what; whether it was taken back or is still to be asked about; whether
    somebody said that the oven is off; and what else was asked about danger.
    """
    danger = told.assessment.danger
    if told.verdict.details.get("who") == "registered_gas_engineer" and told.verdict.action == "outside":
        yield Paragraph(told.say("gas_oven", **told.sentences.lines), "danger")
    yield _whether_off(told)
    for stop in danger.stops:
        yield Paragraph(_stands(told, stop), "danger")
    for sign_id in told.open_signs:
        yield Paragraph(told.say("sign_open", sign=_sign(told, sign_id)), "danger")
    for sign_id in danger.withdrawn:
        yield Paragraph(_taken_back(told, sign_id), "danger")
    yield Pairs(tuple(_asked(told)))


def _whether_off(told: Told) -> Paragraph:
    """What somebody said of it; nobody has checked it."""
    danger = told.assessment.danger
    is_off = told.state.answers.get(OVEN_IS_OFF)
    if is_off is None or is_off.status != "answered":
        ever_told = danger.open or danger.withdrawn
        return Paragraph(told.say("off_not_confirmed" if ever_told else "off_not_told"), "strong")
    when = told.time(is_off.recorded_at)
    if is_off.value == STILL_ON:
        return Paragraph(told.say("still_on", when=when), "danger")
    name = "off_confirmed" if danger.open else "off_before"
    return Paragraph(told.say(name, how=told.given(is_off), when=when), "strong")


def _taken_back(told: Told, sign_id: str) -> str:
    """When it last stood, and when its own question was answered otherwise."""
    stood = told.at(told.state.reached.get(sign_id, 0))
    answer = told.state.answers.get(sign_question_id(sign_id))
    back = told.time(answer.recorded_at) if answer is not None else told.say("not_asked")
    return told.say("sign_withdrawn", sign=_sign(told, sign_id), when=stood, back=back)


def _asked(told: Told) -> Iterator[tuple[str, str]]:
    danger = told.assessment.danger
    for sign_id in (*(stop.sign_id for stop in danger.stops), *danger.withdrawn):
        if (given := told.answer(sign_question_id(sign_id))) is not None:
            yield told.say("told_as"), given
    asked = told.answer(DANGER_NOW)
    if asked is not None and not danger.open and not danger.withdrawn:
        yield told.say("asked_about_danger"), told.say("none_told")
    for name in ASKED_BESIDE:
        if (given := told.answer(name)) is not None:
            yield told.label(name), given


def steps_told(told: Told) -> Iterator[Block]:
    """What whoever told of danger was told to do, in its order, by today's rules."""
    danger, signs = told.assessment.danger, told.script.knowledge.signs
    back = [Stop(sign_id, "sign", sign_id, 0) for sign_id in danger.withdrawn if sign_id in signs]
    stops = (*danger.stops, *back)
    if stops:
        steps = steps_for(told.script.knowledge, stops)
        say = told.sentences.wording.say
        yield Items(tuple(say(f"step-{step}", **told.sentences.lines) for step in steps), numbered=True)


def _stands(told: Told, stop: Stop) -> str:
    name = {"sign": "sign_told", "finding": "sign_found", "belief": "sign_likely"}[stop.source]
    return told.say(name, sign=_sign(told, stop.sign_id), when=told.at(stop.since))


def _sign(told: Told, sign_id: str) -> str:
    known = sign_id if sign_id in told.script.knowledge.signs else UNSURE
    return told.sentences.wording.say(f"sign-{known}", **told.sentences.lines)
