"""Plans by chance, with every finding said as a shop sells it: none of them breaks a check."""

from __future__ import annotations

from typing import Any

import yaml

from generated.plans import seeded
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host

PLANS = 40
#: what stays of a finding: what it is, what it is made of, and how many eyes it has
KEPT = (
    "kind", "type", "closing", "metal", "states", "takes", "covers", "beads", "count", "over",
    "loops", "wraps",
)  # fmt: skip
#: what has to be there before a finding may be given as sold
UNSAID = {"wire link": ("link",), "clasp": ("button and loop",)}


class Words(yaml.SafeLoader):
    """Reads `no` as a word, as plans do."""

    yaml_implicit_resolvers = {  # noqa: RUF012 - as the class above has it
        sign: [(tag, known) for tag, known in found if not tag.endswith(":bool")]
        for sign, found in yaml.SafeLoader.yaml_implicit_resolvers.items()
    }


def as_sold(part: dict[str, Any], kinds: Any) -> dict[str, Any]:
    """A part by what it is alone; the same where it is not sold by a size."""
    kind = part["kind"]
    if kinds[kind].sold is None or kind == "chain" or part.get("type") in UNSAID.get(kind, ()):
        return part
    sold = {name: value for name, value in part.items() if name in KEPT}
    counts = {
        name: {"count": part[name]["count"]}
        for name in ("holes",)
        if isinstance(part.get(name), dict) and "count" in part[name]
    }
    halves = {
        half: {"eye": {"count": part[half]["eye"]["count"]}}
        for half in ("a", "b")
        if "count" in part.get(half, {}).get("eye", {})
    }
    return {**sold, **counts, **halves, "size": "usual"}


def test_findings_as_they_are_sold_break_no_check(installed: Host) -> None:
    checker, sold, assumed = Checker(installed, quantities=True), 0, 0
    for text in seeded(PLANS):
        plan = yaml.load(text, Words)
        parts = {name: as_sold(part, installed.kinds) for name, part in plan["parts"].items()}
        sold += sum(part != plan["parts"][name] for name, part in parts.items())
        changed = yaml.safe_dump({**plan, "parts": parts}, sort_keys=False, allow_unicode=True)
        result = checker.check_text(changed)
        assert result.readable, (changed, [one.says for one in result.remarks])
        assert not result.failures, (changed, result.failures)
        assert result.ask is not None
        lengths = [name for name in result.quantities if name == "piece.length"]
        assumed += len(lengths)
    assert sold > PLANS and assumed > PLANS / 3
