"""A typed line and the question it is typed to -> the answer it gives, or what was unclear about it."""

from dataclasses import dataclass

from assistant.interview.view import QuestionView
from assistant.wording.matching import Match, Unclear, match_choice, match_choices
from assistant.wording.sentences import Sentences
from assistant.wording.typed import typed_number


@dataclass(frozen=True)
class Given:
    """An answer. `exact`: a number, a letter or a listed phrase; else it was near enough to one choice."""

    value: object
    unit: str | None = None
    exact: bool = True


@dataclass(frozen=True)
class NotUnderstood:
    """`candidates` are choices that it might have been."""

    candidates: tuple[str, ...] = ()


Reply = Given | NotUnderstood


def reply_to(line: str, question: QuestionView, sentences: Sentences) -> Reply:
    if question.kind == "text":
        return Given(line, exact=False)
    if question.kind == "number":
        number = typed_number(line, str(question.unit), sentences.wording)
        return Given(number.value, number.unit) if number is not None else NotUnderstood()
    exact = _match(line, question, sentences, exact=True)
    if isinstance(exact, Match):
        return Given(_value(question, exact))
    near = exact if question.exact_only else _match(line, question, sentences, exact=False)
    if isinstance(near, Match):
        return Given(_value(question, near), exact=False)
    return NotUnderstood(near.candidates)


def _match(line: str, question: QuestionView, sentences: Sentences, *, exact: bool) -> Match | Unclear:
    match = match_choices if question.kind == "choices" else match_choice
    return match(line, sentences.vocabulary(question.id), exact=exact)


def _value(question: QuestionView, match: Match) -> str | list[str]:
    return list(match.choices) if question.kind == "choices" else match.choices[0]
