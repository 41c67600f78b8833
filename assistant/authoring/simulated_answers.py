"""What a drawn oven's householder answers to questions that no table of their own answers: danger signs, several
answers at once, the kind of oven and its ways of heating, and what follows from a state or from the parts.
"""

from collections.abc import Iterator, Mapping, Sequence, Set
from zlib import crc32

import numpy as np

from assistant.authoring.simulated_interview import PLAIN_ANSWERS
from assistant.authoring.simulated_parts import Parts, answer_by_parts, draw_parts
from assistant.belief.hypotheses import CHOSEN, NOTHING_WRONG, EvidenceModel, Hypothesis, item_key
from assistant.knowledge.danger_questions import DANGER_NOW, DANGER_PLAINLY, NONE, sign_question_id
from assistant.knowledge.likelihoods import share_of
from assistant.knowledge.model import Knowledge, Question, Sign

Key = tuple[int, ...]
"""What an oven's draws hang on."""

Answers = dict[str, str | list[str]]

AT_THE_OVEN = 0.7
MOST_TRIES = 200

FOLLOWS: Mapping[str, tuple[str, str, str, str]] = {
    "ever_tripped": ("breaker", "off_again", "lately", "never"),
}
"""Question -> an observable, its state, the answer in that state, and the answer in any other."""


def crc(text: str) -> int:
    return crc32(text.encode())


def chance_for(key: Key, name: str) -> np.random.Generator:
    """Each question's own, so that a new question changes no answer to the others."""
    return np.random.default_rng([*key, crc(name)])


def needs_of(knowledge: Knowledge, hypothesis: Hypothesis) -> frozenset[str]:
    """The parts without which the causes couldn't be there."""
    return frozenset(
        part for cause in hypothesis if cause in knowledge.causes for part in knowledge.causes[cause].needs
    )


def region_of(knowledge: Knowledge, hypothesis: Hypothesis, preferred: str) -> str:
    """The preferred region, or the first one in which an oven can have what the causes need."""
    regions = sorted(knowledge.regions, key=lambda region: region != preferred)
    needs = needs_of(knowledge, hypothesis)
    return next((r for r in regions if needs.isdisjoint(knowledge.regions[r].has_not)), regions[0])


def answers_of_household(
    knowledge: Knowledge, model: EvidenceModel, hypothesis: Hypothesis, states: Mapping[str, str], region: str, key: Key
) -> Answers:
    """As far as this oven has a say in them; only of questions that the rules have."""
    needs = needs_of(knowledge, hypothesis)
    parts = draw_parts(knowledge, needs, knowledge.regions[region].has_not, chance_for(key, "parts"))
    found: Answers = {}
    complaints = list(complaint_questions(knowledge))
    for question_id in sorted(complaints, key=lambda each: bool(opened_by(knowledge, each, complaints))):
        opened = opened_by(knowledge, question_id, complaints)
        also = [choice for choice, other in opened.items() if found[other] not in ([], [NONE])]
        chance = chance_for(key, question_id)
        found[question_id] = draw_complaint(question_id, model, knowledge, hypothesis, states, chance, also)
    if "which_worry" in knowledge.questions:
        worries = [choice for choice in knowledge.questions["which_worry"].choices if choice != NONE]
        found["which_worry"] = [worries[int(chance_for(key, "which_worry").integers(len(worries)))]]
    found["person_at_oven"] = "yes" if chance_for(key, "person_at_oven").random() < AT_THE_OVEN else "no"
    for question_id, (name, state, then, otherwise) in FOLLOWS.items():
        found[question_id] = then if states.get(name) == state else otherwise
    found |= _of_parts(knowledge, parts, key)
    told = signs_told(knowledge, states, key)
    found |= dict(_of_danger(knowledge, told, told | signalled(knowledge, found)))
    return {question_id: value for question_id, value in found.items() if question_id in knowledge.questions}


def _of_parts(knowledge: Knowledge, parts: Parts, key: Key) -> Answers:
    found: Answers = {}
    for question_id, question in knowledge.questions.items():
        if question.tells == "kind" and parts.kind in question.choices:
            found[question_id] = str(parts.kind)
        elif question.tells == "functions":
            found[question_id] = [function for function in parts.functions if function in question.choices]
        elif question_id not in PLAIN_ANSWERS:
            answer = answer_by_parts(question, parts, chance_for(key, question_id))
            if answer is not None:
                found[question_id] = answer
    return found


def signs_told(knowledge: Knowledge, states: Mapping[str, str], key: Key) -> frozenset[str]:
    """Each sign as often as its table says of the oven's states; what several of them say is multiplied."""
    return frozenset(
        sign_id
        for sign_id, sign in knowledge.signs.items()
        if sign.told_when and chance_for(key, sign_question_id(sign_id)).random() < told_share(knowledge, sign, states)
    )


def told_share(knowledge: Knowledge, sign: Sign, states: Mapping[str, str]) -> float:
    shares = [share_of(said[states[name]], knowledge.settings.words) for name, said in sign.told_when.items()]
    return float(np.prod(shares))


def signalled(knowledge: Knowledge, answers: Mapping[str, str | list[str]]) -> frozenset[str]:
    """The signs that these answers speak of: who is asked about them then says the same."""
    found = set()
    for question_id, value in answers.items():
        choices = knowledge.questions[question_id].choices if question_id in knowledge.questions else {}
        chosen = [value] if isinstance(value, str) else value
        found |= {choices[code].signals for code in chosen if code in choices}
    return frozenset(sign_id for sign_id in found if sign_id is not None)


def _of_danger(knowledge: Knowledge, told: Set[str], asked_for: Set[str]) -> Iterator[tuple[str, str | list[str]]]:
    """The screens by the signs that are told first; each sign's own question by those that are told at any time."""
    for screen in (DANGER_NOW, DANGER_PLAINLY):
        on_it = knowledge.questions[screen].choices
        yield screen, [sign_id for sign_id in on_it if sign_id in told] or [NONE]
    for sign_id, sign in knowledge.signs.items():
        yield sign_question_id(sign_id), _own_answer(sign, sign_id in asked_for)


def _own_answer(sign: Sign, told: bool) -> str:
    fitting = [code for code, means in sign.answers.items() if means == ("stop" if told else "clear")]
    return "no" if "no" in fitting else next(iter(fitting or sign.answers))


def complaint_questions(knowledge: Knowledge) -> Iterator[str]:
    """Those beside danger of which several answers may be given, and some report something."""
    for question_id, question in knowledge.questions.items():
        reports = any(choice.said_when for choice in question.choices.values())
        if question.kind == "choices" and question.stage != "danger" and reports:
            yield question_id


def opened_by(knowledge: Knowledge, question_id: str, complaints: Sequence[str]) -> dict[str, str]:
    """Items that say nothing by themselves -> the question that each alone opens, whose items say it."""
    found = {}
    for other in complaints:
        for finding_id in knowledge.questions[other].ask_when:
            for group in knowledge.findings[finding_id].groups:
                choice = group[0].includes if len(group) == 1 and group[0].question == question_id else None
                if choice is not None and not knowledge.questions[question_id].choices[choice].said_when:
                    found[choice] = other
    return found


def draw_complaint(
    question_id: str,
    model: EvidenceModel,
    knowledge: Knowledge,
    hypothesis: Hypothesis,
    states: Mapping[str, str],
    chance: np.random.Generator,
    also: Sequence[str] = (),
) -> list[str]:
    """Each item as often as the drawn states have it said, and those that are said `also`.

    Where none may be said, it is said if there is no item. Else they are drawn again until there is one; of a sound
    oven, where nothing is said at first, the complaint is a worry. Where the question has no answer for want of any,
    nothing is said: an empty list.
    """
    question = knowledge.questions[question_id]
    shares = {
        choice_id: said_share(model, knowledge, question_id, choice_id, states)
        for choice_id, choice in question.choices.items()
        if choice.said_when
    }
    instead = _if_nothing_is_said(question, hypothesis)
    for _ in range(1 if instead in (NONE, "a_worry") else MOST_TRIES):
        said = [*also, *(choice for choice, share in shares.items() if chance.random() < share)]
        if said:
            return said
    return [instead] if instead in question.choices else []


def _if_nothing_is_said(question: Question, hypothesis: Hypothesis) -> str:
    if NONE in question.choices:
        return NONE
    return "a_worry" if hypothesis == NOTHING_WRONG else "something_else_wrong"


def said_share(
    model: EvidenceModel, knowledge: Knowledge, question_id: str, choice_id: str, states: Mapping[str, str]
) -> float:
    """How often the item is named: what it says of several observables is multiplied, as in belief."""
    share = 1.0
    for name in knowledge.questions[question_id].choices[choice_id].said_when:
        report = item_key(item_key(question_id, choice_id), name)
        row = model.report_given[report][model.codes[report].index(CHOSEN)]
        share *= float(row[knowledge.observables[name].states.index(states[name])])
    return share
