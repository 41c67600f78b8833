"""Whether likelihoods add up, and whether answers say what they tell of the oven."""

from collections.abc import Iterator, Mapping

from assistant.knowledge.likelihoods import NotADistribution, share_of, shares
from assistant.knowledge.model import BeliefSettings, Distribution, Observable, Question
from assistant.knowledge.problems import nearest_name
from assistant.knowledge.rules_folder import RulesFolder
from assistant.knowledge.yaml_text import PathInFile
from assistant.physics.parameters import PARAMETERS, WAYS

MOST_MISTAKEN = 0.5


def distributions_are_whole(read: RulesFolder) -> None:
    settings = _settings(read)
    for file, path, distribution, names, unknown_code in _distributions(read):
        unknown = [name for name in distribution if name not in names]
        for name in unknown:
            near = nearest_name(name, names)
            read.add_problem(file, (*path, name), unknown_code, near, found=name, valid=", ".join(names))
        missing = [name for name in names if name not in distribution]
        if missing and not unknown:
            read.add_problem(file, path, "likelihoods_missing", missing=", ".join(missing))
        if missing or unknown or settings is None:
            continue
        try:
            shares(distribution, names, settings.words)
        except NotADistribution as error:
            read.add_problem(file, path, error.code, total=f"{error.total:.6g}")


def _settings(read: RulesFolder) -> BeliefSettings | None:
    found = read.entries["belief.yaml"].get("")
    return found if isinstance(found, BeliefSettings) else None


def _distributions(read: RulesFolder) -> Iterator[tuple[str, PathInFile, Distribution, tuple[str, ...], str]]:
    """File, path, the likelihoods, what each name must be, and the code for one that isn't."""
    observables: dict[str, Observable] = read.entries["observables"]
    for name, observable in observables.items():
        yield f"observables/{name}.yaml", ("normal",), observable.normal, observable.states, "no_state"
    for kind in ("effects", "causes", "pairs"):
        for entry_id, entry in read.entries[kind].items():
            for name, distribution in entry.shows.items():
                if name in observables:
                    states = observables[name].states
                    yield f"{kind}/{entry_id}.yaml", ("shows", name), distribution, states, "no_state"
    question: Question
    for question_id, question in read.entries["questions"].items():
        if question.observable is not None and question.table is not None:
            codes = tuple(code for _, code, _ in _meanings(question) if not _is_no_report(question, code))
            for state, distribution in question.table.items():
                yield f"questions/{question_id}.yaml", ("table", state), distribution, codes, "no_answer"


def _is_no_report(question: Question, code: str) -> bool:
    return code in question.choices and question.choices[code].is_no_report


def _meanings(question: Question) -> Iterator[tuple[PathInFile, str, tuple[str, ...]]]:
    """Path, code and states meant of each answer: a choice, or a band of a number."""
    for code, choice in question.choices.items():
        yield ("choices", code), code, choice.means
    for code, band in (question.number.bands if question.number else {}).items():
        yield ("number", "bands", code), code, band.means


def reports_say_how_they_err(read: RulesFolder) -> None:
    settings = _settings(read)
    question: Question
    for question_id, question in read.entries["questions"].items():
        file = f"questions/{question_id}.yaml"
        if question.observable is None:
            for path in list(_parts_of_a_report(question))[:1]:
                read.add_problem(file, path, "report_of_nothing", key=str(path[-1]))
        elif (question.mistakes is None) == (question.table is None):
            read.add_problem(file, ("observable",), "mistakes_or_table")
        elif question.mistakes == "rest":
            read.add_problem(file, ("mistakes",), "mistakes_are_not_the_rest")
        elif question.mistakes is not None and settings is not None:
            share = share_of(question.mistakes, settings.words)
            if not 0 < share < MOST_MISTAKEN:
                read.add_problem(file, ("mistakes",), "mistakes_out_of_range", total=f"{share * 100:.6g}")


def _parts_of_a_report(question: Question) -> Iterator[PathInFile]:
    """What a question only has if it reports an observable."""
    for key in ("mistakes", "table"):
        if getattr(question, key) is not None:
            yield (key,)
    for path, _, means in _meanings(question):
        if means:
            yield (*path, "means")


def answers_mean_states(read: RulesFolder) -> None:
    """Each answer means states of the observable, and each state is meant by one (or has a row in the table)."""
    for question_id, question in read.entries["questions"].items():
        observable = read.entries["observables"].get(question.observable)
        if observable is None:
            continue
        file = f"questions/{question_id}.yaml"
        named = list(_states_named(question))
        for path, state in named:
            if state not in observable.states:
                near = nearest_name(state, observable.states)
                read.add_problem(file, path, "no_state", near, found=state, valid=", ".join(observable.states))
        if question.table is None:
            for path, code, means in _meanings(question):
                if not means and not _is_no_report(question, code):
                    read.add_problem(file, path, "answer_means_nothing")
        _say_which_are_unsaid(read, file, question, observable, {state for _, state in named})


def _states_named(question: Question) -> Iterator[tuple[PathInFile, str]]:
    for path, _, means in _meanings(question):
        for index, state in enumerate(means):
            yield (*path, "means", index), state
    for state in question.table or ():
        yield ("table", state), state


def _say_which_are_unsaid(
    read: RulesFolder, file: str, question: Question, observable: Observable, named: set[str]
) -> None:
    """Silent where a state is misspelt: that it is missing follows."""
    if not named <= set(observable.states):
        return
    if question.table is not None:
        rows = [state for state in observable.states if state not in question.table]
        if rows:
            read.add_problem(file, ("table",), "likelihoods_missing", missing=", ".join(rows))
    else:
        unsaid = [state for state in observable.states if state not in named]
        if unsaid:
            read.add_problem(file, ("observable",), "state_never_meant", missing=", ".join(unsaid))


def answers_among_several_report(read: RulesFolder) -> None:
    """One of several answers reports an observable by saying, for each of its states, how often it is chosen."""
    settings = _settings(read)
    for question_id, question in read.entries["questions"].items():
        for choice_id, choice in question.choices.items():
            file, path = f"questions/{question_id}.yaml", ("choices", choice_id, "said_when")
            if choice.said_when and question.kind != "choices":
                read.add_problem(file, path, "said_when_among_several")
                continue
            for name, said_when in choice.said_when.items():
                if name in read.entries["observables"]:
                    states = read.entries["observables"][name].states
                    _check_said_when(read, file, (*path, name), said_when, states, settings)


def signs_say_what_they_tell_of(read: RulesFolder) -> None:
    """A danger sign speaks of an observable by saying, for each of its states, how often it is told."""
    settings = _settings(read)
    for sign_id, sign in read.entries["danger"].items():
        for name, told_when in sign.told_when.items():
            if name in read.entries["observables"]:
                states = read.entries["observables"][name].states
                file, path = f"danger/{sign_id}.yaml", ("told_when", name)
                _check_said_when(read, file, path, told_when, states, settings)


def _check_said_when(
    read: RulesFolder,
    file: str,
    path: PathInFile,
    said_when: Distribution,
    states: tuple[str, ...],
    settings: BeliefSettings | None,
) -> None:
    for state, likelihood in said_when.items():
        if state not in states:
            near = nearest_name(state, states)
            read.add_problem(file, (*path, state), "no_state", near, found=state, valid=", ".join(states))
        elif likelihood == "rest":
            read.add_problem(file, (*path, state), "mistakes_are_not_the_rest")
        elif settings is not None and not 0 < share_of(likelihood, settings.words) < 1:
            read.add_problem(file, (*path, state), "never_or_always")
    missing = [state for state in states if state not in said_when]
    if missing and set(said_when) <= set(states):
        read.add_problem(file, path, "likelihoods_missing", missing=", ".join(missing))


def bands_rise(read: RulesFolder) -> None:
    question: Question
    for question_id, question in read.entries["questions"].items():
        if question.number is None:
            continue
        file = f"questions/{question_id}.yaml"
        bounds = [band.below for band in question.number.bands.values()]
        if bounds and bounds[-1] is not None:
            read.add_problem(file, ("number", "bands"), "last_band_open")
        inner = [bound for bound in bounds[:-1] if bound is not None]
        if len(inner) < len(bounds) - 1 or inner != sorted(set(inner)):
            read.add_problem(file, ("number", "bands"), "bands_not_rising")
        if question.number.least >= question.number.most:
            read.add_problem(file, ("number", "least"), "least_above_most")


LAMP_STAYS = "lamp_stays"
"""A change of what the lamp shows, not of the oven: 0 it stays dark, 1 it stays lit."""


def physical_changes_have_parameters(read: RulesFolder) -> None:
    """What a cause or an effect changes in the oven model is something that the model has."""
    known = (*PARAMETERS, LAMP_STAYS)
    for kind in ("effects", "causes"):
        for entry_id, entry in read.entries[kind].items():
            for name in entry.physical:
                if name not in known:
                    file = f"{kind}/{entry_id}.yaml"
                    read.add_problem(file, ("physical", name), "no_parameter", nearest_name(name, known), found=name)


def measurements_run_in_ways_of_the_model(read: RulesFolder) -> None:
    """A measurement is made in a way of heating that the oven model has."""
    for question_id, question in read.entries["questions"].items():
        if question.run is not None and question.run.way not in WAYS:
            near = nearest_name(question.run.way, WAYS)
            file = f"questions/{question_id}.yaml"
            read.add_problem(file, ("run", "way"), "no_way", near, found=question.run.way, valid=", ".join(WAYS))


def fixed_points_check_thermometers(read: RulesFolder) -> None:
    """What a thermometer reads in water is a number of degrees, and goes before a measurement with a thermometer."""
    questions: dict[str, Question] = read.entries["questions"]
    for question_id, question in questions.items():
        point, file = question.fixed_point, f"questions/{question_id}.yaml"
        if point is None:
            continue
        checked, heights = questions.get(point.checks), questions.get(point.height_from or "")
        if question.number is None or question.number.unit != "degrees_celsius":
            read.add_problem(file, ("fixed_point",), "fixed_point_of_no_degrees")
        if checked is not None and checked.kind != "temperature_log":
            read.add_problem(file, ("fixed_point", "checks"), "checks_no_thermometer", found=point.checks)
        path: PathInFile = ("fixed_point", "heights")
        _codes_are_choices(read, file, {(*path, code): code for code in point.heights}, heights)
        for other, codes in point.counts_while.items():
            path = ("fixed_point", "counts_while", other)
            _codes_are_choices(read, file, {(*path, n): code for n, code in enumerate(codes)}, questions.get(other))


def _codes_are_choices(
    read: RulesFolder, file: str, codes: Mapping[PathInFile, str], question: Question | None
) -> None:
    """Says which codes, by where they stand, are no choices of that question."""
    valid = tuple(question.choices) if question is not None else ()
    for path, code in codes.items():
        if question is not None and code not in valid:
            read.add_problem(file, path, "no_answer", nearest_name(code, valid), found=code, valid=", ".join(valid))
