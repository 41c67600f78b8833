"""What only the adapter must do: stay inside what the engine can be trusted with, and survive its faults."""

import ast
import threading
from pathlib import Path

import pytest

pytest.importorskip("durable.engine", exc_type=ImportError)

import assistant
from assistant.engine.crisp import CrispRule, Test
from assistant.engine.durable_adapter import DurableEvaluator, EngineSession
from assistant.engine.limits import SESSION_IDS
from assistant.engine.naive import NaiveEvaluator

YES = ("yes",)
RULES = [
    CrispRule("r1", "a", (Test("q", YES),)),
    CrispRule("r2", "b", (Test("a", YES), Test("t", at_least=3.0))),
    CrispRule("r3", "c", (Test("t", at_least=3.0),), absent=("b",)),
]
FACTS = {"q": "yes", "t": 3.0, "untested": "yes"}
EXPECTED = NaiveEvaluator(RULES).evaluate(FACTS)


def fail(*_):
    raise MemoryError("the engine has had enough")


def test_the_engine_answers_without_falling_back():
    evaluator = DurableEvaluator(RULES)
    assert evaluator.evaluate(FACTS) == EXPECTED
    assert evaluator.fell_back == 0


@pytest.mark.parametrize("step", ["__init__", "begin", "run", "end", "_message", "_fire", "_note_prime"])
def test_a_fault_of_the_engine_is_counted_and_answered_all_the_same(monkeypatch, step):
    evaluator = DurableEvaluator(RULES)
    with monkeypatch.context() as broken:
        broken.setattr(EngineSession, step, fail)
        assert evaluator.evaluate(FACTS) == EXPECTED
        assert evaluator.evaluate(FACTS) == EXPECTED
    assert evaluator.fell_back == 2
    assert evaluator.evaluate(FACTS) == EXPECTED
    assert evaluator.fell_back == 2


def test_after_a_fault_the_rules_are_compiled_into_a_new_host(monkeypatch):
    evaluator = DurableEvaluator(RULES)
    evaluator.evaluate(FACTS)
    before = evaluator._session
    with monkeypatch.context() as broken:
        broken.setattr(before._ruleset, "assert_facts", fail)
        evaluator.evaluate(FACTS)
    evaluator.evaluate(FACTS)
    assert evaluator._session is not before
    assert evaluator.fell_back == 1


def test_a_run_that_the_engine_drops_counts_as_a_fault(monkeypatch):
    evaluator = DurableEvaluator(RULES)
    evaluator.evaluate(FACTS)
    monkeypatch.setattr(evaluator._session._ruleset, "do_actions", lambda state, complete: None)
    assert evaluator.evaluate(FACTS) == EXPECTED
    assert evaluator.fell_back == 1


def test_an_exception_that_the_engine_keeps_to_itself_counts_as_a_fault(monkeypatch):
    evaluator = DurableEvaluator(RULES)
    evaluator.evaluate(FACTS)
    swallowed = {"exception": "exception caught"}
    monkeypatch.setattr(evaluator._session._ruleset, "do_actions", lambda state, complete: complete(None, swallowed))
    assert evaluator.evaluate(FACTS) == EXPECTED
    assert evaluator.fell_back == 1


def test_ctrl_c_while_a_rule_fires_is_not_swallowed(monkeypatch):
    def interrupt(*_):
        raise KeyboardInterrupt

    evaluator = DurableEvaluator(RULES)
    with monkeypatch.context() as interrupted:
        interrupted.setattr(EngineSession, "_fire", interrupt)
        with pytest.raises(KeyboardInterrupt):
            evaluator.evaluate(FACTS)
    assert evaluator.evaluate(FACTS) == EXPECTED
    assert evaluator.fell_back == 0


def test_a_session_in_which_nothing_fired_is_not_deleted(monkeypatch):
    session = EngineSession(RULES)
    session.begin("s0")
    deleted = []
    monkeypatch.setattr(session._ruleset, "delete_state", deleted.append)
    with pytest.raises(RuntimeError, match="prime"):
        session.end()
    assert deleted == []


def recorded(monkeypatch, evaluator):
    """The engine's calls from now on: the batches of facts and the deleted sessions."""
    evaluator.evaluate({})
    ruleset = evaluator._session._ruleset
    batches, deleted = [], []
    assert_facts, delete_state = ruleset.assert_facts, ruleset.delete_state
    monkeypatch.setattr(ruleset, "assert_facts", lambda facts: batches.append(facts) or assert_facts(facts))
    monkeypatch.setattr(ruleset, "delete_state", lambda sid: deleted.append(sid) or delete_state(sid))
    return batches, deleted


def test_no_batch_is_empty_even_without_facts_and_rules(monkeypatch):
    for rules in ([], RULES):
        evaluator = DurableEvaluator(rules)
        batches, _ = recorded(monkeypatch, evaluator)
        evaluator.evaluate({})
        assert batches
        assert all(batches)


def test_a_fact_has_one_value_an_id_equal_to_its_key_and_nothing_else(monkeypatch):
    evaluator = DurableEvaluator(RULES)
    batches, _ = recorded(monkeypatch, evaluator)
    evaluator.evaluate({"q": "no", "t": 3.00049, "untested": "yes"})
    sid = batches[0][0]["sid"]
    assert batches == [
        [
            {"sid": sid, "id": "prime:fact", "k": "prime:fact", "any": 1, "c": "yes"},
            {"sid": sid, "id": "q", "k": "q", "any": 1, "c": "no"},
            {"sid": sid, "id": "t", "k": "t", "any": 1, "n": 3.0},
        ],
        [{"sid": sid, "id": "absent:b", "k": "absent:b", "any": 1, "c": "yes"}],
    ]


def test_every_session_is_deleted_and_at_most_sixty_four_are_named(monkeypatch):
    evaluator = DurableEvaluator(RULES)
    _, deleted = recorded(monkeypatch, evaluator)
    for _ in range(1500):  # more than the engine can hold at once
        evaluator.evaluate(FACTS)
    assert len(deleted) == 1500
    assert set(deleted) == set(SESSION_IDS)
    assert len(SESSION_IDS) == 64
    assert evaluator.fell_back == 0


def test_no_thread_is_started():
    before = threading.active_count()
    DurableEvaluator(RULES).evaluate(FACTS)
    assert threading.active_count() == before


def test_evaluations_from_several_threads_do_not_mix():
    evaluator = DurableEvaluator(RULES)
    other_facts = {"t": 5}
    other_trace = NaiveEvaluator(RULES).evaluate(other_facts)
    wrong = []

    def evaluate_often(facts, expected):
        wrong.extend(1 for _ in range(100) if evaluator.evaluate(facts) != expected)

    asked = [(FACTS, EXPECTED), (other_facts, other_trace)] * 2
    threads = [threading.Thread(target=evaluate_often, args=pair) for pair in asked]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert wrong == []
    assert evaluator.fell_back == 0


def on_many_keys(count):
    return tuple(Test(f"q{number}", YES) for number in range(count))


AT_THE_LIMITS = {
    "twelve antecedents": [CrispRule("r", "found", on_many_keys(12))],
    "four hundred keys": [CrispRule(f"r{n}", "found", (Test(f"q{n}", YES),)) for n in range(399)],
    "sixty floors": [CrispRule(f"r{n}", "found", (Test("t", at_least=float(n)),)) for n in range(60)],
    "thirty ranges": [
        CrispRule(f"r{n}", "found", (Test("t", at_least=float(n), less_than=n + 1.0),)) for n in range(30)
    ],
    "four hundred codes": [CrispRule(f"r{n}", "found", (Test("c", (f"c{n}",)),)) for n in range(400)],
    "a condition in 250 rules": [
        CrispRule(f"r{n}", "found", (Test("q0", YES), Test(f"q{n % 100 + 1}", YES))) for n in range(250)
    ],
    "sixty-four alternatives": [CrispRule("r", "found", tuple(Test(f"q{n}", ("yes", "no")) for n in range(6)))],
    "a thousand rules": [CrispRule(f"r{n}", f"found{n % 50}", (Test(f"q{n % 300}", YES),)) for n in range(1000)],
    "sixty floors on each of sixteen keys": [
        CrispRule(f"r{k}_{n}", "found", (Test(f"t{k}", at_least=n + k / 4),)) for k in range(16) for n in range(60)
    ],
    "25 codes on each of forty keys": [
        CrispRule(f"r{k}_{n}", "found", (Test(f"c{k}", (f"code{k}_{n}",)),)) for k in range(40) for n in range(25)
    ],
    "the highest place": [CrispRule("r", "found", on_many_keys(1), band=64, order=999)],
    "the longest ids": [CrispRule("r" * 64, "f" * 64, (Test("q" * 64, ("c" * 64,)),), absent=("a" * 64,))],
}


@pytest.mark.parametrize("rules", AT_THE_LIMITS.values(), ids=AT_THE_LIMITS.keys())
def test_rules_right_at_a_limit_run_in_the_engine(rules):
    facts = {f"q{number}": "yes" for number in range(400)} | {"t": 29.5, "c": "c399", "q" * 64: "c" * 64}
    facts |= {f"t{number}": 1000.0 for number in range(16)}
    facts |= {f"c{number}": f"code{number}_{number % 25}" for number in range(40)}
    evaluator = DurableEvaluator(rules)
    trace = evaluator.evaluate(facts)
    assert evaluator.fell_back == 0
    assert trace.fired
    assert trace == NaiveEvaluator(rules).evaluate(facts)


def imported_modules(path):
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name.split(".")[0] for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield (node.module or "").split(".")[0]


def test_no_other_file_imports_the_engine():
    files = Path(assistant.__file__).parent.rglob("*.py")
    assert [path.name for path in files if "durable" in imported_modules(path)] == ["durable_adapter.py"]
