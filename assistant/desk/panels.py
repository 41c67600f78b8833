"""What a desk shows of a call, as styled paragraphs; how they are laid out is decided elsewhere."""

import textwrap
from collections.abc import Iterator

from assistant.desk.call import Call
from assistant.desk.desk import Desk
from assistant.interview.danger import Stop
from assistant.interview.next_question import next_chosen
from assistant.interview.on_the_telephone import (
    FEE_TOLD,
    OFF_AT_THE_END,
    READ_BACK,
    SPEAKER,
    everybody_goes_out,
    opening_question,
)
from assistant.interview.view import QuestionView
from assistant.knowledge.danger_questions import OVEN_IS_OFF, SIGN_PREFIX, sign_question_id
from assistant.reports.lettering import shown
from assistant.reports.screen import BLANK, Paragraph, numbered

MOST_CAUSES = 6
LEAST_SHOWN = 0.02
MOST_CHANGES = 3
MOST_OF_A_FACT = 90
MOST_OF_A_NAME = 24
COMPLAINT = "what_goes_wrong"
"""Before it nothing is advised that anybody should hear of."""
READ_BACK_OF = (
    SPEAKER, "call_back_number", "what_goes_wrong", "make_and_model", "guarantee", "whose_oven", "access_for_visit",
    "pressing_need", OVEN_IS_OFF, OFF_AT_THE_END, FEE_TOLD,
)  # fmt: skip
MOVED = 0.02
"""A probability that moved by less isn't marked."""


def header(desk: Desk) -> str:
    call = desk.call
    if call is None:
        return desk.own.wording.say("desk-header_idle", calls=_waiting(desk))
    saved = "unsaved_yet" if call.conversation.unsaved else "saved" if call.conversation.stored else "new_call"
    return desk.own.wording.say(
        "desk-header",
        number=(desk.on_line or 0) + 1,
        who=textwrap.shorten(shown(call.speaker), MOST_OF_A_NAME, placeholder="…")
        or call.conversation.record.session_id[:8],
        saved=desk.own.wording.say(f"desk-{saved}"),
        lang=call.read_out.wording.lang,
        parked=_waiting(desk),
    )


def _waiting(desk: Desk) -> int:
    return sum(not call.ended for number, call in enumerate(desk.calls) if number != desk.on_line)


def danger_banner(desk: Desk) -> str | None:
    """What stands, and whether the oven is off; None while nothing does."""
    call = desk.call
    if call is None:
        return None
    hurt = desk.own.wording.say("desk-banner_hurt", **call.read_out.lines) if call.somebody_is_hurt else ""
    told = _danger_told(desk, call)
    return " ".join(filter(None, (hurt, told))) or None


def _danger_told(desk: Desk, call: Call) -> str:
    danger = call.conversation.assessment.danger
    if danger.stops:
        signs = ", ".join(dict.fromkeys(_named(desk, stop) for stop in danger.stops))
        if everybody_goes_out(call.conversation.script, call.conversation.assessment):
            return desk.own.wording.say("desk-banner_out", signs=signs)
        if not danger.off_confirmed:
            return desk.own.wording.say("desk-banner", signs=signs)
        at = call.conversation.state.answers[OVEN_IS_OFF].recorded_at.astimezone()
        return desk.own.wording.say("desk-banner_off", signs=signs, time=f"{at:%H:%M}")
    return _danger_open(desk, call)


def _named(desk: Desk, stop: Stop) -> str:
    """The sign; marked where nobody told it, and the answers make it likely."""
    sign = desk.own.wording.say(f"sign-{stop.sign_id}")
    return sign if stop.source == "sign" else desk.own.wording.say("desk-reckoned", sign=sign)


def _danger_open(desk: Desk, call: Call) -> str:
    """While a sign that was heard is still asked about; what to do in doubt, where it may be one to get out for."""
    signs = call.conversation.script.knowledge.signs
    asked = {sign_question_id(sign_id): sign for sign_id, sign in signs.items()}
    open_ones = [asked[each] for each in call.conversation.assessment.danger.open_questions if each in asked]
    if not open_ones:
        return ""
    out = any(not sign.confirm_off for sign in open_ones)
    return desk.own.wording.say("desk-banner_open_out" if out else "desk-banner_open")


def conversation(call: Call) -> list[Paragraph]:
    """What was asked and answered, the oldest first, in the agent's language."""
    lines = []
    for question_id in filter(call.may_be_read_out, call.answered):
        lines.append(Paragraph(f"{call.own.question_by_id(question_id).text} — {_given(call, question_id)}", "quiet"))
    return lines


def _given(call: Call, question_id: str) -> str:
    answer = call.conversation.state.answers[question_id]
    if answer.status != "answered":
        return call.own.wording.say(f"answer-{answer.status}")
    if answer.value is None:
        return shown(call.conversation.state.texts.get(question_id) or call.own.wording.say("answer-erased"))
    return call.own.given(question_id, answer.value)


def to_read_out(call: Call) -> list[Paragraph]:
    """In the customer's language: what to do while danger stands, the verdict at the end, and the question."""
    return [*to_do(call), *asked(call)]


def to_do(call: Call) -> list[Paragraph]:
    """The verdict at the end, and while danger stands its steps; else nothing."""
    danger = call.conversation.assessment.danger
    shows = (call.at_verdict and call.reopened is None) or (danger.stops and call.danger_unsettled)
    return [*_verdict(call)] if shows else []


def asked(call: Call) -> list[Paragraph]:
    """The question, or that the call is over."""
    question = call.question
    if question is not None:
        return [*_first_of_all(call, question), *_question(call, question)]
    return [BLANK, Paragraph(call.own.wording.say("desk-ended", code=call.way_back), "strong")] if call.ended else []


def _first_of_all(call: Call, question: QuestionView) -> Iterator[Paragraph]:
    """What to do before anybody answers, where it may be a danger to get out from."""
    meanwhile = f"sign-{question.id.removeprefix(SIGN_PREFIX)}" if question.id.startswith(SIGN_PREFIX) else ""
    if meanwhile and call.read_out.wording.has(meanwhile, "meanwhile"):
        yield Paragraph(call.read_out.wording.say(meanwhile, "meanwhile", **call.read_out.lines), "danger")
    elif everybody_goes_out(call.conversation.script, call.conversation.assessment) and not call.ended:
        yield Paragraph(call.own.wording.say("desk-only_from_outside"), "danger")


def _verdict(call: Call) -> Iterator[Paragraph]:
    text = call.read_out.verdict(call.verdict)
    stopped = call.verdict.action == "stop_and_isolate"
    yield Paragraph(text.headline, "danger" if stopped else "strong")
    yield Paragraph(text.explanation)
    if stopped and not call.verdict.details.get("off_confirmed"):
        yield from numbered(text.steps)
    yield from (Paragraph(tip, "plain", "– ") for tip in text.tips[:1] if not stopped)
    yield BLANK


def _question(call: Call, question: QuestionView) -> Iterator[Paragraph]:
    text = call.read_out.question(question)
    own = call.own.question(question)
    yield Paragraph(text.text, "danger" if question.about_danger else "strong")
    if own.text != text.text:
        yield Paragraph(own.text, "quiet")
    if question.id in call.said:
        yield Paragraph(call.own.wording.say("desk-said", line=shown(call.said[question.id])), "quiet")
    if question.id == READ_BACK:
        yield from _to_read_back(call)
    labels = [
        label if label == ours else f"{label} ({ours})"
        for (_, label), (_, ours) in zip(text.choices, own.choices, strict=True)
    ]
    yield from numbered(labels)
    if text.kind == "number":
        yield Paragraph(call.own.wording.say("desk-hint_number", unit=str(text.unit)), "quiet")
    elif text.kind != "choice":
        yield Paragraph(call.own.wording.say(f"desk-hint_{text.kind}"), "quiet")
    if question.id.startswith(SIGN_PREFIX):
        yield Paragraph(text.how, "quiet")
    if question.standing is not None:
        standing = call.own.given(question.id, question.standing)
        yield Paragraph(call.own.wording.say("desk-standing", answer=standing), "quiet")


def _to_read_back(call: Call) -> Iterator[Paragraph]:
    """What was told for the visit and what comes of it, as it stands."""
    yield Paragraph(call.read_out.headline(call.verdict), "plain", "– ")
    for question_id in READ_BACK_OF:
        if question_id in call.answered:
            yield Paragraph(f"{_label(call, question_id)}: {_given(call, question_id)}", "plain", "– ")


def why(call: Call) -> list[Paragraph]:
    """Why this question comes next, for the agent; and what may be said of it to the customer."""
    question, say = call.question, call.own.wording.say
    if question is None:
        return [Paragraph(call.own.why(call.verdict) or say("desk-nothing_open"))]
    return [Paragraph(_ground(call, question), "quiet"), Paragraph(call.own.question(question).why)]


def _ground(call: Call, question: QuestionView) -> str:
    say = call.own.wording.say
    script, assessment = call.conversation.script, call.conversation.assessment
    if call.reopened is not None:
        return say("desk-ground_yours")
    chosen = None if opening_question(script, assessment) else next_chosen(script, assessment)
    if chosen is None or chosen.question_id != question.id:
        return say("desk-ground_call")
    if chosen.ground == "worth" and chosen.by != question.id:
        return say("desk-ground_way", to=call.own.question_by_id(chosen.by).text)
    return say(f"desk-ground_{chosen.ground}")


def causes(call: Call) -> list[Paragraph]:
    """Not to be read out: what it may be, what the latest answer moved, why this is asked, what would change it."""
    say, own = call.own.wording.say, call.own
    page = [Paragraph(say("desk-not_to_be_read_out"), "danger")]
    for cause, probability in call.causes[:MOST_CAUSES]:
        if probability >= LEAST_SHOWN:
            page.append(
                Paragraph(
                    f"{own.wording.say(f'cause-{cause}', 'trade')}{_moved(call, cause, probability)}",
                    "plain",
                    f"{100 * probability:3.0f} % ",
                )
            )
    if not call.conversation.assessment.danger.open_questions and COMPLAINT in call.answered:
        page += [Paragraph(say("desk-as_it_stands", headline=own.headline(call.verdict)), "strong")]
    page += why(call)
    changes = own.verdict(call.verdict).would_change[:MOST_CHANGES]
    if changes:
        page += [Paragraph(say("desk-would_change"), "quiet"), *(Paragraph(each, "plain", "– ") for each in changes)]
    return page


def _moved(call: Call, cause: str, probability: float) -> str:
    moved = probability - call.before.get(cause, probability)
    return f" ({100 * moved:+.0f})" if abs(moved) >= MOVED else ""


def facts(call: Call, *, in_full: bool = False) -> list[Paragraph]:
    """What is known, the latest first, numbered as it may be changed; long ones cut unless `in_full`."""
    say = call.own.wording.say
    known = [f"{_label(call, each)}: {_given(call, each)}" for each in call.answered]
    if not in_full:
        known = [textwrap.shorten(each, MOST_OF_A_FACT, placeholder=" …") for each in known]
    page = [Paragraph(say("desk-facts"), "strong"), *reversed(numbered(known))]
    return page if known else [*page, Paragraph(say("desk-nothing_known"), "quiet")]


def _label(call: Call, question_id: str) -> str:
    message = f"question-{question_id}"
    if call.own.wording.has(message, "label"):
        return call.own.wording.say(message, "label")
    return call.own.question_by_id(question_id).text


def picks(desk: Desk) -> list[Paragraph]:
    """What was found, to pick from."""
    call = desk.call
    if call is None:
        return []
    texts = [call.own.question_by_id(each).text for each in desk.picking]
    return [Paragraph(desk.own.wording.say("desk-pick"), "strong"), *numbered(texts)]


def calls(desk: Desk) -> list[Paragraph]:
    say = desk.own.wording.say
    lines = []
    for number, call in enumerate(desk.calls):
        parked = "call_in_danger" if call.danger_unsettled else "call_parked"
        where = "on_line" if number == desk.on_line else "call_ended" if call.ended else parked
        who = shown(call.speaker)
        name = f" {who}" if who else ""
        lines.append(f"{call.conversation.record.session_id[:8]}{name} — {say(f'desk-{where}')}")
    return [Paragraph(say("desk-calls"), "strong"), *numbered(lines)]


def ways_back(desk: Desk) -> list[Paragraph]:
    """For after the desk was left: the code of each call that may go on."""
    say = desk.own.wording.say
    kept = [call for call in desk.calls if call.conversation.stored and not call.ended]
    lines = [f"{call.way_back}  {shown(call.speaker)}" for call in kept]
    return [Paragraph(say("desk-ways_back"), "strong"), *map(Paragraph, lines)] if kept else []


def left_behind(desk: Desk) -> list[Paragraph]:
    """For after the desk was left: what could not be saved."""
    waiting = sum(len(call.conversation.unsaved) for call in desk.unsaved_calls)
    return [Paragraph(desk.own.wording.say("desk-left_behind", number=waiting), "danger")] if waiting else []
