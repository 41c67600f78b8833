"""Which assumed figures would end a session otherwise, somewhere within the range that is given for them."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from assistant.belief.decision import Action, decision_of, least_action
from assistant.belief.hypotheses import EvidenceModel, with_knowledge, with_rates
from assistant.belief.learning import base_rates
from assistant.belief.posterior import posterior
from assistant.interview.actions import Actions, allowed_actions
from assistant.interview.assess import Assessment
from assistant.interview.script import Script
from assistant.knowledge.likelihoods import NotADistribution
from assistant.knowledge.model import Cause, Effect, Entry, Figure, Knowledge, Question

Path = tuple[str, ...]


@dataclass(frozen=True)
class Otherwise:
    """A figure, where it stands, the end of its range, and how the session would end with it."""

    file: str
    path: Path
    value: float
    ending: Action


def otherwise(script: Script, assessment: Assessment) -> Iterator[Otherwise]:
    """One figure at a time: base rates, costs of the region, and likelihoods of what was reported."""
    region = script.region_name(assessment.state.region)
    allowed = allowed_actions(script, assessment)
    now = _ending(script.knowledge, script.evidence_model, region, assessment, allowed)
    for file, path, figure, changed in _figures(script, assessment):
        for end in figure.range or ():
            try:
                knowledge, model = changed(figure.model_copy(update={"value": end}))
            except NotADistribution:
                continue
            ending = _ending(knowledge, model, region, assessment, allowed)
            if ending != now:
                yield Otherwise(file, path, end, ending)


Changed = Callable[[Figure], tuple[Knowledge, EvidenceModel]]


def _ending(
    knowledge: Knowledge, model: EvidenceModel, region: str, assessment: Assessment, allowed: Actions
) -> Action:
    belief = posterior(model, assessment.evidence, assessment.not_fitted)
    return least_action(decision_of(knowledge, region), belief.marginals, allowed)


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
    model = script.evidence_model
    reported = {model.observable_of[report] for report in assessment.evidence}
    asked = {report.split("__")[0] for report in assessment.evidence}
    for kind, names in (("causes", None), ("effects", None), ("observables", reported), ("questions", asked)):
        entries: Mapping[str, Entry] = getattr(script.knowledge, kind)
        for entry_id in entries if names is None else sorted(names & entries.keys()):
            for path, figure in figures_within(entries[entry_id]):
                if kind in ("causes", "effects") and not (path[0] == "shows" and path[1] in reported):
                    continue
                if kind == "causes" and _from_effect(script.knowledge, entry_id, path[1]):
                    continue
                if kind == "questions" and (path[0] == "minutes" or _from_sign(script.knowledge, entry_id, path)):
                    continue
                yield f"{kind}/{entry_id}.yaml", path, figure, _changed_entry(script, kind, entry_id, path)
    yield from _told_signs(script, assessment)


def _told_signs(script: Script, assessment: Assessment) -> Iterator[tuple[str, Path, Figure, Changed]]:
    """What the danger signs say that answers spoke of."""
    knowledge = script.knowledge
    items = [report.split("__") for report in assessment.evidence if "__" in report]
    told = {knowledge.questions[question_id].choices[choice_id].signals for question_id, choice_id, _ in items}
    for sign_id in sorted(sign_id for sign_id in told if sign_id is not None):
        for path, figure in figures_within(knowledge.signs[sign_id].told_when):

            def changed(other: Figure, sign_id: str = sign_id, path: Path = path) -> tuple[Knowledge, EvidenceModel]:
                moved = knowledge.model_copy(update={"questions": _questions_told(knowledge, sign_id, path, other)})
                return moved, with_knowledge(script.evidence_model, moved, ())

            yield f"danger/{sign_id}.yaml", ("told_when", *path), figure, changed


def _questions_told(knowledge: Knowledge, sign_id: str, path: Path, figure: Figure) -> dict[str, Question]:
    """All questions, with that figure wherever an answer says what the sign says."""
    questions = dict(knowledge.questions)
    for question_id, question in knowledge.questions.items():
        for choice_id, choice in question.choices.items():
            place = ("choices", choice_id, "said_when", *path)
            if choice.signals == sign_id and _from_sign(knowledge, question_id, place):
                questions[question_id] = with_figure(questions[question_id], place, figure)
    return questions


def _from_sign(knowledge: Knowledge, question_id: str, path: Path) -> bool:
    """Whether the figure at that place of a question is one that a danger sign gives."""
    if len(path) < 4 or path[2] != "said_when":
        return False
    choice, name = knowledge.questions[question_id].choices[path[1]], path[3]
    if choice.signals is None or name not in choice.said_when:
        return False
    return choice.said_when[name] == knowledge.signs[choice.signals].told_when.get(name)


def _changed_entry(script: Script, kind: str, entry_id: str, path: Path) -> Changed:
    knowledge = script.knowledge

    def changed(figure: Figure) -> tuple[Knowledge, EvidenceModel]:
        entries = getattr(knowledge, kind)
        entry = with_figure(entries[entry_id], path, figure)
        other = knowledge.model_copy(update={kind: {**entries, entry_id: entry}})
        if kind == "effects":
            other = other.model_copy(update={"causes": _causes_with(knowledge, entry_id, entry, path[1])})
        return other, with_knowledge(script.evidence_model, other, _observables_of(kind, entry_id, path))

    return changed


def _from_effect(knowledge: Knowledge, cause_id: str, name: str) -> bool:
    cause = knowledge.causes[cause_id]
    return cause.effect is not None and cause.shows_as(knowledge.effects[cause.effect], name)


def _causes_with(knowledge: Knowledge, effect_id: str, effect: Effect, name: str) -> dict[str, Cause]:
    """All causes, of which those with that effect show the observable as it does now."""
    return {
        cause_id: cause.model_copy(update={"shows": {**cause.shows, name: effect.shows[name]}})
        if cause.effect == effect_id and _from_effect(knowledge, cause_id, name)
        else cause
        for cause_id, cause in knowledge.causes.items()
    }


def _observables_of(kind: str, entry_id: str, path: Path) -> tuple[str, ...]:
    """Those whose tables hang on the figure."""
    if kind in ("causes", "effects"):
        return (path[1],)
    if kind == "observables":
        return (entry_id,)
    return ()


def figures_within(thing: object, path: Path = ()) -> Iterator[tuple[Path, Figure]]:
    """Every figure with a range in an entry, and where in it."""
    if isinstance(thing, Figure):
        if thing.range is not None:
            yield path, thing
    elif isinstance(thing, Entry):
        for name in type(thing).model_fields:
            yield from figures_within(getattr(thing, name), (*path, name))
    elif isinstance(thing, dict):
        for name, inner in thing.items():
            yield from figures_within(inner, (*path, str(name)))


def with_figure(thing: Any, path: Path, figure: Figure) -> Any:
    """The same with that figure at the path."""
    if not path:
        return figure
    first, *rest = path
    if isinstance(thing, Entry):
        return thing.model_copy(update={first: with_figure(getattr(thing, first), tuple(rest), figure)})
    return {name: with_figure(i, tuple(rest), figure) if str(name) == first else i for name, i in thing.items()}
