"""Questions about danger that is possible go first: those whose answers tell most about it."""

from assistant.belief.posterior import posterior
from assistant.belief.value import look_ahead
from assistant.interview.actions import actions_in_reach
from assistant.interview.commands import SayNotSure
from assistant.interview.conversation import Conversation
from assistant.interview.next_question import Chosen, next_chosen
from assistant.interview.script import Script
from assistant.interview.way import WayFinder
from assistant.interview.worth import candidates, first_step, most_worth, towards_danger
from assistant.knowledge.model import Care, Knowledge
from tests.conftest import Begin
from tests.interview.fit import GATE
from tests.interview.test_likely_danger import with_thresholds


def asked_about_danger(script: Script, conversation: Conversation) -> str | None:
    assessment = conversation.assessment
    open_ones = candidates(script, assessment, WayFinder(script, assessment), "not_asked")
    return towards_danger(script, assessment, open_ones)


def test_while_danger_is_hardly_possible_nothing_is_asked_for_its_sake(
    begun: Begin, script: Script, knowledge: Knowledge
) -> None:
    conversation = begun(danger_now=["none"], what_goes_wrong=["pale_below"], how_it_began="always_so")
    assert conversation.assessment.dangerous < knowledge.settings.danger_asked_above.share
    assert asked_about_danger(script, conversation) is None


TOO_HOT = {"which_appliance": "built_in_knobs", "what_goes_wrong": ["too_hot"], "how_it_began": "from_one_day"}


def crossings(script: Script, conversation: Conversation, limit: float) -> dict[str, tuple[float, float]]:
    """Open question of no more than a cold look -> how likely its answer makes danger likelier than the limit, and how
    far beyond it its answers are expected to carry it in a minute; each answer really given.
    """
    now, model = conversation.assessment, script.evidence_model
    open_ones = candidates(script, now, WayFinder(script, now), "not_asked")
    cold = (c for c in open_ones if not c.way and care_of(script, c.question_id).rank <= Care.LOOK_COLD.rank)
    found = {}
    for each in cold:
        outlook = look_ahead(model, now.evidence, now.posterior, [each.question_id], 0.0)
        told = (outlook.given @ outlook.probabilities).tolist()
        after = [
            posterior(model, {**now.evidence, each.question_id: code}, now.not_fitted).of_any(script.dangerous)
            for code in model.codes[each.question_id]
        ]
        over = [(p, p * (dangerous - limit)) for p, dangerous in zip(told, after, strict=True) if dangerous >= limit]
        found[each.question_id] = (sum(p for p, _ in over), sum(beyond for _, beyond in over) / each.minutes)
    return found


def care_of(script: Script, question_id: str) -> Care:
    return script.knowledge.questions[question_id].care


def test_close_to_a_threshold_the_answer_that_tells_goes_first_not_the_one_that_only_crosses_it(
    begun: Begin, script: Script
) -> None:
    conversation = begun(danger_now=["none"], **TOO_HOT)
    limit = conversation.assessment.dangerous / 0.95
    close = with_thresholds(script, dangerous_above=limit * 100)
    asked = asked_about_danger(close, conversation)
    assert asked is not None
    found = crossings(close, conversation, limit)
    telling = [q for q, (crossing, _) in found.items() if crossing >= close.knowledge.settings.danger_told_above.share]
    assert asked == max(telling, key=lambda question_id: found[question_id][1])
    assert found[asked][0] < 0.5 < max(crossing for crossing, _ in found.values())


def test_likely_danger_is_asked_about_before_anything_else_that_is_worth_asking(begun: Begin, script: Script) -> None:
    conversation = begun(danger_now=["none"], **TOO_HOT, complaint_in_own_words="Too brown.")
    while (chosen := next_chosen(script, conversation.assessment)) and chosen.ground in ("finding", "order"):
        conversation.do(SayNotSure(chosen.question_id))
    assessment = conversation.assessment
    assert chosen == Chosen(str(asked_about_danger(script, conversation)), "likely_danger")
    finder = WayFinder(script, assessment)
    open_ones = candidates(script, assessment, finder, "not_asked")
    best = most_worth(script, assessment, open_ones, actions_in_reach(script, assessment, finder))
    assert best is not None
    assert first_step(best) != chosen.question_id


def test_nothing_beyond_a_cold_look_is_asked_for_the_sake_of_danger(
    begun: Begin, script: Script, knowledge: Knowledge
) -> None:
    hot = {"hot_gate": GATE}
    conversation = begun(
        danger_now=["none"],
        person_at_oven="yes",
        may_look_cold="off_and_cold",
        ever_tripped="never",
        what_goes_wrong=["light_or_clock"],
        browner_than_meant="bit_browner",
        how_it_began="from_one_day",
        lamp_means="lit_while_heating",
        **hot,
    )
    assessment = conversation.assessment
    assert assessment.allowed_care.rank > Care.LOOK_COLD.rank
    assert assessment.dangerous >= knowledge.settings.danger_asked_above.share
    found = asked_about_danger(script, conversation)
    assert found is not None
    assert knowledge.questions[found].care.rank <= Care.LOOK_COLD.rank
