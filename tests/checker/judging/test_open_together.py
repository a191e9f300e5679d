"""A weight that lacks several masses asks for all of them at once."""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.report.checks import open_checks

PLAN = """\
plan: 1
title: Whistle lanyard
piece: lanyard
beads:
  cork: {type: other, outside: 6 mm, length: 6 mm, hole: 1 mm}
  foam: {type: other, outside: 4 mm, length: 4 mm, hole: 1 mm}
  tide: {type: round, size: 8/0, make: Japanese}
parts:
  cord: {kind: strand, stitch: strung, beads: [cork, foam, tide], length: 80 cm, thread: fused 8 lb}
  leg: {kind: bead drop, beads: [foam, cork], turn: tide}
  crimp: 2 mm crimp tube
  ring: {kind: jump ring, outside: 6 mm, wire: 1 mm, closing: split, metal: brass}
  whistle: {kind: pendant, top_eyes: {count: 1, hole: 4 mm, wire: 1.2 mm}}
run_is: loop
run: [crimp, cord, ring]
hung: [{part: whistle, from: ring}, {part: leg, from: ring}]
"""
BEADS = ("`per_gram` of `cork`", "`per_gram` of `foam`")


@pytest.mark.parametrize(
    ("known", "lacking"),
    [
        ((), (*BEADS, "`mass` of `whistle`")),
        (("whistle",), BEADS),
        (("cork", "foam"), ("`mass` of `whistle`",)),
        (("cork", "foam", "whistle"), ()),
    ],
)
def test_all_that_a_mass_lacks_is_asked_for_together(
    known: tuple[str, ...], lacking: tuple[str, ...], checker: Checker
) -> None:
    text = PLAN
    for name in known:
        field = "mass: 12 g" if name == "whistle" else "per_gram: 9"
        text = text.replace(f"  {name}: {{", f"  {name}: {{{field}, ")
    result = checker.check_text(text)
    assert not result.failures
    found = {one.missing for one in result.unjudged if one.rule == "crimp-hold"}
    assert found == ({lacking} if lacking else set())


def test_they_stand_in_one_line_of_the_report(checker: Checker) -> None:
    words = "`per_gram` of `cork`, `per_gram` of `foam` and `mass` of `whistle`"
    (line,) = [one for one in open_checks(checker.check_text(PLAN)) if one.missing == words]
    assert line.rules == ("crimp-hold", "thread-hold")
