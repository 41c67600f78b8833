"""Views and refusals -> the objects that go out, one for each line in."""

from collections.abc import Mapping
from typing import Any

from assistant.belief.hypotheses import NOTHING_WRONG, SOMETHING_ELSE
from assistant.interview.choice import ACTIONS
from assistant.interview.verdict import NONE, Verdict
from assistant.interview.view import QuestionView, View
from assistant.knowledge.model import Knowledge, Question
from assistant.wording.sentences import Sentences

Line = dict[str, Any]

PLACES = 4
LEAST_NAMED = 0.005
ALL_OTHERS = "all_others"
"""Stands for the hypotheses that are too improbable to be named one by one."""


def line_of_view(view: View, sentences: Sentences) -> Line:
    if isinstance(view, QuestionView):
        return _question_line(view, sentences)
    return _verdict_line(view, sentences)


def _question_line(view: QuestionView, sentences: Sentences) -> Line:
    text = sentences.question(view)
    return {
        "type": "question",
        "id": view.id,
        "kind": view.kind,
        "text": text.text,
        "choices": [{"id": choice_id, "text": label} for choice_id, label in text.choices],
        "unit": view.unit,
        "care": view.care,
        "open_danger": view.open_danger,
    }


def _verdict_line(verdict: Verdict, sentences: Sentences) -> Line:
    text = sentences.verdict(verdict)
    return {
        "type": "verdict",
        "action": verdict.action,
        "details": {
            **{name: list(v) if isinstance(v, tuple) else v for name, v in verdict.details.items()},
            "headline": text.headline,
            "explanation": text.explanation,
            "step_texts": list(text.steps),
        },
        "stop": _stop(verdict),
        "causes": [{"id": cause, "probability": round(p, PLACES)} for cause, p in verdict.causes],
        "hypotheses": _hypotheses(verdict),
        "because": [
            {
                "kind": r.kind,
                "id": r.id,
                "value": r.value,
                "decibans": r.decibans,
                "without": r.without,
                "text": words,
            }
            for r, words in zip(verdict.because, text.because, strict=True)
        ],
        "would_change": [
            {"id": c.question_id, "value": c.value, "action": c.action, "text": words}
            for c, words in zip(verdict.would_change, text.would_change, strict=True)
        ],
    }


def _hypotheses(verdict: Verdict) -> list[Line]:
    """The probable ones by name, nothing wrong and something else always; the many others together."""
    lines, others = [], 0.0
    for hypothesis, probability in verdict.hypotheses:
        if probability >= LEAST_NAMED or hypothesis in (NOTHING_WRONG, (SOMETHING_ELSE,)):
            lines.append({"causes": list(hypothesis) or [NONE], "probability": round(probability, PLACES)})
        else:
            others += probability
    return [*lines, {"causes": [ALL_OTHERS], "probability": round(others, PLACES)}]


def _stop(verdict: Verdict) -> Line | None:
    if not verdict.stops:
        return None
    by_sign = [stop for stop in verdict.stops if stop.source == "sign"]
    chosen = by_sign or list(verdict.stops)
    return {"source": chosen[0].source, "ids": [stop.source_id for stop in chosen]}


def problem_line(code: str, text: str, open_question: str | None) -> Line:
    return {"type": "problem", "code": code, "text": text, "open": open_question}


def catalogue(knowledge: Knowledge, sentences: Sentences) -> Line:
    """Everything that may be asked or concluded, for programs that drive."""
    return {
        "questions": [
            _catalogue_question(question_id, question, sentences)
            for question_id, question in knowledge.questions.items()
        ],
        "causes": [
            {
                "id": cause_id,
                "text": sentences.wording.say(f"cause-{cause_id}"),
                "kind": cause.kind,
                "danger": cause.danger is not None,
            }
            for cause_id, cause in knowledge.causes.items()
        ],
        "actions": [{"id": action, "text": sentences.wording.say(f"change-{action}")} for action in ACTIONS],
    }


def _catalogue_question(question_id: str, question: Question, sentences: Sentences) -> Line:
    text = sentences.question_by_id(question_id)
    return {
        "id": question_id,
        "kind": question.kind,
        "text": text.text,
        "choices": [{"id": choice_id, "text": label} for choice_id, label in text.choices],
        "unit": question.number.unit if question.number else None,
        "care": question.care.value,
        "danger": _signalled(question.choices),
    }


def _signalled(choices: Mapping[str, Any]) -> list[str]:
    """The danger signs that the question's choices speak of."""
    return list(dict.fromkeys(c.signals for c in choices.values() if c.signals))
