"""Invented outcomes."""

from assistant.belief.outcomes import Outcome


def outcome(number=1, **changes):
    values = {
        "session": f"{number:032x}",
        "recorded_on": "2026-03-31",
        "group": "visited",
        "result": "mended",
        "causes_found": ("weak_element",),
        "evidence": {},
        "not_fitted": (),
        "rules_fingerprint": "f" * 64,
    }
    found = values | changes
    if found["result"] not in ("mended", "advised", "not_worth_mending") and "causes_found" not in changes:
        found["causes_found"] = ()
    return Outcome.model_validate(found)
