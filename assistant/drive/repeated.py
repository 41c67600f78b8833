"""Whether a message whose id was seen before says what it said then."""

from collections.abc import Set

from assistant.drive.protocol import Message
from assistant.interview.events import (
    AnswerWithdrawn,
    DangerHeard,
    Happening,
    InterviewFinished,
    NotSureAnswered,
    QuestionAnswered,
    QuestionSkipped,
    TextAnswered,
)


def says_the_same(earlier: Happening, message: Message, heard: Set[str]) -> bool:
    """`earlier` is the first event of the message that bore the id; `heard` the signs this one speaks of."""
    fields = message.fields
    match earlier:
        case QuestionAnswered(question_id=question_id):
            given = earlier.value if earlier.given is None else earlier.given
            return message.type == "answer" and fields["id"] == question_id and _same_value(given, fields["value"])
        case TextAnswered(question_id=question_id, text=text):
            same = text is None or text == str(fields.get("value")).strip()
            return message.type == "answer" and fields["id"] == question_id and same
        case DangerHeard(sign_id=sign_id):
            return message.type == "answer" and sign_id in heard
        case NotSureAnswered(question_id=question_id) | QuestionSkipped(question_id=question_id):
            return message.type in ("not_sure", "skip") and fields["id"] == question_id
        case AnswerWithdrawn(question_id=question_id):
            return message.type == "withdraw" and fields["id"] == question_id
        case InterviewFinished():
            return message.type == "finish"
    return False


def _same_value(given: object, value: object) -> bool:
    if isinstance(given, tuple):
        return isinstance(value, list) and all(isinstance(v, str) for v in value) and set(given) == set(value)
    return given == value
