"""Plans written in JSON, which is YAML too: what an edit writes in one is JSON again."""

from __future__ import annotations

import json
import re

from wellstrung.reading import parser


def is_json(text: str) -> bool:
    """Whether a file is JSON."""
    return text.lstrip().startswith("{") and _parses(text)


def as_json(new: str, before: str = "") -> str:
    """The words of an edit as JSON: a value, or, after a comma, a value or a field more.

    `before` is the line up to its place: within a phrase, they are words more of it.

    >>> as_json("8 mm"), as_json("3"), as_json(", {do: wear}"), as_json(", passes: 2")
    ('"8 mm"', '3', ', {"do": "wear"}', ', "passes": 2')
    >>> as_json("10 lb", before='"thread": "fused ')
    '10 lb'
    """
    if re.sub(r"\\.", "", before).count('"') % 2:
        return json.dumps(new, ensure_ascii=False)[1:-1]
    comma = ", " if new.startswith(", ") else ""
    words = new.removeprefix(comma)
    if not words or _parses(words):
        return new
    if words[0] in "{[":
        return comma + _dumped(words)
    return comma + _dumped(f"{{{words}}}")[1:-1] if comma else json.dumps(words, ensure_ascii=False)


def _dumped(flow: str) -> str:
    tree = parser.read_text(f"new: {flow}", "edit").tree
    return json.dumps(tree.value["new"], ensure_ascii=False) if tree is not None else flow


def _parses(text: str) -> bool:
    try:
        json.loads(text)
    except (ValueError, RecursionError):
        return False
    return True
