"""What can go wrong, by situation.

OvensideError
├── FolderBroken           (knowledge.load) a rules folder holds mistakes; carries every one of them
├── RulesBroken            findings are beyond what the rule engine does; carries every reason
├── WordingBroken          a message is missing from a locale or can't be formatted
├── Refused                an answer or command that can't be taken; the session stays as it was
├── StoreUnreadable        the store's file can't be opened, read or written
├── SessionUnknown         no session with that code, name or id
└── SessionMovedOn         somebody else appended to the session first
"""

from collections.abc import Mapping, Sequence


class OvensideError(Exception):
    """Any situation this package reports by name; front ends turn it into a sentence."""


class RulesBroken(OvensideError):
    """The findings can't be run. `problems` are printable lines, one for each reason."""

    def __init__(self, problems: Sequence[str]) -> None:
        super().__init__(f"{len(problems)} mistakes in the rules")
        self.problems = tuple(problems)


class WordingBroken(OvensideError):
    """A message is missing from a locale, or its variables don't fit."""


class Refused(OvensideError):
    """A command that can't be taken. `code` and `details` are worded by the front end."""

    def __init__(self, code: str, details: Mapping[str, str | float] | None = None) -> None:
        super().__init__(code)
        self.code = code
        self.details = dict(details or {})


class StoreUnreadable(OvensideError):
    """The store's file can't be opened, read or written.

    `code` names the reason, which the front ends word; `detail` is what the system itself says of it, if anything.
    """

    def __init__(self, where: str, code: str, detail: str = "") -> None:
        super().__init__(f"{where}: {code} {detail}".rstrip())
        self.where = where
        self.code = code
        self.detail = detail


class SessionUnknown(OvensideError):
    """No session with that code, name or id."""


class SessionMovedOn(OvensideError):
    """The session holds more events than the writer had seen."""

    def __init__(self, session_id: str, expected_sequence: int, found_sequence: int) -> None:
        super().__init__(f"{session_id}: expected {expected_sequence}, found {found_sequence}")
        self.session_id = session_id
        self.expected_sequence = expected_sequence
        self.found_sequence = found_sequence
