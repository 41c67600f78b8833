"""Time zones by the names of the IANA database, where the system or Python's tzdata has it."""

import re
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

_NAME = re.compile(r"[A-Z][A-Za-z_]+(/[A-Z][A-Za-z0-9_+-]+)+")
_ALWAYS_THERE = "Etc/UTC"


def time_zone(name: str) -> ZoneInfo | None:
    """None for a name that isn't in the database, and for any where there is no database."""
    if not _NAME.fullmatch(name):
        return None
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):  # OSError: the name of a whole area
        return None


def may_be_time_zone(name: str) -> bool:
    """Whether it is one; where there is no database, whether it could be."""
    return time_zone(name) is not None or (bool(_NAME.fullmatch(name)) and time_zone(_ALWAYS_THERE) is None)
