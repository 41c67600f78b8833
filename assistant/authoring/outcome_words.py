"""Outcomes in words."""

from collections.abc import Iterable, Iterator
from datetime import datetime

from assistant.belief.outcomes import RESULTS, counts
from assistant.interview.events import OutcomeRecorded
from assistant.interview.visit_outcome import Misfit
from assistant.wording.locale import Wording

NOTHING = "–"


def say_misfit(misfit: Misfit, wording: Wording) -> str:
    """A sentence, with the nearest valid name where one is near."""
    said = wording.say(f"outcomes-{misfit.code}", **misfit.details)
    return f"{said} {did_you_mean(misfit.nearest, wording)}" if misfit.nearest else said


def did_you_mean(nearest: str, wording: Wording) -> str:
    return wording.say("problem-did_you_mean", nearest=nearest)


def result_name(result: str, wording: Wording) -> str:
    return wording.say(f"result-{result}") if result in RESULTS else result


def cause_name(cause: str, wording: Wording) -> str:
    """Its id where today's words don't have it."""
    return wording.say(f"cause-{cause}") if wording.has(f"cause-{cause}") else cause


def part_name(part: str, wording: Wording) -> str:
    return wording.say(f"part-{part}") if wording.has(f"part-{part}") else part


def recorded(told: OutcomeRecorded, session: str, wording: Wording) -> str:
    """What was recorded just now."""
    message = "outcomes-recorded" if counts(told.result) else "outcomes-recorded_uncounted"
    return wording.say(message, id=session, result=result_name(told.result, wording), causes=_causes(told, wording))


def outcome_in_lines(told: OutcomeRecorded, recorded_at: datetime, wording: Wording) -> str:
    """All that is known of a recorded outcome, indented below its first line."""
    return "\n".join(_lines(told, recorded_at, wording)).replace("\n", "\n    ")


def _lines(told: OutcomeRecorded, recorded_at: datetime, wording: Wording) -> Iterator[str]:
    """Of an erased note, that it was erased."""
    yield wording.say("outcomes-told", on=f"{recorded_at:%Y-%m-%d}", result=result_name(told.result, wording))
    if told.causes_found:
        yield wording.say("outcomes-told_causes", causes=_causes(told, wording))
    if told.part_fitted is not None:
        yield wording.say("outcomes-told_part", part=part_name(told.part_fitted, wording))
    if told.minutes is not None:
        yield wording.say("outcomes-told_minutes", minutes=told.minutes)
    if told.text is None:
        yield wording.say("answer-erased")
    elif told.text:
        yield wording.say("outcomes-told_note", note=told.text)


def _causes(told: OutcomeRecorded, wording: Wording) -> str:
    return listed(cause_name(cause, wording) for cause in told.causes_found)


def listed(names: Iterable[str]) -> str:
    return "; ".join(names) or NOTHING
