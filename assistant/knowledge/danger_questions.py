"""The questions about danger, made from the signs so that no sign can be forgotten in them."""

from collections.abc import Mapping

from assistant.knowledge.model import Care, Choice, Figure, Question, Sign

DANGER_NOW = "danger_now"
DANGER_PLAINLY = "danger_plainly"
OVEN_IS_OFF = "oven_is_off"
UNSURE = "unsure"
SIGN_PREFIX = "sign_"
NONE = "none"

_A_MOMENT = Figure(value=0.5, unit="minutes", source="assumed", range=(0.2, 1))


def sign_question_id(sign_id: str) -> str:
    return SIGN_PREFIX + sign_id


def is_danger_question(question_id: str) -> bool:
    return question_id in (DANGER_NOW, DANGER_PLAINLY) or question_id.startswith(SIGN_PREFIX)


def danger_questions(signs: Mapping[str, Sign]) -> dict[str, Question]:
    """The opening screen, its plainer second form, and one question for each sign."""
    ordered = sorted(signs, key=lambda sign_id: signs[sign_id].order)
    questions = {
        DANGER_NOW: _screen("Danger signs, all at once", {s: signs[s] for s in ordered if signs[s].on_screen}, 0),
        DANGER_PLAINLY: _screen("Asked of who isn't sure", {s: signs[s] for s in ordered if signs[s].ask_plainly}, 1),
    }
    for number, sign_id in enumerate(ordered):
        sign = signs[sign_id]
        questions[sign_question_id(sign_id)] = Question(
            note=sign.note,
            stage="danger",
            order=10 + number,
            kind="choice",
            care=Care.TALK,
            minutes=_A_MOMENT,
            choices={
                answer: Choice(signals=sign_id, said_when=sign.told_when) if means == "stop" else Choice()
                for answer, means in sign.answers.items()
            },
        )
    return questions


def with_told_signs(question: Question, signs: Mapping[str, Sign]) -> Question:
    """An answer that signals a danger sign says what the sign says, but of what the question itself reports."""
    told = {
        code: choice.model_copy(
            update={
                "said_when": {
                    name: said
                    for name, said in signs[choice.signals].told_when.items()
                    if name not in (question.observable, *choice.said_when)
                }
                | choice.said_when
            }
        )
        for code, choice in question.choices.items()
        if choice.signals is not None
    }
    return question.model_copy(update={"choices": {**question.choices, **told}}) if told else question


def _screen(note: str, signs: Mapping[str, Sign], order: int) -> Question:
    choices = {sign_id: Choice(signals=sign_id, said_when=sign.told_when) for sign_id, sign in signs.items()}
    return Question(
        note=note,
        stage="danger",
        order=order,
        kind="choices",
        care=Care.TALK,
        minutes=_A_MOMENT,
        all_gone_through=True,
        choices={**choices, NONE: Choice()},
    )
