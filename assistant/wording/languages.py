"""The languages at hand, each loaded when it is first wanted."""

from functools import cached_property
from pathlib import Path

from assistant.errors import Refused
from assistant.knowledge.model import Knowledge
from assistant.knowledge.problems import nearest_name
from assistant.wording.listener import Listener
from assistant.wording.locale import Wording, languages, load_wording
from assistant.wording.pseudo import PSEUDO_LANG
from assistant.wording.sentences import Sentences


class Languages:
    """Wording, sentences and listeners by language."""

    def __init__(self, folder: Path, knowledge: Knowledge) -> None:
        self._folder = folder
        self._knowledge = knowledge
        self._wordings: dict[str, Wording] = {}
        self._sentences: dict[tuple[str, str], Sentences] = {}
        self._listeners: dict[str, Listener] = {}

    @cached_property
    def known(self) -> tuple[str, ...]:
        return (*languages(self._folder), PSEUDO_LANG)

    def wording(self, lang: str) -> Wording:
        """Raises Refused if there is no such language."""
        if lang not in self.known:
            near = nearest_name(lang[:60], self.known) or ""
            raise Refused(
                "unknown_language",
                {"found": lang[:60], "valid": ", ".join(languages(self._folder)), "nearest": near},
            )
        if lang not in self._wordings:
            self._wordings[lang] = load_wording(self._folder, lang)
        return self._wordings[lang]

    def sentences(self, lang: str, region: str | None) -> Sentences:
        """`region` None takes any: for sentences that name no region's lines. Raises Refused for unknown ones."""
        regions = self._knowledge.regions
        region = region or next(iter(regions))
        if region not in regions:
            near = nearest_name(region[:60], regions) or ""
            raise Refused("unknown_region", {"found": region[:60], "valid": ", ".join(regions), "nearest": near})
        if (lang, region) not in self._sentences:
            self._sentences[lang, region] = Sentences(self.wording(lang), self._knowledge, region)
        return self._sentences[lang, region]

    def listener(self, lang: str) -> Listener:
        if lang not in self._listeners:
            self._listeners[lang] = Listener(self.wording(lang), tuple(self._knowledge.signs))
        return self._listeners[lang]
