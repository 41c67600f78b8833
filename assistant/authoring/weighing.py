"""The belief of a saved session in figures, for the engineer and for whoever edits the rules."""

from collections.abc import Iterator
from typing import TextIO

import numpy as np

from assistant.authoring.ranges import otherwise
from assistant.authoring.session_list import say_unknown
from assistant.belief.decision import Action, expected_costs
from assistant.belief.hypotheses import Hypothesis
from assistant.belief.instruments import seen_by
from assistant.belief.left_out import left_out
from assistant.belief.posterior import posterior, weights_of_evidence
from assistant.errors import SessionUnknown
from assistant.interview.actions import actions_in_reach, allowed_actions
from assistant.interview.assess import Assessment, assess
from assistant.interview.log import EventLog
from assistant.interview.reasons import leader_and_rival
from assistant.interview.script import Script, question_of_key
from assistant.interview.state import fold
from assistant.interview.verdict import NONE, named_causes
from assistant.interview.way import WayFinder
from assistant.interview.worth import candidates, foreseen, one_step_ahead
from assistant.wording.sentences import Sentences

MOST_SHOWN = 8
LEAST_SHOWN = 0.005


def weigh(
    log: EventLog, script: Script, sentences: Sentences, prefix: str, out: TextIO, *, with_ranges: bool = False
) -> int:
    """Print what belief makes of a session's answers. Returns the exit status.

    `with_ranges`: also which assumed figures would end it otherwise within their ranges; that takes some seconds.
    """
    try:
        record = log.find_by_id_prefix(prefix)
    except SessionUnknown:
        return say_unknown(sentences.wording, out)
    assessment = assess(script, fold(log.read(record.session_id)))
    weighing = Weighing(script, sentences, assessment)
    for heading, lines in weighing.parts():
        out.write(sentences.wording.say(f"weigh-{heading}") + "\n")
        out.writelines(f"  {line}\n" for line in lines)
    if with_ranges:
        out.write(sentences.wording.say("weigh-ranges") + "\n")
        out.writelines(f"  {line}\n" for line in weighing.ranges())
    return 0


class Weighing:
    """Words the parts, one after the other."""

    def __init__(self, script: Script, sentences: Sentences, assessment: Assessment) -> None:
        self._script = script
        self._say = sentences.wording.say
        self._sentences = sentences
        self._assessment = assessment
        self._currency = script.region(assessment.state.region).currency

    def parts(self) -> Iterator[tuple[str, list[str]]]:
        yield "causes", list(self._causes())
        yield "hypotheses", list(self._hypotheses())
        yield "evidence", list(self._evidence())
        yield "withdrawn", list(self._withdrawn())
        yield "left_out", list(self._left_out())
        yield "endings", list(self.endings())
        yield "questions", list(self._questions())

    def _cause(self, cause: str) -> str:
        return self._say(f"cause-{cause}")

    def _set(self, hypothesis: Hypothesis) -> str:
        return " + ".join(map(self._cause, hypothesis or (NONE,)))

    def _causes(self) -> Iterator[str]:
        for cause, probability in named_causes(self._assessment.posterior)[:MOST_SHOWN]:
            if probability >= LEAST_SHOWN:
                yield self._say("weigh-share", percent=f"{100 * probability:5.1f}", what=self._cause(cause))

    def _hypotheses(self) -> Iterator[str]:
        for hypothesis, probability in self._assessment.posterior.ranked()[:MOST_SHOWN]:
            if probability >= LEAST_SHOWN:
                yield self._say("weigh-share", percent=f"{100 * probability:5.1f}", what=self._set(hypothesis))

    def _evidence(self) -> Iterator[str]:
        """Decibans of the leader against its rival, which add up from the prior on."""
        model, evidence = self._script.evidence_model, self._assessment.evidence
        leader, rival = leader_and_rival(self._assessment.posterior)
        yield self._say("weigh-against", first=self._set(leader), second=self._set(rival))
        odds = model.prior_odds[model.place_of[leader]] / model.prior_odds[model.place_of[rival]]
        prior = 10 * float(np.log10(odds))
        weights = weights_of_evidence(model, evidence, leader, rival)
        yield self._say("weigh-decibans", decibans=f"{prior:+6.1f}", what=self._say("weigh-prior"))
        for name, decibans in sorted(weights.items(), key=lambda item: -abs(item[1])):
            yield self._say("weigh-decibans", decibans=f"{decibans:+6.1f}", what=self._observable(name))
        total = prior + sum(weights.values())
        yield self._say("weigh-decibans", decibans=f"{total:+6.1f}", what=self._say("weigh-sum"))

    def _observable(self, name: str) -> str:
        """Its name, or that of the measurement that reported it."""
        for question_id in self._script.evidence_model.instruments:
            if name == seen_by(question_id):
                return self._sentences.question_by_id(question_id).text
        return self._say(f"observable-{name}")

    def _withdrawn(self) -> Iterator[str]:
        """The leading cause's probability without each answer."""
        assessment = self._assessment
        leading = named_causes(assessment.posterior)[0][0]
        for question_id in dict.fromkeys(map(question_of_key, assessment.evidence)):
            others = {r: code for r, code in assessment.evidence.items() if question_of_key(r) != question_id}
            belief = posterior(self._script.evidence_model, others, assessment.not_fitted)
            without = dict(named_causes(belief))[leading]
            answer = self._sentences.given(question_id, assessment.state.answers[question_id].value)
            what = self._say("weigh-without", cause=self._cause(leading), answer=answer)
            yield self._say("weigh-share", percent=f"{100 * without:5.1f}", what=what)

    def _left_out(self) -> Iterator[str]:
        assessment = self._assessment
        found = left_out(self._script.evidence_model, assessment.evidence, assessment.not_fitted)
        for name in ("three_causes", "two_habits", "still_more_at_most"):
            yield self._say(
                "weigh-share", percent=f"{100 * getattr(found, name):5.2f}", what=self._say(f"weigh-{name}")
            )

    def endings(self) -> Iterator[str]:
        """The expected cost of each way to end, in the region's currency, the least first."""
        decision = self._script.decision(self._assessment.state.region)
        costs = expected_costs(decision, self._assessment.posterior.marginals[None, :], np.ones(1))[0]
        allowed = allowed_actions(self._script, self._assessment)
        currency = self._currency
        for number in sorted(allowed, key=lambda n: costs[n])[:MOST_SHOWN]:
            what = self._ending(decision.actions[number])
            yield self._say("weigh-cost", cost=f"{costs[number]:6.1f}", currency=currency, what=what)

    def _ending(self, action: Action) -> str:
        told = self._say(f"change-{action.ending}")
        kind = {"do_one_thing": "act", "use_differently": "advice", "book_visit": "who"}.get(action.ending)
        return f"{told}: {self._say(f'{kind}-{action.remedy}')}" if kind else told

    def ranges(self) -> Iterator[str]:
        """Assumed figures that would end the session otherwise, one at a time."""
        none = True
        for each in otherwise(self._script, self._assessment):
            none = False
            where, ending = f"{each.file}: {'.'.join(each.path)}", self._ending(each.ending)
            yield self._say("weigh-range", where=where, value=f"{each.value:g}", ending=ending)
        if none:
            yield self._say("weigh-ranges_none")

    def _questions(self) -> Iterator[str]:
        """What the open questions are worth, two steps ahead, less their effort."""
        finder = WayFinder(self._script, self._assessment)
        open_ones = candidates(self._script, self._assessment, finder, "not_asked")
        actions = actions_in_reach(self._script, self._assessment, finder)
        currency = self._currency
        if not open_ones:
            return
        two = foreseen(self._script, self._assessment, open_ones, actions)
        one = one_step_ahead(self._script, self._assessment, open_ones, actions)
        for worth, alone in sorted(zip(two, one, strict=True), key=lambda pair: -pair[0].net)[:MOST_SHOWN]:
            text = self._sentences.question_by_id(worth.question_id).text
            net, by_itself = f"{worth.net:+6.2f}", f"{alone.net:+6.2f}"
            yield self._say("weigh-worth", net=net, alone=by_itself, currency=currency, what=text)
