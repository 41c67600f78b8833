"""What the household keeps until the visit: no screws, no test points, no electrical readings, no probabilities."""

from collections.abc import Iterator

from assistant.belief.decision import TRADES
from assistant.interview.assess import assess
from assistant.interview.changes import Change
from assistant.interview.state import Answer
from assistant.interview.supposed import answered_otherwise
from assistant.interview.verdict import give_verdict
from assistant.knowledge.danger_questions import OVEN_IS_OFF, sign_question_id
from assistant.knowledge.model import Care, Stage
from assistant.reports.summary.after_a_stop import may_be_under_guarantee, steps, whom_to_ring
from assistant.reports.summary.found import found
from assistant.reports.summary.meanwhile import meanwhile
from assistant.reports.summary.own_measurements import own_measurements
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Items, Page, Pairs, Paragraph, Summary
from assistant.wording.sentences import LEAST_SHOWN, VerdictText

LOOKS = (Care.TALK, Care.LOOK_COLD, Care.DAILY_USE)
"""What a page may send somebody to find out: nothing hot, for which the interview asks who stays and who is near."""
STAGES: tuple[Stage, ...] = ("complaint", "oven", "visit")


def household_summary(told: Told) -> Summary:
    """What was found, what to do until somebody comes, and how to use the oven well."""
    text = told.sentences.verdict(told.verdict)
    sections = (
        told.section("found", found(told, text)),
        told.section("steps", steps(told)),
        told.section("ring", whom_to_ring(told)),
        told.section("until_then" if told.somebody_comes else "from_now_on", meanwhile(told)),
        told.section("may_be", _may_be(told, text)),
        told.section("own_measurements", own_measurements(told)),
        told.section("look_yet", _look_yet(told)),
        told.section("use_it_well", (Items(text.tips),)),
        told.section("to_hand", _to_hand(told)),
        told.section("you_said", _you_said(told)),
    )
    return Summary(
        reader="household",
        lang=told.sentences.wording.lang,
        title=told.say("title_household"),
        about=text.headline,
        session=told.session,
        written_at=told.latest,
        pages=(Page(tuple(each for each in sections if each.blocks)),),
        facts=told.facts(),
    )


def _may_be(told: Told, text: VerdictText) -> Iterator[Block]:
    """The likeliest causes, and two that may be there at once."""
    if not text.likely:
        return
    yield Items(text.likely)
    pairs = [pair for pair, p in told.verdict.hypotheses if len(pair) > 1 and p >= LEAST_SHOWN]
    if pairs:
        first, second = (told.sentences.wording.say(f"cause-{cause}") for cause in pairs[0])
        yield Paragraph(told.say("both_at_once", first=first, second=second))


def _look_yet(told: Told) -> Iterator[Block]:
    """What may still be looked at or remembered, and what an answer would change; nothing while danger is open."""
    if told.assessment.danger.open:
        return
    outcomes: dict[str, list[str]] = {}
    for change in told.verdict.would_change:
        question = told.script.knowledge.questions[change.question_id]
        if change.value is not None and question.care in LOOKS and told.answer(change.question_id) is None:
            answer = told.sentences.given(change.question_id, change.value)
            said = told.say("look_outcome", answer=answer, advice=_advice_then(told, change))
            outcomes.setdefault(change.question_id, []).append(said)
    if outcomes:
        yield Items(tuple(_look(told, question_id, said) for question_id, said in outcomes.items()))
        yield Paragraph(told.say("look_then"))


def _advice_then(told: Told, change: Change) -> str:
    """What would be said to who answers so, with the very thing that is to be done."""
    supposed = assess(told.script, answered_otherwise(told.script, told.state, change.question_id, change.value))
    return told.sentences.headline(give_verdict(told.script, supposed, with_changes=False))


def _look(told: Told, question_id: str, outcomes: list[str]) -> str:
    text = told.sentences.question_by_id(question_id)
    return told.say("look", question=text.text, how=text.how, outcomes=" ".join(outcomes))


def _to_hand(told: Told) -> Iterator[Block]:
    """What whoever comes, or whoever orders parts, will ask for and wasn't told; nothing for an emergency line."""
    asked_for = tuple(_asked_for(told))
    if asked_for and told.somebody_comes and told.verdict.details.get("who") in TRADES:
        read_back = told.say("they_ask", heading=told.say("heading_you_said"))
        yield Paragraph(read_back if tuple(_read_back(told)) else told.say("they_ask_this"))
        yield Items(asked_for)


def _asked_for(told: Told) -> Iterator[str]:
    """After a stop nobody goes back to read the plate."""
    make, serial = (told.answer(name) is None for name in ("make_and_model", "serial_number"))
    if (make or serial) and not told.assessment.danger.stops:
        yield told.say("hand_plate", missing="both" if make and serial else "make" if make else "serial")
    if not told.is_rented:
        if may_be_under_guarantee(told):
            yield told.say("hand_receipt")
        if told.answer("guarantee") is None and told.was_due("guarantee") and not told.assessment.danger.stops:
            yield told.say("hand_guarantee")
    if told.answer("access_for_visit") is None:
        yield told.say("hand_way")
    if told.verdict.action != "maker_seller_or_landlord_first" and not told.is_rented:
        yield told.say("hand_fee")


def _you_said(told: Told) -> Iterator[Block]:
    """Danger first, as it was told; then the complaint, in the reader's own person."""
    yield Pairs(tuple(_read_back(told)))


def _read_back(told: Told) -> Iterator[tuple[str, str]]:
    danger = told.assessment.danger
    told_of = (*(stop.sign_id for stop in danger.stops if stop.source == "sign"), *told.open_signs)
    yield from ((told.say("you_danger"), _danger(told, sign_id)) for sign_id in told_of)
    off = told.state.answers.get(OVEN_IS_OFF)
    if danger.stops and off is not None and off.status == "answered":
        when = told.time(off.recorded_at)
        yield told.say("you_off"), told.say("you_off_when", how=told.given(off), when=when)
    yield from ((_label(told, each.question_id), told.given(each)) for each in _said(told))


def _danger(told: Told, sign_id: str) -> str:
    sign = told.sentences.wording.say(f"sign-{sign_id}", **told.sentences.lines)
    answer = told.answer(sign_question_id(sign_id))
    return sign if answer is None else told.say("you_danger_narrowed", sign=sign, answer=answer)


def _said(told: Told) -> list[Answer]:
    return [each for stage in STAGES for each in told.answered(stage) if each.status == "answered"]


def _label(told: Told, question_id: str) -> str:
    own = f"you_{question_id}"
    return told.say(own) if told.sentences.wording.has(f"summary-{own}") else told.label(question_id)
