"""Questions made from the danger signs, and what a sign that is told says of the oven."""

from assistant.knowledge.danger_questions import DANGER_NOW, danger_questions, with_told_signs
from assistant.knowledge.model import Choice, Figure, Knowledge, Question, Sign

SAID = {"none": Figure(value=1, unit="percent", source="a test"), "hot": Figure(value=60, unit="percent", source="x")}
OTHER = {"none": Figure(value=2, unit="percent", source="a test"), "hot": Figure(value=30, unit="percent", source="x")}
SIGN = Sign(
    note="x",
    order=1,
    grade="stop",
    answers={"yes": "stop", "maybe": "stop", "no": "clear"},
    told_when={"joint": SAID, "panel": SAID},
    steps=("leave_it",),
    who="electrician",
)
SIGNS = {"scorched": SIGN, "other": SIGN.model_copy(update={"told_when": {}})}


def question(**fields: object) -> Question:
    known = {"note": "x", "stage": "look", "order": 1, "kind": "choices", "care": "talk", "minutes": A_MOMENT}
    return Question(**{**known, **fields})


A_MOMENT = Figure(value=0.5, unit="minutes", source="a test")


def test_a_sign_on_the_screen_and_the_answers_to_its_own_question_that_mean_danger_say_what_it_says() -> None:
    questions = danger_questions(SIGNS)
    assert questions[DANGER_NOW].choices["scorched"].said_when == SIGN.told_when
    assert questions[DANGER_NOW].choices["other"].said_when == {}
    own = questions["sign_scorched"].choices
    assert [code for code, choice in own.items() if choice.said_when] == ["yes", "maybe"]
    assert own["maybe"].said_when == SIGN.told_when


def test_an_answer_that_signals_says_what_the_sign_says_but_its_own_where_it_has_it() -> None:
    asked = question(
        choices={"marks": Choice(signals="scorched", said_when={"joint": OTHER}), "none": Choice()},
    )
    told = with_told_signs(asked, SIGNS).choices
    assert told["marks"].said_when == {"joint": OTHER, "panel": SAID}
    assert told["none"] == asked.choices["none"]


def test_an_answer_does_not_say_twice_what_its_question_reports() -> None:
    asked = question(kind="choice", observable="joint", mistakes="seldom", choices={"hot": Choice(signals="scorched")})
    assert with_told_signs(asked, SIGNS).choices["hot"].said_when == {"panel": SAID}


def test_a_question_that_signals_nothing_is_left_as_it_is() -> None:
    asked = question(choices={"one": Choice(), "other": Choice(has=("fan",))})
    assert with_told_signs(asked, SIGNS) is asked


def test_every_answer_of_the_rules_that_signals_says_all_that_its_sign_says(knowledge: Knowledge) -> None:
    seen = 0
    for asked in knowledge.questions.values():
        for choice in asked.choices.values():
            told = knowledge.signs[choice.signals].told_when if choice.signals else {}
            assert told.keys() <= {*choice.said_when, asked.observable}
            seen += bool(told)
    assert seen > 20
