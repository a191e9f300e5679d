"""A bought size that nobody stated is asked for where it decides, and makes no remark alone."""

from __future__ import annotations

import pytest

from wellstrung import tables
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins.host import Host
from wellstrung.quantity.assumed import ASSUMED
from wellstrung.reading import drawer as drawers
from wellstrung.reading import tree
from wellstrung.report.pages.measurements import measurements

PLAN = """\
plan: 1
title: A cap as it is sold
piece: necklace
finished_length: {length}
beads: {{kelp: {{type: round, size: 8/0, make: Japanese}}}}
parts:
  rope: {{kind: woven rope, stitch: tubular herringbone, beads: kelp, around: 4, length: 40 cm ± 1 mm, measured: {{outside: 7.4 ± 0.05 mm}}}}
  cap: end cap 8 mm
  ring: 16 mm jump ring {wire}
  clasp: {clasp}
run: [clasp.a, ring, cap, rope, cap, ring, clasp.b]
"""  # noqa: E501


def result(
    checker: Checker, *, length: str = "46 cm", clasp: str = "lobster 12 mm", wire: str = "20 AWG"
) -> PlanResult:
    found = checker.check_text(PLAN.format(length=length, clasp=clasp, wire=wire))
    assert found.readable and not found.failures
    return found


def of(found: PlanResult, rule: str) -> tuple[list[str], list[tuple[str, ...]], bool]:
    """The remarks of a rule by level, what it lacks, and whether a check of it passed."""
    levels: list[str] = [one.level for one in found.remarks if one.rule == rule]
    lacks = [one.missing for one in found.unjudged if one.rule == rule]
    return levels, lacks, any(one.rule == rule for one in found.held)


@pytest.mark.parametrize(
    ("length", "levels"),
    [
        pytest.param("460 ± 20 mm", [], id="holds over all that it may be"),
        pytest.param("465 ± 4 mm", ["open"], id="holds for some clasps"),
        pytest.param("520 ± 10 mm", ["error"], id="fails for any clasp"),
    ],
)
def test_the_level_of_a_length_with_assumed_parts(
    length: str, levels: list[str], checker: Checker
) -> None:
    raised, lacks, held = of(result(checker, length=length), "finished-length")
    assert [*raised, *(["open"] if lacks else [])] == levels
    assert held == (not levels)


def test_an_open_check_names_the_field_and_the_span(checker: Checker) -> None:
    _, lacks, _ = of(result(checker, length="465 ± 4 mm"), "finished-length")
    assert lacks[0][0] == "`closed_length` of `clasp` (13.8..21 mm is assumed)"


def test_the_page_says_what_to_measure_of_it(installed: Host) -> None:
    text = PLAN.format(length="465 ± 4 mm", clasp="lobster 12 mm", wire="14 AWG")
    found = measurements(Checker(installed, quantities=True).check_text(text))
    changes = {one.what: one.changes for one in found}
    assert changes["closed length of `clasp`"] == ("finished-length waits for it",)
    assert changes["inside width of the eye of `cap`"][0].startswith("ring-through-eye passes at ")


def test_a_size_that_is_measured_is_no_longer_assumed(checker: Checker) -> None:
    clasp = "{kind: clasp, type: lobster, size: 12 mm, closed_length: 17 mm}"
    found = result(checker, length="465 ± 4 mm", clasp=clasp)
    _, lacks, _ = of(found, "finished-length")
    assert not any("closed_length" in field for fields in lacks for field in fields)


@pytest.mark.parametrize(
    ("wire", "level"),
    [
        pytest.param("14 AWG", "open", id="passes some eyes of caps"),
        pytest.param("10 AWG", "warning", id="passes none that is sold"),
        pytest.param("6 AWG", "error", id="passes none, however wide"),
    ],
)
def test_the_level_of_a_fit_with_assumed_eyes(wire: str, level: str, checker: Checker) -> None:
    found = result(checker, clasp="toggle 14 mm", wire=wire)
    raised, lacks, _ = of(found, "ring-through-eye")
    assert level in [*raised, *(["open"] if lacks else [])]


def test_a_toggle_may_be_given_by_the_inside_of_its_ring(installed: Host) -> None:
    """Its other sizes go with it: a ring of 11 mm inside is one of about 15 mm."""
    text = PLAN.format(length="46 cm", clasp='"toggle, 11 mm inside"', wire="20 AWG")
    ask = Checker(installed, keep=True).check_text(text).ask
    assert ask is not None
    assert ask.get("clasp.ring.inside").middle == 11
    assert 20 < ask.get("clasp.bar.length").middle < 24
    bar, cells = ask.get("clasp.bar.length").worst, tables.load("clasps").row("toggle").cells
    inside, times = cells["ring.inside"], cells["bar.length"]
    smallest, largest = 11 / inside.high * times.low, 11 / inside.low * times.high
    assert [bar.low, bar.high] == pytest.approx([smallest, largest])


def test_a_toggle_of_any_size_may_be_each_that_is_sold(installed: Host) -> None:
    text = PLAN.format(length="46 cm", clasp="toggle", wire="20 AWG")
    ask = Checker(installed, keep=True).check_text(text).ask
    assert ask is not None
    bar, cells = ask.get("clasp.bar.length").worst, tables.load("clasps").row("toggle").cells
    size, times = cells["size"], cells["bar.length"]
    assert [bar.low, bar.high] == pytest.approx([size.low * times.low, size.high * times.high])


def test_a_phrase_in_the_drawer_and_one_that_a_plan_adds_to(installed: Host) -> None:
    drawer = drawers.read_text("drawer: 1\nparts: {catch: lobster 12 mm}\n", "drawer.yaml")
    clasp = "{from: catch, closed_length: 17 mm}"
    text = PLAN.format(length="46 cm", clasp=clasp, wire="20 AWG")
    found = Checker(installed, keep=True).check_text(text, drawer=drawer)
    assert found.ask is not None, [one.says for one in found.remarks]
    assert found.ask.get("clasp.a.along").leaves[0].spelling == "17 mm"
    assert found.ask.get("clasp.a.hole").grade == ASSUMED


def test_a_clasp_by_its_type_alone_stays_open_where_it_was(checker: Checker) -> None:
    """Nothing is assumed of a part that is not given as it is sold."""
    found = result(checker, clasp="{kind: clasp, type: lobster, closed_length: 17 mm}")
    lacks = {field for one in found.unjudged for field in one.missing}
    assert "`a.eye.hole` of `clasp`" in lacks


@pytest.mark.parametrize(
    ("ring", "written"),
    [
        ("5 mm jump ring 20 AWG", "{kind: jump ring, size: 5 mm, wire: 20 AWG, closing: soldered}"),
        ("5 mm open jump ring 20 AWG", "5 mm soldered jump ring 20 AWG"),
        (
            "{kind: jump ring, size: 5 mm, wire: 20 AWG}",
            "{kind: jump ring, size: 5 mm, wire: 20 AWG, closing: soldered}",
        ),
    ],
)
def test_a_remedy_changes_what_a_phrase_says(ring: str, written: str, checker: Checker) -> None:
    """A strand that is tied to an open ring: take a soldered one."""
    text = TIED.format(ring=ring)
    found = [one for one in checker.check_text(text).remarks if one.rule == "thread-on-open-ring"]
    assert found and found[0].edits, [one.says for one in found]
    changed = tree.replaced(text, [(edit.place, edit.new) for edit in found[0].edits])
    assert changed == TIED.format(ring=written)


TIED = """\
plan: 1
title: Pearls tied to a ring
piece: necklace
beads: {{pearl: {{type: other, outside: 7 mm, length: 7 mm, hole: 0.8 mm, per_gram: 2.3, edges: smooth}}}}
parts:
  strand: {{kind: strand, stitch: strung, beads: pearl, count: 54, thread: {{type: silk, outside: 0.5 mm}}}}
  ring: {ring}
  clasp: lobster 12 mm
run: [clasp.a, ring, strand, ring, clasp.b]
"""  # noqa: E501


def test_a_size_that_another_field_contradicts(checker: Checker) -> None:
    ring = "{kind: jump ring, size: 5 mm, outside: 6 mm, wire: 20 AWG}"
    found = checker.check_text(TIED.format(ring=ring)).remarks
    says = "`ring` has size 5 mm and outside 6 mm, and its size is its outside: keep one of them"
    assert [one.says for one in found] == [says]
    same = checker.check_text(TIED.format(ring=ring.replace("6 mm", "0.5 cm")))
    assert same.readable and not same.failures
