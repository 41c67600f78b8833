"""What no householder may ever be told to do, found in sentences: patterns, less what a denial governs.

A denial must govern the deed: 'never take a panel off' denies it, 'don't worry, take the panel off' doesn't. Through
'or' and 'nor' it governs further deeds; through 'and', 'then', a comma or a dash it doesn't. A deed is also free if an
engineer does it ('let an engineer measure it'). In doubt a sentence is found, not passed.
"""

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from fluent.syntax import FluentParser, FluentSerializer, ast

from assistant.wording.locale import wording_files
from assistant.wording.pseudo import PSEUDO_LANG, pseudo_resource

LITTLE = r"(?:[\w'’-]+ ){0,4}?"
"""Little words between a verb and its object."""

_COVER = r"(?:panels?|covers?|casings?|back|backplate|housing|screws?|trims?|control board)\b"
_OPENED = r"(?:take|takes|taking|pull|pulling|lift|lifting|pry|prise|pop|get|getting)"
_WIRING = (
    r"(?:wires?|wiring|cables?|terminals?|connectors?|connections?|contacts?|spade tags?|live parts?|elements? tags?)\b"
)

FORBIDDEN: dict[str, str] = {
    "a panel, cover or screw removed": (
        rf"\b(?:remove|removing|detach|detaching|unscrew|unscrewing|undo|undoing|loosen|loosening|unclip|unclipping"
        rf"|dismantle|open up|take apart|taking apart) {LITTLE}(?:{_COVER}|oven\b|heater\b|elements?\b)"
        rf"|\b{_OPENED} {LITTLE}{_COVER} {LITTLE}(?:off|out|away)\b|\b{_OPENED} off {LITTLE}{_COVER}"
        r"|\bunscrew\b|\btake (?:it|the oven) apart\b|\btaking (?:it|the oven) apart\b"
    ),
    "terminals or wires touched or looked at": (
        rf"\b(?:touch|touching|look at|looking at|check|checking|inspect|tighten|tightening|wiggle|push|pull|move"
        rf"|disconnect|reconnect|connect|swap|cut|join|bridge|short|test|examine|see whether|see if|follow|feel)"
        rf" {LITTLE}{_WIRING}|\bbridge {LITTLE}(?:thermostat|switch|cut-?out)"
    ),
    "a meter used": (
        r"\b(?:multi-?meters?|ohm ?meters?|volt ?meters?|clamp meters?|test(?:er|ing) (?:screwdriver|lamp|leads?)"
        r"|(?:mains|continuity|voltage|circuit|socket) testers?)\b"
        r"|\b(?:use|using|with|take|get|put|connect|hold) (?:a|an|the|your) (?:[\w-]+ )?(?:meter|tester)\b"
        r"|\b(?:measure|measuring|check|test) (?:the |its |for )?(?:\w+ )?(?:voltage|volts|resistance|ohms|current"
        r"|continuity|earth|insulation|amps)\b"
    ),
    "the oven moved out of its place": (
        rf"\b(?:pull|pulling|slide|sliding|lift|lifting|move|moving|take|taking|roll|drag|draw|ease)"
        rf" {LITTLE}(?:oven|cooker|appliance|it) {LITTLE}(?:out|forward|forwards|away from the wall|from (?:its|the)"
        r" (?:housing|cupboard|place|wall))\b"
        r"|\b(?:pull|slide|lift|move|roll|drag|draw|ease) out the (?:oven|cooker|appliance)\b"
        r"|\b(?:look|reach|feel|get) behind the (?:oven|cooker)\b"
    ),
    "the oven tilted": rf"\b(?:tilt|tilting|tip|tipping|lean) {LITTLE}(?:oven|cooker|appliance|it)\b",
    "a cut-out reset": (
        r"\b(?:reset|resetting|press|pressing|push|pushing|bypass|bypassing|bridge|poke)"
        rf" {LITTLE}(?:cut-?outs?|safety (?:switch|thermostat|device)|thermal switch|trip button|reset button)\b"
    ),
    "a breaker held in": (
        rf"\b(?:hold|holding|tape|taping|wedge|keep|keeping|force|forcing) {LITTLE}(?:breaker|switch|fuse|rcd|it)"
        r" (?:in|on|up|down|closed)\b"
        r"|\b(?:larger|bigger|stronger|higher|thicker) fuse\b|\bfuse with (?:foil|wire)\b"
        rf"|\b(?:reset|put|turn|switch|flip) {LITTLE}(?:breaker|fuse|rcd|it) {LITTLE}(?:again and again|several times"
        r"|repeatedly|until it (?:stays|holds)|as often as)"
    ),
    "another socket": (
        rf"\b(?:other|another|different|second|neighbouring|next) (?:wall )?(?:sockets?|outlets?|plug sockets?)\b"
        rf"|\b(?:extension (?:lead|cable|cord)|adaptors?|adapters?)\b|\bplug {LITTLE}(?:oven|it) {LITTLE}elsewhere\b"
        rf"|\b(?:swap|change|replace|rewire) {LITTLE}(?:plug|fuse|socket)\b"
    ),
    "self-cleaning as a test": (
        r"\b(?:run|running|start|starting|try|trying|use|using|set|do)"
        rf" {LITTLE}(?:self-?clean(?:ing)?|pyrolytic|pyrolysis|hot clean(?:ing)?"
        r"|cleaning (?:cycle|programme|function))\b"
    ),
    "a locked door forced": (
        rf"\b(?:force|forcing|prise|pry|lever|jemmy|break|pull hard at|yank|wrench) {LITTLE}(?:door|lock|latch|catch)\b"
    ),
    "a door refitted or lifted off": (
        rf"\b(?:refit|refitting|rehang|unhook|unhinge|realign) {LITTLE}(?:doors?|hinges?|it)\b"
        rf"|\b(?:lift|lifting|take|taking|pull|slide|get) {LITTLE}doors? {LITTLE}(?:off|out of|from its)\b"
        rf"|\b(?:lift|lifting|take|taking|pull) off {LITTLE}doors?\b"
        r"|\b(?:lift|raise|hold up|prop up) the (?:oven )?door\b"
        rf"|\b(?:bend|bending|adjust|straighten|remove|tighten|replace|push back) {LITTLE}hinges?\b"
        rf"|\bremove {LITTLE}door\b"
    ),
    "a probe bent or clipped": (
        r"\b(?:bend|bending|clip|clipping|push|pushing|press|straighten|move|moving|touch|touching|put|hook|fix|place"
        rf"|refit|reposition) {LITTLE}(?:probe|thermostat|sensor|feeler|metal rod|thin rod|rod)\b"
    ),
    "a heater or part touched or changed": (
        rf"\b(?:touch|touching|replace|replacing|change|changing|fit|fitting|wiggle|press|push|lift|pull|swap|bend|oil)"
        rf" {LITTLE}(?:elements?|heaters?|selector|programmer|relay|fan blade|blades|motor|thermal fuse)\b"
        rf"|\b(?:spin|turn|push) the fan (?:by hand|with)\b"
    ),
    "a bulb changed": (
        rf"\b(?:change|changing|replace|replacing|unscrew|swap|fit|remove|take out) {LITTLE}(?:bulb|lamp)\b"
    ),
    "run dry": r"\brun(?:ning)? (?:it|the oven|the boiler|the steamer|the tank) dry\b",
    "looked into hot": (
        rf"\b(?:put|hold|reach|stick) {LITTLE}(?:hand|hands|arm|head|face|finger|fingers) {LITTLE}(?:in|into|inside)\b"
        r"|\b(?:open|opening) the (?:oven )?door (?:while|when|if) it (?:smokes|burns|is on fire)\b"
    ),
    "water on fire or live parts": rf"\b(?:pour|throw|spray|splash) {LITTLE}water\b",
    "tried again to see": (
        r"\b(?:switch|turn) it (?:back )?on again to (?:see|check|test|find out)\b"
        r"|\btouch (?:it|the oven) again to (?:see|check|test|find out)\b|\btry it (?:again )?(?:until|to see) "
    ),
}

_DENIAL = re.compile(
    r"\b(?:never|nobody|no one|not|no|don['’]t|doesn['’]t|mustn['’]t|shouldn['’]t|needn['’]t|cannot|can['’]t|without"
    r"|nothing|neither|nor|instead of|rather than|avoid|leave)\b"
)
_NO_DENIAL = re.compile(
    r"\b(?:(?:do not|don['’]t|never|not|no) (?:worry|hesitate|forget|fear|be afraid|fail|be shy|wait|mind|need|only"
    r"|just|problem|matter|idea|harm in|trouble)|cannot go wrong|can['’]t go wrong|leave off \w+ing"
    r"|nothing (?:easier|to lose))\b"
)
_BY_ENGINEER = re.compile(
    r"\b(?:an?|the|your|only|qualified|appliance|registered gas) (?:\w+ )?(?:engineers?|electricians?|fitters?)"
    r"(?: (?:to|will|must|may|can|should|then|has to|first))*\s*$"
)
_CLAUSES = re.compile(r"[,;:–—()…]|\b(?:and|then|but|so|otherwise|if not|unless)\b")
_SENTENCES = re.compile(r"(?<=[.!?])\s+|\n+")
_BULB_IS_SAFE = ("cold", "off at", "whole")
"""A bulb may be changed in a message that says all of these: cold, isolated, and the cover whole."""


@dataclass(frozen=True)
class Found:
    """A forbidden deed in a text: what it is, and the clause that says it."""

    deed: str
    clause: str


def forbidden_in(text: str) -> tuple[Found, ...]:
    """Every forbidden deed that the text tells somebody to do."""
    plain = _plain(text)
    return tuple(
        Found(deed, clause)
        for sentence in _SENTENCES.split(plain)
        for deed, pattern in _PATTERNS
        for clause in _saying(sentence, pattern)
        if not (deed == "a bulb changed" and all(word in plain for word in _BULB_IS_SAFE))
    )


_PATTERNS = [(deed, re.compile(pattern)) for deed, pattern in FORBIDDEN.items()]


def _plain(text: str) -> str:
    """Lower case, no accents, one kind of apostrophe and space: the marked language reads like the real one."""
    bare = "".join(c for c in unicodedata.normalize("NFD", text) if not unicodedata.combining(c))
    return re.sub(r"[ \t]+", " ", bare.lower().replace("’", "'").replace("⟦", "").replace("⟧", ""))


def _saying(sentence: str, pattern: re.Pattern[str]) -> Iterator[str]:
    for match in pattern.finditer(sentence):
        before = sentence[: match.start()]
        clause = _CLAUSES.split(before)[-1]
        if not (_denied(clause + match.group()) or _in_denied_list(sentence, before) or _BY_ENGINEER.search(clause)):
            yield sentence.strip()


def _denied(clause: str) -> bool:
    return _DENIAL.search(_NO_DENIAL.sub(" ", clause)) is not None


def _in_denied_list(sentence: str, before: str) -> bool:
    """'Do not lift the door, hold it up or …': deeds between commas, the last after 'or', hang on the first denial."""
    clauses = _CLAUSES.split(before)
    only_commas = len(clauses) > 1 and all(each.group() == "," for each in _CLAUSES.finditer(before))
    at_its_start = re.search(r"(?:^|\b(?:or|nor)) *$", clauses[-1]) is not None
    return only_commas and at_its_start and _denied(clauses[0]) and re.search(r"\b(?:or|nor)\b", sentence) is not None


INPUT_ONLY = ("words", "phrases", "unclear", "ending", "also")
"""Endings of attributes that hold what people type, never what they are told."""

INPUT_MESSAGES = ("listener-", "words-")

FOR_ENGINEERS = {"message": ("question-test_", "finding-test_"), "attribute": ("engineer",)}
"""Beginnings of messages, and of attributes, that only the role `engineer` sees."""


def sentences_of(text: str) -> Iterator[tuple[str, str]]:
    """name -> value of every message and attribute of a resource that a householder may see."""
    serializer = FluentSerializer()
    for entry in FluentParser().parse(text).body:
        if not isinstance(entry, ast.Message) or entry.id.name.startswith((*INPUT_MESSAGES, *FOR_ENGINEERS["message"])):
            continue
        parts = [(None, entry.value), *((a.id.name, a.value) for a in entry.attributes)]
        for attribute, pattern in parts:
            typed = attribute is not None and attribute.split("-")[-1] in INPUT_ONLY
            if pattern is None or typed or (attribute or "").startswith(FOR_ENGINEERS["attribute"]):
                continue
            name = entry.id.name if attribute is None else f"{entry.id.name}.{attribute}"
            yield name, _shown(serializer, pattern)


def _shown(serializer: FluentSerializer, pattern: ast.Pattern) -> str:
    """The pattern's text, with its placeables as they are written."""
    message = ast.Message(ast.Identifier("m"), ast.Pattern(pattern.elements))
    written = serializer.serialize_entry(message).removeprefix("m =")
    return re.sub(r"\s+", " ", written).strip()


def forbidden_sentences(folder: Path, lang: str) -> dict[str, tuple[Found, ...]]:
    """Message or attribute -> what it tells that it must not, over all files of a language."""
    source = "en-GB" if lang == PSEUDO_LANG else lang
    found: dict[str, tuple[Found, ...]] = {}
    for path in wording_files(folder, source):
        text = path.read_text("utf-8")
        if lang == PSEUDO_LANG:
            text = pseudo_resource(text)
        found |= {name: told for name, value in sentences_of(text) if (told := forbidden_in(value))}
    return found
