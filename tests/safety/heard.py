"""Danger told in the middle of something else must be heard: one plain sentence for each sign, typed as an answer."""

import json
from collections.abc import Iterator, Mapping
from typing import Any

from assistant.drive.serve import Driver
from assistant.interview.script import Script
from assistant.store.memory import MemoryStore
from assistant.wording.languages import Languages

TYPED: Mapping[str, str] = {
    "fire": "since monday it is slow and yesterday there were flames inside",
    "gas_smell": "it takes an hour and i smell gas",
    "co_alarm": "cakes stay pale and the carbon monoxide alarm went off",
    "shock": "the top is pale and i got an electric shock from the door",
    "lights_dim_elsewhere": "it is weak and the lights go bright and dim",
    "sparks": "it is slow and i saw sparks at the back",
    "smoke": "cakes are raw and smoke comes out",
    "hot_plastic_smell": "it is slow and smells of hot plastic",
    "burning_smell": "the grill is weak and there is a burning smell",
    "scorched_plug_or_switch": "it is slow and the plug is melted",
    "heat_wont_go_off": "it is uneven and it keeps heating when it is off",
    "too_hot": "the fan is loud and it gets far too hot",
    "trips": "the grill is weak and the breaker trips",
    "outside_damage": "it is slow since mice chewed the cable",
    "water_inside": "pale below and water drips out of the oven",
    "buzzing": "it is slow and there is a loud buzzing",
    "cracked_glass": "pale on top and the door glass is cracked",
    "split_element": "pale on top and the element is split",
    "panel_missing": "it is uneven and the back panel is missing",
    "door_drops": "heat gets out and the door hangs on one side",
    "unsure": "it is slow and somehow it is not safe",
}


def unheard(script: Script, languages: Languages) -> Iterator[str]:
    """Signs that a typed line speaks of and that are neither asked about next nor standing after it.

    Graver signs that are heard in the same line are asked about before, and denied.
    """
    defaults = {"lang": "en-GB", "region": next(iter(script.knowledge.regions))}
    driver = Driver(script, MemoryStore(), languages, defaults)

    def send(session: str, kind: str, **fields: Any) -> dict[str, Any]:
        return dict(driver.answer_line(json.dumps({"session": session, "type": kind, **fields}).encode()))

    for sign_id, line in TYPED.items():
        send(sign_id, "start")
        send(sign_id, "answer", id="danger_now", value=["none"])
        after = send(sign_id, "answer", id="complaint_in_own_words", value=line)
        while str(after.get("id")).startswith("sign_") and after["id"] != f"sign_{sign_id}":
            means = script.knowledge.signs[after["id"].removeprefix("sign_")].answers
            denial = next(answer for answer, each in reversed(means.items()) if each == "clear")
            after = send(sign_id, "answer", id=after["id"], value=denial)
        standing = (after.get("stop") or {}).get("ids", ())
        if after.get("id") != f"sign_{sign_id}" and sign_id not in standing:
            yield sign_id
