"""When somebody else went on with a call: what they changed is shown, and what mustn't be lost is told once more."""

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.desk.notice import Notice
from assistant.errors import SessionUnknown
from assistant.interview.commands import Command, GiveAnswer, HearDanger, SayNotSure
from assistant.interview.events import DangerHeard, Event, NotSureAnswered, QuestionAnswered, TextAnswered
from assistant.interview.on_the_telephone import HURT, NOTES
from assistant.knowledge.danger_questions import is_danger_question

if TYPE_CHECKING:
    from assistant.desk.call import Call

BETWEEN_NOTES = "; "


def go_on_from_the_others(call: "Call", commands: Sequence[Command]) -> list[Notice]:
    """Nothing of theirs is overwritten. Of what was typed here danger, who is hurt, and notes count all the same, also
    what waited for the store; the rest is asked again.
    """
    conversation = call.conversation
    seen, waited = conversation.state.sequence, {event.event_id for event in conversation.unsaved}
    noted = conversation.state.texts.get(NOTES) if waited else None
    held = conversation.unsaved
    try:
        conversation.refresh()
        log = conversation.events()
    except SessionUnknown:
        conversation.stop_saving()
        return [call.notice("erased", urgent=True), *call.do(*commands)]
    there = {event.event_id for event in log}
    mine = [event for event in held if event.event_id not in there]
    theirs = [event for event in log if event.sequence > seen - len(waited) and event.event_id not in waited]
    again: list[Command] = [
        *(command for command in map(_urgent_command, mine) if command is not None),
        *filter(_is_urgent, commands),
        *_notes_again(call, commands, noted),
    ]
    stays = any(isinstance(each, GiveAnswer) and each not in again and each.question_id != NOTES for each in commands)
    changed = [told for told in (_told(call, event) for event in theirs) if told]
    something = "; ".join(changed) or call.own.wording.say("desk-something")
    notices = [replace(call.notice("moved_on", urgent=True, changed=something), line_stays=stays)]
    lost = [_told(call, event) for event in mine if _urgent_command(event) is None and not _is_note(event)]
    if any(lost):
        notices.append(call.notice("not_kept", urgent=True, lost="; ".join(filter(None, lost))))
    if not again:
        return notices
    counts = [call.notice("counts", urgent=True)] if any(map(_is_urgent, again)) else []
    return [*notices, *call.do(*again), *counts]


def _notes_again(call: "Call", commands: Sequence[Command], noted: str | None) -> list[Command]:
    """Notes are added to what somebody else noted meanwhile."""
    typed = [str(each.value) for each in commands if isinstance(each, GiveAnswer) and each.question_id == NOTES]
    mine = typed[-1] if typed else noted
    theirs = call.conversation.state.texts.get(NOTES)
    there = theirs.split(BETWEEN_NOTES) if theirs else []
    new = [each for each in mine.split(BETWEEN_NOTES) if each not in there] if mine else []
    return [GiveAnswer(NOTES, BETWEEN_NOTES.join([*there, *new]))] if new else []


def _is_note(event: Event) -> bool:
    return isinstance(event.happening, TextAnswered) and event.happening.question_id == NOTES


def _is_urgent(command: Command) -> bool:
    if isinstance(command, HearDanger):
        return True
    return isinstance(command, GiveAnswer | SayNotSure) and _asks_urgently(command.question_id)


def _asks_urgently(question_id: str) -> bool:
    return is_danger_question(question_id) or question_id == HURT


def _urgent_command(event: Event) -> Command | None:
    """The command by which danger that waited for the store is told once more; None of anything else."""
    match event.happening:
        case DangerHeard(sign_id=sign_id, clear=clear):
            return HearDanger(sign_id, clear)
        case QuestionAnswered(question_id=question_id, value=value) if _asks_urgently(question_id):
            return GiveAnswer(question_id, list(value) if isinstance(value, tuple) else value)
        case NotSureAnswered(question_id=question_id) if _asks_urgently(question_id):
            return SayNotSure(question_id)
    return None


def _told(call: "Call", event: Event) -> str:
    happening, knowledge = event.happening, call.conversation.script.knowledge
    if isinstance(happening, QuestionAnswered) and happening.question_id in knowledge.questions:
        given = call.own.given(happening.question_id, happening.value)
    elif isinstance(happening, TextAnswered) and happening.question_id in knowledge.questions and happening.text:
        given = happening.text
    elif isinstance(happening, DangerHeard) and happening.sign_id in knowledge.signs:
        return call.own.wording.say("desk-danger_was_heard", sign=call.own.wording.say(f"sign-{happening.sign_id}"))
    else:
        return ""
    return f"{call.own.question_by_id(happening.question_id).text} {given}"
