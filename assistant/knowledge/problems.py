"""A mistake in a rules folder: where it stands, what was found, what was expected. Worded elsewhere."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches

from assistant.knowledge.yaml_text import PathInFile, shortened


@dataclass(frozen=True, order=True)
class Problem:
    """`code` names the sentence; `details` fill it; `nearest` is the valid name most like the one found.

    `line` and `column` are where the key or list item at fault starts; for something missing, where the key of
    the block starts that lacks it; 1:1 for what concerns a file as a whole.
    """

    file: str
    line: int
    column: int
    where: str
    code: str
    details: Mapping[str, str | int] = field(default_factory=dict, compare=False)
    nearest: str | None = field(default=None, compare=False)


def where_in_file(path: PathInFile) -> str:
    """`("when", 0, "question")` -> `when[1].question`: items counted from 1, as a reader counts them."""
    text = ""
    for step in path:
        name = f"[{step + 1}]" if isinstance(step, int) else shortened(step) or '""'
        text += name if isinstance(step, int) or not text else f".{name}"
    return text or "file"


def nearest_name(found: str, valid: Iterable[str]) -> str | None:
    """The valid name most like the one found, if any is alike enough."""
    matches = get_close_matches(found.replace(" ", "_").lower(), list(valid), n=1, cutoff=0.6)
    return matches[0] if matches else None
