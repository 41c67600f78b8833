"""The chat as a householder types to it: events and state first, words second."""

import random
import re
from collections.abc import Sequence

import pytest

from assistant.chat.talk import Talk
from assistant.errors import StoreUnreadable
from assistant.interview.commands import GiveAnswer, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.events import Event
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script
from assistant.interview.state import fold
from assistant.store.memory import MemoryStore
from assistant.wording.languages import Languages
from assistant.wording.pseudo import PSEUDO_LANG
from tests.chat.conftest import Feed
from tests.record_readme import CODE, RecordingTerminal

CLEAR = {"danger_now": ["none"]}


@pytest.mark.parametrize("typed", ["16", "none", "None of these!", "p"])
def test_the_danger_screen_takes_a_number_a_letter_or_an_exact_phrase(feed: Feed, typed: str) -> None:
    assert feed(typed).answer("danger_now") == ("none",)


@pytest.mark.parametrize("typed", ["nine", "nothing much really", "i suppose not", "purple", "17", "1.5", "-1"])
def test_the_danger_screen_takes_nothing_near(feed: Feed, typed: str) -> None:
    fed = feed(typed)
    assert fed.status("danger_now") == "not_asked"
    assert "If none of these is happening, type 16" in fed.screen


def test_several_signs_at_once(feed: Feed) -> None:
    fed = feed("sparks and smoke")
    assert set(fed.answer("danger_now")) == {"sparks", "smoke"}  # type: ignore[call-overload]


@pytest.mark.parametrize("typed", ["8", "h", "electric", "an electric oven", "ELECTRIC OVEN.", "lectric oven"])
def test_an_answer_is_understood_however_it_is_typed(feed: Feed, typed: str) -> None:
    assert feed("none", "5", typed).answer("which_appliance") == "electric_oven"


@pytest.mark.parametrize("typed", ["qwerty", "42", "the moon", "%s%n", "\x1b[2J", "'; drop table", "🙂", "a" * 5000])
def test_nonsense_is_asked_back_and_never_guessed(feed: Feed, typed: str) -> None:
    fed = feed("none", "5", typed)
    assert fed.status("which_appliance") == "not_asked"
    assert "didn't catch" in fed.screen or "not certain" in fed.screen
    assert not any("\x1b" in line for line in fed.screen.splitlines() if not line.startswith(">"))


def test_an_empty_line_says_what_to_do(feed: Feed) -> None:
    assert "Nothing was typed" in feed("").screen


def test_danger_typed_into_another_question_opens_its_question(feed: Feed) -> None:
    fed = feed("none", "5", "well it's electric but I got a shock off it")
    assert fed.state.heard.keys() == {"shock"}
    assert fed.status("which_appliance") == "not_asked"
    assert "may mean danger" in fed.screen


def test_danger_typed_into_free_text_is_heard_and_the_text_kept(feed: Feed) -> None:
    fed = feed("not sure", **CLEAR, what_goes_wrong=["pale_below"], which_appliance="electric_oven")
    assert fed.status("complaint_in_own_words") in ("not_asked", "not_sure")
    said = "it went wrong on Sunday, there were sparks at the back"
    while_asked = feed(said, **CLEAR, which_appliance="electric_oven", what_goes_wrong=["something_else_wrong"])
    assert while_asked.state.heard.keys() == {"sparks"}
    if "complaint_in_own_words" in while_asked.state.texts:
        assert while_asked.state.texts["complaint_in_own_words"] == said


def test_a_stop_shows_numbered_steps_and_asks_whether_it_is_off(feed: Feed) -> None:
    fed = feed("sparks")
    assert "Stop." in fed.screen
    assert re.search(r"\n +1 +\w", fed.screen)
    assert fed.status("oven_is_off") == "not_asked"
    assert "Please follow the steps above" in fed.screen


@pytest.mark.parametrize("typed", ["the breaker", "The breaker!", "breaker", "off at the breaker"])
def test_the_breaker_answers_how_it_was_switched_off(feed: Feed, typed: str) -> None:
    fed = feed("sparks", typed)
    assert fed.answer("oven_is_off") == "off_at_breaker"
    assert "Good. Leave it off." in fed.screen


def test_helper_words_explain_without_answering(feed: Feed) -> None:
    fed = feed("none", "why", "how", "help", "why do you ask?")
    assert list(fed.state.answers) == ["danger_now"]


def test_not_sure_and_skip_are_kept_as_such(feed: Feed) -> None:
    fed = feed("none", "dunno", "skip")
    assert fed.status("what_goes_wrong") == "not_sure"
    assert fed.status("which_appliance") == "skipped"


def test_danger_cannot_be_skipped(feed: Feed) -> None:
    fed = feed("skip")
    assert fed.status("danger_now") == "not_asked"
    assert "can't be skipped" in fed.screen


def test_back_opens_the_question_before_and_again_the_one_before_that(feed: Feed) -> None:
    fed = feed("none", "5", "electric", "back", "gas")
    assert fed.answer("which_appliance") == "gas_oven"
    assert [old.value for old in fed.state.replaced] == ["electric_oven"]
    twice = feed("none", "5", "electric", "back", "back", "6")
    assert twice.answer("what_goes_wrong") == ("pale_on_top",)


def test_back_at_the_beginning_says_so(feed: Feed) -> None:
    assert "nothing before" in feed("back").screen


def test_change_lists_the_answers_and_reopens_one(feed: Feed) -> None:
    fed = feed("none", "5", "electric", "change", "3", "gas oven")
    assert fed.answer("which_appliance") == "gas_oven"
    assert "Your answers so far" in fed.screen


@pytest.mark.parametrize("picked", ["", "0", "99", "x", "-1", "١"])
def test_change_with_no_such_number_changes_nothing(feed: Feed, picked: str) -> None:
    fed = feed("none", "5", "electric", "change", picked)
    assert fed.answer("which_appliance") == "electric_oven"
    assert fed.state.replaced == ()


def test_danger_is_heard_even_while_choosing_what_to_change(feed: Feed) -> None:
    assert feed("none", "change", "there is smoke now").state.heard.keys() == {"smoke"}


@pytest.mark.parametrize(
    ("typed", "years"),
    [("12", 12.0), ("about 12 years", 12.0), ("18 months", 1.5), ("3,5 yrs", 3.5), ("around 4", 4.0)],
)
def test_a_number_is_taken_with_its_unit(feed: Feed, typed: str, years: float) -> None:
    fed = feed("back", "back", "change", "1", typed, age_of_oven=1)
    assert fed.answer("age_of_oven") == years


@pytest.mark.parametrize("typed", ["old", "12 parsecs", "1e9", "999", "-3", "twelve", "12 12"])
def test_a_number_that_cannot_be_is_asked_again(feed: Feed, typed: str) -> None:
    assert feed("change", "1", typed, age_of_oven=1).answer("age_of_oven") == 1.0


def test_leaving_shows_the_code_to_come_back_with(feed: Feed) -> None:
    for leave in ("stop", "quit"):
        fed = feed("none", leave)
        assert "7K3M-QX8D-0ZRT-5WAB" in fed.screen


def test_at_the_verdict_an_empty_line_leaves_and_finishes(feed: Feed) -> None:
    fed = feed("none", "5", "gas", "")
    assert fed.state.finished
    assert "registered gas engineer" in fed.screen


def test_the_verdict_can_be_reopened_by_changing_an_answer(feed: Feed) -> None:
    fed = feed("none", "5", "gas", "change", "3", "electric")
    assert not fed.state.finished
    assert fed.answer("which_appliance") == "electric_oven"


def test_danger_is_heard_after_the_verdict(feed: Feed) -> None:
    assert feed("none", "5", "gas", "oh and it sparks").state.heard.keys() == {"sparks"}


def test_no_sentence_is_hard_wired(feed: Feed) -> None:
    """In the made-up language every line on the screen is marked, but for what was typed and the code."""
    lines = ("16", "5", "why", "how", "zzz", "", "1", "back", "2", "change", "1", "", "change", "3", "1", "1", "1", "2")
    screen = feed(*lines, lang=PSEUDO_LANG).screen
    typed_or_code = {*lines, "ovenside resume 7K3M-QX8D-0ZRT-5WAB"}
    depth = 0
    plain: list[str] = []
    for line in screen.splitlines():
        if line.startswith(">"):
            continue
        before, depth = depth, depth + line.count("⟦") - line.count("⟧")
        words = re.sub(r"^\s*(\d+|–)\s+", "", line).strip()
        if words and words not in typed_or_code and before == 0 and not words.startswith("⟦"):
            plain.append(line)
    assert plain == []
    assert depth == 0


def test_random_lines_never_break_the_chat(feed: Feed) -> None:
    chance = random.Random(11)
    words = [
        "none",
        "16",
        "1",
        "2",
        "yes",
        "electic",
        "cookt",
        "not sure",
        "skip",
        "back",
        "change",
        "why",
        "how",
        "smoke",
        "no",
        "1,2",
        "🙂",
        "",
    ]
    for _ in range(25):
        lines = [
            chance.choice(words)
            if chance.random() < 0.8
            else "".join(chr(chance.choice([chance.randrange(32, 0x2FF), 0x202E, 0x1B, 0xFFFD])) for _ in range(20))
            for _ in range(40)
        ]
        fed = feed(*[line for line in lines if line != "stop"])
        assert fed.screen.endswith("ovenside resume 7K3M-QX8D-0ZRT-5WAB\n")
        assert fold(fed.conversation._log.read(fed.conversation.record.session_id)) == fed.state


def test_an_agent_sees_figures_and_a_householder_does_not(feed: Feed) -> None:
    answers = {**CLEAR, "what_goes_wrong": ["pale_below"], "underside_pale": "white_or_raw", "fan_cooks": "cooks_well"}
    answers["which_dishes"] = "everything"
    lines = ["not sure"] * 60
    agent = feed(*lines, role="agent", which_appliance="electric_oven", **answers)
    householder = feed(*lines, which_appliance="electric_oven", **answers)
    assert re.search(r"\(\d+ %\)", agent.screen)
    assert "decibans" in agent.screen
    assert not re.search(r"\(\d+ %\)", householder.screen)
    assert "decibans" not in householder.screen


def test_yes_takes_up_only_the_suggestion_of_the_same_question(feed: Feed) -> None:
    suggested = feed("none", "5", "micro", "yes")
    assert suggested.answer("which_appliance") == "microwave"
    stale = feed("none", "5", "micro", "back", "yes")
    assert stale.answer("what_goes_wrong") == ("pale_below",)
    assert stale.status("which_appliance") == "not_asked"


def test_a_hot_question_is_not_asked_again_while_danger_stands(feed: Feed) -> None:
    fed = feed("change", "1", "yes", lamp_cycle="cycles", danger_now=["sparks"])
    assert "now: watching it hot" not in fed.screen
    assert "That can't be asked at the moment" in fed.screen
    assert fed.status("lamp_cycle") == "not_asked"
    kept = feed("change", "1", "", lamp_cycle="cycles", danger_now=["sparks"])
    assert kept.answer("lamp_cycle") == "cycles"


def test_words_to_a_signs_own_question_are_answered_with_what_would_do(feed: Feed) -> None:
    fed = feed("6", "smoke from behind the panel")
    assert "may mean danger" not in fed.screen
    assert "I don't want to guess" in fed.screen


def test_a_graver_sign_told_under_a_stop_is_asked_at_once(feed: Feed) -> None:
    fed = feed("now I smell gas", danger_now=["sparks"])
    assert fed.state.heard.keys() == {"gas_smell"}
    assert fed.screen.rstrip().count("Do you smell gas") == 1 or "gas" in fed.screen.lower()


def test_under_a_stop_every_other_word_is_answered_with_leave_it_off(feed: Feed) -> None:
    for said in ("I am frightened, what shall I do", "may I use it on Sunday", "can i use just the hob until then"):
        assert "Please follow the steps above" in feed(said, danger_now=["sparks"]).screen
        off = feed(said, danger_now=["sparks"], oven_is_off="off_at_breaker")
        assert "Please leave the oven off and don't touch it" in off.screen
        gas = feed(said, danger_now=["gas_smell"])
        assert "Touch no switch, not even a light" in gas.screen


def test_two_misses_show_the_question_again(feed: Feed) -> None:
    fed = feed("none", "5", "qwerty", "asdf")
    assert fed.screen.count("Which kind of oven is it?") == 2


def test_a_verdict_that_a_change_does_not_move_is_not_told_twice(feed: Feed) -> None:
    fed = feed("none", "5", "gas", "change", "2", "6")
    assert fed.screen.count("This needs somebody else") == 2
    assert "Noted. The answer stays" in fed.screen


class _FailingLog(MemoryStore):
    """A store whose disk is full after the first answers."""

    def append(self, session_id: str, expected_sequence: int, events: Sequence[Event]) -> None:
        raise StoreUnreadable("sessions.db", "disk_full")


def talk_on(log: MemoryStore, script: Script, languages: Languages, lines: Sequence[str]) -> tuple[str, Conversation]:
    record = SessionRecord(session_id="c" * 32, code_hash="d" * 64, name=None, created_at=utc_now())
    conversation = Conversation(script, log, record)
    conversation.start(Start("householder", "great_britain", "en-GB", "single"), keep_at_once=False)
    terminal = RecordingTerminal(lines)
    sentences, listener = languages.sentences("en-GB", "great_britain"), languages.listener("en-GB")
    Talk(conversation, sentences, listener, terminal, f"ovenside resume {CODE}").run()
    return terminal.screen.getvalue(), conversation


def test_danger_is_answered_even_if_it_cannot_be_saved(script: Script, languages: Languages) -> None:
    screen, conversation = talk_on(_FailingLog(), script, languages, ["none", "there are flames", "1"])
    assert "can't be saved: the disk is full" in screen
    assert conversation.assessment.danger.stops[0].sign_id == "fire"
    assert "Stop." in screen
    assert "Not all of this could be saved" in screen


def test_two_chats_on_one_session_tell_each_other_and_lose_no_danger(script: Script, languages: Languages) -> None:
    log = MemoryStore()
    _, first = talk_on(log, script, languages, ["none"])
    terminal = RecordingTerminal(["5", "I got an electric shock"])
    second = Conversation.resume(script, log, first.record)
    first.do(GiveAnswer("what_goes_wrong", ["too_hot"]))
    sentences, listener = languages.sentences("en-GB", "great_britain"), languages.listener("en-GB")
    Talk(second, sentences, listener, terminal, None).run()
    assert "Somebody else answered" in terminal.screen.getvalue()
    assert second.state.heard.keys() == {"shock"}
    assert second.state.answers["what_goes_wrong"].value == ("too_hot",)


def test_off_is_taken_in_plain_words_and_thanked(feed: Feed) -> None:
    for said in ("yes", "it is off", "yes its off", "off", "yes, at the breaker"):
        fed = feed(said, danger_now=["sparks"])
        assert fed.conversation.assessment.danger.off_confirmed, said
        assert "Good. Leave it off." in fed.screen


def test_still_on_is_answered_with_whom_to_call(feed: Feed) -> None:
    fed = feed("still on", danger_now=["sparks"])
    assert not fed.conversation.assessment.danger.off_confirmed
    assert "105" in fed.screen


def test_enter_keeps_an_answer_that_stands(feed: Feed) -> None:
    fed = feed("", danger_now=["sparks"], oven_is_off="off_at_breaker", sign_shock="shock")
    assert fed.conversation.assessment.danger.off_confirmed
    reopened = feed("none", "5", "electric", "back", "")
    assert reopened.answer("which_appliance") == "electric_oven"
    assert reopened.state.replaced == ()


def test_a_sign_taken_back_brings_no_tip_no_cause_and_a_last_word(feed: Feed) -> None:
    fed = feed("2", "change", "1", "16", "no", *["not sure"] * 60)
    assert "a registered gas engineer" in fed.screen
    assert "What you told us before pointed to danger, and no longer does" in " ".join(fed.screen.split())
    assert "nothing is wrong" not in fed.screen
    assert "Keep the oven off" in fed.screen.rpartition("Your answers are saved")[0]


def test_a_stop_by_likely_danger_never_says_that_the_sign_was_told(feed: Feed) -> None:
    likely = {"what_goes_wrong": ["too_hot"], "lamp_remembered": "never_goes_out", "low_setting": "stays_lit"}
    fed = feed("why", danger_now=["none"], which_appliance="electric_oven", **likely)
    assert [stop.source for stop in fed.conversation.assessment.danger.stops] == ["belief"]
    assert "Stop. Please leave the oven alone" in fed.screen
    assert "What you told us points to this danger: It gets far hotter than you set it" in " ".join(fed.screen.split())
    assert "You told us: It gets far hotter" not in fed.screen


def test_a_known_worry_alone_is_called_normal(feed: Feed) -> None:
    fed = feed("none", "16", *["not sure"] * 40, "", which_worry=["fan_runs_on"], which_appliance="electric_oven")
    assert "Nothing you told us points clearly to a fault" in fed.screen
    assert "Book a visit" not in fed.screen


def test_danger_told_at_a_reopened_sign_question_is_asked_again(feed: Feed) -> None:
    fed = feed("back", "thick smoke is pouring out now", danger_now=["smoke"], sign_smoke="spilt_food")
    assert "smoke" in fed.state.heard


def test_a_line_about_a_standing_danger_never_becomes_an_answer(feed: Feed) -> None:
    fed = feed("won't turn off", danger_now=["heat_wont_go_off"], oven_is_off="off_at_breaker")
    assert fed.status("what_goes_wrong") == "not_asked"
    assert not fed.conversation.assessment.danger.off_confirmed


def test_what_a_person_allows_is_never_guessed(feed: Feed) -> None:
    fed = feed("change", "1", "it is on and cold", may_look_cold="still_warm", danger_now=["none"])
    assert fed.answer("may_look_cold") == "still_warm"


def test_leaving_after_danger_was_only_heard_still_says_keep_off(feed: Feed) -> None:
    assert "Keep the oven off" in feed("there are flames coming out").screen


def test_a_session_erased_meanwhile_still_answers_danger(script: Script, languages: Languages) -> None:
    log = MemoryStore()
    _, first = talk_on(log, script, languages, ["none"])
    again = Conversation.resume(script, log, first.record)
    log.erase(first.record.session_id)
    terminal = RecordingTerminal(["there are flames coming out"])
    sentences, listener = languages.sentences("en-GB", "great_britain"), languages.listener("en-GB")
    Talk(again, sentences, listener, terminal, None).run()
    assert "was erased meanwhile" in terminal.screen.getvalue()
    assert again.state.heard.keys() == {"fire"}


def test_what_another_chat_answered_is_shown_before_anything_is_taken(script: Script, languages: Languages) -> None:
    log = MemoryStore()
    _, first = talk_on(log, script, languages, ["none", "5"])
    second = Conversation.resume(script, log, first.record)
    first.do(GiveAnswer("danger_now", ["shock"]))
    terminal = RecordingTerminal(["back", "6"])
    sentences, listener = languages.sentences("en-GB", "great_britain"), languages.listener("en-GB")
    Talk(second, sentences, listener, terminal, None).run()
    screen = terminal.screen.getvalue()
    assert "Taken as" not in screen
    assert screen.index("Somebody else answered") < screen.index("Stop. Please leave the oven alone")


def test_not_sure_whether_it_is_off_is_told_what_to_do_each_time(feed: Feed) -> None:
    fed = feed("not sure", "idk", danger_now=["sparks"])
    assert fed.screen.count("Then take it to be on. Keep everybody away from it.") == 2
    assert "The answer stays" not in fed.screen
    assert not fed.conversation.assessment.danger.off_confirmed


def test_idk_is_not_sure(feed: Feed) -> None:
    assert feed("idk", danger_now=["none"]).status("what_goes_wrong") == "not_sure"
