"""What an answer moved, and why the next question is the one that is asked, in lines."""

from collections.abc import Iterator

from assistant.authoring.weighing import Weighing
from assistant.belief.posterior import DECIBANS_PER_NAT, written_down
from assistant.interview.actions import actions_in_reach
from assistant.interview.assess import Assessment
from assistant.interview.danger import Stop
from assistant.interview.next_question import Chosen
from assistant.interview.reasons import leader_and_rival
from assistant.interview.script import Script, question_of_key
from assistant.interview.verdict import Verdict, named_causes
from assistant.interview.way import WayFinder
from assistant.interview.worth import candidates, foreseen
from assistant.wording.sentences import Sentences

TOP = 5
LEAST_MOVE = 0.0005
"""As far as the shares are shown."""


class Trace:
    """Words what happens inside the interview."""

    def __init__(self, script: Script, sentences: Sentences) -> None:
        self._script = script
        self._sentences = sentences
        self._wording = sentences.wording

    def _say(self, name: str, /, **details: str | int) -> str:
        return self._wording.say(f"trial-{name}", **details)

    def ranking(self, assessment: Assessment) -> Iterator[str]:
        """The names that lead before anything is told."""
        yield self._say("ranking_first")
        leading = named_causes(assessment.posterior)[:TOP]
        width = max(len(name) for name, _ in leading)
        for name, probability in leading:
            yield "  " + self._say("share", name=name.ljust(width), percent=_percent(probability))

    def moved(self, before: Assessment, after: Assessment) -> Iterator[str]:
        """Findings that fired or hold no more, care, danger, and the ranking."""
        lines = [*self._findings(before, after), *self._gates(before, after), *self._names(before, after)]
        yield from [*lines, *self._measured(before, after)] or [self._say("nothing")]

    def _findings(self, before: Assessment, after: Assessment) -> Iterator[str]:
        old, new = before.trace.concluded, after.trace.concluded
        for finding_id in (f for f in self._script.knowledge.findings if f in new - old):
            yield self._say("finding_new", finding=finding_id, by=self._behind(finding_id, after))
        for finding_id in (f for f in self._script.knowledge.findings if f in old - new):
            yield self._say("finding_gone", finding=finding_id)

    def _behind(self, finding_id: str, assessment: Assessment) -> str:
        """The answers and findings that made it hold, the nearest only."""
        keys = [k for fired in assessment.trace.fired if fired.concludes == finding_id for k in fired.from_keys]
        return ", ".join(dict.fromkeys(self._key(key, assessment) for key in keys))

    def _key(self, key: str, assessment: Assessment) -> str:
        answer = assessment.state.answers.get(question_of_key(key))
        if answer is None or key.startswith("absent:"):
            return key.replace("absent:", "no ")
        value = answer.status if answer.value is None else answer.value
        shown = f"{value:g}" if isinstance(value, float) else value if isinstance(value, str) else ",".join(value)
        return f"{answer.question_id}={shown}"

    def _gates(self, before: Assessment, after: Assessment) -> Iterator[str]:
        if before.allowed_care != after.allowed_care:
            yield self._say("care", before=before.allowed_care.value, after=after.allowed_care.value)
        old, new = ({stop.sign_id: stop for stop in each.danger.stops} for each in (before, after))
        for sign_id, stop in new.items():
            if sign_id not in old:
                yield self._stop(stop)
        for sign_id in old:
            if sign_id not in new:
                yield self._say("stop_gone", sign=sign_id)

    def _stop(self, stop: Stop) -> str:
        return self._say("stop_new", sign=stop.sign_id, source=stop.source, by=stop.source_id)

    def _names(self, before: Assessment, after: Assessment) -> Iterator[str]:
        """The five that led and the five that lead now, where one of them moved."""
        old, new = (dict(named_causes(each.posterior)) for each in (before, after))
        shown = list(dict.fromkeys((*list(new)[:TOP], *list(old)[:TOP])))
        if all(abs(old[name] - new[name]) < LEAST_MOVE for name in shown):
            return
        width = max(map(len, shown))
        for name in shown:
            yield self._say("moved", name=name.ljust(width), before=_percent(old[name]), after=_percent(new[name]))

    def _measured(self, before: Assessment, after: Assessment) -> Iterator[str]:
        """How far what was measured is known to speak, for the ovens that were simulated are few."""
        model = self._script.evidence_model
        then, now = (written_down(model, each.evidence) for each in (before, after))
        if now.keys() <= then.keys():
            return
        first, second = leader_and_rival(after.posterior)
        new, places = now.keys() - then.keys(), (model.place_of[first], model.place_of[second])
        rows = model.measurements.log_likelihoods(now)
        weight = sum(float(rows[q][places[0]] - rows[q][places[1]]) for q in new)
        yield self._say(
            "measured",
            leader=" + ".join(first) or "none",
            rival=" + ".join(second) or "none",
            decibans=f"{weight * DECIBANS_PER_NAT:+.1f}",
            error=f"{model.measurements.error_decibans(now, new, *places):.1f}",
        )

    def why(self, chosen: Chosen, assessment: Assessment) -> str:
        """The ground on which a question is chosen."""
        if chosen.ground == "likely_danger":
            return self._say("next_likely_danger", percent=f"{100 * assessment.dangerous:.1f}")
        if chosen.ground == "worth":
            return self._why_worth(chosen, assessment)
        return self._say(f"next_{chosen.ground}", by=chosen.by)

    def _why_worth(self, chosen: Chosen, assessment: Assessment) -> str:
        """From the figures by which it was chosen, which are remembered."""
        status = assessment.state.status(chosen.by)
        finder = WayFinder(self._script, assessment)
        open_ones = candidates(self._script, assessment, finder, status)
        worths = foreseen(self._script, assessment, open_ones, actions_in_reach(self._script, assessment, finder))
        worth = next(each for each in worths if each.question_id == chosen.by)
        figures = {
            "value": f"{worth.value:.2f}",
            "effort": f"{worth.value - worth.net:.2f}",
            "currency": self._script.region(assessment.state.region).currency,
        }
        if chosen.question_id != chosen.by:
            return self._say("next_way", by=chosen.by, **figures)
        return self._say("next_worth", others=len(worths) - 1, **figures)

    def verdict(self, verdict: Verdict, assessment: Assessment, asked: int) -> Iterator[str]:
        """In the words that people read, with figures, and what it costs against the other ways to end."""
        text = self._sentences.verdict(verdict, in_figures=True)
        yield self._say("verdict", count=asked, headline=text.headline)
        yield text.explanation
        for name, lines in (("likely", text.likely), ("because", text.because), ("change", text.would_change)):
            if lines:
                yield self._say(f"verdict_{name}")
                yield from (f"  {line}" for line in lines)
        grounds = {"stop_and_isolate": "stop", "outside": "outside"}
        if verdict.action in grounds or assessment.danger.withdrawn:
            yield self._say("verdict_not_weighed", ground=grounds.get(verdict.action, "withdrawn"))
            return
        yield self._say("verdict_endings")
        yield from (f"  {line}" for line in Weighing(self._script, self._sentences, assessment).endings())


def _percent(share: float) -> str:
    return f"{100 * share:.1f}".rjust(5)
