"""Fixtures named for what they hold. The project's own rules and words are loaded once."""

import gc
import os
from collections.abc import Callable, Iterator
from pathlib import Path

import psycopg
import pytest
from psycopg import conninfo

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # as the program itself does, before numpy is loaded

from assistant.interview.commands import GiveAnswer, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script, script_of
from assistant.knowledge.load import load_knowledge
from assistant.knowledge.model import Knowledge
from assistant.store.memory import MemoryStore
from assistant.wording.languages import Languages
from assistant.wording.sentences import Sentences

ROOT = Path(__file__).parent.parent

gc.set_threshold(100_000, 20, 50)
"""Seldom: each collection goes over all rules, words and syntax trees, and finds nothing."""

Begin = Callable[..., Conversation]
SERVER = "OVENSIDE_TEST_SERVER"
"""Names the server on which the tests may make databases of their own."""


@pytest.fixture(scope="session")
def knowledge() -> Knowledge:
    return load_knowledge(ROOT / "rules", None)


@pytest.fixture(scope="session")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The cache folder of the programs that tests start: the rules are compiled for the first of them alone."""
    return _shared(tmp_path_factory) / "kept"


@pytest.fixture(scope="session")
def simulated(kept: Path) -> Path:
    """Where the ovens that were simulated in this run are kept: where the programs that tests start look for them."""
    return kept / "ovenside"


def _shared(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of this run, the same for all of its processes."""
    own = tmp_path_factory.getbasetemp()
    return own.parent if "PYTEST_XDIST_WORKER" in os.environ else own


@pytest.fixture(scope="session")
def script(knowledge: Knowledge, simulated: Path) -> Script:
    return script_of(knowledge, simulated)


@pytest.fixture(scope="session")
def languages(knowledge: Knowledge) -> Languages:
    return Languages(ROOT / "locales", knowledge)


@pytest.fixture(scope="session")
def sentences(languages: Languages) -> Sentences:
    return languages.sentences("en-GB", "great_britain")


@pytest.fixture
def begun(script: Script) -> Begin:
    """Starts a conversation and gives it answers, by question id."""

    def begin(role: str = "householder", **answers: object) -> Conversation:
        record = SessionRecord(session_id="a" * 32, code_hash="b" * 64, name=None, created_at=utc_now())
        conversation = Conversation(script, MemoryStore(), record)
        conversation.start(Start(role, "great_britain", "en-GB", "single"))
        for question_id, value in answers.items():
            conversation.do(GiveAnswer(question_id, value))
        return conversation

    return begin


@pytest.fixture(scope="session")
def own_database() -> Iterator[str]:
    """A database of this process's own on the server of the tests; what needs one is left out where none is told of."""
    server = os.environ.get(SERVER)
    if not server:
        pytest.skip(f"{SERVER} names no server")
    name = f"ovenside_{os.getpid()}"
    with psycopg.connect(server, autocommit=True) as connection:
        connection.execute(f'CREATE DATABASE "{name}"')
        try:
            yield conninfo.make_conninfo(server, dbname=name)
        finally:
            connection.execute(f'DROP DATABASE "{name}" WITH (FORCE)')


@pytest.fixture
def empty_server(own_database: str) -> str:
    """The URL of a shared store without any table yet."""
    with psycopg.connect(own_database, autocommit=True) as connection:
        connection.execute("DROP SCHEMA IF EXISTS ovenside CASCADE")
    told = conninfo.conninfo_to_dict(own_database)
    return f"postgresql://{told.get('user', '')}@{told['host']}:{told.get('port', 5432)}/{told['dbname']}"
