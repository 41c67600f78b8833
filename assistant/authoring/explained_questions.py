"""Questions, findings and danger signs in sentences: what is asked, when, and what follows."""

from collections.abc import Iterator

from assistant.authoring.explained import Book, Parts, distribution, listed, numbers, percent, says, used
from assistant.authoring.separation import expected_weights
from assistant.belief.hypotheses import NOTHING_WRONG, codes_of
from assistant.knowledge.danger_questions import is_danger_question, sign_question_id
from assistant.knowledge.likelihoods import share_of
from assistant.knowledge.model import Care, Choice, Condition, Effects, Finding, Question, Sign

MOST_SEPARATED = 12
LEAST_SEPARATED = 5.0
"""Decibans in the smaller direction: the right one about three times as likely as the other."""


def explain_question(book: Book, question_id: str, question: Question) -> Parts:
    yield "says", _question_says(book, question_id, question)
    yield "answers", _answers(book, question_id, question)
    if not is_danger_question(question_id):
        yield "opens", _opens(book, question_id, question)
    if question.stage == "tests":
        yield "separates", separated(book, question_id)
    yield "numbers", numbers(book, question)
    yield "used", used(book, "questions", question_id)


def _question_says(book: Book, question_id: str, question: Question) -> Iterator[str]:
    yield from says(book, question.note, f"question-{question_id}", "how", "why")
    yield book.say(f"stage_{question.stage}", order=str(question.order))
    care = question.care.value
    yield book.say("care", care=care, words=book.told(f"care-{care}") or care)
    if question.observable is not None:
        yield book.say("reports", observable=question.observable)
    elif not any(choice.said_when for choice in question.choices.values()):
        yield book.say("reports_nothing")
    if question.can_mislead is not None:
        yield book.say("can_mislead", note=question.can_mislead)


def _answers(book: Book, question_id: str, question: Question) -> Iterator[str]:
    for code, choice in question.choices.items():
        words = book.told(f"question-{question_id}", code) or book.told(f"sign-{code}")
        yield _answer(book, code, words, listed(_what_it_does(book, choice)))
    yield from _bands(book, question)
    if question.observable is not None and question.table is not None:
        for state in book.script.knowledge.observables[question.observable].states:
            answers = distribution(book, state, question.table[state], codes_of(question))
            yield book.say("answer_table", state=state, answers=answers.partition(": ")[2])
    if question.mistakes is not None:
        yield book.say("answer_mistakes", percent=percent(share_of(question.mistakes, book.words)))


def _bands(book: Book, question: Question) -> Iterator[str]:
    """The numbers that are reported alike."""
    least: float | None = None
    for code, band in question.number.bands.items() if question.number else ():
        name, bound = ("bound_at_least", least) if band.below is None else ("bound_less_than", band.below)
        bounds = book.say(name, value=f"{bound:g}") if bound is not None else ""
        yield book.say("answer_band", answer=code, bounds=bounds, names=listed(band.means))
        least = band.below


def _answer(book: Book, code: str, words: str, does: str) -> str:
    return book.say("answer_does" if does else "answer", answer=code, words=words, does=does)


def separated(book: Book, question_id: str) -> Iterator[str]:
    """For each answer, the causes for which it is the likeliest, where it isn't so for a sound oven; then the causes
    that look alike and that this question alone tells apart.
    """
    knowledge, model = book.script.knowledge, book.script.evidence_model
    states = model.state_given[model.observable_of[question_id]]
    alone = {cause: model.place_of[cause,] for cause in knowledge.causes}
    answers = (model.report_given[question_id] @ states).argmax(axis=0)
    for row, code in enumerate(model.codes[question_id]):
        causes = [cause for cause, column in alone.items() if answers[column] == row]
        if answers[model.place_of[NOTHING_WRONG]] == row:
            yield book.say("separates_sound", answer=code)
        elif causes:
            yield book.say("separates_causes", answer=code, names=listed(causes))
    weights = expected_weights(model, model.observable_of[question_id], [question_id])
    row_of = {cause: number for number, cause in enumerate(knowledge.causes, 1)}
    told = {}
    for cause_id, cause in knowledge.causes.items():
        for other in cause.look_alikes:
            one, two = sorted((row_of[cause_id], row_of[other]))
            told[one, two] = min(weights[one, two], weights[two, one]), cause_id, other
    for decibans, cause_id, other in sorted(told.values(), key=lambda each: -round(each[0], 3))[:MOST_SEPARATED]:
        if decibans >= LEAST_SEPARATED:
            yield book.say("separates_pair", decibans=f"{decibans:5.1f}", first=cause_id, second=other)


def _what_it_does(book: Book, choice: Choice) -> Iterator[str]:
    for name, names in (
        ("means", choice.means),
        ("said_when", tuple(choice.said_when)),
        ("has", choice.has),
        ("has_not", choice.has_not),
        ("signals", (choice.signals,) if choice.signals else ()),
        ("withdraws", (choice.withdraws,) if choice.withdraws else ()),
    ):
        if names:
            yield book.say(f"answer_{name}", names=listed(names))
    if choice.says_nothing:
        yield book.say("answer_nothing")


def _opens(book: Book, question_id: str, question: Question) -> Iterator[str]:
    findings = book.script.knowledge.findings
    asked_by = [f for f, finding in findings.items() if finding.then.asks == question_id]
    if not (question.ask_when or question.care is not Care.TALK):
        yield book.say("open_always")
    for name, names in (("ask_when", question.ask_when), ("not_when", question.not_when), ("asked_by", asked_by)):
        if names:
            yield book.say(name, names=listed(names))
    if question.needs:
        yield book.say("question_needs", parts=listed(question.needs))
    if question.care is not Care.TALK:
        allowing = {f: finding.then.allows_care for f, finding in findings.items()}
        enough = [f for f, care in allowing.items() if care is not None and care.rank >= question.care.rank]
        yield book.say("care_allowed", names=listed(enough) or "–")


def explain_finding(book: Book, finding_id: str, finding: Finding) -> Parts:
    yield "says", _finding_says(book, finding_id, finding)
    yield "when", _when(book, finding)
    yield "does", _does(book, finding.then)
    yield "used", used(book, "findings", finding_id)


def _finding_says(book: Book, finding_id: str, finding: Finding) -> Iterator[str]:
    yield from says(book, finding.note, f"finding-{finding_id}")
    yield book.say("can_mislead", note=finding.can_mislead)


def _when(book: Book, finding: Finding) -> Iterator[str]:
    for number, group in enumerate(finding.groups):
        conditions = listed(condition_in_words(book, each) for each in group)
        yield book.say("when_or" if number else "when", conditions=conditions)
    if finding.unless:
        yield book.say("unless", names=listed(finding.unless))


def condition_in_words(book: Book, condition: Condition) -> str:
    if condition.finding is not None:
        return book.say("condition_finding", finding=condition.finding)
    question = str(condition.question)
    if condition.includes is not None:
        return book.say("condition_includes", question=question, answers=condition.includes)
    if condition.bounded:
        bounds = [
            book.say(f"bound_{name}", value=f"{value:g}")
            for name in ("at_least", "more_than", "at_most", "less_than")
            if (value := getattr(condition, name)) is not None
        ]
        return book.say("condition_bounds", question=question, bounds=listed(bounds))
    answers = (condition.equals,) if condition.equals is not None else condition.is_one_of
    return book.say("condition_is", question=question, answers=" / ".join(answers))


def _does(book: Book, effects: Effects) -> Iterator[str]:
    nothing = True
    for name in Effects.model_fields:
        value = getattr(effects, name)
        if value:
            nothing = False
            shown = listed(value) if isinstance(value, tuple) else str(getattr(value, "value", value))
            yield book.say(f"does_{name}", value=shown)
    if nothing:
        yield book.say("does_nothing")


def explain_sign(book: Book, sign_id: str, sign: Sign) -> Parts:
    yield "says", _sign_says(book, sign_id, sign)
    yield "numbers", numbers(book, sign)
    yield "used", used(book, "danger", sign_id)


def _sign_says(book: Book, sign_id: str, sign: Sign) -> Iterator[str]:
    yield from says(book, sign.note, f"sign-{sign_id}")
    yield from says(book, None, f"question-{sign_question_id(sign_id)}", "how", "why")
    yield book.say(f"sign_{sign.grade}", order=str(sign.order))
    stop, clear = (
        [answer for answer, means in sign.answers.items() if means == meaning] for meaning in ("stop", "clear")
    )
    yield book.say("sign_answers", stop=listed(stop), clear=listed(clear) or "–")
    if sign.told_when:
        yield book.say("sign_tells", names=listed(sign.told_when))
    yield book.say("sign_steps", names=listed(sign.steps))
    if not sign.oven_off_is_enough:
        yield book.say("sign_whole_home")
    yield book.say("sign_who", who=book.who(sign.who), urgency=sign.urgency)
