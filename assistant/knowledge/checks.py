"""What must hold between the files of a rules folder. One check, one function, one kind of mistake.

A check looks only at sound entries, and takes an id whose own file is broken for existing: a mistake that
follows from another isn't said twice.
"""

from collections.abc import Callable, Iterator

from assistant.knowledge import danger_questions as danger
from assistant.knowledge.finding_checks import (
    conditions_can_hold,
    examples_can_be_answered,
    tests_begin_with_the_sound_reading,
    tests_first_are_tests,
)
from assistant.knowledge.learned import LEARNED_FILE
from assistant.knowledge.model import RESERVED_CODES, Cause, Question, Step
from assistant.knowledge.problems import nearest_name
from assistant.knowledge.references import references_exist
from assistant.knowledge.report_checks import (
    answers_among_several_report,
    answers_mean_states,
    bands_rise,
    distributions_are_whole,
    fixed_points_check_thermometers,
    measurements_run_in_ways_of_the_model,
    physical_changes_have_parameters,
    reports_say_how_they_err,
    signs_say_what_they_tell_of,
)
from assistant.knowledge.rules_folder import ANY, RulesFolder
from assistant.knowledge.yaml_text import PathInFile

Check = Callable[[RulesFolder], None]

REQUIRED = {
    "roles.yaml": ("householder", "agent", "engineer"),
    "danger": (danger.UNSURE,),
    "questions": (danger.OVEN_IS_OFF,),
}
OF_WHICH_ONE_IS_NEEDED = ("regions", "causes")
MOST_NOT_SOUND = 95
"""Percent."""
NOT_FOR_CAUSES = frozenset({"none", "something_else"})
NOT_FOR_ANSWERS = RESERVED_CODES - {danger.NONE}


def check_all(read: RulesFolder) -> None:
    """Run every check; what they find is added to `read.problems`."""
    for check in CHECKS:
        check(read)
    read.problems.sort()


def names_do_not_meet(read: RulesFolder) -> None:
    """Questions and findings share one space of names; some names are the program's own."""
    for finding_id in (read.ids["findings"] & read.ids["questions"]) - {ANY}:
        read.add_problem(f"findings/{finding_id}.yaml", (), "name_taken_by_question", found=finding_id)
    for kind in ("questions", "findings"):
        for entry_id in filter(danger.is_danger_question, read.ids[kind]):
            read.add_problem(f"{kind}/{entry_id}.yaml", (), "name_reserved", found=entry_id)
    for kind, taken in (("danger", RESERVED_CODES), ("causes", NOT_FOR_CAUSES)):
        for entry_id in read.ids[kind] & taken:
            read.add_problem(f"{kind}/{entry_id}.yaml", (), "name_reserved", found=entry_id)
    for file, path, code in _answer_codes(read):
        if code in NOT_FOR_ANSWERS:
            read.add_problem(file, (*path, code), "name_reserved", found=code)


def _answer_codes(read: RulesFolder) -> Iterator[tuple[str, PathInFile, str]]:
    question: Question
    for question_id, question in read.entries["questions"].items():
        for code in question.choices:
            yield f"questions/{question_id}.yaml", ("choices",), code
        for code in question.number.bands if question.number else ():
            yield f"questions/{question_id}.yaml", ("number", "bands"), code
    for sign_id, sign in read.entries["danger"].items():
        for code in sign.answers:
            yield f"danger/{sign_id}.yaml", ("answers",), code


def required_entries_exist(read: RulesFolder) -> None:
    for kind, names in REQUIRED.items():
        for name in names:
            if name not in read.ids[kind] and ANY not in read.ids[kind]:
                read.add_problem(kind, (), "required_missing", found=name)
    for kind in OF_WHICH_ONE_IS_NEEDED:
        if not read.ids[kind]:
            read.add_problem(kind, (), "none_at_all")


def observables_are_reported(read: RulesFolder) -> None:
    """An observable that no question reports, or that no cause changes, can't matter."""
    if any(len(read.ids[kind]) > len(read.entries[kind]) for kind in ("questions", "causes", "effects")):
        return
    if any(problem.code in ("report_of_nothing", "no_observable") for problem in read.problems):
        return
    questions = read.entries["questions"].values()
    reported = {question.observable for question in questions}
    reported |= {name for question in questions for choice in question.choices.values() for name in choice.said_when}
    reported |= {name for sign in read.entries["danger"].values() for name in sign.told_when}
    shown = {name for kind in ("causes", "effects") for entry in read.entries[kind].values() for name in entry.shows}
    for name in read.entries["observables"]:
        if name not in reported:
            read.add_problem(f"observables/{name}.yaml", (), "never_reported", name=name)
        if name not in shown:
            read.add_problem(f"observables/{name}.yaml", (), "never_shown", name=name)


def some_ovens_are_sound(read: RulesFolder) -> None:
    """All base rates, and that of something else, leave some ovens with nothing wrong."""
    settings = read.entries["belief.yaml"].get("")
    causes: dict[str, Cause] = read.entries["causes"]
    if settings is None or len(read.ids["causes"]) > len(causes):
        return
    total = sum(cause.base_rate.value for cause in causes.values()) + settings.something_else.value
    if total > MOST_NOT_SOUND:
        read.add_problem("causes", (), "hardly_any_sound", total=f"{total:.4g}", most=MOST_NOT_SOUND)


def causes_can_meet(read: RulesFolder) -> None:
    """No cause excludes itself, and no pair is of two that are never weighed together."""
    causes: dict[str, Cause] = read.entries["causes"]
    for cause_id, cause in causes.items():
        for index, other in enumerate(cause.excludes):
            if other == cause_id:
                read.add_problem(f"causes/{cause_id}.yaml", ("excludes", index), "excludes_itself")
    for pair_id, pair in read.entries["pairs"].items():
        first, second = (causes.get(cause_id) for cause_id in pair.causes)
        if first is None or second is None:
            continue
        if first.kind == second.kind == "habit":
            read.add_problem(f"pairs/{pair_id}.yaml", ("causes",), "pair_of_two_habits")
        if pair.causes[1] in first.excludes or pair.causes[0] in second.excludes:
            read.add_problem(f"pairs/{pair_id}.yaml", ("causes",), "pair_excluded")


def counts_fit_sessions(read: RulesFolder) -> None:
    """No more outcomes can have been looked at than there were sessions of the group."""
    for learned in read.entries[LEARNED_FILE].values():
        for group, counts in learned.counts.items():
            most = learned.sessions.of_group(group)
            for cause_id, count in counts.items():
                if count.of > most:
                    path = ("counts", group, cause_id, "of")
                    read.add_problem(LEARNED_FILE, path, "more_than_sessions", found=str(count.of), most=most)


def effects_are_named(read: RulesFolder) -> None:
    """An effect that no cause names says nothing."""
    causes: dict[str, Cause] = read.entries["causes"]
    if len(read.ids["causes"]) > len(causes) or any(problem.code == "no_effect" for problem in read.problems):
        return
    named = {cause.effect for cause in causes.values()}
    for effect_id in read.entries["effects"]:
        if effect_id not in named:
            read.add_problem(f"effects/{effect_id}.yaml", (), "effect_of_nothing", name=effect_id)


def kinds_of_oven_are_told(read: RulesFolder) -> None:
    """A kind of oven that no answer tells changes nothing."""
    questions: dict[str, Question] = read.entries["questions"]
    if len(read.ids["questions"]) > len(questions):
        return
    telling = [question for question in questions.values() if question.tells == "kind" and question.kind == "choice"]
    told = {code for question in telling for code in question.choices}
    for ovens in read.entries["ovens.yaml"].values():
        for name in ovens.kinds:
            if name not in told:
                near = nearest_name(name, told - ovens.kinds.keys())
                read.add_problem("ovens.yaml", ("kinds", name), "kind_never_told", near, name=name)


def switching_off_is_one_stretch(read: RulesFolder) -> None:
    """The steps that count only until the oven is off stand in a row, so that they can be told as a list of their own;
    and whoever is told one is asked later whether it is off.
    """
    steps: dict[str, Step] = read.entries["steps.yaml"]
    until_off = [step.until_off for step in steps.values()]
    for number, (step_id, step) in enumerate(steps.items()):
        if step.until_off and True in until_off[:number] and not until_off[number - 1]:
            read.add_problem("steps.yaml", (step_id, "until_off"), "until_off_apart")
    for sign_id, sign in read.entries["danger"].items():
        for index, step_id in enumerate(sign.steps):
            if not sign.confirm_off and step_id in steps and steps[step_id].until_off:
                path = ("steps", index)
                read.add_problem(f"danger/{sign_id}.yaml", path, "until_off_never_asked", found=step_id)


CHECKS: tuple[Check, ...] = (
    references_exist,
    distributions_are_whole,
    reports_say_how_they_err,
    answers_mean_states,
    answers_among_several_report,
    signs_say_what_they_tell_of,
    bands_rise,
    conditions_can_hold,
    examples_can_be_answered,
    tests_first_are_tests,
    tests_begin_with_the_sound_reading,
    physical_changes_have_parameters,
    measurements_run_in_ways_of_the_model,
    fixed_points_check_thermometers,
    names_do_not_meet,
    required_entries_exist,
    observables_are_reported,
    causes_can_meet,
    some_ovens_are_sound,
    counts_fit_sessions,
    effects_are_named,
    kinds_of_oven_are_told,
    switching_off_is_one_stretch,
)
