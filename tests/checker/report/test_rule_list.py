"""The rule book as data: a limit says between what makers choose, where they do."""

from __future__ import annotations

import json

from wellstrung.plugins.host import Host
from wellstrung.report.rule_list import as_json


def test_a_limit_has_its_choice_or_none(installed: Host) -> None:
    """As the rules themselves declare them."""
    told = {rule["name"]: rule["limits"] for rule in json.loads(as_json(installed, []))}
    kinds = set()
    for name, rule in installed.rules.items():
        for limit, entry in zip(rule.limits, told[name], strict=True):
            choice = limit.choice
            kinds.add(choice is None)
            assert entry["value"] == limit.value
            expected = None if choice is None else [choice.low, choice.high, choice.source]
            found = entry["choice"]
            assert (found and [found["low"], found["high"], found["source"]]) == expected
    assert kinds == {True, False}
