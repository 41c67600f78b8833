"""What an engineer reads before the visit: page one in the van, page two at the oven."""

from collections.abc import Iterator
from dataclasses import replace

from assistant.interview.choice import little_is_known
from assistant.interview.first_visit import chance_of_first_visit
from assistant.interview.verdict import NONE
from assistant.reports.summary.grid import grid
from assistant.reports.summary.safety import off, steps_told
from assistant.reports.summary.session import Told
from assistant.reports.summary.test_plan import after_repair, first_tests, how_to_test
from assistant.reports.summary.value import (
    Block,
    Facts,
    Items,
    Page,
    Pairs,
    Paragraph,
    Summary,
    Table,
)
from assistant.reports.summary.what_was_measured import measured
from assistant.reports.summary.which_oven import IDENTITY, oven

CAUSES_FIRST = 3
LEAST_TOLD = 0.01
"""A cause below isn't named on page two either."""
PAIR_FIRST = 0.05
"""Two faults at once from here on stand on page one."""
SAID = (
    "complaint_in_own_words",
    "what_goes_wrong",
    "which_worry",
    "since_when",
    "how_it_began",
    "what_changed",
    "wrong_from_that_day",
    "which_dishes",
    "how_often",
    "trip_device",
    "trip_moment",
    "trips_with_which",
    "long_unused",
    "earlier_repairs",
    "access_for_visit",
    "anything_else",
)
"""In the order in which an engineer asks for it."""
ALWAYS_WANTED = ("since_when", "what_changed", "earlier_repairs", "access_for_visit")


def engineer_summary(told: Told) -> Summary:
    """In the order in which it is needed: is it off, which oven, what was said, what it may be, what to do first."""
    kit = _kit(told)
    chance = chance_of_first_visit(told.script, told.assessment, kit, _who(told))
    first = (
        told.section("off", off(told)),
        told.section("oven", oven(told)),
        told.section("said", _said(told)),
        told.section("grid", _grid(told)),
        told.section("likely", _likely(told)),
        told.section("tests", first_tests(told)),
        told.section("bring", _bring(told, kit, chance)),
        told.section("unknown", _unknown(told)),
    )
    second = (
        told.section("steps_told", steps_told(told)),
        told.section("how_to_test", how_to_test(told)),
        told.section("after_repair", after_repair(told)),
        told.section("rests_on", _rests_on(told)),
        told.section("ruled_out", _all_ruled_out(told)),
        told.section("all_causes", _all_causes(told)),
        told.section("measured", measured(told)),
        told.section("answers", _answers(told)),
    )
    return Summary(
        reader="engineer",
        lang=told.sentences.wording.lang,
        title=told.say("title_engineer"),
        about=told.sentences.headline(told.verdict),
        session=told.session,
        written_at=told.latest,
        pages=tuple(Page(tuple(each for each in page if each.blocks)) for page in (first, second)),
        facts=_facts(told, kit, chance),
    )


def _facts(told: Told, kit: tuple[str, ...], chance: float | None) -> Facts:
    return replace(
        told.facts(),
        causes=told.verdict.causes,
        tests=told.planned_tests,
        kit=kit,
        kit_chance=chance if kit else None,
    )


def _kit(told: Told) -> tuple[str, ...]:
    kit = told.verdict.details.get("kit", ())
    return kit if isinstance(kit, tuple) else ()


def _who(told: Told) -> str:
    return str(told.verdict.details.get("who", "appliance_engineer"))


def _said(told: Told) -> Iterator[Block]:
    """The customer's own words first."""
    yield Pairs(tuple((told.label(name), given) for name in SAID if (given := told.answer(name)) is not None))
    missing = [told.label(name) for name in ALWAYS_WANTED if told.answer(name) is None and told.was_due(name)]
    if missing and told.somebody_comes:
        yield told.listed("not_told", missing)


def _grid(told: Told) -> Iterator[Block]:
    table = grid(told)
    if table is not None:
        yield table


def _likely(told: Told) -> Iterator[Block]:
    """Figures, which an engineer may see. After a stop nobody is told that nothing is wrong."""
    named = [(cause, p) for cause, p in told.verdict.named if cause != NONE or not told.assessment.danger.stops]
    rows = [(told.cause(cause), told.percent(p), told.part_of(cause)) for cause, p in named[:CAUSES_FIRST]]
    yield Table((told.say("column_cause"), told.say("column_probability"), told.say("column_part")), tuple(rows))
    if little_is_known(told.assessment):
        yield Paragraph(told.say("little_known"), "quiet")
    elif told.verdict.leading == NONE and not told.assessment.danger.stops:
        yield Paragraph(told.say("nothing_leads"), "quiet")
    yield told.listed("two_at_once", _pairs(told, PAIR_FIRST))
    gone = [told.cause(cause) for each in told.ruled_out for cause in each.causes]
    yield told.listed("ruled_out", gone[:RULED_OUT_FIRST])


RULED_OUT_FIRST = 6


def _pairs(told: Told, least: float) -> tuple[str, ...]:
    """Two causes at once that are at least so probable, with their probability."""
    both = [(pair, p) for pair, p in told.verdict.hypotheses if len(pair) > 1 and p >= least]
    return tuple(
        told.say("pair", first=told.cause(first), second=told.cause(second), percent=told.percent(p))
        for (first, second), p in both
    )


def _bring(told: Told, kit: tuple[str, ...], chance: float | None) -> Iterator[Block]:
    if not kit:
        if told.planned_tests:
            yield Paragraph(told.say("nothing_to_bring"))
        return
    yield Paragraph("; ".join(map(told.part, kit)), "strong")
    if chance is not None:
        yield Paragraph(told.say("kit_chance", percent=told.percent(chance)))
    yield Paragraph(told.say("bring_generic"), "quiet")


def _unknown(told: Told) -> Iterator[Block]:
    """What was asked and isn't known."""
    open_ones = [
        told.label(each.question_id)
        for each in told.answered("complaint", "signs", "visit", "danger")
        if each.status != "answered" and each.question_id not in (*ALWAYS_WANTED, *IDENTITY)
    ]
    yield told.listed("asked_in_vain", dict.fromkeys(open_ones))


def _rests_on(told: Told) -> Iterator[Block]:
    text = told.sentences.verdict(told.verdict, in_figures=True)
    if text.because:
        yield Items(text.because)
    if text.would_change:
        yield Paragraph(told.say("would_change"))
        yield Items(text.would_change)


def _all_ruled_out(told: Told) -> Iterator[Block]:
    rows = [
        (
            "; ".join(map(told.cause, each.causes)),
            told.say("by_several") if each.question_id is None else told.question_and_answer(each.question_id),
        )
        for each in told.ruled_out
    ]
    if rows:
        yield Table((told.say("column_ruled_out"), told.say("column_by")), tuple(rows))


def _all_causes(told: Told) -> Iterator[Block]:
    rows = [(told.cause(cause), told.percent(p)) for cause, p in told.verdict.named if p >= LEAST_TOLD]
    yield Table((told.say("column_cause"), told.say("column_probability")), tuple(rows))
    yield told.listed("two_at_once", _pairs(told, LEAST_TOLD))


def _answers(told: Told) -> Iterator[Block]:
    """Everything that was said, in the order in which it was; the day stands where it changes."""
    said = sorted(told.state.answers.values(), key=lambda each: each.sequence)
    days = [None, *(each.recorded_at.date() for each in said)]
    rows = [
        (
            told.hour(each.recorded_at) if each.recorded_at.date() == day else told.time(each.recorded_at),
            told.question(each.question_id),
            told.given(each),
        )
        for each, day in zip(said, days, strict=False)
    ]
    yield Table((told.say("column_time"), told.say("column_question"), told.say("column_answer")), tuple(rows))
    if told.state.replaced:
        yield Paragraph(told.say("changed_answers", number=len(told.state.replaced)), "quiet")
