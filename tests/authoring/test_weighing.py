"""What `sessions weigh` prints of a stored session."""

import io
import re

from assistant.authoring.weighing import weigh
from assistant.interview.commands import GiveAnswer, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script
from assistant.store.memory import MemoryStore
from assistant.wording.sentences import Sentences

TOLD = {
    "danger_now": ["none"],
    "what_goes_wrong": ["pale_below"],
    "how_it_began": "from_one_day",
    "fan_cooks": "cooks_well",
}


def printed(script: Script, sentences: Sentences, told: dict[str, object]) -> list[str]:
    log = MemoryStore()
    record = SessionRecord(session_id="ab" * 16, code_hash="b" * 64, name=None, created_at=utc_now())
    conversation = Conversation(script, log, record)
    conversation.start(Start("householder", "great_britain", "en-GB", "single"))
    for question_id, value in told.items():
        conversation.do(GiveAnswer(question_id, value))
    out = io.StringIO()
    assert weigh(log, script, sentences, "abab", out) == 0
    return out.getvalue().splitlines()


def part(lines: list[str], sentences: Sentences, name: str) -> list[str]:
    start = lines.index(sentences.wording.say(f"weigh-{name}")) + 1
    ends = [number for number, line in enumerate(lines) if not line.startswith(" ") and number >= start]
    return lines[start : min(ends, default=len(lines))]


def figures(lines: list[str]) -> list[float]:
    return [float(found[0]) for line in lines if (found := re.findall(r"[-+]?\d+\.\d+", line))]


def test_every_part_is_there_and_the_decibans_add_up(script: Script, sentences: Sentences) -> None:
    lines = printed(script, sentences, TOLD)
    *decibans, total = figures(part(lines, sentences, "evidence"))
    assert len(decibans) >= 4
    assert abs(sum(decibans) - total) <= 0.05 * len(decibans)
    shares = figures(part(lines, sentences, "causes"))
    assert shares == sorted(shares, reverse=True)
    assert shares[0] > 20
    costs = figures(part(lines, sentences, "endings"))
    assert costs == sorted(costs)
    assert len(part(lines, sentences, "withdrawn")) == 3
    assert len(part(lines, sentences, "left_out")) == 3
    assert part(lines, sentences, "questions")


def test_a_session_without_an_answer_is_weighed_too(script: Script, sentences: Sentences) -> None:
    lines = printed(script, sentences, {})
    assert part(lines, sentences, "withdrawn") == []
    assert figures(part(lines, sentences, "causes"))[0] > 40


def test_an_unknown_session_is_said_to_be_unknown(script: Script, sentences: Sentences) -> None:
    out = io.StringIO()
    assert weigh(MemoryStore(), script, sentences, "ffff", out) == 1
    assert out.getvalue() == sentences.wording.say("sessions-unknown") + "\n"
