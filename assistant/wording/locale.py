"""Messages of one language, looked up strictly: a missing or broken message is an error, never an id on screen."""

from collections.abc import Iterable
from pathlib import Path
from typing import Any

from fluent.runtime import FluentBundle
from fluent.syntax import ast

from assistant.errors import WordingBroken
from assistant.wording.fluent_text import parsed
from assistant.wording.pseudo import PSEUDO_LANG, pseudo_resource

DEFAULT_LANG = "en-GB"


class Wording:
    """The messages of one language."""

    def __init__(self, lang: str, resources: Iterable[str]) -> None:
        self.lang = lang
        self._attributes: dict[str, frozenset[str | None]] = {}
        self._bundle = FluentBundle([DEFAULT_LANG if lang == PSEUDO_LANG else lang], use_isolating=False)
        for text in resources:
            resource = parsed(text)
            self._refuse_junk(resource)
            self._bundle.add_resource(resource)
            for message in resource.body:
                if isinstance(message, ast.Message):
                    self._attributes.setdefault(message.id.name, _attributes_of(message))

    @staticmethod
    def _refuse_junk(resource: ast.Resource) -> None:
        junk = [entry for entry in resource.body if isinstance(entry, ast.Junk)]
        if junk:
            raise WordingBroken(f"not understood: {str(junk[0].content)[:80]!r}")

    def has(self, message_id: str, attribute: str | None = None) -> bool:
        return attribute in self._attributes.get(message_id, ())

    def say(self, message_id: str, attribute: str | None = None, /, **arguments: str | float) -> str:
        """The message, or one of its attributes, filled in. Raises WordingBroken."""
        if not self.has(message_id, attribute):
            raise WordingBroken(f"{self.lang}: no message {_named(message_id, attribute)}")
        message = self._bundle.get_message(message_id)
        pattern: Any = message.value if attribute is None else message.attributes[attribute]
        text, errors = self._bundle.format_pattern(pattern, arguments)
        if errors:
            raise WordingBroken(f"{self.lang}: {_named(message_id, attribute)}: {errors[0]}")
        return str(text)


def _attributes_of(message: ast.Message) -> frozenset[str | None]:
    """Those that the message has; None stands for its own value."""
    value = [None] if message.value is not None else []
    return frozenset((*value, *(attribute.id.name for attribute in message.attributes)))


def _named(message_id: str, attribute: str | None) -> str:
    return message_id if attribute is None else f"{message_id}.{attribute}"


def languages(folder: Path) -> tuple[str, ...]:
    """The languages a locales folder holds."""
    return tuple(sorted(entry.name for entry in folder.iterdir() if entry.is_dir()))


def wording_files(folder: Path, lang: str) -> list[Path]:
    return sorted((folder / lang).glob("*.ftl"))


def load_wording(folder: Path, lang: str) -> Wording:
    """Raises WordingBroken if the language isn't there or a file can't be understood."""
    source = DEFAULT_LANG if lang == PSEUDO_LANG else lang
    if source not in languages(folder):
        raise WordingBroken(f"no language {lang}; there are {', '.join(languages(folder))}")
    texts = [path.read_text("utf-8") for path in wording_files(folder, source)]
    if lang == PSEUDO_LANG:
        texts = [pseudo_resource(text) for text in texts]
    return Wording(lang, texts)
