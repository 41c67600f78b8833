"""Whether a text holds what may be the number of a bank card: 13 to 19 digits with the right check digit.

The check digit is that of ISO/IEC 7812-1, annex B (the Luhn formula); one in ten numbers has it by chance.
"""

import re
import unicodedata
from itertools import accumulate

FEWEST_DIGITS, MOST_DIGITS = 13, 19

_RUN = re.compile(r"\d+(?:[\s.\-\u2010-\u2015]{1,3}\d+)*")
_GROUP = re.compile(r"\d+")
_PRINTED = re.compile(
    r"(?<!\d)(?:\d{4}(?:[\W_]{1,3}\d{4}){2}[\W_]{1,3}\d{1,7}|\d{4}[\W_]{1,3}\d{6}[\W_]{1,3}\d{5})(?!\d)"
)
"""Grouped as on a card, whatever stands between the groups."""


def holds_card_number(text: str, fewest: int = FEWEST_DIGITS) -> bool:
    """However its digits are grouped, and whatever other digits stand beside the groups."""
    told = unicodedata.normalize("NFKC", text)
    printed = ("".join(_GROUP.findall(each)) for each in _PRINTED.findall(told))
    return any(map(_checks, printed)) or any(_among(_GROUP.findall(run), fewest) for run in _RUN.findall(told))


def _among(groups: list[str], fewest: int) -> bool:
    for first in range(len(groups)):
        for digits in accumulate(groups[first:]):
            if len(digits) > MOST_DIGITS:
                break
            if len(digits) >= fewest and _checks(digits):
                return True
    return False


def _checks(digits: str) -> bool:
    """Every second digit from the right but one counts double, digit by digit; the sum ends in nought."""
    doubled = sum(sum(divmod(2 * int(digit), 10)) for digit in digits[-2::-2])
    return (doubled + sum(int(digit) for digit in digits[-1::-2])) % 10 == 0
