"""The same conversations as the project itself leads them, with whatever belief is supposed."""

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from unittest.mock import patch

import numpy as np

from assistant.belief.hypotheses import NOTHING_WRONG, EvidenceModel, Hypothesis
from assistant.belief.posterior import Posterior
from assistant.engine.naive import NaiveEvaluator
from assistant.interview import assess as assess_module
from assistant.interview.commands import (
    BeginMeasuring,
    Command,
    GiveAnswer,
    HearDanger,
    LeaveMeasuring,
    NoteLine,
    SayNotSure,
    SkipQuestion,
    Start,
    TakeBackLine,
    WithdrawAnswer,
)
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script, crisp_rules, script_of
from assistant.knowledge.model import Knowledge
from assistant.store.memory import MemoryStore
from tests.safety.codes import FIRST, NOT_ASKED, NOT_SURE, SANE_LINES, Codes
from tests.safety.fast import CALM, DANGEROUS, STOPPING
from tests.safety.talks import (
    ANSWER,
    BEGIN,
    HEAR,
    HOT,
    LEAVE,
    NOTE,
    REPEATED,
    SANE,
    TAKE_BACK,
    WITHDRAW,
    Happened,
    Talks,
)


def naive_script(knowledge: Knowledge, simulated: Path | None = None) -> Script:
    """The project's script, with the plain evaluator of rules. `simulated`: where simulated ovens are kept."""
    return replace(script_of(knowledge, simulated), evaluator=NaiveEvaluator(crisp_rules(knowledge)))


def begin(script: Script, role: str, region: str | None = None) -> Conversation:
    record = SessionRecord(session_id="a" * 32, code_hash="b" * 64, name=None, created_at=utc_now())
    conversation = Conversation(script, MemoryStore(), record)
    conversation.start(Start(role, region or next(iter(script.knowledge.regions)), "en-GB", "single"))
    return conversation


def command_of(codes: Codes, event: Happened, talks: Talks, talk: int) -> Command | None:
    """What a person of that conversation said, before it is applied to the talks; None for nothing."""
    kind, question, code, mask = (int(each[talk]) for each in (event.kind, event.question, event.code, event.mask))
    if kind == WITHDRAW and talks.answer[question, talk] == NOT_ASKED:
        return None
    if kind >= BEGIN:
        return _measuring_command(codes, kind, question, code, int(talks.lines[codes.measured.index(question), talk]))
    return command(codes, kind, question, code, mask)


def _measuring_command(codes: Codes, kind: int, question: int, sort: int, lines: int) -> Command:
    question_id = codes.questions[question]
    if kind != NOTE:
        return {BEGIN: BeginMeasuring, TAKE_BACK: TakeBackLine, LEAVE: LeaveMeasuring}[kind](question_id)
    return NoteLine(question_id, line_of(codes, question, sort, lines))


def line_of(codes: Codes, question: int, sort: int, lines: int) -> str:
    """What is noted after so many sane lines."""
    of_kind = SANE_LINES[codes.kind_of(question)]
    if sort == REPEATED and lines:
        return of_kind(lines - 1)
    return {SANE: of_kind(lines), HOT: f"{2 + 3 * lines}:00 300 C"}.get(sort, "seven o'clock")


def command(codes: Codes, kind: int, question: int, code: int, mask: int) -> Command | None:
    """The project's command for an event."""
    if kind == HEAR:
        return HearDanger(codes.signs[question], clear=True)
    question_id = codes.questions[question]
    if kind == WITHDRAW:
        return WithdrawAnswer(question_id)
    if kind != ANSWER:
        return None
    if code < FIRST:
        return SayNotSure(question_id) if code == NOT_SURE else SkipQuestion(question_id)
    return GiveAnswer(question_id, codes.value(question, code, mask))


def say_all(conversation: Conversation, codes: Codes, said: Iterable[tuple[int, int, int, int]]) -> None:
    """Let all of it happen in the conversation, as if it were said at once."""
    commands = (command(codes, *each) for each in said)
    conversation.do(*(spoken for spoken in commands if spoken is not None))


def belief_in(model: EvidenceModel, shares: dict[Hypothesis, float]) -> Posterior:
    """A posterior that gives exactly these hypotheses these probabilities."""
    probabilities = np.zeros(len(model.hypotheses))
    for hypothesis, share in shares.items():
        probabilities[model.place_of[hypothesis]] = share
    return Posterior(model, probabilities)


def supposed_belief(script: Script, codes: Codes, supposed: int) -> Posterior:
    """The posterior of one of the suppositions of the fast evaluator."""
    model, causes, settings = script.evidence_model, script.knowledge.causes, script.knowledge.settings
    if supposed == CALM:
        return belief_in(model, {NOTHING_WRONG: 1.0})
    if supposed == DANGEROUS:
        share = (settings.dangerous_above.share + settings.stop_above.share) / 2
        return belief_in(model, {(sorted(script.dangerous)[0],): share, NOTHING_WRONG: 1 - share})
    sign_id = codes.signs[supposed - STOPPING]
    cause = next(c for c in causes if causes[c].danger == sign_id)
    return belief_in(model, {(cause,): 1.0})


@contextmanager
def believing(posterior: Posterior) -> Iterator[None]:
    """Whatever is answered, this is what is believed."""
    with patch.object(assess_module, "posterior", lambda *_: posterior):
        yield
