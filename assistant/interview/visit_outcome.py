"""What came of a session: checked against the rules, and recorded as an event of it."""

import re
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from uuid import uuid4

from assistant.belief.hypotheses import SOMETHING_ELSE
from assistant.belief.outcomes import GROUPS, NO_VISIT, RESULTS, misfit_of
from assistant.errors import Refused
from assistant.interview.answers import MOST_CHARACTERS, echoed, storable
from assistant.interview.card_numbers import holds_card_number
from assistant.interview.commands import RecordOutcome
from assistant.interview.events import SCHEMA_VERSION, Event, OutcomeRecorded
from assistant.interview.log import EventLog
from assistant.interview.state import fold
from assistant.knowledge.model import Knowledge
from assistant.knowledge.problems import nearest_name

TOLD_BY = "engineer"
DEFAULT_GROUP = "visited"
MOST_MINUTES = 1440

_WHOLE_NUMBER = re.compile(r"[0-9]{1,6}")
_LINE_ENDS = re.compile(r"\r\n?")


@dataclass(frozen=True)
class Misfit:
    """What can't be so: `where`, in which of the command's fields, and why; `code` is worded as `outcomes-CODE`."""

    where: str
    code: str
    details: Mapping[str, str | float] = field(default_factory=dict)
    nearest: str | None = None


def misfits_of(knowledge: Knowledge, command: RecordOutcome) -> tuple[Misfit, ...]:
    """All that can't be so."""
    read = read_outcome(knowledge, command)
    return () if isinstance(read, OutcomeRecorded) else read


def read_outcome(knowledge: Knowledge, command: RecordOutcome) -> OutcomeRecorded | tuple[Misfit, ...]:
    """The happening, or all that can't be so. What doesn't go together is looked for once every name is known."""
    told = _tidied(command)
    wrong = tuple(_unknown_names(knowledge, told)) or tuple(_not_together(knowledge, told))
    misfits = (*wrong, *_unfit_figures(told))
    if misfits:
        return misfits
    return OutcomeRecorded(
        group=told.group or DEFAULT_GROUP,
        result=told.result,
        causes_found=tuple(cause for cause in (told.cause_found, told.second_cause) if cause),
        part_fitted=told.part_fitted or None,
        minutes=int(told.minutes) if told.minutes else None,
        text=told.note,
    )


def is_same(recorded: OutcomeRecorded, told: OutcomeRecorded) -> bool:
    """Whether they say the same. A note that was erased is like any other, so that nothing brings it back."""
    notes_agree = recorded.text is None or recorded.text == told.text
    return notes_agree and replace(recorded, text=None) == replace(told, text=None)


def record_outcome(
    log: EventLog, knowledge: Knowledge, session_id: str, command: RecordOutcome, now: datetime
) -> OutcomeRecorded:
    """Append the event, durable when this returns. `now` is aware.

    Raises Refused with the code of the first misfit, and SessionUnknown, SessionMovedOn, StoreUnreadable as the log
    does.
    """
    state = fold(log.read(session_id))
    happening = read_outcome(knowledge, command)
    if not isinstance(happening, OutcomeRecorded):
        raise Refused(happening[0].code, happening[0].details)
    log.append(session_id, state.sequence, [outcome_event(knowledge, session_id, state.sequence + 1, happening, now)])
    return happening


def outcome_event(
    knowledge: Knowledge, session_id: str, sequence: int, happening: OutcomeRecorded, now: datetime
) -> Event:
    """The happening in its envelope, told by an engineer whoever held the interview."""
    return Event(
        event_id=uuid4().hex,
        session_id=session_id,
        sequence=sequence,
        schema_version=SCHEMA_VERSION,
        rules_fingerprint=knowledge.fingerprint,
        recorded_at=now,
        actor=TOLD_BY,
        role=TOLD_BY,
        message_id=None,
        happening=happening,
    )


def _tidied(command: RecordOutcome) -> RecordOutcome:
    """Names as the rules spell them: `No fault found` is `no_fault_found`."""
    return RecordOutcome(
        result=_name(command.result),
        cause_found=_name(command.cause_found),
        second_cause=_name(command.second_cause),
        part_fitted=_name(command.part_fitted),
        minutes=" ".join(command.minutes.split()),
        note=storable(_LINE_ENDS.sub("\n", command.note).strip()),
        group=_name(command.group),
    )


def _name(typed: str) -> str:
    return "_".join(typed.lower().replace("-", " ").replace("_", " ").split())


def _unknown_names(knowledge: Knowledge, told: RecordOutcome) -> Iterator[Misfit]:
    causes = (*knowledge.causes, SOMETHING_ELSE)
    if not told.result:
        yield Misfit("result", "result_needed", {"valid": ", ".join(RESULTS)})
    for name, code, valid in (
        ("group", "group_unknown", GROUPS),
        ("result", "result_unknown", RESULTS),
        ("cause_found", "cause_unknown", causes),
        ("second_cause", "cause_unknown", causes),
        ("part_fitted", "part_unknown", tuple(knowledge.ovens.parts)),
    ):
        found = getattr(told, name)
        if found and found not in valid:
            yield _unknown(name, code, found, valid)


def _unknown(name: str, code: str, found: str, valid: Collection[str]) -> Misfit:
    listed = {"valid": ", ".join(valid)} if code != "cause_unknown" else {}
    return Misfit(name, code, {"found": echoed(found), **listed}, nearest_name(found[:60], valid))


def _not_together(knowledge: Knowledge, told: RecordOutcome) -> Iterator[Misfit]:
    first, second = told.cause_found, told.second_cause
    amiss = misfit_of(told.result, filter(None, (first, second)))
    if second and not first:
        yield Misfit("second_cause", "second_without_first")
    elif amiss is not None:
        yield Misfit("cause_found", amiss, {"result": told.result})
    elif second and first == second:
        yield Misfit("second_cause", "same_cause_twice")
    elif second and all(
        each in knowledge.causes and knowledge.causes[each].kind == "habit" for each in (first, second)
    ):
        yield Misfit("second_cause", "two_habits")
    if told.part_fitted and told.result in NO_VISIT:
        yield Misfit("part_fitted", "part_without_visit", {"result": told.result})


def _unfit_figures(told: RecordOutcome) -> Iterator[Misfit]:
    if told.minutes and not (_WHOLE_NUMBER.fullmatch(told.minutes) and 1 <= int(told.minutes) <= MOST_MINUTES):
        yield Misfit("minutes", "minutes_wrong", {"found": echoed(told.minutes), "most": MOST_MINUTES})
    if len(told.note) > MOST_CHARACTERS:
        yield Misfit("note", "note_too_long", {"most": MOST_CHARACTERS})
    if holds_card_number(told.note):
        yield Misfit("note", "note_holds_card_number")
