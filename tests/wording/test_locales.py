"""Every message that can be needed is there and can be filled in; typed words name what they should."""

import re
from pathlib import Path

import pytest

from assistant.errors import WordingBroken
from assistant.interview.answers import CONVERSIONS
from assistant.interview.choice import ACTIONS, URGENCIES
from assistant.knowledge.danger_questions import is_danger_question
from assistant.knowledge.model import Care, Knowledge
from assistant.wording.languages import Languages
from assistant.wording.locale import Wording, languages, load_wording, wording_files
from assistant.wording.matching import Match, match_choice
from assistant.wording.needed import missing_messages, needed_messages
from assistant.wording.pseudo import CLOSING, OPENING, PSEUDO_LANG, pseudo_resource
from assistant.wording.sentences import BANDS, Sentences
from tests.wording.messages import message_names

ROOT = Path(__file__).parents[2]
LOCALES = ROOT / "locales"


def test_no_message_is_missing_that_the_rules_call_for(knowledge: Knowledge, sentences: Sentences) -> None:
    assert [needed.name for needed in missing_messages(knowledge, sentences.wording)] == []
    assert len(list(needed_messages(knowledge))) > 500


def test_no_message_is_missing_that_the_program_calls_for(sentences: Sentences) -> None:
    names = [
        *(("cause-none", part) for part in (None, "explain")),
        *(("cause-something_else", part) for part in (None, "explain")),
        *((f"care-{care.value}", None) for care in Care),
        *((f"change-{action}", None) for action in ACTIONS),
        *((f"verdict-{action}", part) for action in ACTIONS for part in (None, "explain")),
        *((f"first-{first}", None) for first in ("maker", "seller", "landlord")),
        *((f"urgency-{urgency}", None) for urgency in URGENCIES),
        *((f"band-{name}", None) for _, name in BANDS),
        *((f"unit-{unit}", "also") for units in CONVERSIONS.values() for unit in units),
    ]
    assert [name for name in names if not sentences.wording.has(*name)] == []


def test_every_text_that_the_rules_call_for_can_be_filled_in(knowledge: Knowledge, sentences: Sentences) -> None:
    for question_id in knowledge.questions:
        assert sentences.question_by_id(question_id).text
    for step in knowledge.steps:
        assert sentences.wording.say(f"step-{step}", **sentences.lines)


def test_a_missing_message_is_an_error(sentences: Sentences) -> None:
    with pytest.raises(WordingBroken, match="no-such"):
        sentences.wording.say("no-such")


def test_a_missing_variable_is_an_error() -> None:
    with pytest.raises(WordingBroken, match="name"):
        Wording("en-GB", ["greeting = Hello { $name }"]).say("greeting")


def test_junk_in_a_file_is_an_error() -> None:
    with pytest.raises(WordingBroken, match="not understood"):
        Wording("en-GB", ["greeting Hello"])


def test_no_message_is_written_twice() -> None:
    for lang in languages(LOCALES):
        seen: set[str] = set()
        for path in wording_files(LOCALES, lang):
            names = set(message_names(path.read_text("utf-8")))
            assert not names & seen, (path.name, names & seen)
            seen |= names


def test_no_message_is_for_something_that_is_gone(knowledge: Knowledge) -> None:
    kinds: dict[str, set[str]] = {
        "question": set(knowledge.questions),
        "sign": set(knowledge.signs),
        "cause": {*knowledge.causes, "none", "something_else"},
        "finding": set(knowledge.findings),
        "act": set(knowledge.acts),
        "advice": set(knowledge.advice),
        "step": set(knowledge.steps),
        "part": set(knowledge.ovens.parts),
        "function": set(knowledge.ovens.functions),
        "observable": set(knowledge.observables),
    }
    needed: dict[str, set[str | None]] = {}
    for each in needed_messages(knowledge):
        needed.setdefault(each.message, set()).add(each.attribute)
    gone = []
    for path in wording_files(LOCALES, "en-GB"):
        for name, attributes in message_names(path.read_text("utf-8")).items():
            kind, _, entry = name.partition("-")
            if kind in kinds and entry not in kinds[kind]:
                gone.append(name)
            if kind == "question" and entry in knowledge.questions:
                choices = knowledge.questions[entry].choices
                known = {"label", *needed[name], *choices, *(f"{choice}-words" for choice in choices)}
                gone.extend(f"{name}.{attribute}" for attribute in attributes - known)
    assert gone == []


def test_each_phrase_names_its_own_choice(knowledge: Knowledge, sentences: Sentences) -> None:
    wrong = []
    for question_id, question in knowledge.questions.items():
        if not question.choices:
            continue
        vocabulary = sentences.vocabulary(question_id)
        for choice, listed in vocabulary.phrases.items():
            for phrase in listed:
                if match_choice(phrase, vocabulary, exact=True) != Match((choice,)):
                    wrong.append((question_id, choice, phrase))
    assert wrong == []


def test_no_ordinary_answer_sounds_clearly_like_danger(
    knowledge: Knowledge, languages: Languages, sentences: Sentences
) -> None:
    """Exact answers aren't listened to, so none may be what a person in danger would type."""
    listener = languages.listener("en-GB")
    alarming = []
    for question_id, question in knowledge.questions.items():
        if is_danger_question(question_id) or not question.choices:
            continue
        for choice, listed in sentences.vocabulary(question_id).phrases.items():
            clear = [phrase for phrase in listed if any(heard.clear for heard in listener.hear(phrase))]
            if question.choices[choice].signals is None:
                alarming += [(question_id, choice, phrase) for phrase in clear]
    assert alarming == []


def test_each_danger_phrase_is_heard_as_its_sign(knowledge: Knowledge, languages: Languages) -> None:
    listener = languages.listener("en-GB")
    wording = languages.wording("en-GB")
    for sign in knowledge.signs:
        for attribute in ("phrases", "unclear"):
            if wording.has(f"sign-{sign}", attribute):
                for phrase in wording.say(f"sign-{sign}", attribute).split("|"):
                    assert sign in [h.sign_id for h in listener.hear(f"there was {phrase.strip()} today")], phrase


@pytest.mark.parametrize(
    "line",
    [
        "no smell",
        "there is no smoke at all",
        "nothing burning",
        "I haven't had a shock",
        "it doesn't spark",
        "no gas smell here",
        "the cake was burnt on top",
        "it gets hot enough I think",
        "we had pizza and it stayed soggy",
    ],
)
def test_what_is_denied_or_harmless_is_not_heard(languages: Languages, line: str) -> None:
    assert languages.listener("en-GB").hear(line) == ()


@pytest.mark.parametrize(
    ("line", "sign"),
    [
        ("well the top browns but I got a bit of a tingle off the handle last night", "shock"),
        ("its fine apart from the smoke", "smoke"),
        ("there were sparks at the back", "sparks"),
        ("I can smell gas", "gas_smell"),
        ("IT WONT TURN OFF", "heat_wont_go_off"),
        ("there's a fire", "fire"),
        ("it keeps tripping the electrics", "trips"),
        ("smells of hot plastic when its on", "hot_plastic_smell"),
        ("the plug is melted", "scorched_plug_or_switch"),
    ],
)
def test_danger_inside_another_sentence_is_heard(languages: Languages, line: str, sign: str) -> None:
    assert sign in [heard.sign_id for heard in languages.listener("en-GB").hear(line)]


@pytest.mark.parametrize(
    "fault", ["it does not heat", "no heat", "not getting hot", "it never browns", "isnt heating up"]
)
@pytest.mark.parametrize(
    ("danger", "sign"),
    [
        ("it smells of gas", "gas_smell"),
        ("smells of gas", "gas_smell"),
        ("it sparks", "sparks"),
        ("i got a shock", "shock"),
        ("there is smoke", "smoke"),
        ("it trips", "trips"),
        ("burning smell", "burning_smell"),
    ],
)
def test_a_fault_told_with_a_denial_does_not_hide_the_danger_after_it(
    languages: Languages, fault: str, danger: str, sign: str
) -> None:
    for joined in (" ", " and ", ", ", " it "):
        heard = languages.listener("en-GB").hear(f"{fault}{joined}{danger}")
        assert sign in [one.sign_id for one in heard], f"{fault}{joined}{danger}"


def test_the_pseudo_locale_marks_every_message() -> None:
    for path in wording_files(LOCALES, "en-GB"):
        text = path.read_text("utf-8")
        assert message_names(pseudo_resource(text)) == message_names(text)
    marked = load_wording(LOCALES, PSEUDO_LANG)
    assert marked.say("chat-welcome").startswith(OPENING)
    assert marked.say("chat-welcome").endswith(CLOSING)


def test_every_reason_of_a_store_has_words(sentences: Sentences) -> None:
    source = "".join(path.read_text("utf-8") for path in (ROOT / "assistant" / "store").glob("*.py"))
    codes = set(re.findall(r'StoreUnreadable\([^"]*"([a-z_]+)"', source)) | set(
        re.findall(r'(?:SQLITE_\w+: |LOCKED = |return )"([a-z_]+)"', source)
    )
    codes -= {"posix"}
    assert len(codes) > 15
    assert [code for code in codes if not sentences.wording.has(f"store-{code}")] == []


@pytest.mark.parametrize(
    ("question", "typed", "opposite"),
    [
        ("breaker_position", "all are off", "on"),
        ("breaker_position", "rcd is on", "rcd_off"),
        ("wall_switch_position", "red light is off", "on"),
        ("lamp_cycle", "always off", "never_out"),
        ("lamp_remembered", "off all the time", "never_goes_out"),
        ("lamp_means", "comes on when cold", "lit_when_hot"),
        ("lamp_means", "off while heating", "lit_while_heating"),
        ("any_heat", "it hardly gets warm", "gets_warm"),
    ],
)
def test_no_near_match_says_the_opposite(sentences: Sentences, question: str, typed: str, opposite: str) -> None:
    assert match_choice(typed, sentences.vocabulary(question)) != Match((opposite,))
