"""What came of the session, once somebody has told it."""

from collections.abc import Iterator
from datetime import datetime

from assistant.belief.outcomes import RESULTS
from assistant.interview.events import OutcomeRecorded
from assistant.reports.lettering import shown
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Pairs

Outcome = tuple[datetime, OutcomeRecorded]


def outcome(told: Told) -> Iterator[Block]:
    """The latest one, which is what counts, and in short those that were told before it; nothing without any."""
    recorded = [(e.recorded_at, e.happening) for e in told.events if isinstance(e.happening, OutcomeRecorded)]
    if recorded:
        *before, latest = recorded
        yield Pairs(tuple(_rows(told, latest)))
        yield told.listed("outcome_before", (_in_short(told, each) for each in before))


def _rows(told: Told, outcome: Outcome) -> Iterator[tuple[str, str]]:
    moment, it = outcome
    yield told.say("outcome_result"), _result(told, it)
    if it.causes_found:
        yield told.say("outcome_causes"), _causes(told, it)
    if it.part_fitted is not None:
        yield told.say("outcome_part"), _part(told, it.part_fitted)
    if it.minutes is not None:
        yield told.say("outcome_minutes"), str(it.minutes)
    if it.text != "":
        note = told.sentences.wording.say("answer-erased") if it.text is None else shown(it.text)
        yield told.say("outcome_note"), note
    yield told.say("outcome_when"), told.time(moment)


def _in_short(told: Told, outcome: Outcome) -> str:
    moment, it = outcome
    when, result = told.time(moment), _result(told, it)
    if not it.causes_found:
        return told.say("outcome_in_short_no_cause", when=when, result=result)
    return told.say("outcome_in_short", when=when, result=result, causes=_causes(told, it))


def _result(told: Told, it: OutcomeRecorded) -> str:
    return told.sentences.wording.say(f"result-{it.result}") if it.result in RESULTS else it.result


def _causes(told: Told, it: OutcomeRecorded) -> str:
    """As the trade names them; by their ids, where today's rules no longer have them."""
    has = told.sentences.wording.has
    return "; ".join(told.cause(cause) if has(f"cause-{cause}", "trade") else cause for cause in it.causes_found)


def _part(told: Told, part: str) -> str:
    return told.part(part) if told.sentences.wording.has(f"part-{part}", "trade") else part
