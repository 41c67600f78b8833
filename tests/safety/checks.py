"""Every check of safety as one function of a project: what it finds, by name. An empty set is what should come out."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from assistant.interview.commands import GiveAnswer
from assistant.interview.script import Script
from assistant.knowledge.load import load_knowledge
from assistant.knowledge.model import Knowledge
from assistant.wording.languages import Languages
from assistant.wording.locale import languages
from tests.safety import still_open, trade, walk
from tests.safety.adversary import acts_told_wrongly, breaches, scripts_of, telling_beliefs
from tests.safety.agree import differences, followed
from tests.safety.exhaustive import (
    act_scripts,
    answers_of,
    broken_by_gate_answers,
    broken_while_measuring,
    hot_answer_scripts,
    measured_questions,
    play,
    sign_scripts,
    states_before,
)
from tests.safety.fast import Fast
from tests.safety.forbidden import forbidden_sentences
from tests.safety.heard import unheard
from tests.safety.real import begin, naive_script
from tests.safety.switches import steps_to_a_switch
from tests.safety.talks import BEGIN, HEAR, Said
from tests.safety.ways_out import measured_talks

PATHS = 400


@dataclass(frozen=True)
class Project:
    """A folder of rules with its folder of words. `simulated`: where simulated ovens are kept."""

    rules: Path
    locales: Path
    simulated: Path

    @cached_property
    def knowledge(self) -> Knowledge:
        return load_knowledge(self.rules, None)

    @cached_property
    def script(self) -> Script:
        return naive_script(self.knowledge, self.simulated)

    @cached_property
    def fast(self) -> Fast:
        return Fast(self.knowledge)


def _agreement(project: Project) -> set[str]:
    return _told_apart(project, 12, 24, (), seed=4)


def _told_apart(project: Project, number: int, steps: int, first: Sequence[Said], seed: int = 1) -> set[str]:
    """What the two say otherwise of the same random conversations."""
    found: set[str] = set()
    for talks, standing, conversations, _ in followed(project.fast, project.script, number, steps, seed, first):
        for talk, conversation in enumerate(conversations):
            real = conversation.assessment
            told = differences(project.fast, talks, standing, talk, real, project.script)
            found |= {each.split(":")[0] for each in told}
    return found


def _measuring(project: Project) -> set[str]:
    """The two side by side while something is measured, and all that may be said meanwhile."""
    fast, found = project.fast, set(broken_while_measuring(project.fast))
    for question_id, state in states_before(fast, measured_questions(project.knowledge)).items():
        begun: Said = (BEGIN, fast.codes.place[question_id], 0, 0)
        found |= _told_apart(project, 8, 8, [*answers_of(state), begun])
        found |= _told_apart(project, 1, 0, [*answers_of(state), (HEAR, fast.codes.too_hot, 0, 0), begun])
    return found


def _ways_out(project: Project) -> set[str]:
    known = Languages(project.locales, project.knowledge)
    talks = measured_talks(project.script, known, project.fast, 4)
    return {breach for terminal in talks for breach in terminal.breaches}


def _verdicts(project: Project) -> set[str]:
    scripts = scripts_of(project.script)
    found: set[str] = set()
    for sign_id, sign in project.knowledge.signs.items():
        conversation = begin(project.script, "householder")
        stopping = next(a for a, means in sign.answers.items() if means == "stop")
        clearing = next(a for a, means in sign.answers.items() if means == "clear")
        for answer in (stopping, clearing):
            conversation.do(GiveAnswer("danger_now", ["none"]), GiveAnswer(f"sign_{sign_id}", answer))
            for hypothesis in telling_beliefs(project.script):
                found |= {each.split(":")[0] for each in breaches(scripts, conversation.state, hypothesis)}
    return found


def _switches(project: Project) -> set[str]:
    known = Languages(project.locales, project.knowledge)
    sentences = known.sentences("en-GB", next(iter(project.knowledge.regions)))

    def text_of(step: str) -> str:
        return sentences.wording.say(f"step-{step}", **sentences.lines)

    return set(steps_to_a_switch(project.knowledge, text_of, 2)) - set(still_open.STEPS)


def _paths(project: Project) -> set[str]:
    found = walk.Walk(project.fast, PATHS, 1).run()
    cut = {"a path was cut"} if found.cut else set()
    return set(found.broken) - set(still_open.HOT) | cut


def _acts(project: Project) -> set[str]:
    found = {name for act in project.knowledge.acts for name in play(project.fast, _of(project, act)).broken}
    return found | set(acts_told_wrongly(project.script, project.fast))


def _of(project: Project, act: str) -> list[list[tuple[int, int, int, int]]]:
    return list(act_scripts(project.fast, act))


CHECKS: Mapping[str, Callable[[Project], set[str]]] = {
    "trade": lambda project: {each.split(":")[0] for each in trade.breaches(project.knowledge)},
    "words": lambda project: {
        n for lang in languages(project.locales) for n in forbidden_sentences(project.locales, lang)
    },
    "signs": lambda project: set(play(project.fast, list(sign_scripts(project.fast))[::4]).broken),
    "gates": lambda project: set(broken_by_gate_answers(project.fast, 1)[0]) - set(still_open.HOT),
    "acts": _acts,
    "switches": _switches,
    "heard": lambda project: set(unheard(project.script, Languages(project.locales, project.knowledge))),
    "verdicts": _verdicts,
    "agreement": _agreement,
    "paths": _paths,
    "measuring": _measuring,
    "hot answers": lambda project: set(play(project.fast, list(hot_answer_scripts(project.fast))).broken),
    "ways out": _ways_out,
}
