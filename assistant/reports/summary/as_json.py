"""A summary as JSON (RFC 8259) for programs: all that the value holds, by the schema in json_schema.py."""

import json
from datetime import UTC, datetime
from typing import Any

from assistant.reports.summary.value import Block, Drawing, Facts, Items, Pairs, Paragraph, Section, Summary, Table

KIND = "ovenside_summary"
VERSION = 1
"""Goes up when a program that reads the earlier form could misread the new one."""


def as_json(summary: Summary) -> str:
    """The same text for the same value, byte for byte once it is UTF-8."""
    return json.dumps(_of(summary), ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def _of(summary: Summary) -> dict[str, Any]:
    return {
        "version": VERSION,
        "kind": KIND,
        "reader": summary.reader,
        "lang": summary.lang,
        "title": summary.title,
        "about": summary.about,
        "session": summary.session,
        "written_at": _moment(summary.written_at),
        "pages": [{"sections": list(map(_section, page.sections))} for page in summary.pages],
        "facts": _facts(summary.facts),
    }


def _moment(moment: datetime) -> str:
    """RFC 3339, in UTC."""
    return moment.astimezone(UTC).isoformat()


def _section(section: Section) -> dict[str, Any]:
    return {"name": section.name, "heading": section.heading, "blocks": list(map(_block, section.blocks))}


def _block(block: Block) -> dict[str, Any]:
    match block:
        case Paragraph(words=words, style=style):
            return {"kind": "paragraph", "words": words, "style": style}
        case Items(items=items, numbered=numbered):
            return {"kind": "items", "items": list(items), "numbered": numbered}
        case Pairs(rows=rows):
            return {"kind": "pairs", "rows": [list(row) for row in rows]}
        case Table(columns=columns, rows=rows):
            return {"kind": "table", "columns": list(columns), "rows": [list(row) for row in rows]}
        case Drawing(svg=svg, described=described):
            return {"kind": "drawing", "svg": svg, "described": described}


def _facts(facts: Facts) -> dict[str, Any]:
    return {
        "rules_fingerprint": facts.rules_fingerprint,
        "action": facts.action,
        "off_confirmed": facts.off_confirmed,
        "signs": [{"id": sign.id, "state": sign.state, "since": _moment(sign.since)} for sign in facts.signs],
        "causes": [{"id": cause, "probability": probability} for cause, probability in facts.causes],
        "tests": list(facts.tests),
        "kit": list(facts.kit),
        "kit_chance": facts.kit_chance,
    }
