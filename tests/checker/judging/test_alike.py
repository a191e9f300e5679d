"""Alike remarks as one: what they advise together."""

from __future__ import annotations

from msgspec.structs import replace

from pages import keeper
from wellstrung.judging.alike import together
from wellstrung.judging.checker import Checker
from wellstrung.rulebook import Remedy


def test_alike_remarks_advise_together_what_each_of_them_advises(collar: str) -> None:
    result = keeper().check_text(collar.replace("bore: 10 mm", "bore: 8 mm"))
    assert result.ask is not None
    base = next(remark for remark in result.remarks if remark.rule == "cap-bore")
    takes, asks = Remedy("take another"), Remedy("ask for one")
    offered = [
        (replace(base, says=f"`{name}` is tight", parts=(name,)), (takes, asks)[:count])
        for name, count in (("a", 2), ("b", 2), ("c", 1), ("d", 2))
    ]
    [one] = together(offered, result.ask.plan)
    assert one.remark.says == "`a` is tight; the same goes for `b`, `c` and `d`"
    assert [remedy.text for remedy in one.remedies] == ["take another; do so with each of them"]


def test_joins_that_lack_a_step_are_one_remark(checker: Checker) -> None:
    """Their neighbours and the steps that they lack differ in names too; the first has a clasp."""
    strands = [
        f"  row {n}: {{kind: strand, stitch: strung, beads: pearl, count: 9,"
        " thread: flexible wire 0.38 mm}\n"
        f"  tube {n}: 2 mm crimp tube\n  ring {n}: 5 mm jump ring 18 AWG, open\n"
        for n in range(7)
    ]
    run = ", ".join(f"tube {n}, row {n}, tube {n}, ring {n}" for n in range(7))
    text = (
        "plan: 1\ntitle: Seven strands\npiece: necklace\nbeads: {pearl: 6 mm glass pearl}\n"
        f"parts:\n  clasp: lobster 12 mm\n{''.join(strands)}"
        f"run: [clasp.a, {run}, clasp.b]\nwork:\n  - string row 0\n"
    )
    found = [one for one in checker.check_text(text).remarks if one.rule == "join-made"]
    assert [one.says for one in found] == [
        "`tube 0` and `clasp.a` meet in the run, and no step presses the crimp",
        "ring `ring 0` stands between `tube 0` and `tube 1`, and no step closes it; the same goes"
        " for `ring 1`, `ring 2`, `ring 3`, `ring 4` and `ring 5`",
        "`tube 1` and `row 1` meet in the run, and no step presses the crimp; the same goes for"
        " `tube 2`, `tube 3`, `tube 4`, `tube 5` and `tube 6`",
        "ring `ring 6` stands between `tube 6` and `clasp.b`, and no step closes it",
    ]
    lines = [f"\n  - {{do: close ring, part: ring {n}}}" for n in range(6)]
    assert [edit.new for edit in found[1].edits] == lines
