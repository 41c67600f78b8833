"""A session's belief in figures: what is printed adds up, and ends as the interview ends."""

import io
from dataclasses import replace

import pytest

from assistant.authoring.ranges import otherwise
from assistant.authoring.weighing import Weighing, weigh
from assistant.interview.assess import assess
from assistant.interview.commands import Finish, SayNotSure
from assistant.interview.conversation import Conversation
from assistant.interview.log import EventLog
from assistant.interview.next_question import next_chosen
from assistant.interview.verdict import Verdict
from assistant.wording.sentences import Sentences
from tests.conftest import Begin

TOLD: dict[str, object] = {
    "danger_now": ["none"],
    "what_goes_wrong": ["pale_below"],
    "which_appliance": "electric_oven",
    "how_it_began": "from_one_day",
    "underside_pale": "white_or_raw",
    "top_pale": "browned",
}
UNEVEN: dict[str, object] = {
    "danger_now": ["none"],
    "which_appliance": "electric_oven",
    "what_goes_wrong": ["one_side"],
}
"""So little that some prices would end it otherwise."""
COMPLAINT = {"which_dishes": "everything", "complaint_in_own_words": "It is white.", "whose_oven": "own"}
LIKELY_DANGER: dict[str, object] = {
    "danger_now": ["none"],
    "what_goes_wrong": ["too_hot"],
    "lamp_remembered": "never_goes_out",
    "low_setting": "stays_lit",
}


class Printed:
    """The lines under each heading."""

    def __init__(self, conversation: Conversation, sentences: Sentences) -> None:
        self.conversation = conversation
        out = io.StringIO()
        log: EventLog = self.conversation._log
        assert weigh(log, self.conversation.script, sentences, self.conversation.record.session_id[:8], out) == 0
        self._say = sentences.wording.say
        self.lines = out.getvalue().splitlines()

    def under(self, part: str) -> list[str]:
        start = self.lines.index(self._say(f"weigh-{part}")) + 1
        end = next((n for n, line in enumerate(self.lines) if n >= start and not line.startswith("  ")), None)
        return [line.strip() for line in self.lines[start:end]]


@pytest.fixture
def printed(begun: Begin, sentences: Sentences) -> Printed:
    return Printed(begun(**TOLD), sentences)


def figure(line: str) -> float:
    return float(line.split()[0])


def test_decibans_add_up_from_the_prior_to_the_odds_of_the_posterior(printed: Printed) -> None:
    _, *weights, total = map(str, printed.under("evidence"))
    assert len(weights) > len(("prior", "onset"))
    assert sum(map(figure, weights)) == pytest.approx(figure(total), abs=0.06 * len(weights))
    first, second = (p for _, p in printed.conversation.assessment.posterior.ranked()[:2])
    assert figure(total) > 0
    assert first > second


def test_the_cheapest_ending_is_the_one_that_the_interview_gives(printed: Printed, sentences: Sentences) -> None:
    costs = list(map(figure, printed.under("endings")))
    assert costs == sorted(costs)
    printed.conversation.do(Finish())
    verdict = printed.conversation.view()
    assert isinstance(verdict, Verdict)
    assert sentences.wording.say(f"change-{verdict.action}") in printed.under("endings")[0]


def test_the_question_that_is_worth_most_is_the_one_that_is_asked(begun: Begin, sentences: Sentences) -> None:
    """Once nothing is asked for the order's or for danger's sake."""
    conversation = begun(**TOLD, **COMPLAINT, floor_of_oven="bare")
    while (chosen := next_chosen(conversation.script, conversation.assessment)) and chosen.ground != "worth":
        conversation.do(SayNotSure(chosen.question_id))
    assert chosen is not None
    assert chosen.question_id == chosen.by
    printed = Printed(conversation, sentences)
    worths = list(map(figure, printed.under("questions")))
    assert worths == sorted(worths, reverse=True)
    assert sentences.question_by_id(chosen.question_id).text in printed.under("questions")[0]


def test_what_is_left_out_is_a_small_share(printed: Printed) -> None:
    shares = list(map(figure, printed.under("left_out")))
    assert len(shares) == len(("three_causes", "two_habits", "still_more_at_most"))
    assert 0 < sum(shares) < 10


def test_each_answer_is_shown_with_what_would_be_left_without_it(printed: Printed, sentences: Sentences) -> None:
    told = [q for q in TOLD if q not in ("danger_now", "which_appliance")]
    lines = printed.under("withdrawn")
    for question_id in told:
        given = sentences.given(question_id, printed.conversation.state.answers[question_id].value)
        assert any(given in line for line in lines)


def test_a_stopped_session_can_be_weighed(begun: Begin, sentences: Sentences) -> None:
    printed = Printed(begun(**LIKELY_DANGER), sentences)
    assert printed.conversation.assessment.danger.stops
    assert sentences.wording.say("cause-thermostat_stuck_closed") in printed.under("causes")[0]
    assert printed.under("questions") == []


def test_a_session_from_a_region_that_the_rules_no_longer_know_is_weighed_by_the_first_one(
    begun: Begin, sentences: Sentences
) -> None:
    conversation = begun(**UNEVEN)
    script = conversation.script
    first, *others = script.knowledge.regions
    assert conversation.state.region in others
    there, elsewhere = (assess(script, replace(conversation.state, region=region)) for region in (first, "gone"))
    known, gone = (dict(Weighing(script, sentences, each).parts()) for each in (there, elsewhere))
    here = dict(Weighing(script, sentences, conversation.assessment).parts())
    assert here["endings"] != known["endings"] == gone["endings"] != []
    assert list(otherwise(script, elsewhere)) == list(otherwise(script, there)) != []


def test_an_unknown_session_is_said_to_be_unknown(begun: Begin, sentences: Sentences) -> None:
    conversation = begun()
    out = io.StringIO()
    assert weigh(conversation._log, conversation.script, sentences, "ffff", out) == 1
    assert out.getvalue().strip() == sentences.wording.say("sessions-unknown")
