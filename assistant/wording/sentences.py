"""Views -> sentences. Every front end shows the same ones; none makes its own."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING, Any

from assistant.knowledge.danger_questions import sign_question_id
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording
from assistant.wording.matching import Vocabulary
from assistant.wording.words import normalised, phrases
from assistant.wording.written_lines import written_lines

if TYPE_CHECKING:
    from assistant.interview.changes import Change
    from assistant.interview.danger import Stop
    from assistant.interview.reasons import Reason
    from assistant.interview.verdict import Verdict
    from assistant.interview.view import QuestionView

BANDS = ((0.85, "very_likely"), (0.6, "likely"), (0.3, "possible"), (0.0, "one_of_several"))
MOST_LINES_TOLD = 100
"""A sentence takes 2,500 characters of anything."""
MOST_LIKELY_SHOWN = 3
UNNAMED = "something_else"
"""As belief names the cause that nobody wrote down."""
VISITS = ("book_visit", "maker_seller_or_landlord_first")
LEAST_SHOWN = 0.1


@dataclass(frozen=True)
class QuestionText:
    """A question in words. `choices` pairs ids with labels, in order."""

    id: str
    kind: str
    text: str
    choices: tuple[tuple[str, str], ...]
    how: str
    why: str
    unit: str | None
    care: str


@dataclass(frozen=True)
class VerdictText:
    """A verdict in words; empty parts are left out on the screen."""

    headline: str
    explanation: str
    steps: tuple[str, ...]
    likely: tuple[str, ...]
    because: tuple[str, ...]
    would_change: tuple[str, ...]
    tips: tuple[str, ...]


class Sentences:
    """Words questions, verdicts and problems in one language, for one region."""

    def __init__(self, wording: Wording, knowledge: Knowledge, region: str | None) -> None:
        self.wording = wording
        self.knowledge = knowledge
        lines = knowledge.regions[region].lines if region is not None else {}
        self.lines = {
            f"{name}_line": lines[key].number if key in lines else wording.say("line-unknown")
            for name, key in (("emergency", "emergency"), ("gas", "gas"), ("network", "network_operator"))
        }

    def question(self, view: "QuestionView") -> QuestionText:
        """With what a thermometer should read in the water that is asked about."""
        text = self.question_by_id(view.id)
        point = self.knowledge.questions[view.id].fixed_point
        if point is None or view.should_read_c is None:
            return text
        expected = self.wording.say(f"thermometer-{point.water}", expected=f"{view.should_read_c:.0f}")
        return replace(text, how=f"{expected} {text.how}")

    def question_by_id(self, question_id: str) -> QuestionText:
        question = self.knowledge.questions[question_id]
        message = f"question-{question_id}"
        unit = question.number.unit if question.number else None
        return QuestionText(
            id=question_id,
            kind=question.kind,
            text=self.wording.say(message, **self.lines),
            choices=tuple((c, self.choice(question_id, c)) for c in question.choices),
            how=self.wording.say(message, "how", **self.lines),
            why=self.wording.say(message, "why", **self.lines),
            unit=self.wording.say(f"unit-{unit}") if unit else None,
            care=self.wording.say(f"care-{question.care.value}"),
        )

    def choice(self, question_id: str, choice_id: str) -> str:
        message = f"question-{question_id}"
        if not self.wording.has(message, choice_id) and choice_id in self.knowledge.signs:
            return self.wording.say(f"sign-{choice_id}", **self.lines)
        return self.wording.say(message, choice_id, **self.lines)

    def vocabulary(self, question_id: str) -> Vocabulary:
        """What may be typed for each choice: its label and the language's phrases for it."""
        listed = {
            choice_id: (normalised(self.choice(question_id, choice_id)), *self._typed(question_id, choice_id))
            for choice_id in self.knowledge.questions[question_id].choices
        }
        return Vocabulary(listed, *self._little_words)

    @cached_property
    def _little_words(self) -> tuple[frozenset[str], frozenset[str], dict[str, frozenset[str]]]:
        """The language's denials, its joining words, and its opposites, each word with its other."""
        denials = {*phrases(self.wording.say("listener-negations")), *phrases(self.wording.say("words-denials"))}
        pairs = [normalised(pair).split() for pair in self.wording.say("words-opposites").split("|")]
        opposites: dict[str, frozenset[str]] = {}
        for first, second in pairs:
            opposites[first] = opposites.get(first, frozenset()) | {second}
            opposites[second] = opposites.get(second, frozenset()) | {first}
        return frozenset(denials), frozenset(phrases(self.wording.say("words-and"))), opposites

    def _typed(self, question_id: str, choice_id: str) -> tuple[str, ...]:
        message = f"question-{question_id}"
        if self.wording.has(message, f"{choice_id}-words"):
            return phrases(self.wording.say(message, f"{choice_id}-words"))
        if self.wording.has(f"sign-{choice_id}", "phrases"):
            return phrases(self.wording.say(f"sign-{choice_id}", "phrases"))
        return ()

    def problem(self, code: str, details: Mapping[str, Any]) -> str:
        """A refusal in words, with 'did you mean' where there is a nearest name."""
        given = {name: _argument(value) for name, value in details.items()}
        text = self.wording.say(f"problem-{code}", **given)
        nearest = details.get("nearest")
        return f"{text} {self.wording.say('problem-did_you_mean', nearest=str(nearest))}" if nearest else text

    def verdict(self, verdict: "Verdict", *, in_figures: bool = False) -> VerdictText:
        """With `in_figures`, probabilities and decibans stand beside the words, for whoever may see them."""
        return VerdictText(
            headline=self.headline(verdict),
            explanation=self._explanation(verdict),
            steps=tuple(
                self.wording.say(f"step-{step}", **self.lines) for step in _listed(verdict.details.get("steps"))
            ),
            likely=() if verdict.stops else tuple(self._likely(verdict, in_figures)),
            because=tuple(self._reason(reason, in_figures) for reason in verdict.because),
            would_change=tuple(self._change(change) for change in verdict.would_change),
            tips=tuple(self.wording.say(f"advice-{tip}") for tip in _listed(verdict.details.get("tips"))),
        )

    def headline(self, verdict: "Verdict") -> str:
        details = verdict.details
        match verdict.action:
            case "do_one_thing":
                return self.wording.say("verdict-do_one_thing", act=self.wording.say(f"act-{details['act']}"))
            case "use_differently":
                advice = self.wording.say(f"advice-{details['advice']}")
                return self.wording.say("verdict-use_differently", advice=advice)
            case "maker_seller_or_landlord_first":
                first = self.wording.say(f"first-{details['first']}")
                return self.wording.say("verdict-maker_seller_or_landlord_first", first=first)
            case "stop_and_isolate" if verdict.details.get("off_confirmed"):
                return self.wording.say("verdict-stop_and_isolate", "confirmed")
            case "book_visit" | "outside":
                return self.wording.say(f"verdict-{verdict.action}", who=self.who(verdict))
        return self.wording.say(f"verdict-{verdict.action}")

    def who(self, verdict: "Verdict") -> str:
        """Who is to come, of a verdict that sends somebody."""
        return self.wording.say(f"who-{verdict.details['who']}")

    def _explanation(self, verdict: "Verdict") -> str:
        details = verdict.details
        said = [self._what_was_found(verdict)]
        if verdict.action == "maker_seller_or_landlord_first":
            said.append(self.wording.say(f"verdict-{verdict.action}", "explain"))
        if verdict.stops:
            said += self._signs_standing(verdict.stops)
            said.append(self.wording.say("verdict-then_call", who=self.who(verdict)))
        if details.get("may_not_be_worth_mending"):
            said.append(self.wording.say("verdict-may_not_be_worth_mending"))
        if details.get("withdrawn_signs") and verdict.action not in VISITS:
            said.append(self.wording.say("verdict-withdrawn_signs"))
        if verdict.action in VISITS:
            said.append(self.wording.say(f"urgency-{details['urgency']}"))
        return " ".join(said)

    def _what_was_found(self, verdict: "Verdict") -> str:
        """Before whom to tell first, what is found is told as before any visit."""
        action = "book_visit" if verdict.action in VISITS else verdict.action
        return self.wording.say(f"verdict-{action}", kind_of_explanation(verdict))

    def _signs_standing(self, stops: "Sequence[Stop]") -> Iterator[str]:
        """The signs that were told, then those that only follow from what was told."""
        told = [stop for stop in stops if stop.source == "sign"]
        for message, of_these in (("told", told), ("found", [stop for stop in stops if stop not in told])):
            if of_these:
                signs = [self.wording.say(f"sign-{stop.sign_id}", **self.lines) for stop in of_these]
                yield self.wording.say(f"verdict-signs_{message}", signs="; ".join(signs))

    def _likely(self, verdict: "Verdict", in_figures: bool) -> list[str]:
        """The most probable causes with their bands."""
        if verdict.action == "outside" or kind_of_explanation(verdict) != "explain":
            return []
        shown = [(cause, p) for cause, p in verdict.named if p >= LEAST_SHOWN][:MOST_LIKELY_SHOWN]
        lines = [self._banded(cause, p, first=not number) for number, (cause, p) in enumerate(shown)]
        if not in_figures:
            return lines
        return [
            self.wording.say("figure-probability", text=line, percent=f"{100 * p:.0f}")
            for line, (_, p) in zip(lines, shown, strict=True)
        ]

    def _banded(self, cause_id: str, probability: float, *, first: bool) -> str:
        """The cause with how likely it is; what has no name, beside those that have one, is told as such."""
        if cause_id == UNNAMED and not first:
            return self.wording.say("band-or_unnamed")
        return self.wording.say(f"band-{band(probability)}", cause=self.wording.say(f"cause-{cause_id}"))

    def why(self, verdict: "Verdict") -> str | None:
        """What stands behind the verdict: why the sign is dangerous, or what the likeliest cause is, if it has one."""
        if verdict.stops:
            return self.question_by_id(sign_question_id(verdict.stops[0].sign_id)).why
        if not self._likely(verdict, in_figures=False):
            return None
        return self.wording.say("chat-why_if", explain=self.wording.say(f"cause-{verdict.leading}", "explain"))

    def meanwhile(self, verdict: "Verdict") -> str:
        """What matters while a stop stands, whatever else is asked."""
        sign = f"sign-{verdict.stops[0].sign_id}"
        if self.wording.has(sign, "meanwhile"):
            return self.wording.say(sign, "meanwhile", **self.lines)
        if verdict.details.get("off_confirmed"):
            return self.wording.say("chat-leave_off", who=self.who(verdict))
        return self.wording.say("chat-not_yet_off", **self.lines)

    def _reason(self, reason: "Reason", in_figures: bool) -> str:
        if reason.kind == "sign":
            return self.wording.say("reason-sign", sign=self.wording.say(f"sign-{reason.id}", **self.lines))
        if reason.kind == "finding":
            return self.wording.say(f"finding-{reason.id}")
        if self.knowledge.questions[reason.id].is_measurement:
            return self.wording.say("reason-measured", lines=", ".join(self._written(reason.value)))
        question = self.question_by_id(reason.id).text
        said = self.wording.say("reason-answer", question=question, answer=self.given(reason.id, reason.value))
        if in_figures and reason.decibans is not None:
            without = f"{100 * (reason.without or 0):.0f}"
            return self.wording.say("figure-decibans", text=said, decibans=f"{reason.decibans:.1f}", without=without)
        return said

    def given(self, question_id: str, value: object) -> str:
        """An answer as the person would recognise it."""
        question = self.knowledge.questions[question_id]
        if value is None:
            return self.wording.say("answer-in_own_words")
        if isinstance(value, float | int):
            unit = self.wording.say(f"unit-{question.number.unit}") if question.number else ""
            return f"{value:g} {unit}".strip()
        if question.is_measurement:
            return self.wording.say("answer-written_down", lines="; ".join(self._written(value)))
        if isinstance(value, str) and question.number is not None:
            return self._band_of_number(question_id, value)
        chosen = (value,) if isinstance(value, str) else tuple(str(v) for v in _listed(value))
        return "; ".join(self.choice(question_id, c) for c in chosen)

    def _written(self, lines: object) -> list[str]:
        """What a sentence can hold of them: the first ones, where there are very many."""
        found = written_lines(map(str, _listed(lines)), self.wording)
        return found if len(found) <= MOST_LINES_TOLD else [*found[:MOST_LINES_TOLD], "…"]

    def _band_of_number(self, question_id: str, code: str) -> str:
        number = self.knowledge.questions[question_id].number
        assert number is not None
        unit = self.wording.say(f"unit-{number.unit}")
        lowest = number.least
        for name, limits in number.bands.items():
            if name == code:
                if limits.below is None:
                    return self.wording.say("answer-from", least=f"{lowest:g}", unit=unit)
                return self.wording.say("answer-between", least=f"{lowest:g}", most=f"{limits.below:g}", unit=unit)
            lowest = limits.below if limits.below is not None else lowest
        raise KeyError(code)

    def _change(self, change: "Change") -> str:
        question = self.question_by_id(change.question_id).text
        action = self.wording.say(f"change-{change.action}")
        if change.value is None:
            return self.wording.say("change-withdrawn", question=question, action=action)
        answer = self.given(change.question_id, change.value)
        return self.wording.say("change-answered", question=question, answer=answer, action=action)


def kind_of_explanation(verdict: "Verdict") -> str:
    """A visit for a sign that was taken back, or for want of answers, rests on no cause."""
    if verdict.action in VISITS and verdict.details.get("withdrawn_signs"):
        return "taken_back"
    if verdict.action in VISITS and verdict.details.get("little_known"):
        return "unknown"
    return "explain"


def band(probability: float) -> str:
    """The name of the band that a probability falls in."""
    return next(name for least, name in BANDS if probability >= least)


def _listed(value: object) -> tuple[str, ...]:
    return tuple(value) if isinstance(value, tuple | list) else ()


def _argument(value: object) -> str | float:
    return value if isinstance(value, str | int | float) else str(value)
