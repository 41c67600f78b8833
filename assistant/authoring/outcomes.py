"""`ovenside outcomes record`: what a case turned out to be, as one more line of a file."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TextIO

from assistant.authoring.outcome_file import NotOutcomes, append_outcome
from assistant.belief.hypotheses import SOMETHING_ELSE
from assistant.belief.outcomes import GROUPS, RESULTS, Outcome, misfit_of
from assistant.errors import SessionUnknown
from assistant.interview.assess import assess
from assistant.interview.log import EventLog, SessionRecord
from assistant.interview.script import Script
from assistant.interview.state import fold
from assistant.knowledge.problems import nearest_name
from assistant.wording.locale import Wording

ID_SHOWN = 8


@dataclass(frozen=True)
class Told:
    """What somebody says of a case, as it was typed: nothing of it is checked yet."""

    session: str
    group: str
    result: str
    causes_found: tuple[str, ...]


def record(log: EventLog, script: Script, wording: Wording, told: Told, on: date, to: Path, out: TextIO) -> int:
    """Add one line to the file, or say why not and add nothing. Returns the exit status."""
    mistake = _mistake_in(told, script, wording)
    if mistake is None:
        try:
            session = log.find_by_id_prefix(told.session)
            outcome = outcome_of(session, log, script, told, on)
            append_outcome(to, outcome)
        except SessionUnknown:
            mistake = wording.say("sessions-unknown")
        except NotOutcomes:
            mistake = wording.say("outcomes-not_outcomes", where=str(to))
        except OSError as error:
            mistake = wording.say("outcomes-not_written", where=str(to), reason=error.strerror or str(error))
    if mistake is not None:
        out.write(mistake + "\n")
        return 1
    out.write(_done(outcome, wording) + "\n")
    return 0


def outcome_of(session: SessionRecord, log: EventLog, script: Script, told: Told, on: date) -> Outcome:
    """What was told of the session, beside the evidence that belief sees in it under these rules."""
    seen = assess(script, fold(log.read(session.session_id)))
    return Outcome.model_validate(
        {
            "session": session.session_id,
            "recorded_on": on,
            "group": told.group,
            "result": told.result,
            "causes_found": tuple(dict.fromkeys(told.causes_found)),
            "evidence": dict(sorted(seen.evidence.items())),
            "not_fitted": tuple(sorted(seen.not_fitted)),
            "rules_fingerprint": script.knowledge.fingerprint,
        }
    )


def _mistake_in(told: Told, script: Script, wording: Wording) -> str | None:
    """What was told wrongly, in a sentence."""
    causes = (*script.knowledge.causes, SOMETHING_ELSE)
    unknown = [
        _not_in_list(wording, code, name, valid)
        for code, valid, names in (
            ("group_unknown", GROUPS, [told.group]),
            ("result_unknown", RESULTS, [told.result]),
            ("cause_unknown", causes, told.causes_found),
        )
        for name in names
        if name not in valid
    ]
    if unknown:
        return unknown[0]
    misfit = misfit_of(told.result, told.causes_found)
    return wording.say(f"outcomes-{misfit}", result=told.result) if misfit else None


def _not_in_list(wording: Wording, code: str, found: str, valid: Collection[str]) -> str:
    said = wording.say(f"outcomes-{code}", found=found, valid=", ".join(valid))
    nearest = nearest_name(found, valid)
    return said if nearest is None else f"{said} {wording.say('problem-did_you_mean', nearest=nearest)}"


def _done(outcome: Outcome, wording: Wording) -> str:
    message = "outcomes-recorded" if outcome.counts else "outcomes-recorded_uncounted"
    return wording.say(
        message, id=outcome.session[:ID_SHOWN], result=outcome.result, causes=_listed(outcome.causes_found)
    )


def _listed(names: Iterable[str]) -> str:
    return ", ".join(names) or "–"
