"""A half of a clasp by the trade's word for it stands where `.a` or `.b` would."""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker

PLAN = """\
plan: 1
title: Halves
piece: bracelet
beads: {kelp: 8/0 round Japanese}
parts:
  rope: {kind: woven rope, stitch: tubular herringbone, beads: kelp, around: 6, length: 17 cm}
  lock: {kind: clasp, type: TYPE, closed_length: 20 mm}
run: [lock.a, rope, lock.b]
"""


@pytest.mark.parametrize(
    ("kind", "first", "second"),
    [
        ("toggle", ".ring", ".bar"),
        ("button and loop", ".button", ".loop"),
        ("hook", ".hook", ".eye"),
        ("hook", "", ""),
    ],
)
def test_a_half_by_its_name(kind: str, first: str, second: str, checker: Checker) -> None:
    """Or by the clasp's own name at both ends."""
    plan = PLAN.replace("TYPE", kind)
    by_letter = checker.check_text(plan)
    by_name = checker.check_text(plan.replace(".a,", f"{first},").replace(".b]", f"{second}]"))
    assert by_letter.readable and by_name.readable
    said = [[(one.rule, one.says) for one in result.remarks] for result in (by_letter, by_name)]
    assert said[0] == said[1] and by_letter.unjudged == by_name.unjudged
    assert [one.rule for one in by_letter.held] == [one.rule for one in by_name.held]


def test_what_no_half_is_called(checker: Checker) -> None:
    (slip,) = checker.check_text(PLAN.replace("TYPE", "toggle").replace(".a,", ".pin,")).remarks
    assert slip.says == (
        "`lock.pin` is not a place in the run, for a clasp stands there by its halves:"
        " write `lock.a` or `lock.b`"
    )
