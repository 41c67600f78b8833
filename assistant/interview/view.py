"""What a front end shows: a question or a verdict, as ids and figures. Sentences are made elsewhere."""

from dataclasses import dataclass

from assistant.interview.answers import still_fits
from assistant.interview.assess import Assessment
from assistant.interview.next_question import choose_next
from assistant.interview.script import Script
from assistant.interview.state import State, Value
from assistant.interview.thermometer import should_read_c
from assistant.interview.verdict import Verdict, give_verdict
from assistant.knowledge.danger_questions import is_danger_question
from assistant.knowledge.model import Knowledge


@dataclass(frozen=True)
class QuestionView:
    """One question as it may be put to this person now. `standing` is an earlier answer that still stands.

    `exact_only`: about danger, and about what the person allows, nothing that was typed is guessed.
    `should_read_c`: of the water into which a thermometer is held, what it should read where this person lives.
    """

    id: str
    kind: str
    choices: tuple[str, ...]
    unit: str | None
    care: str
    about_danger: bool
    exact_only: bool
    open_danger: bool
    answered_so_far: int
    standing: Value | None = None
    should_read_c: float | None = None


View = QuestionView | Verdict


def look(script: Script, assessment: Assessment) -> View:
    """The next question, or the verdict."""
    question_id = choose_next(script, assessment)
    if question_id is None:
        return give_verdict(script, assessment)
    return question_view(script.knowledge, question_id, assessment.state, assessment.danger.open)


def question_view(knowledge: Knowledge, question_id: str, state: State, open_danger: bool) -> QuestionView:
    """Any question by its id, also one that was answered before. Raises KeyError for an unknown id."""
    question = knowledge.questions[question_id]
    standing = state.answers.get(question_id)
    if standing is not None and not still_fits(question, standing.value):
        standing = None
    number = question.number
    return QuestionView(
        id=question_id,
        kind=question.kind,
        choices=tuple(question.choices),
        unit=number.unit if number else None,
        care=question.care.value,
        about_danger=is_danger_question(question_id),
        exact_only=question.stage in ("danger", "care", "look"),
        open_danger=open_danger,
        answered_so_far=sum(answer.status != "skipped" for answer in state.answers.values()),
        standing=standing.value if standing else None,
        should_read_c=should_read_c(knowledge, question_id, state.answers),
    )
