"""The knowledge made ready: which facts its rules read."""

from assistant.engine.crisp import CrispRule, Test
from assistant.interview.script import Script, crisp_rules, keys_read


def rule(concludes: str, *keys: str, absent: tuple[str, ...] = ()) -> CrispRule:
    tests = tuple(Test(key, is_one_of=("yes",)) for key in keys)
    return CrispRule(id=concludes, concludes=concludes, tests=tests, absent=absent, band=0, order=0)


def test_keys_are_read_once_each_and_conclusions_are_no_facts() -> None:
    rules = [rule("warm", "lamp", "fan"), rule("hot", "warm", "fan", "seal"), rule("fine", "door", absent=("hot",))]
    assert keys_read(rules) == ("lamp", "fan", "seal", "door")
    assert keys_read(iter(rules)) == keys_read(rules)
    assert keys_read([]) == ()


def test_the_rules_read_a_part_of_what_may_be_answered(script: Script) -> None:
    questions = script.knowledge.questions
    assert script.keys_read == set(keys_read(crisp_rules(script.knowledge)))
    assert {key.split("__")[0] for key in script.keys_read} < questions.keys()
    assert script.keys_read.isdisjoint(script.knowledge.findings)
    assert "what_goes_wrong__pale_below" in script.keys_read
    engineers = {q for q, question in questions.items() if question.stage == "tests"}
    assert engineers
    assert script.keys_read.isdisjoint(engineers)
