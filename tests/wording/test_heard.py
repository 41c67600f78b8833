"""What householders type while something else is asked: danger is heard by its sign, everyday talk passes."""

import pytest

from assistant.knowledge.danger_questions import DANGER_NOW, NONE, sign_question_id
from assistant.knowledge.model import Knowledge
from assistant.wording.languages import Languages
from assistant.wording.matching import Match, Unclear, match_choice, match_choices
from assistant.wording.sentences import Sentences

HEARD = {
    "shock": [
        "felt a tingle off the handle",
        "i got zapped",
        "it tingles when i touch the door",
        "tingly when i touch it",
        "i got a jolt",
        "it bit me",
        "no shocks only a tiny tickle",
        "shcok",
        "i had a shock off it",
        "its fine but it gives me a slight shock",
        "there was a shock from the door",
        "it gave my wife a shock",
    ],
    "fire": ["help its burning", "fire", "theres a fire inside", "FIRE!!"],
    "heat_wont_go_off": [
        "keeps heating after i turn it off",
        "the oven won't stop heating",
        "it goes on heating when its switched off",
        "i can't switch the heat off",
        "still heating when the knob is at zero",
        "stays hot all night even when its off",
        "it is warm even when its off",
    ],
    "too_hot": [
        "gets hotter and hotter",
        "its about 300 when i set 180",
        "everything burns black in 5 minutes",
        "handle gets red hot",
        "it gets too hot",
    ],
    "scorched_plug_or_switch": [
        "the cooker switch is brown",
        "plug is hot",
        "the knob has melted",
        "the socket is melted",
        "plug goes brown",
        "switch on the wall is really warm",
        "black marks round the socket",
        "the wall behind is black",
        "soot on the wall",
        "the cable is melted",
    ],
    "hot_plastic_smell": [
        "smells electrical",
        "smell of hot plastic",
        "smells of burning rubber",
        "smells like hot electrics",
        "smells of pee when its on",
        "smels of plastik",
        "it stinks of plastic",
        "smells fishy",
    ],
    "burning_smell": [
        "smells weird when its on",
        "chemical smell",
        "bruning smell",
        "no smoke or anything, and it does smell a bit",
    ],
    "gas_smell": ["smells like rotten eggs"],
    "smoke": [
        "smoke coming out the vent",
        "not smoke exactly more like haze",
        "the oven smoked a bit",
        "it smokes",
        "it is a bit smokey",
    ],
    "trips": [
        "the rcd went again",
        "kicks the electric off",
        "blows the fuse every time",
        "knocks the power out when i use the grill",
        "it throws the breaker",
        "all the lights went out",
        "knocked out the whole house",
        "lost power in kitchen",
        "power cuts out when i use it",
        "it trips when i turn it on",
        "every time i use it it trips the electric",
        "the breaker keeps going",
        "it blew a fuse",
    ],
    "lights_dim_elsewhere": [
        "the hall light swells and fades",
        "lights go bright then dim",
        "lamps in the lounge flicker when its on",
        "lights brighten and dim",
        "bulb gets super bright when oven on",
    ],
    "water_inside": [
        "water dripped into the oven",
        "i steam cleaned it and now its wet inside",
        "sink leaked into it",
        "water dripping out the bottom",
    ],
    "outside_damage": ["flood in kitchen last week"],
    "buzzing": [
        "it crackles behind the knob",
        "buzzes like mad",
        "there is a crackling noise",
        "it hums really loudly",
        "hissing",
        "it buzzes",
    ],
    "sparks": [
        "flash and a bang from the grill",
        "i saw a blue flash",
        "there was a spark at the back",
        "never sparks but once it flashed",
    ],
    "split_element": [
        "the element has a bubble on it",
        "the bottom heater is split",
        "heater is blistered",
        "heating element is glowing and has a blister",
    ],
    "co_alarm": ["i feel dizzy and have a headache when its on"],
    "panel_missing": [
        "the cover of the light is missing",
        "i took the back panel off",
        "my son unscrewed the back and looked",
    ],
    "cracked_glass": [
        "inner glass shattered",
        "the glass has a crack",
        "door glass smashed",
        "the door is cracked",
        "there is a crack in the glass",
    ],
    "unsure": ["it does not feel safe", "i don't feel safe using it"],
}

QUIET = [
    "Ground floor, street parking at the corner.",
    "please park outside, the ramp is steep",
    "a wool sock lay in the drawer below",
    "is a spare part needed",
    "recipe is missing an egg",
    "it clicks off after an hour",
    "the display shows a key",
    "it just switches itself off",
    "the light inside stays dark",
    "it takes longer in the evening",
    "toast browns only in the middle",
    "i use foil on the floor",
    "the fan hums a bit",
    "the door is locked",
    "letter f and a number",
    "it cuts out after half an hour and comes back",
    "the timer says end",
    "i left the meat probe in",
    "tea towel over the slots",
    "hob works fine",
    "half the rings are cold",
    "it is slow every evening",
    "grill stays at full",
    "knob sits between two pictures",
    "new glass dish",
    "paper sucked to the fan",
    "smoked salmon",
    "smoked haddock",
    "my husband smokes",
    "i cook fish pie",
    "fish fingers take ages",
    "plastic spatula",
    "plastic wrap on the dish",
    "crack an egg",
    "the crust cracked",
    "cracked top on my cake",
    "my glass pyrex dish cracked",
    "sparkling clean oven",
    "it was a shock to see the bill",
    "the timer buzzes when its done",
    "trip to spain",
    "school trip",
    "the fuse is fine",
    "the breaker is on",
    "too hot on one side",
    "nothing dangerous",
    "my toast burns",
    "no sparks no smoke no smell",
    "never tripped",
    "nevr tripped",
    "pork crackling stays soft",
    "the clock flashes 00:00",
    "gas hob electric oven",
    "smells of burnt cheese",
    "power cut last tuesday",
    "this oven is a headache",
    "we live in a static caravan",
    "it starts every time when i set 180",
]


@pytest.mark.parametrize(("line", "sign"), [(line, sign) for sign, lines in HEARD.items() for line in lines])
def test_danger_typed_in_passing_is_heard_by_its_sign(languages: Languages, line: str, sign: str) -> None:
    assert sign in [heard.sign_id for heard in languages.listener("en-GB").hear(line)]


@pytest.mark.parametrize("line", QUIET)
def test_everyday_talk_is_not_taken_for_danger(languages: Languages, line: str) -> None:
    assert languages.listener("en-GB").hear(line) == ()


def test_every_sign_has_lines_of_its_own(knowledge: Knowledge) -> None:
    """`door_drops` has its own among the phrases only."""
    assert set(knowledge.signs) - set(HEARD) == {"door_drops"}


@pytest.mark.parametrize(
    "typed", ["no", "none", "it doesn't", "no it doesn't", "nothing like that", "i meant something else"]
)
def test_every_sign_can_be_denied_in_plain_words(knowledge: Knowledge, sentences: Sentences, typed: str) -> None:
    for sign_id, sign in knowledge.signs.items():
        vocabulary = sentences.vocabulary(sign_question_id(sign_id))
        matched = match_choice(typed, vocabulary, exact=True)
        assert isinstance(matched, Match), sign_id
        assert sign.answers[matched.choices[0]] == "clear", sign_id


NOTHING = [
    "no, nothing like that",
    "none of those",
    "no to all",
    "i dont think so",
    "not that i know of",
    "no none of that is happening",
    "no problems like that",
    "not at all",
    "nope",
    "nope none",
    "no thank you",
    "nothing dangerous",
    "no nothing dangerous",
    "no danger",
    "all fine",
    "no to everything",
]


@pytest.mark.parametrize("typed", NOTHING)
def test_no_danger_may_be_said_in_many_ways(sentences: Sentences, typed: str) -> None:
    assert match_choices(typed, sentences.vocabulary(DANGER_NOW), exact=True) == Match((NONE,))


@pytest.mark.parametrize(
    ("question_id", "typed", "choice"),
    [
        ("less_done_than_meant", "much longer", "much_longer"),
        ("less_done_than_meant", "takes ages", "much_longer"),
        ("less_done_than_meant", "takes forever", "much_longer"),
        ("less_done_than_meant", "double the time", "much_longer"),
        ("less_done_than_meant", "it takes longer than it did", "much_longer"),
        ("less_done_than_meant", "way longer", "much_longer"),
        ("less_done_than_meant", "never done", "never_done"),
        ("top_pale", "it stays white", "white_or_raw"),
        ("underside_pale", "stays white", "white_or_raw"),
        ("top_pale", "white", "white_or_raw"),
        ("how_it_began", "gradually", "little_by_little"),
        ("how_it_began", "slowly", "little_by_little"),
        ("how_it_began", "over time", "little_by_little"),
        ("how_often", "most of the time", "every_time"),
        ("how_often", "mostly", "every_time"),
        ("other_lights", "they stay the same", "steady"),
        ("ever_tripped", "nah", "never"),
        ("ever_tripped", "nevr", "never"),
        ("oven_is_off", "i pulled the plug", "off_by_plug"),
        ("which_appliance", "yes its electric", "electric_oven"),
        ("which_appliance", "electric, dear", "electric_oven"),
    ],
)
def test_a_householders_words_name_the_choice(sentences: Sentences, question_id: str, typed: str, choice: str) -> None:
    assert match_choice(typed, sentences.vocabulary(question_id), exact=True) == Match((choice,))


@pytest.mark.parametrize(
    ("typed", "choice"),
    [
        ("my grandson moved it", ("what_changed", "moved_or_fitted")),
        ("we moved", ("what_changed", "moved_or_fitted")),
        ("i just want to know if its normal", ("what_goes_wrong", "a_worry")),
        ("is it normal", ("what_goes_wrong", "a_worry")),
    ],
)
def test_words_name_one_of_several_choices(sentences: Sentences, typed: str, choice: tuple[str, str]) -> None:
    assert match_choices(typed, sentences.vocabulary(choice[0]), exact=True) == Match((choice[1],))


@pytest.mark.parametrize(
    "question_id", ["which_appliance", "guarantee", "browner_than_meant", "other_lights", "grill_glow"]
)
def test_a_bare_yes_names_nothing_where_no_choice_is_a_yes(sentences: Sentences, question_id: str) -> None:
    assert match_choice("yes", sentences.vocabulary(question_id), exact=True) == Unclear(())
