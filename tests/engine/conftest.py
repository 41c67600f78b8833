import pytest

from assistant.engine.naive import NaiveEvaluator


@pytest.fixture(params=["durable-rules", "naive"])
def evaluator_class(request):
    """Each evaluator in turn; what is asserted of one must hold for the other."""
    if request.param == "naive":
        return NaiveEvaluator
    pytest.importorskip("durable.engine", exc_type=ImportError)
    from assistant.engine.durable_adapter import DurableEvaluator

    return DurableEvaluator
