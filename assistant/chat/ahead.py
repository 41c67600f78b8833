"""Weighs the questions that may follow while the person reads the one that is open."""

from threading import Event, Thread

from assistant.interview.assess import Assessment
from assistant.interview.script import Script
from assistant.interview.supposed import weigh_ahead


class Ahead:
    """Works beside the conversation, one open question at a time. Nothing but its speed depends on it."""

    def __init__(self, script: Script) -> None:
        self._script = script
        self._enough = Event()
        self._thread: Thread | None = None

    def begin(self, assessment: Assessment, question_id: str) -> None:
        self.end()
        self._enough.clear()
        thread = Thread(target=self._work, args=(assessment, question_id), daemon=True)
        thread.start()
        self._thread = thread  # not before: Ctrl-C may come while it starts, and then it can't be joined

    def end(self) -> None:
        """Returns when the work has stopped."""
        self._enough.set()
        if self._thread is not None:
            self._thread.join()
            self._thread = None

    def _work(self, assessment: Assessment, question_id: str) -> None:
        for _ in weigh_ahead(self._script, assessment, question_id):
            if self._enough.is_set():
                return
