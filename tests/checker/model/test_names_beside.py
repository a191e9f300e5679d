"""All slips of a file come in one round: names that point nowhere beside faults of shape."""

from __future__ import annotations

import random
import re

import pytest

from generated.plans import seeded
from wellstrung.judging.checker import Checker

SLIPS = """\
plan: 1
title: Rosary
piece: bracelett
beads:
  pearl: {type: other, outside: 6 mm, length: 6 mms, hole: 1 mm}
  shell: [glass]
parts:
  hook: {kind: clasp, type: hook, closed_length: 16}
  link: {kind: wire link, type: link, wire: 22 AWG, lop: {hole: 3 mm}, beads: perl}
  inner: {kind: strand, stitch: strang, beads: shell, lenth: 5 cm}
  ring: {kind: junp ring, outside: 5 mm, wire: 20 AWG, closing: open}
run: [hook.a, {repeat: 7, of: [ring, link]}, rin, hook.b, {part: ring, linked: many}]
hung: [{part: ring, from: {part: linc}, time: 3}]
work:
  - {do: wrap loop, part: linc, times: many}
  - {do: close ringg, part: ring}
supplies: [{bead: purl, pack: 3 g}]
"""
FOUND = [
    (3, "bracelett"), (5, "6 mms"), (6, "a list"), (8, "16"), (9, "lop"), (9, "perl"),
    (10, "strang"), (10, "lenth"), (11, "junp ring"), (12, "rin"), (12, "many"), (13, "linc"),
    (13, "time"), (15, "linc"), (15, "many"), (16, "close ringg"), (17, "purl"),
]  # fmt: skip
WORDS = ("x", "[a]", "{a: 1}", "5", '"5"', "8 mm", "kind", "[]", "strung", "chain", "pouch")


def test_every_slip_of_a_file_is_found_at_once(checker: Checker) -> None:
    remarks = checker.check_text(SLIPS).remarks
    assert [(one.place.line, one.found) for one in remarks] == FOUND


def test_what_could_not_be_read_is_not_missing_and_is_offered(checker: Checker) -> None:
    text = SLIPS.replace("rin, hook.b", "rimg, hook.b").replace("beads: perl", "beads: shel")
    edits = {
        one.found: [edit.new for edit in one.edits] for one in checker.check_text(text).remarks
    }
    assert (edits["rimg"], edits["shel"]) == (["ring"], ["shell"])


def test_a_count_that_is_one_too_many_is_not_missing(checker: Checker) -> None:
    text = """\
plan: 1
title: Ball on a cord
piece: necklace
beads: {seed: 11/0 cylinder, ball: {type: beaded bead, woven: bead}}
parts:
  bead:
    {kind: beaded bead, stitch: tubular peyote, around: 12, beads: seed,
     core: {outside: 8 mm, hole: 2 mm}}
  cord: {kind: strand, stitch: strung, beads: ball, count: 1, length: 70 cm}
run: [cord]
"""
    (one,) = checker.check_text(text).remarks
    assert one.says == "`cord` (a strand) has `length` and `count`: keep one"


@pytest.mark.parametrize("seed", range(4))
def test_no_slip_breaks_the_search_for_names(checker: Checker, seed: int) -> None:
    choice = random.Random(seed)
    for text in seeded(12):
        for _ in range(3):
            word = choice.choice([*re.finditer(r"[^\s{}\[\],:#]+(?: [^\s{}\[\],:#]+)*", text)])
            text = text[: word.start()] + choice.choice(WORDS) + text[word.end() :]
        result = checker.check_text(text)
        assert result.readable or not result.failures, (text, result.failures)
