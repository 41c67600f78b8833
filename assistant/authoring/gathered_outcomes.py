"""All outcomes that are known, each session once: those in the sessions themselves, and those in a file."""

from collections.abc import Iterable, Iterator, Mapping, Set
from itertools import takewhile
from pathlib import Path
from typing import TextIO

from assistant.authoring.outcome_file import read_outcomes, say_bad_lines
from assistant.belief.outcomes import Outcome, latest_of_each_session
from assistant.interview.assess import seen_by_belief
from assistant.interview.events import Event, OutcomeRecorded
from assistant.interview.log import EventLog
from assistant.interview.state import fold
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording


def gather(
    log: EventLog, knowledge: Knowledge, file: Path | None, wording: Wording, out: TextIO, *, with_evidence: bool = True
) -> tuple[Outcome, ...]:
    """In the order of their days; lines of the file that are none are named. Raises OSError.

    Without evidence it is much quicker: then no session is read.
    """
    from_file: tuple[Outcome, ...] = ()
    if file is not None:
        from_file, bad = read_outcomes(file)
        say_bad_lines(bad, wording, out)
    return merged(from_file, outcomes_in(log, knowledge, with_evidence=with_evidence))


def merged(from_file: Iterable[Outcome], from_log: Iterable[Outcome]) -> tuple[Outcome, ...]:
    """Each session once, by the outcome of the later day, on the same day by the one in the log."""
    each_once = (*latest_of_each_session(from_file), *from_log)
    return latest_of_each_session(sorted(each_once, key=lambda outcome: outcome.recorded_on))


def outcomes_in(log: EventLog, knowledge: Knowledge, *, with_evidence: bool = True) -> Iterator[Outcome]:
    """The latest outcome of each session that has one, with the evidence that belief sees under these rules."""
    for event in latest_events(log):
        evidence, not_fitted = _seen_before(event.session_id, log, knowledge) if with_evidence else ({}, frozenset())
        yield _outcome(event, evidence, not_fitted, knowledge)


def latest_events(log: EventLog) -> tuple[Event, ...]:
    """Of each session that has any, the outcome that was recorded last, whatever the clocks said."""
    latest: dict[str, Event] = {}
    for event in log.events_of(OutcomeRecorded):
        other = latest.get(event.session_id)
        latest[event.session_id] = event if other is None or event.sequence > other.sequence else other
    return tuple(latest.values())


def _seen_before(session_id: str, log: EventLog, knowledge: Knowledge) -> tuple[Mapping[str, str], Set[str]]:
    """What was answered after somebody had been there is no evidence of what was wrong before."""
    before = takewhile(lambda each: not isinstance(each.happening, OutcomeRecorded), log.read(session_id))
    return seen_by_belief(knowledge, fold(before))


def _outcome(event: Event, evidence: Mapping[str, str], not_fitted: Set[str], knowledge: Knowledge) -> Outcome:
    told = event.happening
    assert isinstance(told, OutcomeRecorded)
    return Outcome(
        session=event.session_id,
        recorded_on=event.recorded_at.date(),
        group=told.group,
        result=told.result,
        causes_found=told.causes_found,
        evidence=dict(sorted(evidence.items())),
        not_fitted=tuple(sorted(not_fitted)),
        rules_fingerprint=knowledge.fingerprint,
    )
