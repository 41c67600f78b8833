"""Without any defect all checks find nothing."""

import pytest

from tests.safety.checks import CHECKS, Project


@pytest.mark.parametrize("check", CHECKS)
def test_the_project_as_it_is_passes(check: str, unseeded: Project) -> None:
    assert CHECKS[check](unseeded) == set()
