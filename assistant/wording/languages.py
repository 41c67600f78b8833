"""The languages at hand, each loaded when it is first wanted."""

from functools import cached_property
from pathlib import Path

from assistant.errors import Refused, WordingBroken
from assistant.knowledge.model import Knowledge
from assistant.knowledge.problems import nearest_name
from assistant.wording.listener import Listener
from assistant.wording.locale import DEFAULT_LANG, Wording, languages, load_wording
from assistant.wording.needed import missing_messages
from assistant.wording.pseudo import PSEUDO_LANG
from assistant.wording.sentences import Sentences

HURT = ("otherwise",)
"""What a line may tell of somebody who is hurt, by the choices of the question; a shock is a danger sign."""


class Languages:
    """Wording, sentences and listeners by language."""

    def __init__(self, folder: Path, knowledge: Knowledge) -> None:
        self._folder = folder
        self._knowledge = knowledge
        self._wordings: dict[str, Wording] = {}
        self._sentences: dict[tuple[str, str | None], Sentences] = {}
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
        """`region` None knows no lines: 'your local emergency number'. Raises Refused for an unknown one."""
        regions = self._knowledge.regions
        if region is not None and region not in regions:
            near = nearest_name(region[:60], regions) or ""
            raise Refused("unknown_region", {"found": region[:60], "valid": ", ".join(regions), "nearest": near})
        if (lang, region) not in self._sentences:
            self._sentences[lang, region] = Sentences(self.wording(lang), self._knowledge, region)
        return self._sentences[lang, region]

    def sentences_of_session(self, lang: str, region: str) -> Sentences:
        """For a stored session, whose language or region may be gone since: then the default's words, or no lines."""
        lang = lang if lang in self.known else DEFAULT_LANG
        return self.sentences(lang, region if region in self._knowledge.regions else None)

    def require_words_for_rules(self, lang: str) -> None:
        """Raises WordingBroken now, rather than in the middle of a conversation, if the rules lack words."""
        missing = next(missing_messages(self._knowledge, self.wording(lang)), None)
        if missing is not None:
            raise WordingBroken(f"{lang}: no message {missing.name}, which {missing.file} calls for")

    def listener(self, lang: str) -> Listener:
        lang = lang if lang in self.known else DEFAULT_LANG
        if lang not in self._listeners:
            self._listeners[lang] = Listener(self.wording(lang), tuple(self._knowledge.signs))
        return self._listeners[lang]

    def hurt_listener(self, lang: str) -> Listener:
        """Hears that somebody is hurt."""
        return Listener(self.wording(lang if lang in self.known else DEFAULT_LANG), HURT, of="hurt")
