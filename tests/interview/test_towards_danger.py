"""Questions about danger that is possible go first: those whose answers tell most about it."""

from assistant.interview.conversation import Conversation
from assistant.interview.next_question import choose_next
from assistant.interview.script import Script
from assistant.interview.way import WayFinder
from assistant.interview.worth import candidates, towards_danger
from assistant.knowledge.model import Care, Knowledge
from tests.conftest import Begin


def asked_about_danger(script: Script, conversation: Conversation) -> str | None:
    assessment = conversation.assessment
    open_ones = candidates(script, assessment, WayFinder(script, assessment), "not_asked")
    return towards_danger(script, assessment, open_ones)


def test_while_danger_is_hardly_possible_nothing_is_asked_for_its_sake(
    begun: Begin, script: Script, knowledge: Knowledge
) -> None:
    conversation = begun(danger_now=["none"], what_goes_wrong=["pale_below"])
    assert conversation.assessment.dangerous < knowledge.settings.danger_asked_above.share
    assert asked_about_danger(script, conversation) is None


def test_close_to_a_threshold_the_answer_that_tells_goes_first_not_the_one_that_only_crosses_it(
    begun: Begin, script: Script, knowledge: Knowledge
) -> None:
    told = {"what_goes_wrong": ["too_hot", "light_or_clock"], "how_it_began": "from_one_day"}
    conversation = begun(danger_now=["none"], **told)
    settings = knowledge.settings
    assert 0.9 * settings.dangerous_above.share < conversation.assessment.dangerous < settings.dangerous_above.share
    assert asked_about_danger(script, conversation) == "browner_than_meant"


def test_likely_danger_is_asked_about_before_anything_else_that_is_worth_asking(begun: Begin, script: Script) -> None:
    conversation = begun(
        danger_now=["none"],
        which_appliance="electric_oven",
        what_goes_wrong=["too_hot"],
        complaint_in_own_words="Too brown.",
        how_it_began="from_one_day",
        which_dishes="everything",
    )
    assert choose_next(script, conversation.assessment) == "browner_than_meant"
    assert asked_about_danger(script, conversation) == "browner_than_meant"


def test_nothing_beyond_a_cold_look_is_asked_for_the_sake_of_danger(
    begun: Begin, script: Script, knowledge: Knowledge
) -> None:
    hot = {"hot_gate": ["adult_stays", "no_child_or_pet_near", "no_home_oxygen", "oven_empty", "cooling_air_as_usual"]}
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
