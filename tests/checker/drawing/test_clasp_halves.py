"""Each half of a clasp is drawn at its own end, and the piece stays as long as it is."""

from __future__ import annotations

import pytest

from pages import box_of, keeper, looks, parsed
from wellstrung.drawing.piece import drawings

PLAN = """plan: 1
title: Halves
piece: bracelet
beads:
  pearl: {{type: round, size: 6 mm}}
parts:
  clasp: {clasp}
  ring: {{kind: jump ring, outside: 5 mm, wire: 0.8 mm, closing: open}}
  strand: {{kind: strand, stitch: knotted, beads: pearl, count: 26, knot_adds: 0.6 mm}}
run: {run}
"""
EYES = "a: {eye: {hole: 2 mm, wire: 1 mm}}, b: {eye: {hole: 3 mm, wire: 1 mm}}"
CLASPS = {
    "toggle": "{kind: clasp, type: toggle, ring: {inside: 11 mm, wire: 2 mm, eye: {hole: 2 mm, wire: "  # noqa: E501
    "1 mm}}, bar: {length: 20 mm, thickness: 2 mm, stem: 3 mm, eye: {hole: 2 mm, wire: 1 mm}}}",
    "closed toggle": "{kind: clasp, type: toggle, closed_length: 18 mm}",
    **{
        name: f"{{kind: clasp, type: {name}, closed_length: 17 mm, {EYES}}}"
        for name in ("hook", "lobster", "spring ring", "magnetic", "box")
    },
    "button": "{kind: clasp, type: button and loop, closed_length: 18 mm, button: {outside: 14 mm}, "  # noqa: E501
    "loop: {beads: pearl, count: 9}}",
    "slide": "{kind: clasp, type: slide, closed_length: 9 mm, tube: {length: 16 mm, slot: 3 mm}}",
    "ribbon end": "{kind: clasp, type: ribbon end, closed_length: 20 mm, jaw: {width: 16 mm, depth: "  # noqa: E501
    "4 mm, gap: 3 mm}}",
}


@pytest.mark.parametrize("run", ["[clasp.a, ring, strand, ring, clasp.b]",
                                 "[clasp.b, ring, strand, ring, clasp.a]"])  # fmt: skip
@pytest.mark.parametrize("name", CLASPS)
def test_each_half_lies_at_its_own_end(name: str, run: str) -> None:
    result = keeper().check_text(PLAN.format(clasp=CLASPS[name], run=run))
    for figure in drawings(result):
        tree = parsed(figure.svg)
        halves = {
            one.get("data-half"): box_of(one)
            for one in looks(tree, "thing")
            if one.get("data-part") == "clasp"
        }
        first, last = ("a", "b") if run.startswith("[clasp.a") else ("b", "a")
        [strand] = [box_of(o) for o in looks(tree, "thing") if o.get("data-part") == "strand"]
        assert halves[first].left < halves[first].right < strand.left + 3
        assert halves[last].right > halves[last].left > strand.right - 3
        assert halves[first].right - halves[first].left > 1
        assert halves[last].right - halves[last].left > 1


@pytest.mark.parametrize("name", CLASPS)
def test_the_two_halves_add_what_the_clasp_adds(name: str) -> None:
    run = "[clasp.a, strand, clasp.b]"
    result = keeper().check_text(PLAN.format(clasp=CLASPS[name], run=run))
    [ruler] = looks(parsed(drawings(result)[0].svg), "ruler")
    length = result.quantities["strand.length"].middle + sum(
        result.quantities[f"clasp.{half}.along"].middle
        for half in "ab"
        if f"clasp.{half}.along" in result.quantities
    )
    assert float(ruler.get("width", "")) == pytest.approx(length, abs=0.01)
