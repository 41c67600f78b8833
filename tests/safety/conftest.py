"""What the checks of safety share: the fast evaluator of each role, and the script with the plain one."""

import pytest

from assistant.interview.script import Script
from assistant.knowledge.model import Knowledge
from tests.safety.fast import Fast
from tests.safety.real import naive_script


@pytest.fixture(scope="session")
def plain_script(knowledge: Knowledge) -> Script:
    return naive_script(knowledge)


@pytest.fixture(scope="session")
def fast(knowledge: Knowledge) -> Fast:
    return Fast(knowledge)
