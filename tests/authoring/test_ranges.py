"""Which assumed figures would end a session otherwise."""

from dataclasses import replace

import pytest

from assistant.authoring.places import figures_within, with_figure
from assistant.authoring.ranges import _figures, otherwise
from assistant.belief.decision import Action, decision_of, least_action
from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.posterior import posterior
from assistant.interview.actions import Actions, allowed_actions
from assistant.interview.assess import Assessment
from assistant.interview.script import Script
from assistant.knowledge.model import Figure, Knowledge
from tests.conftest import Begin

UNEVEN = {"danger_now": ["none"], "which_appliance": "electric_oven", "what_goes_wrong": ["one_side"]}
FAULT_LEFT = ("costs", "fault_left")
MOST_COMPILED = 12
REGION = "great_britain"


def ending(of: Knowledge, assessment: Assessment, allowed: Actions) -> Action:
    model = compile_evidence_model(of)
    belief = posterior(model, assessment.evidence, assessment.not_fitted)
    return least_action(decision_of(of, REGION), belief.marginals, allowed)


def with_fault_left(script: Script, money: float) -> Script:
    """Rules by which a fault that is left costs so much; from half as much to twice as much would be believed."""
    knowledge = script.knowledge
    figure = Figure(value=money, unit="money", source="assumed", range=(money / 2, money * 2))
    regions = {**knowledge.regions, REGION: with_figure(knowledge.regions[REGION], FAULT_LEFT, figure)}
    changed = knowledge.model_copy(update={"regions": regions})
    return replace(script, knowledge=changed, decisions={**script.decisions, REGION: decision_of(changed, REGION)})


def at_an_edge(script: Script, assessment: Assessment) -> Script:
    """Rules by which a fault that is left costs hardly enough for a visit."""
    no_visit, visit = 1.0, 100_000.0
    marginals, allowed = assessment.posterior.marginals, allowed_actions(script, assessment)
    while visit / no_visit > 1.001:
        between = (no_visit * visit) ** 0.5
        decision = with_fault_left(script, between).decision(REGION)
        if least_action(decision, marginals, allowed).ending == "book_visit":
            visit = between
        else:
            no_visit = between
    return with_fault_left(script, visit)


def test_figures_are_found_and_put_back_where_they_stand(knowledge: Knowledge) -> None:
    for entries in (knowledge.causes, knowledge.observables, knowledge.questions, knowledge.regions):
        for entry in entries.values():
            for path, figure in figures_within(entry):
                assert with_figure(entry, path, figure) == entry
                assert with_figure(entry, path, figure.model_copy(update={"value": -1.0})) != entry
    paths = [path for path, _ in figures_within(knowledge.causes["base_element_open"])]
    assert ("base_rate",) in paths
    assert ("shows", "lamp_pattern", "never_out") in paths


def test_each_figure_named_ends_it_so_when_the_rules_are_compiled_with_it(begun: Begin, script: Script) -> None:
    assessment = begun(**UNEVEN).assessment
    close = at_an_edge(script, assessment)
    knowledge, allowed = close.knowledge, allowed_actions(close, assessment)
    found = list(otherwise(close, assessment))
    assert (f"regions/{REGION}.yaml", FAULT_LEFT) in {(each.file, each.path) for each in found}
    assert {"causes", "regions"} <= {each.file.split("/")[0] for each in found}
    assert len(found) >= 5
    now = ending(knowledge, assessment, allowed)
    assert now.ending == "book_visit"
    for each in found[:: max(len(found) // MOST_COMPILED, 1)]:
        folder, name = each.file.removesuffix(".yaml").split("/")
        kind = {"danger": "signs"}.get(folder, folder)
        old = next(figure for path, figure in figures_within(getattr(knowledge, kind)[name]) if path == each.path)
        changed = with_entry(knowledge, kind, name, each.path, old.model_copy(update={"value": each.value}))
        assert ending(changed, assessment, allowed) == each.ending != now, each


def with_entry(knowledge: Knowledge, kind: str, name: str, path: tuple[str, ...], figure: Figure) -> Knowledge:
    """The rules with the figure there; what an effect shows, in every cause that says nothing else, and what a danger
    sign tells, in every answer that signals it and says nothing else.
    """
    old = getattr(knowledge, kind)[name]
    new = with_figure(old, path, figure)
    changed = knowledge.model_copy(update={kind: {**getattr(knowledge, kind), name: new}})
    if kind == "effects":
        causes = {
            cause_id: cause.model_copy(update={"shows": {**cause.shows, path[1]: new.shows[path[1]]}})
            for cause_id, cause in knowledge.causes.items()
            if cause.effect == name and cause.shows[path[1]] == old.shows[path[1]]
        }
        return changed.model_copy(update={"causes": {**knowledge.causes, **causes}})
    if kind == "signs":
        questions = dict(knowledge.questions)
        for question_id, question in knowledge.questions.items():
            for code, choice in question.choices.items():
                if choice.signals == name and choice.said_when.get(path[1]) == old.told_when[path[1]]:
                    place = ("choices", code, "said_when", *path[1:])
                    questions[question_id] = with_figure(questions[question_id], place, figure)
        return changed.model_copy(update={"questions": questions})
    return changed


def test_what_a_danger_sign_says_is_named_in_the_signs_own_file_and_moves_all_that_it_says(
    begun: Begin, script: Script
) -> None:
    """The sign was ticked on the screen, told again at the look over, and has its own question."""
    told = {"danger_now": ["scorched_plug_or_switch"], "look_over": ["scorch_marks"]}
    assessment = begun(**told).assessment
    figures = list(_figures(script, assessment))
    assert not any(file.startswith(("questions/danger_", "questions/sign_")) for file, *_ in figures)
    signs = [each for each in figures if each[0] == "danger/scorched_plug_or_switch.yaml"]
    sign = script.knowledge.signs["scorched_plug_or_switch"]
    assert [path[1:] for _, path, *_ in signs] == [path for path, _ in figures_within(sign.told_when)]
    _, path, figure, changed = signs[-1]
    lowest, _ = figure.range or (0.0, 0.0)
    assert lowest < figure.value
    _, model = changed(figure.model_copy(update={"value": lowest}))
    _, name, state = path
    row = script.knowledge.observables[name].states.index(state)
    moved = {report for report, table in model.report_given.items() if table[0, row] == pytest.approx(lowest / 100)}
    assert f"danger_now__scorched_plug_or_switch__{name}" in moved
    assert {report.split("__")[0] for report in moved} >= {"danger_now", "look_over", "sign_scorched_plug_or_switch"}


def test_a_figure_without_a_range_is_left_alone() -> None:
    assert list(figures_within({"a": Figure(value=1, unit="money", source="a shop")})) == []
    assert [
        path for path, _ in figures_within({"a": Figure(value=1, unit="money", source="assumed", range=(0, 2))})
    ] == [("a",)]


FAR_FROM_ANY_EDGE = [
    {
        "which_worry": ["fan_runs_on"],
        "what_goes_wrong": ["a_worry"],
        "browner_than_meant": "as_meant",
        "less_done_than_meant": "in_good_time",
    },
    {
        "what_goes_wrong": ["pale_below"],
        "how_it_began": "from_one_day",
        "underside_pale": "white_or_raw",
        "floor_of_oven": "bare",
    },
]


@pytest.mark.parametrize("told", FAR_FROM_ANY_EDGE)
def test_what_is_far_from_any_edge_ends_as_it_does(begun: Begin, script: Script, told: dict[str, object]) -> None:
    assessment = begun(danger_now=["none"], which_appliance="electric_oven", **told).assessment
    assert list(otherwise(script, assessment)) == []
