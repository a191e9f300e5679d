"""The same plan in other words: its parts renamed, its keys in another order."""

from __future__ import annotations

import copy
from random import Random
from typing import Any

import yaml

from wellstrung.reading import parser


def plain_data(text: str) -> dict[str, Any]:
    """The data of a plan, to be changed."""
    tree = parser.read_text(text, "plan.yaml").tree
    assert tree is not None
    found: dict[str, Any] = copy.deepcopy(tree.value)
    return found


def written(data: object) -> str:
    """Data as a plan writes it."""
    return yaml.safe_dump(data, sort_keys=False, allow_unicode=True, default_flow_style=None)


#: fields of a part that may name another
_NAMING = (
    "of",
    "over",
    "core",
    "covers",
    "cover",
    "behind",
    "thread",
    "needle",
    "started_on",
    "rings",
)


def with_parts_renamed(data: dict[str, Any]) -> tuple[dict[str, Any], dict[str, str]]:
    """A plan with another name for each of its parts, and those names."""
    names = {part: f"thing {number}" for number, part in enumerate(data["parts"])}
    for section in ("run", "hung", "work", "class", "supplies", "centre"):
        if section in data:
            data[section] = _renamed(data[section], names)
    data["parts"] = {names[part]: fields for part, fields in data["parts"].items()}
    for fields in data["parts"].values():
        thread = fields.get("thread")
        if isinstance(thread, dict) and thread.get("spool") in names:
            thread["spool"] = names[thread["spool"]]
        for half in (fields.get("ring"), fields.get("bar")):
            if isinstance(half, dict) and half.get("woven") in names:
                half["woven"] = names[half["woven"]]
        for field in _NAMING:
            value = fields.get(field)
            name, comma, beside = str(value).partition(",")
            if isinstance(value, str) and name in names:
                fields[field] = names[name] + comma + beside
    came = data.get("repair", {}).get("came", {})
    if "parts" in came:
        came["parts"] = {names.get(part, part): count for part, count in came["parts"].items()}
    return data, names


def _renamed(node: Any, names: dict[str, str]) -> Any:
    """The same data with every mention of a part, or of a half of it, under its new name."""
    if isinstance(node, dict):
        keep = (
            "do",
            "eyes",
            "sold_as",
        )  # words of the language, though a part may be called the same
        return {key: v if key in keep else _renamed(v, names) for key, v in node.items()}
    if isinstance(node, list):
        return [_renamed(item, names) for item in node]
    head, point, half = str(node).partition(".")
    return f"{names[head]}{point}{half}" if isinstance(node, str) and head in names else node


def mixed(node: Any, random: Random) -> Any:
    """The same data with the keys of every group in another order."""
    if isinstance(node, dict):
        items = list(node.items())
        random.shuffle(items)
        return {key: mixed(value, random) for key, value in items}
    return [mixed(item, random) for item in node] if isinstance(node, list) else node
