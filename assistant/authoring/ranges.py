"""Which assumed figures would end a session otherwise, somewhere within the range that is given for them."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from assistant.authoring.places import (
    Path,
    figures_of,
    figures_within,
    file_of,
    observables_shown,
    with_figure,
    with_figure_at,
)
from assistant.belief.decision import Action, decision_of, least_action
from assistant.belief.hypotheses import EvidenceModel, with_knowledge, with_rates
from assistant.belief.learning import base_rates
from assistant.belief.posterior import posterior
from assistant.interview.actions import Actions, allowed_actions
from assistant.interview.assess import Assessment
from assistant.interview.script import Script, question_of_key
from assistant.knowledge.likelihoods import NotADistribution
from assistant.knowledge.model import Figure, Knowledge


@dataclass(frozen=True)
class Otherwise:
    """A figure, where it stands, the end of its range, and how the session would end with it."""

    file: str
    path: Path
    value: float
    ending: Action


def otherwise(script: Script, assessment: Assessment) -> Iterator[Otherwise]:
    """One figure at a time: base rates, costs of the region, and likelihoods of what was reported."""
    allowed = allowed_actions(script, assessment)
    now = _ending(script, script.knowledge, script.evidence_model, assessment, allowed)
    for file, path, figure, changed in _figures(script, assessment):
        for end in figure.range or ():
            try:
                knowledge, model = changed(figure.model_copy(update={"value": end}))
            except NotADistribution:
                continue
            ending = _ending(script, knowledge, model, assessment, allowed)
            if ending != now:
                yield Otherwise(file, path, end, ending)


Changed = Callable[[Figure], tuple[Knowledge, EvidenceModel]]


def _ending(
    script: Script, knowledge: Knowledge, model: EvidenceModel, assessment: Assessment, allowed: Actions
) -> Action:
    """By that knowledge and model. Prices stand in regions alone, and what is believed doesn't hang on them."""
    region = script.region_name(assessment.state.region)
    as_it_is = knowledge.regions is script.knowledge.regions
    decision = script.decision(region) if as_it_is else decision_of(knowledge, region)
    if model is script.evidence_model:
        return least_action(decision, assessment.posterior.marginals, allowed)
    belief = posterior(model, assessment.evidence, assessment.not_fitted)
    return least_action(decision, belief.marginals, allowed)


def _figures(script: Script, assessment: Assessment) -> Iterator[tuple[str, Path, Figure, Changed]]:
    yield from _rates(script)
    yield from _costs(script, script.region_name(assessment.state.region))
    yield from _likelihoods(script, assessment)


def _rates(script: Script) -> Iterator[tuple[str, Path, Figure, Changed]]:
    knowledge, model = script.knowledge, script.evidence_model
    rates = base_rates(knowledge)
    for cause_id, cause in knowledge.causes.items():

        def changed(figure: Figure, cause_id: str = cause_id) -> tuple[Knowledge, EvidenceModel]:
            return knowledge, with_rates(model, knowledge, {**rates, cause_id: figure.share})

        yield f"causes/{cause_id}.yaml", ("base_rate",), cause.base_rate, changed


def _costs(script: Script, region: str) -> Iterator[tuple[str, Path, Figure, Changed]]:
    knowledge = script.knowledge

    for path, figure in figures_within(knowledge.regions[region].costs):

        def changed(other: Figure, path: Path = path) -> tuple[Knowledge, EvidenceModel]:
            entry = knowledge.regions[region]
            costs = with_figure(entry.costs, path, other)
            regions = {**knowledge.regions, region: entry.model_copy(update={"costs": costs})}
            return knowledge.model_copy(update={"regions": regions}), script.evidence_model

        yield f"regions/{region}.yaml", ("costs", *path), figure, changed


def _likelihoods(script: Script, assessment: Assessment) -> Iterator[tuple[str, Path, Figure, Changed]]:
    """Of the observables that were reported: what causes show, what is normal, how answers are mistaken."""
    for kind in ("causes", "effects", "observables", "questions", "signs"):
        for entry_id, path, figure in figures_of(script.knowledge, kind):
            if _bears_on(script, assessment, kind, entry_id, path):
                yield file_of(kind, entry_id), path, figure, _changed_entry(script, kind, entry_id, path)


def _bears_on(script: Script, assessment: Assessment, kind: str, entry_id: str, path: Path) -> bool:
    """Whether what was reported may weigh otherwise with another figure there."""
    model = script.evidence_model
    if kind == "questions":
        return path[0] != "minutes" and entry_id in {question_of_key(report) for report in assessment.evidence}
    reported = {model.observable_of[report] for report in assessment.evidence}
    if kind == "observables":
        return entry_id in reported
    return path[0] in ("shows", "told_when") and path[1] in reported


def _changed_entry(script: Script, kind: str, entry_id: str, path: Path) -> Changed:
    def changed(figure: Figure) -> tuple[Knowledge, EvidenceModel]:
        other = with_figure_at(script.knowledge, kind, entry_id, path, figure)
        return other, with_knowledge(script.evidence_model, other, observables_shown(kind, entry_id, path))

    return changed
