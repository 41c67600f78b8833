"""What an engineer reads before the visit: page one in the van, page two at the oven."""

from collections.abc import Iterator
from dataclasses import replace

from assistant.interview.danger import Stop
from assistant.interview.verdict import NONE
from assistant.knowledge.danger_questions import OVEN_IS_OFF, UNSURE
from assistant.knowledge.model import Stage
from assistant.reports.measured import charts_of, described_in_words, words_of
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import (
    Block,
    Drawing,
    Facts,
    Items,
    Page,
    Pairs,
    Paragraph,
    Section,
    Summary,
    Table,
)
from assistant.reports.svg_chart import svg_chart

CAUSES_FIRST = 3
LEAST_TOLD = 0.01
"""A cause below isn't named on page two either."""
SAID: tuple[Stage, ...] = ("complaint", "visit")


def engineer_summary(told: Told) -> Summary:
    """In the order in which it is needed: is it off, which oven, what was said, what it may be, what to do first."""
    first = (
        _section(told, "off", _off(told)),
        _section(told, "oven", _oven(told)),
        _section(told, "said", _said(told)),
        _section(told, "likely", _likely(told)),
        _section(told, "tests", _tests(told)),
        _section(told, "bring", _bring(told)),
        _section(told, "unknown", _unknown(told)),
    )
    second = (
        _section(told, "rests_on", _rests_on(told)),
        _section(told, "all_causes", _all_causes(told)),
        _section(told, "measured", _measured(told)),
        _section(told, "answers", _answers(told)),
    )
    return Summary(
        reader="engineer",
        lang=told.sentences.wording.lang,
        title=told.say("title_engineer"),
        about=told.sentences.headline(told.verdict),
        session=told.session,
        written_at=told.latest,
        pages=tuple(Page(tuple(each for each in page if each.blocks)) for page in (first, second)),
        facts=_facts(told),
    )


def _facts(told: Told) -> Facts:
    kit = told.verdict.details.get("kit", ())
    return replace(
        told.facts(),
        causes=told.verdict.causes,
        tests=told.planned_tests(),
        kit=kit if isinstance(kit, tuple) else (),
    )


def _section(told: Told, name: str, blocks: Iterator[Block] | tuple[Block, ...]) -> Section:
    return Section(name, told.say(f"heading_{name}"), tuple(blocks))


def _off(told: Told) -> Iterator[Block]:
    """Danger first: which sign, since when, what was told to do, and whether the oven is off."""
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
    steps = told.sentences.verdict(told.verdict).steps
    if danger.stops and steps:
        yield Paragraph(told.say("steps_told"))
        yield Items(steps, numbered=True)


def _stands(told: Told, stop: Stop) -> str:
    name = {"sign": "sign_told", "finding": "sign_found", "belief": "sign_likely"}[stop.source]
    return told.say(name, sign=_sign(told, stop.sign_id), when=told.at(stop.since))


def _sign(told: Told, sign_id: str) -> str:
    known = sign_id if sign_id in told.script.knowledge.signs else UNSURE
    return told.sentences.wording.say(f"sign-{known}", **told.sentences.lines)


def _oven(told: Told) -> Iterator[Block]:
    rows = [(told.label(each.question_id), told.given(each)) for each in told.answered("oven")]
    if told.state.cavity:
        rows.append((told.say("cavity"), told.say(f"cavity_{told.state.cavity}")))
    yield Pairs(tuple(rows))
    yield Paragraph(told.say("plate_not_told"), "quiet")


def _said(told: Told) -> Iterator[Block]:
    yield Pairs(tuple((told.label(each.question_id), told.given(each)) for each in told.answered(*SAID)))


def _likely(told: Told) -> Iterator[Block]:
    """Figures, which an engineer may see; nothing where danger was all that was found out."""
    rows = [
        (told.cause(cause), told.percent(p), told.part_of(cause))
        for cause, p in told.verdict.named[:CAUSES_FIRST]
        if p >= LEAST_TOLD
    ]
    yield Table((told.say("column_cause"), told.say("column_probability"), told.say("column_part")), tuple(rows))
    if told.verdict.leading == NONE:
        yield Paragraph(told.say("nothing_leads"), "quiet")


def _tests(told: Told) -> Iterator[Block]:
    """Isolation first, then the tests in the order in which they are made."""
    planned = told.planned_tests()
    if not planned:
        return
    yield Paragraph(told.say("before_any_test"), "strong")
    questions = told.script.knowledge.questions
    yield Table(
        (told.say("column_number"), told.say("column_test"), told.say("column_how"), told.say("column_minutes")),
        tuple(
            (str(number), text.text, text.how, f"{questions[text.id].minutes.value:g}")
            for number, text in enumerate(map(told.sentences.question_by_id, planned), start=1)
        ),
    )
    yield Paragraph(told.say("after_repair"), "quiet")


def _bring(told: Told) -> Iterator[Block]:
    kit = told.verdict.details.get("kit", ())
    if isinstance(kit, tuple) and kit:
        yield Items(tuple(told.part(part) for part in kit))
        yield Paragraph(told.say("bring_generic"), "quiet")


def _unknown(told: Told) -> Iterator[Block]:
    """What was asked and isn't known."""
    open_ones = [each for each in told.state.answers.values() if each.status != "answered"]
    questions = told.script.knowledge.questions
    rows = [(told.label(e.question_id), told.given(e)) for e in open_ones if e.question_id in questions]
    if rows:
        yield Pairs(tuple(rows))


def _rests_on(told: Told) -> Iterator[Block]:
    text = told.sentences.verdict(told.verdict, in_figures=True)
    if text.because:
        yield Items(text.because)
    if text.would_change:
        yield Paragraph(told.say("would_change"))
        yield Items(text.would_change)


def _all_causes(told: Told) -> Iterator[Block]:
    rows = [(told.cause(cause), told.percent(p)) for cause, p in told.verdict.named if p >= LEAST_TOLD]
    yield Table((told.say("column_cause"), told.say("column_probability")), tuple(rows))
    both = [(pair, p) for pair, p in told.verdict.hypotheses if len(pair) > 1 and p >= LEAST_TOLD]
    if both:
        yield Paragraph(told.say("two_at_once"))
        yield Items(
            tuple(
                told.say("pair", first=told.cause(first), second=told.cause(second), percent=told.percent(p))
                for (first, second), p in both
            )
        )


def _measured(told: Told) -> Iterator[Block]:
    """The curves, with what a sound oven would have shown behind them, and in words."""
    for question_id, chart in charts_of(told.script, told.state.answers):
        described = described_in_words(told.sentences, chart)
        words = words_of(told.sentences, question_id, chart)
        yield Drawing(svg_chart(chart, words), " ".join((words.title + ".", *described)))


def _answers(told: Told) -> Iterator[Block]:
    """Everything that was said, in the order in which it was."""
    questions = told.script.knowledge.questions
    rows = [
        (
            told.time(each.recorded_at),
            told.sentences.question_by_id(each.question_id).text if each.question_id in questions else each.question_id,
            told.given(each),
        )
        for each in sorted(told.state.answers.values(), key=lambda each: each.sequence)
    ]
    yield Table((told.say("column_time"), told.say("column_question"), told.say("column_answer")), tuple(rows))
    if told.state.replaced:
        yield Paragraph(told.say("changed_answers", number=len(told.state.replaced)), "quiet")
