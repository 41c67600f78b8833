"""Which assumed figures would end a session otherwise."""

from dataclasses import replace

import pytest

from assistant.authoring.places import figures_within, with_figure
from assistant.authoring.ranges import otherwise
from assistant.belief.decision import decision_of, least_action
from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.posterior import posterior
from assistant.interview.actions import allowed_actions
from assistant.interview.script import Script
from assistant.knowledge.load import knowledge_of
from assistant.knowledge.model import Figure, Knowledge
from assistant.knowledge.rules_folder import read_folder
from tests.conftest import ROOT, Begin

AT_THE_EDGE = {
    "danger_now": ["none"],
    "which_appliance": "electric_oven",
    "what_goes_wrong": ["too_cold_or_slow"],
    "which_dishes": "one_dish",
}
"""Near the edge between a visit and nothing that points to a fault."""
EACH = 4
"""Every so many of the figures named are tried: each costs a compilation."""


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
    """With the figure in its own file, and loaded from there."""
    assessment = begun(**AT_THE_EDGE).assessment
    allowed = allowed_actions(script, assessment)
    read = read_folder(ROOT / "rules")

    def ending(of: Knowledge) -> object:
        belief = posterior(compile_evidence_model(of), assessment.evidence, assessment.not_fitted)
        return least_action(decision_of(of, "great_britain"), belief.marginals, allowed)

    found = list(otherwise(script, assessment))
    assert ("regions/great_britain.yaml", ("costs", "fault_left")) in {(each.file, each.path) for each in found}
    assert {"causes", "effects", "questions", "regions"} <= {each.file.split("/")[0] for each in found}
    assert len({(each.file, each.path, each.value) for each in found}) == len(found)
    for each in found[::EACH]:
        kind, name = each.file.removesuffix(".yaml").split("/")
        old = next(figure for path, figure in figures_within(read.entries[kind][name]) if path == each.path)
        entry = with_figure(read.entries[kind][name], each.path, old.model_copy(update={"value": each.value}))
        changed = knowledge_of(replace(read, entries={**read.entries, kind: {**read.entries[kind], name: entry}}), "")
        assert ending(changed) == each.ending
        assert ending(changed) != ending(script.knowledge)


def test_a_figure_without_a_range_is_left_alone() -> None:
    assert list(figures_within({"a": Figure(value=1, unit="money", source="a shop")})) == []
    assert [
        path for path, _ in figures_within({"a": Figure(value=1, unit="money", source="assumed", range=(0, 2))})
    ] == [("a",)]


@pytest.mark.parametrize("told", [{"what_goes_wrong": ["pale_below"]}])
def test_what_is_far_from_any_edge_ends_as_it_does(begun: Begin, script: Script, told: dict[str, object]) -> None:
    assessment = begun(danger_now=["none"], which_appliance="electric_oven", **told).assessment
    assert list(otherwise(script, assessment)) == []
