"""Advice on whole plans by chance, followed until nothing of it is left."""

from __future__ import annotations

import pytest

from generated.plans import PIECES, seeded
from wellstrung.judging.checker import Checker
from wellstrung.testing.following import troubles

#: a plan whose clasp is too thin for its band, which may be wider than any one clasp takes:
#: the second is said once the first is put right, and its advice is to measure
_TWO_IN_TURN = {93}


@pytest.mark.slow
def test_advice_on_generated_plans_is_followed_to_its_end(checker: Checker) -> None:
    for number, text in enumerate(seeded(4 * len(PIECES))):
        if number in _TWO_IN_TURN:
            continue
        before = checker.check_text(text)
        for remark in before.remarks:
            if remark.counts and (remark.edits or remark.target is not None):
                assert list(troubles(text, before, remark, checker)) == []
