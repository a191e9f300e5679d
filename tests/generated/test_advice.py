"""Advice on whole plans by chance, followed until nothing of it is left."""

from __future__ import annotations

import pytest

from generated.plans import PIECES, seeded
from turns import ALL_OF_THEM
from wellstrung.judging.checker import Checker
from wellstrung.testing.following import troubles


@pytest.mark.slow
def test_advice_on_generated_plans_is_followed_to_its_end(checker: Checker) -> None:
    for text in seeded((4 if ALL_OF_THEM else 2) * len(PIECES)):
        before = checker.check_text(text)
        for remark in before.remarks:
            if remark.counts and (remark.edits or remark.target is not None):
                assert list(troubles(text, before, remark, checker)) == []
