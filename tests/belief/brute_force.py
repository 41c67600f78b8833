"""The posterior by adding up every joint state of the oven, written without a look at the program's arrays."""

from itertools import product
from math import prod

from assistant.knowledge.model import Figure


def chances(distribution, words):
    """Name -> probability: figures as they are, `rest` the remainder, words stretched to what figures leave."""
    figures = {name: said.value / 100 for name, said in distribution.items() if isinstance(said, Figure)}
    spoken = {
        name: words[said].value / 100
        for name, said in distribution.items()
        if not isinstance(said, Figure) and said != "rest"
    }
    remaining = [name for name, said in distribution.items() if said == "rest"]
    if remaining:
        return {**figures, **spoken, remaining[0]: 1 - sum(figures.values()) - sum(spoken.values())}
    stretch = (1 - sum(figures.values())) / sum(spoken.values()) if spoken else 1
    return {**figures, **{name: value * stretch for name, value in spoken.items()}}


def chance_of_report(question, code, state, words):
    if question.table is not None:
        return chances(question.table[state], words)[code]
    answers = question.number.bands if question.number else question.choices
    meaning_it = [name for name, answer in answers.items() if state in answer.means]
    others = [name for name in answers if name not in meaning_it]
    said = question.mistakes
    mistaken = (said.value if isinstance(said, Figure) else words[said].value) / 100 if others else 0
    return (1 - mistaken) / len(meaning_it) if code in meaning_it else mistaken / len(others)


def odds(percentage):
    return percentage / (100 - percentage)


def state_chances(knowledge, hypothesis):
    """Observable -> state -> probability under that hypothesis."""
    words = knowledge.settings.words
    found = {}
    for name, observable in knowledge.observables.items():
        normal = chances(observable.normal, words)
        under = {
            cause_id: chances(cause.shows[name], words) if name in cause.shows else normal
            for cause_id, cause in knowledge.causes.items()
        }
        if hypothesis == "something_else":
            weights = {cause_id: odds(cause.base_rate.value) for cause_id, cause in knowledge.causes.items()}
            breadth = knowledge.settings.something_else_breadth.value / 100
            found[name] = {
                state: (1 - breadth) * sum(weights[c] * under[c][state] for c in weights) / sum(weights.values())
                + breadth / len(observable.states)
                for state in observable.states
            }
        else:
            found[name] = under.get(hypothesis, normal)
    return found


def brute_force_posterior(knowledge, answers, not_fitted=frozenset()):
    """Hypothesis -> probability."""
    words = knowledge.settings.words
    names = list(knowledge.observables)
    priors = {"none": 1.0}
    for cause_id, cause in knowledge.causes.items():
        priors[cause_id] = 0.0 if set(cause.needs) & set(not_fitted) else odds(cause.base_rate.value)
    priors["something_else"] = odds(knowledge.settings.something_else.value)
    weights = {}
    for hypothesis, prior in priors.items():
        by_name = state_chances(knowledge, hypothesis)
        total = 0.0
        for states in product(*(knowledge.observables[name].states for name in names)):
            world = dict(zip(names, states, strict=True))
            of_world = prod(by_name[name][world[name]] for name in names)
            of_reports = prod(
                chance_of_report(knowledge.questions[q], code, world[knowledge.questions[q].observable], words)
                for q, code in answers.items()
            )
            total += of_world * of_reports
        weights[hypothesis] = prior * total
    return {hypothesis: weight / sum(weights.values()) for hypothesis, weight in weights.items()}
