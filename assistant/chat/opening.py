"""The first screen, kept ready-made: it is on the terminal before the rules and the rule engine are loaded.

Standard library only. The file is named by a digest of everything that the screen is made from.
"""

import json
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from assistant.knowledge.fingerprint import sealed, unsealed, write_beside
from assistant.reports.screen import BLANK, Paragraph, numbered


@dataclass(frozen=True)
class Opening:
    """The words of the first screen: the danger question and how to answer it."""

    welcome: str
    caution: str
    question: str
    choices: tuple[str, ...]
    hint: str
    helper_words: str
    goodbye: str
    completions: tuple[str, ...]

    def paragraphs(self) -> list[Paragraph]:
        return [
            Paragraph(self.welcome, "strong"),
            Paragraph(self.caution),
            BLANK,
            Paragraph(self.question, "danger"),
            *numbered(self.choices),
            BLANK,
            Paragraph(self.hint, "quiet"),
            Paragraph(self.helper_words, "quiet"),
        ]


def opening_file(cache: Path | None, mark: str) -> Path | None:
    return cache / f"opening-{mark[:32]}.json" if cache is not None else None


def read_opening(path: Path) -> Opening | None:
    """The kept screen, or None if there is none, or if it isn't what was kept."""
    try:
        kept = json.loads(unsealed(path.read_bytes()))
        fields: dict[str, Any] = {name: tuple(v) if isinstance(v, list) else v for name, v in kept.items()}
        return Opening(**fields)
    except (OSError, ValueError, TypeError, AttributeError):
        return None


def keep_opening(path: Path, opening: Opening) -> None:
    write_beside(path, sealed(json.dumps(asdict(opening)).encode()))
