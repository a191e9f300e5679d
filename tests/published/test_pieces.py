"""Published pieces, each as a plan: what is sold and worn gets no false error and no false warning.

A finding that print seems to contradict is listed with the piece in `pieces.yaml`, with its reason.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from wellstrung.judging.checker import Checker

PIECES = yaml.safe_load(Path(__file__).with_name("pieces.yaml").read_text(encoding="utf-8"))


@pytest.mark.parametrize("piece", PIECES, ids=lambda piece: str(piece["piece"]))
def test_a_published_piece_gets_only_the_findings_that_are_expected(
    piece: dict[str, Any], checker: Checker
) -> None:
    plan = {"plan": 1, "title": piece["piece"], **piece["plan"]}
    found = checker.check_text(yaml.safe_dump(plan, sort_keys=False, allow_unicode=True))
    assert found.readable and not found.failures
    told = {remark.rule: remark.level for remark in found.remarks if remark.level != "caution"}
    assert told == piece.get("remarks", {})
    assert bool(piece.get("remarks")) == bool(piece.get("why"))
    # nothing is quiet because nobody looked
    assert found.held


def test_every_piece_says_where_it_was_published() -> None:
    assert all("https://" in piece["source"] or "http://" in piece["source"] for piece in PIECES)
