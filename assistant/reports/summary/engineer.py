"""What an engineer reads before the visit: page one in the van, page two at the oven."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from assistant.interview.choice import little_is_known
from assistant.interview.first_visit import chance_of_first_visit
from assistant.interview.reasons import Reason, compared, feared_and_harmless, holding_up, unexplained
from assistant.interview.verdict import NONE
from assistant.reports.summary.grid import grid, in_a_word
from assistant.reports.summary.outcome import outcome
from assistant.reports.summary.safety import off, steps_told
from assistant.reports.summary.session import Told
from assistant.reports.summary.test_plan import after_repair, first_tests, further_tests, how_to_test, rows_of
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
from assistant.reports.summary.what_was_measured import measured, results
from assistant.reports.summary.which_oven import oven
from assistant.wording.written_lines import written_lines

CAUSES_FIRST = 3
LEAST_TOLD = 0.01
"""A cause below isn't named on page two either."""
NONE_STANDS_OUT = 0.3
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
    "anything_else",
)
CALLER = ("who_is_speaking", "call_back_number", "pressing_need", "call_notes")
"""What was noted on the telephone."""
BESIDE = (
    "trip_device",
    "trip_moment",
    "trips_with_which",
    "long_unused",
    "earlier_repairs",
    "access_for_visit",
    *CALLER,
)
"""Each in the order in which an engineer asks for it."""
RULED_OUT_FIRST = 4
ORDERS_PARTS = ("make_and_model", "serial_number")
SPEAKS_FIRST = 4
PHONE_FIRST = 3
UNKNOWN_FIRST = 8
SHOCK = "shock"
NOT_FOR_THE_VISIT = frozenset({"hot_gate", "person_at_oven", "may_look_cold"})
LINES_FIRST = 8
"""Of a measurement, on page one."""


def engineer_summary(told: Told) -> Summary:
    """In the order in which it is needed: is it off, which oven, what was said, what it may be, what to do first."""
    kit = _kit(told)
    chance = chance_of_first_visit(told.script, told.assessment, kit, _who(told))
    tests = rows_of(told)
    first = (
        told.section("off", off(told)),
        told.section("outcome", outcome(told)),
        told.section("oven", oven(told)),
        told.section("said", _said(told)),
        told.section("grid", _grid(told)),
        told.section("beside", _beside(told)),
        told.section("likely", _likely(told)),
        told.section("tests", first_tests(told, tests)),
        told.section("bring", _bring(told, kit, chance)),
        told.section("unknown", _unknown(told)),
    )
    second = (
        told.section("steps_told", steps_told(told)),
        told.section("tests_then", further_tests(told, tests)),
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
        about=_about(told),
        session=told.session,
        written_at=told.latest,
        pages=tuple(Page(tuple(each for each in page if each.blocks)) for page in (first, second)),
        facts=_facts(told, kit, chance),
    )


def _about(told: Told) -> str:
    """What the customer was told; after a stop also who is to see the oven first."""
    headline = told.sentences.headline(told.verdict)
    if told.verdict.stops:
        return told.say("told_who_first", headline=headline, who=told.sentences.who(told.verdict))
    return told.say("told_customer", headline=headline)


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
    yield Pairs(tuple(_written_down(told)))
    yield _missing(told, "since_when", "what_changed")


def _beside(told: Told) -> Iterator[Block]:
    """Trips, earlier repairs, and how to get in."""
    yield Pairs(tuple((told.label(name), given) for name in BESIDE if (given := told.answer(name)) is not None))
    yield _missing(told, "earlier_repairs", "access_for_visit")
    if told.is_rented:
        yield Paragraph(told.say("landlord_agrees"))


def _missing(told: Told, *names: str) -> Block:
    """What an engineer always wants, where somebody comes and it wasn't told."""
    missing = [told.label(name) for name in names if told.answer(name) is None and told.was_due(name)]
    return told.listed("not_told", missing if told.somebody_comes else ())


def _written_down(told: Told) -> Iterator[tuple[str, str]]:
    """What the customer measured: what was found, or the first lines of what can't be read anew."""
    found = results(told)
    for answer in told.answered("signs"):
        if told.script.knowledge.questions[answer.question_id].is_measurement and isinstance(answer.value, tuple):
            first = answer.value[:LINES_FIRST]
            more = ("…",) if len(answer.value) > LINES_FIRST else ()
            lines = "; ".join((*written_lines(first, told.sentences.wording), *more))
            yield told.label(answer.question_id), found.get(answer.question_id, lines)


def _grid(told: Told) -> Iterator[Block]:
    table = grid(told)
    if table is not None:
        yield table


def _likely(told: Told) -> Iterator[Block]:
    """Figures, which an engineer may see. After a stop nobody is told that nothing is wrong."""
    if told.verdict.action == "outside":
        yield Paragraph(told.say("not_electric"))
        return
    rows = [(told.cause(cause), told.percent(p), told.part_of(cause)) for cause, p in told.named[:CAUSES_FIRST]]
    yield Table((told.say("column_cause"), told.say("column_probability"), told.say("column_part")), tuple(rows))
    if little_is_known(told.assessment):
        yield Paragraph(told.say("little_known"), "quiet")
    elif told.named[0][1] < NONE_STANDS_OUT:
        yield Paragraph(told.say("none_stands_out"), "quiet")
    elif told.named[0][0] == NONE:
        yield Paragraph(told.say("nothing_leads"), "quiet")
    yield _speaks(told)
    yield from _not_explained(told)
    yield told.listed("two_at_once", _pairs(told, PAIR_FIRST))
    yield told.listed("ruled_out", _gone(told)[:RULED_OUT_FIRST])


def _gone(told: Told) -> list[str]:
    """What is ruled out, faults before habits; by what stands on page two."""
    causes = told.script.knowledge.causes
    gone = [cause for each in told.ruled_out for cause in each.causes]
    return [told.cause(cause) for cause in sorted(gone, key=lambda cause: causes[cause].kind != "fault")]


def _speaks(told: Told) -> Block:
    """The answers that hold up the likeliest set, in a few words each; no figures. While danger is open, nothing
    speaks for an oven with nothing wrong.
    """
    leader, reasons = holding_up(told.script, told.assessment)
    if not leader and told.assessment.danger.open:
        return Pairs(())
    words = "; ".join(f"{told.label(each.id)}: {_in_few_words(told, each.id)}" for each in reasons[:SPEAKS_FIRST])
    is_first = leader == (told.named[0][0],)
    label = told.say("speaks_for_it") if is_first else told.say("speaks_for", first=_set(told, leader))
    return Pairs(((label, words),) if words else ())


def _not_explained(told: Told) -> Iterator[Block]:
    """What the likeliest set leaves unexplained: danger first. While danger is open nobody is told of a sound oven."""
    leader, reasons = unexplained(told.script, told.assessment)
    if not reasons or (not leader and told.assessment.danger.open):
        return
    words = [
        told.sentences.wording.say(f"sign-{each.id}", **told.sentences.lines)
        if each.kind == "sign"
        else f"{told.label(each.id)}: {_in_few_words(told, each.id)}"
        for each in reasons
    ]
    is_first = leader == (told.named[0][0],)
    label = told.say("not_explained") if is_first else told.say("not_explained_by", first=_set(told, leader))
    yield Pairs(((label, "; ".join(words)),))
    if any(each.kind == "sign" and each.id == SHOCK for each in reasons):
        yield Paragraph(told.say("shock_first"), "strong")


def _in_few_words(told: Told, question_id: str) -> str:
    """Of what was measured the result stands where it is told what the customer says."""
    answer = told.state.answers[question_id]
    word = in_a_word(told, question_id, answer)
    if word is None and told.script.knowledge.questions[question_id].is_measurement:
        return told.say("see_above")
    return word or told.given(answer)


def _pairs(told: Told, least: float) -> tuple[str, ...]:
    """Two causes at once that are at least so probable, with their probability."""
    both = [(pair, p) for pair, p in told.verdict.hypotheses if len(pair) > 1 and p >= least]
    return tuple(
        told.say("pair", first=told.cause(first), second=told.cause(second), percent=told.percent(p))
        for (first, second), p in both
    )


def _bring(told: Told, kit: tuple[str, ...], chance: float | None) -> Iterator[Block]:
    if not kit:
        if told.planned_tests and "kit" in told.verdict.details:
            yield Paragraph(told.say("bring_after_danger" if told.verdict.stops else "nothing_to_bring"))
        return
    yield Paragraph("; ".join(map(told.part, kit)), "strong")
    without_plate = told.somebody_comes and bool(_plate_unread(told))
    said = [told.say("bring_once_known" if without_plate else "bring_generic")]
    if chance is not None:
        said.append(told.say("kit_chance", percent=told.percent(chance), parts=len(kit)))
    said += _one_alone(told, kit)
    if without_plate:
        said.append(told.say("two_visits"))
    yield Paragraph(" ".join(said))


def _plate_unread(told: Told) -> list[str]:
    """Of what orders parts, what isn't known."""
    return [name for name in ORDERS_PARTS if told.answer(name) is None]


def _one_alone(told: Told, kit: tuple[str, ...]) -> Iterator[str]:
    """Of several parts, what the best one alone would do: often nearly as much."""
    chances = {part: chance_of_first_visit(told.script, told.assessment, (part,), _who(told)) or 0.0 for part in kit}
    if len(kit) > 1:
        best = max(kit, key=chances.__getitem__)
        yield told.say("one_alone", part=told.part(best), percent=told.percent(chances[best]))


def _unknown(told: Told) -> Iterator[Block]:
    """What may still be asked by phone; and what was asked and isn't known."""
    phone = [told.question(change.question_id) for change in told.verdict.would_change if change.value is not None]
    plate = [told.say("plate_by_phone")] if told.somebody_comes and _kit(told) and _plate_unread(told) else []
    yield told.listed("ask_by_phone", (*plate, *list(dict.fromkeys(phone))[:PHONE_FIRST]))
    open_ones = [
        told.label(each.question_id)
        for each in told.answered("complaint", "signs", "danger")
        if each.status != "answered" and told.script.knowledge.questions[each.question_id].kind != "text"
    ]
    yield told.listed("asked_in_vain", list(dict.fromkeys(open_ones))[:UNKNOWN_FIRST])


def _rests_on(told: Told) -> Iterator[Block]:
    """What each answer weighs, for the likeliest set against the strongest rival that answers tell from it."""
    weighed = [each for each in told.verdict.because if each.decibans is not None]
    if weighed:
        feared = told.verdict.stops != ()
        sets = feared_and_harmless if feared else compared
        leader, rival = sets(told.script, told.assessment)
        name = "feared_and_harmless" if feared else "first_and_second"
        yield Paragraph(told.say(name, first=_set(told, leader), second=_set(told, rival)))
        yield Items(tuple(_weight(told, each) for each in weighed))
    others = [each for each in told.verdict.because if each.decibans is None and each.kind == "finding"]
    yield Items(tuple(told.sentences.wording.say(f"finding-{each.id}") for each in others))
    text = told.sentences.verdict(told.verdict)
    if text.would_change:
        yield Paragraph(told.say("would_change"))
        yield Items(text.would_change)


def _set(told: Told, causes: Sequence[str]) -> str:
    return "; ".join(map(told.cause, causes)) if causes else told.cause(NONE)


def _weight(told: Told, reason: Reason) -> str:
    times = f"{10 ** ((reason.decibans or 0.0) / 10):.2g}"
    without = told.percent(reason.without or 0.0)
    given = told.sentences.given(reason.id, reason.value)
    if told.script.knowledge.questions[reason.id].is_measurement:
        return told.say("reason_measured", lines=given, times=times, without=without)
    return told.say("reason", answer=given, question=told.question(reason.id), times=times, without=without)


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
    if told.verdict.action == "outside":
        return
    rows = [(told.cause(cause), told.percent(p)) for cause, p in told.named if p >= LEAST_TOLD]
    yield Table((told.say("column_cause"), told.say("column_probability")), tuple(rows))
    yield told.listed("two_at_once", _pairs(told, LEAST_TOLD))


def _answers(told: Told) -> Iterator[Block]:
    """What was said, in the order in which it was; the day stands where it changes. What only says who was in the
    kitchen is left out: the visit doesn't need it.
    """
    questions = told.script.knowledge.questions
    said = [
        each
        for each in sorted(told.state.answers.values(), key=lambda each: each.sequence)
        if each.question_id not in NOT_FOR_THE_VISIT
        and (each.question_id not in questions or questions[each.question_id].stage != "care")
    ]
    days = [None, *(told.day(each.recorded_at) for each in said)]
    rows = [
        (
            told.hour(each.recorded_at) if told.day(each.recorded_at) == day else told.time(each.recorded_at),
            told.question(each.question_id),
            told.given(each),
        )
        for each, day in zip(said, days, strict=False)
    ]
    yield Table((told.say("column_time"), told.say("column_question"), told.say("column_answer")), tuple(rows))
    if told.state.replaced:
        yield Paragraph(told.say("changed_answers", number=len(told.state.replaced)), "quiet")
        yield Items(tuple(_changes(told)))


def _changes(told: Told) -> Iterator[str]:
    """Each answer that was changed or taken back: of which question, from what to what, in the order of the changes. Of
    what was typed only the last words are kept, so of those nothing.
    """
    latest = dict(told.state.answers)
    lines = []
    for old in reversed(told.state.replaced):
        new = latest.get(old.question_id)
        now = told.given(new) if new is not None else told.say("taken_back")
        if old.question_id not in told.state.texts:
            lines.append(f"{told.question(old.question_id)} {told.given(old)} → {now}")
        latest[old.question_id] = old
    yield from reversed(lines)
