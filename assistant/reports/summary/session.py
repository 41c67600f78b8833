"""A session as summaries are made of it: its events, how they are assessed today, and its words."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, tzinfo
from functools import cached_property

from assistant.belief.decision import TRADES
from assistant.interview.answers import still_fits
from assistant.interview.assess import Assessment, applies, assess, kind_of_oven
from assistant.interview.events import Event
from assistant.interview.plan_of_tests import plan_of_tests
from assistant.interview.ruled_out import RuledOut, ruled_out
from assistant.interview.script import Script
from assistant.interview.state import Answer, State, fold
from assistant.interview.verdict import NONE, Verdict, give_verdict
from assistant.knowledge.danger_questions import sign_question_id
from assistant.knowledge.model import Stage
from assistant.knowledge.time_zones import time_zone
from assistant.reports.lettering import shown
from assistant.reports.summary.footing import time_in_words
from assistant.reports.summary.readings import expected_readings
from assistant.reports.summary.said import says_something
from assistant.reports.summary.value import Block, Facts, Pairs, Section, ToldSign
from assistant.wording.sentences import Sentences

ID_SHOWN = 8
GONE_THROUGH = ("look_over", "what_changed", "which_worry")
"""Lists of which 'none of these' says nothing to who doesn't see them."""


@dataclass(frozen=True)
class Told:
    """One session in the words of one reader. `events`: all of it, at least the first."""

    script: Script
    sentences: Sentences
    events: Sequence[Event]

    def say(self, name: str, /, **arguments: str | float) -> str:
        return self.sentences.wording.say(f"summary-{name}", **arguments)

    @cached_property
    def state(self) -> State:
        return fold(self.events)

    @cached_property
    def assessment(self) -> Assessment:
        return assess(self.script, self.state)

    @cached_property
    def verdict(self) -> Verdict:
        return give_verdict(self.script, self.assessment)

    @cached_property
    def ruled_out(self) -> tuple[RuledOut, ...]:
        return ruled_out(self.script, self.assessment)

    @cached_property
    def readings(self) -> Mapping[str, str]:
        return expected_readings(self.script, self.assessment)

    @property
    def open_signs(self) -> tuple[str, ...]:
        """Danger signs that were told and whose own question has no answer yet."""
        open_ones = self.assessment.danger.open_questions
        return tuple(sign_id for sign_id in self.script.knowledge.signs if sign_question_id(sign_id) in open_ones)

    @property
    def named(self) -> tuple[tuple[str, float], ...]:
        """The causes with their probability, most probable first; while danger stands, not that nothing is wrong."""
        stands = self.assessment.danger.open
        return tuple((cause, p) for cause, p in self.verdict.named if cause != NONE or not stands)

    @property
    def somebody_comes(self) -> bool:
        return self.verdict.action in ("book_visit", "maker_seller_or_landlord_first", "stop_and_isolate")

    @property
    def kind(self) -> str | None:
        """The kind of oven that was told, if any was."""
        return kind_of_oven(self.state.answers, self.script.knowledge)

    @property
    def is_rented(self) -> bool:
        """Whether the landlord is to be told first, whatever else is to be done."""
        return any(effect.visit_first == "landlord" for effect in self.assessment.effects.values())

    def has(self, part: str) -> bool:
        """Whether the oven may have that part, for all that is known."""
        return part not in self.assessment.not_fitted

    def section(self, name: str, blocks: Iterable[Block]) -> Section:
        return Section(name, self.say(f"heading_{name}"), tuple(filter(says_something, blocks)))

    def listed(self, name: str, words: Iterable[str]) -> Pairs:
        """A row of several things; none without any. No sentence holds them, for it takes only so much."""
        found = "; ".join(words)
        return Pairs(((self.say(name), found),) if found else ())

    @property
    def session(self) -> str:
        return self.state.session_id[:ID_SHOWN]

    @property
    def latest(self) -> datetime:
        return self.local(self.events[-1].recorded_at)

    @cached_property
    def zone(self) -> tzinfo:
        """Where the oven stands; UTC where the rules don't know the region or the system no such time zone."""
        region = self.script.knowledge.regions.get(self.state.region)
        return (time_zone(region.time_zone) if region is not None else None) or UTC

    def local(self, moment: datetime) -> datetime:
        """As clocks show it where the oven stands."""
        return moment.astimezone(self.zone)

    def at(self, sequence: int) -> str:
        """When the event of that number was recorded, in words; before all of them, as the first."""
        return self.time(self._moment(sequence))

    def time(self, moment: datetime) -> str:
        """Local, with the name of the time zone."""
        return time_in_words(self.local(moment), self.sentences.wording)

    def day(self, moment: datetime) -> tuple[date, str | None]:
        """Of two moments of one day an hour tells enough; clocks that were changed between begin another."""
        local = self.local(moment)
        return local.date(), local.tzname()

    def hour(self, moment: datetime) -> str:
        return self.say("hour", time=f"{self.local(moment):%H:%M}")

    def answered(self, *stages: Stage) -> Iterator[Answer]:
        """What today's questions of these stages were answered with, also 'not sure', in the order of the rules."""
        questions = self.script.knowledge.questions
        those = [each for each in self.state.answers.values() if each.question_id in questions]
        for answer in sorted(those, key=lambda each: questions[each.question_id].order):
            if questions[answer.question_id].stage in stages:
                yield answer

    def given(self, answer: Answer) -> str:
        """The answer in words; of what was typed nothing that could act on a screen, a file or its reader."""
        return shown(self._given(answer))

    def _given(self, answer: Answer) -> str:
        if answer.status != "answered":
            return self.sentences.wording.say(f"answer-{answer.status}")
        if answer.question_id in self.state.texts:
            return self.state.texts[answer.question_id] or self.sentences.wording.say("answer-erased")
        if not still_fits(self.script.knowledge.questions.get(answer.question_id), answer.value):
            return "; ".join(map(str, answer.value)) if isinstance(answer.value, tuple) else str(answer.value)
        if answer.value == (NONE,) and answer.question_id in GONE_THROUGH:
            return self.say(f"none_{answer.question_id}")
        return self.sentences.given(answer.question_id, answer.value)

    def answer(self, question_id: str) -> str | None:
        """What was answered, in words; None where nothing was, or the rules no longer ask it."""
        answer = self.state.answers.get(question_id)
        known = question_id in self.script.knowledge.questions
        erased = question_id in self.state.texts and not self.state.texts[question_id]
        return self.given(answer) if known and not erased and answer and answer.status == "answered" else None

    def was_due(self, question_id: str) -> bool:
        """Whether the question is worth asking of this oven, whether or not it was."""
        question = self.script.knowledge.questions.get(question_id)
        return (
            question is not None
            and applies(question, self.assessment.not_fitted)
            and self.assessment.trace.concluded.isdisjoint(question.not_when)
        )

    def question(self, question_id: str) -> str:
        """The question's words; its id, where the rules no longer ask it."""
        known = question_id in self.script.knowledge.questions
        return self.sentences.question_by_id(question_id).text if known else question_id

    def question_and_answer(self, question_id: str) -> str:
        given = self.given(self.state.answers[question_id])
        return self.sentences.wording.say("reason-answer", question=self.question(question_id), answer=given)

    def test_words(self, test_id: str, attribute: str) -> str:
        """Words of an engineer's test, with what it should read at this oven."""
        return self.sentences.wording.say(f"question-{test_id}", attribute, **self.readings)

    def label(self, question_id: str) -> str:
        """A few words for the question: its own, or what it is about; the question where there is neither."""
        message = f"question-{question_id}"
        if self.sentences.wording.has(message, "label"):
            return self.sentences.wording.say(message, "label")
        observable = self.script.knowledge.questions[question_id].observable
        if observable is not None:
            return self.sentences.wording.say(f"observable-{observable}")
        return self.sentences.question_by_id(question_id).text

    def cause(self, cause_id: str) -> str:
        """The cause as the trade names it."""
        return self.sentences.wording.say(f"cause-{cause_id}", "trade")

    def part(self, part_id: str) -> str:
        """The part as the trade names it."""
        return self.sentences.wording.say(f"part-{part_id}", "trade")

    def part_of(self, cause_id: str) -> str:
        """The part that is to be mended; a habit has none, whatever part it concerns."""
        cause = self.script.knowledge.causes.get(cause_id)
        part = cause.part if cause is not None and cause.kind == "fault" else None
        return self.part(part) if part is not None else self.say("no_part")

    def percent(self, probability: float) -> str:
        """Whole percents: more digits than that no answer supports. Nothing is certain."""
        if probability < 0.005:
            return self.say("below_one")
        return self.say("above_99") if probability >= 0.995 else self.say("percent", percent=f"{100 * probability:.0f}")

    @cached_property
    def planned_tests(self) -> tuple[str, ...]:
        """The tests of the visit, in the order in which they are made; also where no visit is the verdict."""
        """None where somebody else than who mends ovens comes first."""
        if self.verdict.stops and self.verdict.details.get("who") not in TRADES:
            return ()
        planned = self.verdict.details.get("test_plan")
        if isinstance(planned, tuple):
            return tuple(map(str, planned))
        ends_well = self.verdict.action in ("all_normal", "use_differently", "do_one_thing", "outside")
        return () if ends_well else plan_of_tests(self.script, self.assessment)

    def facts(self) -> Facts:
        """What any reader's program may know."""
        danger = self.assessment.danger
        signs = [
            *(ToldSign(stop.sign_id, "stands", self._moment(stop.since)) for stop in danger.stops),
            *(ToldSign(sign_id, "open", self._moment(self.state.heard.get(sign_id, 0))) for sign_id in self.open_signs),
            *(ToldSign(sign, "taken_back", self._moment(self.state.reached.get(sign, 0))) for sign in danger.withdrawn),
        ]
        return Facts(
            rules_fingerprint=self.script.knowledge.fingerprint,
            action=self.verdict.action,
            off_confirmed=bool(danger.stops) and danger.off_confirmed,
            signs=tuple(signs),
        )

    def _moment(self, sequence: int) -> datetime:
        return self.events[max(sequence, 1) - 1].recorded_at
