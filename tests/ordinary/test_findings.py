"""Findings as a shop sells them, in ordinary pieces: everything is counted, and nothing is warned.

The size of none is stated but the one by which it is sold; a usual pairing of a shop stays quiet.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, product
from pathlib import Path

import pytest
import yaml

from wellstrung.judging.checker import Checker

HEAD = "plan: 1\ntitle: Findings as they are sold\n"
FINDINGS = Path(__file__).parent / "sold" / "findings.yaml"
#: what a frame leaves out on purpose, or says too little of: nothing that a finding brings
BESIDE = {"part-use", "step-parts"}


def plans() -> Iterator[tuple[str, str]]:
    """Every frame with its findings: any two in all their words, the others as the first."""
    known = yaml.safe_load(FINDINGS.read_text(encoding="utf-8"))
    for name, entry in known["said"].items():
        finds = entry["finds"]
        firsts = {part: many[0] for part, many in finds.items()}
        for two in combinations(finds, min(2, len(finds))):
            for chosen in product(*(finds[part] for part in two)):
                words = {**firsts, **dict(zip(two, chosen, strict=True))}
                text = known["frames"][entry["frame"]]
                for part, said in words.items():
                    text = text.replace(f"<{part}>", f'"{said}"')
                yield f"{name}: {', '.join(words.values())}", HEAD + text


PLANS = dict(plans())


@pytest.mark.parametrize("name", PLANS)
def test_a_finding_as_sold_is_counted_and_draws_no_warning(name: str, checker: Checker) -> None:
    result = checker.check_text(PLANS[name])
    assert result.readable and not result.failures, [one.says for one in result.remarks]
    found = [
        (one.rule, one.says) for one in result.remarks if one.counts and one.rule not in BESIDE
    ]
    assert not found
