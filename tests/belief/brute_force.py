"""The posterior by adding up every joint state of the oven, written without a look at the program's arrays.

Sets of causes are listed, what each cause adds is listed state by state, and the worst of it is taken: no
cumulative shortcut, no logarithms, no arrays.
"""

from itertools import combinations, pairwise, product
from math import prod

from assistant.knowledge.model import Figure

SOMETHING_ELSE = "something_else"


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


def chance(likelihood, words):
    return (likelihood if isinstance(likelihood, Figure) else words[likelihood]).value / 100


def chance_of_report(question, code, state, words):
    if question.table is not None:
        return chances(question.table[state], words)[code]
    answers = question.number.bands if question.number else question.choices
    names = [name for name in answers if question.number or not answers[name].is_no_report]
    meaning_it = [name for name in names if state in answers[name].means]
    others = [name for name in names if name not in meaning_it]
    mistaken = chance(question.mistakes, words) if others else 0
    return (1 - mistaken) / len(meaning_it) if code in meaning_it else mistaken / len(others)


def observable_of(knowledge, report):
    return report.split("__")[2] if "__" in report else knowledge.questions[report].observable


def chance_of_evidence(knowledge, report, code, state):
    """Of an answer, or of one being among several that were chosen: `question__choice__observable`."""
    words = knowledge.settings.words
    if "__" not in report:
        return chance_of_report(knowledge.questions[report], code, state, words)
    question_id, choice_id, name = report.split("__")
    chosen = chance(knowledge.questions[question_id].choices[choice_id].said_when[name][state], words)
    return chosen if code == "yes" else 1 - chosen


def reports_of(knowledge):
    """Report -> its codes."""
    found = {}
    for question_id, question in knowledge.questions.items():
        if question.observable is not None:
            answers = question.number.bands if question.number else question.choices
            found[question_id] = [name for name in answers if question.number or not answers[name].is_no_report]
        for choice_id, choice in question.choices.items():
            found.update({f"{question_id}__{choice_id}__{name}": ["yes", "no"] for name in choice.said_when})
    return found


def odds(percentage):
    return percentage / (100 - percentage)


def against_sound(knowledge, percentage):
    """Odds of a share of the ovens asked about, against those with nothing wrong; these are the rest, at least 5 %."""
    wrong = sum(cause.base_rate.value for cause in knowledge.causes.values()) + knowledge.settings.something_else.value
    return percentage / max(100 - wrong, 5)


def may_be_together(knowledge, causes):
    """At most two, of which at most one is a habit, and none that another of them excludes."""
    kinds = [knowledge.causes[cause].kind for cause in causes]
    excluding = any(b in knowledge.causes[a].excludes for a in causes for b in causes)
    return len(kinds) <= 2 and kinds.count("habit") <= 1 and not excluding


def sets_of(knowledge):
    """Every set that may be there, in the order of the causes, and something else by itself."""
    named = [s for size in range(3) for s in combinations(knowledge.causes, size) if may_be_together(knowledge, s)]
    return [frozenset(s) for s in named] + [frozenset({SOMETHING_ELSE})]


def prior_odds(knowledge, causes):
    """Against nothing wrong, among ovens that are asked about; something else keeps its own odds."""
    if not causes:
        return 1.0
    if causes == {SOMETHING_ELSE}:
        return against_sound(knowledge, knowledge.settings.something_else.value)
    more_often = knowledge.settings.asked_about.value
    of_each = {c: against_sound(knowledge, knowledge.causes[c].base_rate.value) / more_often for c in causes}
    for pair in knowledge.pairs.values():
        if pair.together is not None and set(pair.causes) <= causes:
            of_each[pair.causes[1]] = odds(pair.together.value)
    return prod(of_each.values()) * more_often


def combined(knowledge, name, causes):
    """State -> probability of one observable under a set of named causes."""
    words, observable = knowledge.settings.words, knowledge.observables[name]
    normal = chances(observable.normal, words)
    seen = visible(knowledge, name, causes)
    if not seen:
        return normal
    if len(seen) == 1:
        return seen[0]
    if not observable.ordered:
        return {state: sum(table[state] for table in seen) / len(seen) for state in observable.states}
    return worst_of([added_by(table, normal, observable.states) for table in seen], normal, observable.states)


def visible(knowledge, name, causes):
    """What each that is seen shows by itself: a pair with a table counts as one, and who masks hides who doesn't."""
    words = knowledge.settings.words
    normal = chances(knowledge.observables[name].normal, words)
    units, paired = [], set()
    for pair in knowledge.pairs.values():
        if name in pair.shows and set(pair.causes) <= set(causes):
            masks = any(name in knowledge.causes[cause].masks for cause in pair.causes)
            units.append((masks, chances(pair.shows[name], words)))
            paired |= set(pair.causes)
    for cause_id in sorted(set(causes) - paired):
        cause = knowledge.causes[cause_id]
        if name in cause.shows or name in cause.masks:
            alone = chances(cause.shows[name], words) if name in cause.shows else normal
            units.append((name in cause.masks, alone))
    hiding = [table for masks, table in units if masks]
    return hiding or [table for _, table in units]


def added_by(alone, normal, states):
    """State -> probability that a cause adds it to what is met anyway: the best that explains what it shows."""
    up_to = []
    for number in reversed(range(len(states))):
        share = sum(alone[s] for s in states[: number + 1]) / sum(normal[s] for s in states[: number + 1])
        up_to.insert(0, 1.0 if number == len(states) - 1 else min(share, up_to[0]))
    return {state: high - low for state, (low, high) in zip(states, pairwise([0.0, *up_to]), strict=True)}


def worst_of(added, normal, states):
    """Every joint state of what is met anyway and of what each adds; what is seen is the worst of them."""
    found = dict.fromkeys(states, 0.0)
    for joint in product(states, repeat=len(added) + 1):
        worst = max(joint, key=states.index)
        found[worst] += normal[joint[0]] * prod(part[state] for part, state in zip(added, joint[1:], strict=True))
    return found


def of_something_else(knowledge, name):
    """A mixture of what the causes show by themselves, flattened by the power 1 - breadth."""
    words, states = knowledge.settings.words, knowledge.observables[name].states
    normal = chances(knowledge.observables[name].normal, words)
    weights = {cause_id: cause.base_rate.value for cause_id, cause in knowledge.causes.items()}
    under = {
        c: chances(cause.shows[name], words) if name in cause.shows else normal for c, cause in knowledge.causes.items()
    }
    breadth = knowledge.settings.something_else_breadth.value / 100
    mixed = {s: sum(weights[c] * under[c][s] for c in weights) / sum(weights.values()) for s in states}
    total = sum(mixed[s] ** (1 - breadth) for s in states)
    return {s: mixed[s] ** (1 - breadth) / total for s in states}


def states_under(knowledge, name, causes):
    """State -> probability under a set, the unnamed one too."""
    return of_something_else(knowledge, name) if SOMETHING_ELSE in causes else combined(knowledge, name, causes)


def prior_weights(knowledge, not_fitted=frozenset()):
    """Set -> odds; none where a cause needs a part that isn't fitted."""
    found = {}
    for causes in sets_of(knowledge):
        needed = {part for cause in causes - {SOMETHING_ELSE} for part in knowledge.causes[cause].needs}
        found[causes] = 0.0 if needed & set(not_fitted) else prior_odds(knowledge, causes)
    return found


def brute_force_posterior(knowledge, answers, not_fitted=frozenset()):
    """Set of causes -> probability."""
    names = list(knowledge.observables)
    worlds = [
        dict(zip(names, states, strict=True))
        for states in product(*(knowledge.observables[name].states for name in names))
    ]
    of_reports = [
        prod(chance_of_evidence(knowledge, q, code, world[observable_of(knowledge, q)]) for q, code in answers.items())
        for world in worlds
    ]
    weights = {}
    for causes, prior in prior_weights(knowledge, not_fitted).items():
        under = {name: states_under(knowledge, name, causes) for name in names}
        of_worlds = [prod(under[name][world[name]] for name in names) for world in worlds]
        weights[causes] = prior * sum(a * b for a, b in zip(of_worlds, of_reports, strict=True))
    return {causes: weight / sum(weights.values()) for causes, weight in weights.items()}


def marginal(found, cause):
    return sum(probability for causes, probability in found.items() if cause in causes)
