"""Whether a finding's conditions can ever hold, and whether its examples could have been answered."""

from assistant.knowledge import danger_questions as danger
from assistant.knowledge.model import MEASURED_CODES, Condition, Question
from assistant.knowledge.problems import nearest_name
from assistant.knowledge.readings import summary
from assistant.knowledge.references import conditions_of
from assistant.knowledge.rules_folder import RulesFolder
from assistant.knowledge.scalars import number_written
from assistant.knowledge.yaml_text import PathInFile, shortened

WITHOUT_ANSWER = ("not_sure", "skipped")


def conditions_can_hold(read: RulesFolder) -> None:
    """A condition names an answer that its question has."""
    questions = _questions(read)
    for finding_id, finding in read.entries["findings"].items():
        for path, condition in conditions_of(finding):
            question = questions.get(condition.question or "")
            if question is not None:
                _check_condition(read, f"findings/{finding_id}.yaml", path, condition, question)


def tests_first_are_tests(read: RulesFolder) -> None:
    """Only what an engineer measures can be put into the plan of tests, by a finding or a danger sign."""
    questions = _questions(read)
    findings, signs = read.entries["findings"].items(), read.entries["danger"].items()
    wanted: list[tuple[str, PathInFile, tuple[str, ...]]] = [
        *((f"findings/{name}.yaml", ("then",), each.then.tests_first) for name, each in findings),
        *((f"danger/{name}.yaml", (), sign.tests_first) for name, sign in signs),
    ]
    for file, path, tests in wanted:
        for index, question_id in enumerate(tests):
            question = questions.get(question_id)
            if question is not None and question.stage != "tests":
                read.add_problem(file, (*path, "tests_first", index), "no_test", found=question_id)


def tests_begin_with_the_sound_reading(read: RulesFolder) -> None:
    """The first choice of a test is the one that a sound oven gives: it means its observable's first state."""
    observables = read.entries["observables"]
    for question_id, question in read.entries["questions"].items():
        observable = observables.get(question.observable or "")
        if question.stage != "tests" or observable is None or not question.choices:
            continue
        name, first = next(iter(question.choices.items()))
        sound = observable.states[0]
        if first.means and sound not in first.means:
            file, path = f"questions/{question_id}.yaml", ("choices", name)
            read.add_problem(file, path, "test_begins_unsound", found=name, state=sound)


def _questions(read: RulesFolder) -> dict[str, Question]:
    """Those whose answers are known; with a broken sign, the questions that list all signs are not."""
    derived = danger.danger_questions(read.entries["danger"])
    if len(read.ids["danger"]) > len(read.entries["danger"]):
        derived = {q: question for q, question in derived.items() if q.startswith(danger.SIGN_PREFIX)}
    return read.entries["questions"] | derived


def _check_condition(read: RulesFolder, file: str, path: PathInFile, condition: Condition, question: Question) -> None:
    if condition.bounded and question.kind != "number":
        read.add_problem(file, path, "bounds_on_no_number", question=str(condition.question))
    if condition.includes is not None:
        if question.kind != "choices":
            read.add_problem(file, (*path, "includes"), "includes_on_one_choice", question=str(condition.question))
        else:
            _check_code(read, file, (*path, "includes"), condition.includes, list(question.choices))
    for place, code in _codes_tested(path, condition):
        if question.kind == "choices" and code in question.choices:
            read.add_problem(file, place, "is_on_several_choices", question=str(condition.question), found=code)
        elif question.kind == "number" and code not in WITHOUT_ANSWER:
            read.add_problem(file, place, "is_on_a_number", question=str(condition.question), found=code)
        else:
            _check_code(read, file, place, code, _codes_of_facts(question))


def _codes_tested(path: PathInFile, condition: Condition) -> list[tuple[PathInFile, str]]:
    listed: list[tuple[PathInFile, str]] = [((*path, "is_one_of", i), c) for i, c in enumerate(condition.is_one_of)]
    return listed if condition.equals is None else [((*path, "is"), condition.equals)]


def _codes_of_facts(question: Question) -> list[str]:
    """What `is` can meet: one choice, or else only that there was an answer."""
    if question.kind == "choice":
        return [*question.choices, *WITHOUT_ANSWER]
    if question.kind in MEASURED_CODES:
        return [*MEASURED_CODES[question.kind], *WITHOUT_ANSWER]
    return ["answered", *WITHOUT_ANSWER]


def _check_code(read: RulesFolder, file: str, path: PathInFile, code: str, valid: list[str]) -> None:
    if code not in valid:
        near = nearest_name(code, valid)
        read.add_problem(file, path, "no_answer", near, found=shortened(code), valid=", ".join(valid))


def examples_can_be_answered(read: RulesFolder) -> None:
    """An example's answers are such as a session would take."""
    questions = _questions(read)
    for finding_id, finding in read.entries["findings"].items():
        file = f"findings/{finding_id}.yaml"
        for kind in ("fires", "stays_quiet"):
            for index, example in enumerate(getattr(finding.examples, kind)):
                for question_id, value in example.items():
                    if question_id in questions and value not in WITHOUT_ANSWER:
                        path = ("examples", kind, index, question_id)
                        _check_given(read, file, path, questions[question_id], value)


def _check_given(
    read: RulesFolder, file: str, path: PathInFile, question: Question, value: str | tuple[str, ...]
) -> None:
    if question.kind == "choices":
        _check_chosen(read, file, path, question, value)
    elif question.kind in MEASURED_CODES:
        if isinstance(value, str) or summary(question, value) is None:
            read.add_problem(file, path, "lines_unreadable")
    elif not isinstance(value, str):
        read.add_problem(file, path, "one_answer_expected")
    elif question.kind == "choice":
        _check_code(read, file, path, value, [*question.choices, *WITHOUT_ANSWER])
    elif question.number is not None:
        _check_number(read, file, path, question.number.least, question.number.most, value)


def _check_chosen(
    read: RulesFolder, file: str, path: PathInFile, question: Question, value: str | tuple[str, ...]
) -> None:
    if isinstance(value, str) or not value:
        read.add_problem(file, path, "several_answers_expected")
        return
    for index, code in enumerate(value):
        _check_code(read, file, (*path, index), code, list(question.choices))


def _check_number(read: RulesFolder, file: str, path: PathInFile, least: float, most: float, value: str) -> None:
    number = number_written(value)
    if number is None:
        read.add_problem(file, path, "not_a_number", found=shortened(value))
    elif least >= most:
        return  # which is said at the question
    elif number < least:
        read.add_problem(file, path, "not_greater_than_equal", found=shortened(value), bound=f"{least:.10g}")
    elif number > most:
        read.add_problem(file, path, "not_less_than_equal", found=shortened(value), bound=f"{most:.10g}")
