"""What householders type while something else is asked: danger is heard by its sign, everyday talk passes."""

import pytest

from assistant.wording.languages import Languages

HEARD = {
    "shock": [
        "tingly when i touch it",
        "i got a jolt",
        "it bit me",
        "no shocks only a tiny tickle",
        "shcok",
        "i had a shock off it",
        "its fine but it gives me a slight shock",
        "there was a shock from the door",
    ],
    "fire": ["help its burning", "fire", "theres a fire inside", "FIRE!!"],
    "heat_wont_go_off": [
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
        "the socket is melted",
        "plug goes brown",
        "switch on the wall is really warm",
        "black marks round the socket",
        "the wall behind is black",
        "soot on the wall",
        "the cable is melted",
    ],
    "hot_plastic_smell": [
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
    "smoke": ["not smoke exactly more like haze", "the oven smoked a bit", "it smokes", "it is a bit smokey"],
    "trips": [
        "all the lights went out",
        "knocked out the whole house",
        "lost power in kitchen",
        "power cuts out when i use it",
        "it trips when i turn it on",
        "every time i use it it trips the electric",
        "the breaker keeps going",
        "it blew a fuse",
    ],
    "lights_dim_elsewhere": ["bulb gets super bright when oven on"],
    "water_inside": ["water dripping out the bottom"],
    "outside_damage": ["flood in kitchen last week"],
    "buzzing": ["it hums really loudly", "hissing", "it buzzes"],
    "sparks": ["never sparks but once it flashed"],
    "split_element": ["heating element is glowing and has a blister"],
    "co_alarm": ["i feel dizzy and have a headache when its on"],
    "panel_missing": ["i took the back panel off", "my son unscrewed the back and looked"],
    "cracked_glass": ["the door is cracked", "there is a crack in the glass"],
}

QUIET = [
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
    "it trips me up",
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
]


@pytest.mark.parametrize(("line", "sign"), [(line, sign) for sign, lines in HEARD.items() for line in lines])
def test_danger_typed_in_passing_is_heard_by_its_sign(languages: Languages, line: str, sign: str) -> None:
    assert sign in [heard.sign_id for heard in languages.listener("en-GB").hear(line)]


@pytest.mark.parametrize("line", QUIET)
def test_everyday_talk_is_not_taken_for_danger(languages: Languages, line: str) -> None:
    assert languages.listener("en-GB").hear(line) == ()
