"""What the checks of safety share: the fast evaluator of each role, and the script with the plain one."""

from pathlib import Path

import pytest

from assistant.interview.script import Script
from assistant.knowledge.model import Knowledge
from tests.conftest import ROOT
from tests.safety.checks import Project
from tests.safety.fast import Fast
from tests.safety.real import naive_script


@pytest.fixture(scope="session")
def plain_script(knowledge: Knowledge, simulated: Path) -> Script:
    return naive_script(knowledge, simulated)


@pytest.fixture(scope="session")
def fast(knowledge: Knowledge) -> Fast:
    return Fast(knowledge)


@pytest.fixture(scope="session")
def unseeded(simulated: Path) -> Project:
    """The project as it is, without any defect."""
    return Project(ROOT / "rules", ROOT / "locales", simulated)
