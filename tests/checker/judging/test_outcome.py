"""The verdict in one phrase: slips, what is mostly open, and what can be made."""

from __future__ import annotations

import pytest

from reports import report
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.plugins.host import Host
from wellstrung.report import pages, sarif, text
from wellstrung.report.writer import Options

OPEN = """\
plan: 1
title: Open bracelet
piece: bracelet
parts:
  inner: {kind: strand, stitch: strung, beads: gull, count: 60, thread: THREAD}
  hook: {kind: clasp, type: hook, closed_length: 16 mm, a: {}, b: {}}
beads:
  gull: {type: round, size: 8/0}
run: [hook.a, inner, hook.b]
inside: 17.5 cm ± 25 mm
work: [{do: string, part: inner}, {do: crimp, part: hook, to: inner}, {do: wear}]
""".replace("THREAD", "{type: fused, outside: 0.2 mm}")


def heading(result: PlanResult) -> str:
    return text.write(Result((result,)), Options(width=80)).split("\n\n", 1)[0]


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("piece: bracelet", "piece: bracelett", "NOT CHECKED YET: 1 slip"),
        ("piece: bracelet", "piece: bracelett\nwork: []", "NOT CHECKED YET: 1 slip"),
        ("beads: gull, count: 60", "beads: gull, cout: 60, mass: 3 g", "NOT CHECKED YET: 2 slips"),
        ("[hook.a, inner, hook.b]", "[hook.a, innar, hook.c]", "NOT CHECKED YET: 2 slips"),
        ("title: Open", "title: [Open", "NOT CHECKED YET: 1 slip"),
    ],
)
def test_slips_are_counted_and_no_plan_is_judged_by_them(
    checker: Checker, old: str, new: str, says: str
) -> None:
    result = checker.check_text(OPEN.replace(old, new))
    assert result.outcome == "not checked yet" and says in heading(result)


def test_a_plan_that_is_mostly_open_names_the_values_that_most_checks_wait_for(
    checker: Checker,
) -> None:
    result = checker.check_text(OPEN)
    assert result.outcome == "nothing wrong found"
    assert heading(result).splitlines()[2:] == [
        "NOTHING WRONG FOUND, 11 checks open",
        "fill in first  `make` of `gull` (2 checks); `a.eye.hole` of `hook` (1 check);",
        "               `b.eye.hole` of `hook` (1 check)",
    ]
    doubtful = checker.check_text(OPEN.replace("{do: string, part: inner}, ", ""))
    assert "NO ERROR FOUND, 1 warning, 11 checks open" in heading(doubtful)


def test_a_plan_with_as_many_checks_passed_as_open_can_be_made(checker: Checker) -> None:
    hole, make = "eye: {hole: 2 mm}", "size: 8/0, make: Japanese"
    full = OPEN.replace("a: {}, b: {}", f"a: {{{hole}}}, b: {{{hole}}}").replace("size: 8/0", make)
    result = checker.check_text(full.replace("count: 60", "count: 80"))
    assert not result.mostly_open and result.outcome == "makeable"


def test_plans_with_slips_are_counted_apart_and_never_as_errors(
    checker: Checker, installed: Host
) -> None:
    slips = checker.check_text(OPEN.replace("piece: bracelet", "piece: bracelett"), "slips.yaml")
    result = Result((slips, checker.check_text(OPEN, "open.yaml")))
    options = Options(width=80, installed=installed)
    assert (result.count("error"), result.not_checked) == (0, 1)
    shown = text.write(result, options)
    assert "2 plans, 1 not checked yet: 0 errors, 0 warnings" in shown
    assert "NOT CHECKED YET: 1 slip" in shown and "ERROR" not in shown
    read = report(*result.plans)
    assert read["totals"]["errors"] == 0 and read["totals"]["not_checked"] == 1
    assert [plan["outcome"] for plan in read["plans"]] == ["not checked yet", "nothing wrong found"]
    assert [remark["level"] for remark in read["plans"][0]["remarks"]] == ["slip"]
    (run,) = sarif.log(result, options)["runs"]
    assert [file["properties"]["outcome"] for file in run["artifacts"]] == [
        "not checked yet",
        "nothing wrong found",
    ]
    page = pages.index(result)
    assert "2 plans: 1 not checked yet, 1 nothing wrong found" in page


GULLS = """\
plan: 1
title: Gull strand
piece: necklace
metal: brass
wearer: {neck: 36 cm}
finished_length: 46 cm
beads: {gull: 8/0 round}
parts:
  strand: {kind: strand, stitch: strung, beads: gull, count: 180, thread: flexible wire 0.38 mm}
  crimp: 2 mm crimp tube
  ring: 4 mm jump ring 20 AWG
  clasp: lobster 12 mm
run: [clasp.a, ring, crimp, strand, crimp, ring, clasp.b]
work:
  - string strand
  - crimp crimp, 2 times
  - close ring, 2 times
  - wear
"""


def test_a_plan_whose_length_waits_for_a_value_says_so_in_its_heading(checker: Checker) -> None:
    result = checker.check_text(GULLS)
    assert result.outcome == "makeable"
    assert heading(result).splitlines()[2:] == [
        "MAKEABLE  0 errors, 0 warnings, length not checked",
        "fill in first  `make` of `gull` (it closes the length)",
    ]
    known = checker.check_text(GULLS.replace("8/0 round", "8/0 round Japanese"))
    assert known.held and "length" not in heading(known)
