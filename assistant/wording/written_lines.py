"""The short lines that are kept of a measurement, such as `7:40 out`, in a language's own words."""

import re
from collections.abc import Iterable, Mapping

from assistant.wording.locale import Wording

_WORDS: Mapping[str, str] = {
    "lit": "lit",
    "out": "out",
    "end": "end",
    "opened": "opened",
    "C": "celsius",
    "F": "fahrenheit",
    "top": "top",
    "underside": "underside",
}
_WORD = re.compile(r"[A-Za-z]+")


def written_lines(lines: Iterable[str], wording: Wording) -> list[str]:
    """Each with its times and figures as they are."""

    def said(found: re.Match[str]) -> str:
        return wording.say(f"written-{_WORDS[found[0]]}") if found[0] in _WORDS else found[0]

    return [_WORD.sub(said, line) for line in lines]
