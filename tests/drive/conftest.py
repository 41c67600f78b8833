"""The drivers that are started share the compiled rules of this run."""

from pathlib import Path

import pytest


@pytest.fixture(autouse=True)
def shared_cache(kept: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(kept))
