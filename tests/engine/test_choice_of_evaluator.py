import subprocess
import sys

import pytest

from assistant.engine import evaluator
from assistant.engine.crisp import CrispRule, Test
from assistant.errors import RulesBroken

RULES = [CrispRule("r", "found", (Test("q", ("yes",)),))]


@pytest.fixture
def no_engine(monkeypatch):
    """As if the rule engine weren't installed."""
    monkeypatch.setitem(sys.modules, "durable", None)
    monkeypatch.delitem(sys.modules, "assistant.engine.durable_adapter", raising=False)


def test_the_engine_is_chosen_where_it_is_installed():
    pytest.importorskip("durable.engine", exc_type=ImportError)
    chosen = evaluator(RULES, ["q"])
    assert chosen.name == "durable-rules"
    assert chosen.evaluate({"q": "yes"}).concluded == {"found"}


@pytest.mark.usefixtures("no_engine")
def test_the_naive_evaluator_stands_in_where_the_engine_is_missing():
    chosen = evaluator(RULES, ["q"])
    assert chosen.name == "naive"
    assert chosen.evaluate({"q": "yes"}).concluded == {"found"}


def test_the_engine_is_not_loaded_before_it_is_needed():
    script = "import sys, assistant.engine; sys.exit('durable' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", script], check=False).returncode == 0


@pytest.mark.parametrize("engine_there", [True, False])
def test_rules_beyond_the_limits_are_refused_by_either(engine_there, request):
    if not engine_there:
        request.getfixturevalue("no_engine")
    with pytest.raises(RulesBroken) as refused:
        evaluator([*RULES, CrispRule("r2", "q", (Test("p", ("yes",)),), band=99)], ["q"])
    assert refused.value.problems == (
        "r2: band_out_of_range (found 99, most 64)",
        "r2: concludes_a_given_key (key q)",
    )
