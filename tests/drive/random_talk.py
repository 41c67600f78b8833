"""Seeded talk for the protocol: sound messages from the catalogue, and lines that are anything but."""

import json
import random
from collections.abc import Callable, Sequence
from typing import Any

Message = dict[str, Any]
Catalogue = dict[str, list[dict[str, Any]]]


def sound_value(question: dict[str, Any], chance: random.Random) -> Any:
    """A value that the question's kind takes; a number may still be out of range."""
    choices = [choice["id"] for choice in question["choices"]]
    match question["kind"]:
        case "choice":
            return chance.choice(choices)
        case "choices":
            others = [c for c in choices if c != "none"]
            picked = chance.sample(others, chance.randint(1, min(3, len(others))))
            return ["none"] if "none" in choices and chance.random() < 0.7 else picked
        case "number":
            return chance.choice([1, 5, 8.5, 20, 45])
    return chance.choice(["It has been like this since spring.", "Nothing else, thank you.", "ça cuit mal 🙂"])


def sound_message(session: str, catalogue: Catalogue, chance: random.Random) -> Message:
    """Any message that the protocol takes once the session is started."""
    question = chance.choice(catalogue["questions"])
    type_ = chance.choices(["answer", "not_sure", "skip", "withdraw", "finish"], [10, 1, 1, 1, 0.3])[0]
    message: Message = {"session": session, "type": type_}
    if type_ != "finish":
        message["id"] = question["id"]
    if type_ == "answer":
        message["value"] = sound_value(question, chance)
    return message


def fuzzed_line(catalogue: Catalogue, chance: random.Random) -> bytes:
    """One line (no line break inside): sound, nearly sound, or noise."""
    return chance.choice(_MAKERS)(catalogue, chance).replace(b"\n", b" ")


def _sound(catalogue: Catalogue, chance: random.Random) -> bytes:
    session = f"s{chance.randint(1, 40)}"
    if chance.random() < 0.3:
        return json.dumps({"session": session, "type": "start"}).encode()
    message = sound_message(session, catalogue, chance)
    if chance.random() < 0.3:
        message["message_id"] = f"m{chance.randint(1, 30)}"
    return json.dumps(message, ensure_ascii=chance.random() < 0.5).encode()


def _odd_field(catalogue: Catalogue, chance: random.Random) -> bytes:
    message = sound_message(f"s{chance.randint(1, 40)}", catalogue, chance)
    field = chance.choice([*message, "unit", "lang", "role", "message_id", "Type", "constructor"])
    message[field] = chance.choice(_ODD_VALUES)
    if chance.random() < 0.2:
        message.pop(chance.choice(list(message)))
    return json.dumps(message, ensure_ascii=chance.random() < 0.9).encode("utf-8", "surrogatepass")


def _odd_start(catalogue: Catalogue, chance: random.Random) -> bytes:
    message: Message = {"session": f"t{chance.randint(1, 40)}", "type": "start"}
    for field in ("role", "region", "lang", "cavity"):
        if chance.random() < 0.4:
            message[field] = chance.choice([*_ODD_VALUES, "agent", "engineer", "great_britain", "x-marked", "upper"])
    return json.dumps(message).encode()


def _spoken(catalogue: Catalogue, chance: random.Random) -> bytes:
    words = ["there is smoke", "no smell", "a tingle", "I smell gas", "dunno", "2", "not only sparks", "yeah", "💥"]
    question = chance.choice(catalogue["questions"])
    value = " ".join(chance.sample(words, chance.randint(1, 4)))
    return json.dumps(
        {"session": f"s{chance.randint(1, 40)}", "type": "answer", "id": question["id"], "value": value}
    ).encode()


def _bent(catalogue: Catalogue, chance: random.Random) -> bytes:
    line = bytearray(_sound(catalogue, chance))
    for _ in range(chance.randint(1, 6)):
        position = chance.randrange(len(line))
        match chance.randrange(3):
            case 0:
                line[position] = chance.randrange(256)
            case 1:
                del line[position]
            case _:
                line.insert(position, chance.randrange(256))
        line = line or bytearray(b"x")
    return bytes(line)


def _cut(catalogue: Catalogue, chance: random.Random) -> bytes:
    line = _sound(catalogue, chance)
    return line[: chance.randrange(len(line))]


def _noise(catalogue: Catalogue, chance: random.Random) -> bytes:
    return chance.randbytes(chance.randint(0, 200))


def _shapes(catalogue: Catalogue, chance: random.Random) -> bytes:
    return chance.choice(_SHAPES)


_ODD_VALUES: Sequence[Any] = (
    None,
    True,
    0,
    -1,
    1e308,
    10**30,
    float("nan"),
    float("inf"),
    "",
    " ",
    "none",
    "danger_now",
    "\ud800",
    "a\u0000b",
    "\u202eabc",
    "x" * 5000,
    [],
    ["none", "none"],
    ["smoke", 5],
    [[["smoke"]]],
    {},
    {"id": "smoke"},
    "'; DROP TABLE events; --",
    "../../etc/passwd",
    "{0.__class__}",
)
_SHAPES: Sequence[bytes] = (
    b"",
    b" ",
    b"\t\r",
    b"null",
    b"[]",
    b"{}",
    b'"text"',
    b"12",
    b"NaN",
    b"{" * 3000,
    b"[" * 50_000,
    b'{"a":' * 3000,
    b'{"session":"s1","type":"start"}' * 2,
    b'{"session":"s1","session":"s2","type":"start"}',
    b'{"session":"s1","type":"answer","id":"danger_now","value":' + b"9" * 6000 + b"}",
    b'{"session":"s1","type":"answer","id":"danger_now","value":"' + b"y" * 70_000 + b'"}',
    b"z" * 200_000,
    b"\xef\xbb\xbf{}",
    b"\xff\xfe{\x00}\x00",
    b"\x00" * 50,
)
_MAKERS: Sequence[Callable[[Catalogue, random.Random], bytes]] = (
    _sound,
    _sound,
    _sound,
    _odd_field,
    _odd_field,
    _odd_start,
    _spoken,
    _bent,
    _cut,
    _noise,
    _shapes,
)
