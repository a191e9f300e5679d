"""Strands of beads as a beader says them: how many, how heavy, what is remarked, what stays open.

An entry of `strands/said.yaml` gives the palette, the strand and its line; `strands/checked.txt`
pins what the checker makes of it (`--rewrite` writes it anew).
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml

from running import Pinned
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.rulebook.ask import Ask

HERE = Path(__file__).parent / "strands"
PLAN = """\
plan: 1
title: Strand
piece: bracelet
wearer: {{wrist: 16 cm}}
beads: {beads}
parts:
  row: {{kind: strand, {row}}}
{findings}run: [{run}]
"""
CRIMPED = "  crimp: 2 mm crimp tube\n  hook: lobster 12 mm\n", "hook.a, crimp, row, crimp, hook.b"
TIED = "  hook: lobster 12 mm\n", "hook.a, row, hook.b"
LOOP = "", "row"


def plan_of(strand: dict[str, Any]) -> str:
    """The plan of a strand: crimped on flexible wire, a loop on elastic, tied otherwise."""
    row = strand["row"]
    findings, run = CRIMPED if "wire" in row else LOOP if "elastic" in row else TIED
    plan = PLAN.format(beads=strand["beads"], row=row, findings=findings, run=run)
    return f"{plan}run_is: loop\n" if run == "row" else plan


def told(ask: Ask, what: str) -> str:
    found = ask.of(ask.plan.parts["row"], what)
    return f"{found.middle:.3g} (likely {found.likely.low:.3g}..{found.likely.high:.3g})"


def test_strands_as_a_beader_says_them(installed: Host, pinned: Pinned) -> None:
    checker = Checker(installed, keep=True)
    lines: list[str] = []
    for strand in yaml.safe_load((HERE / "said.yaml").read_text(encoding="utf-8")):
        result = checker.check_text(plan_of(strand))
        assert result.readable and not result.failures and result.ask is not None, strand
        lines += [strand["beads"], f"  {strand['row']}"]
        lines.append(f"  {told(result.ask, 'beads')} beads, {told(result.ask, 'mass')} g")
        of_beads = {f"`{name}`" for name in result.ask.plan.beads}
        lines += [
            f"  {remark.level}: {remark.rule}: {remark.says}"
            for remark in result.remarks
            if remark.level != "caution"
        ]
        lacking = sorted(
            {(one.rule, missing) for one in result.unjudged for missing in one.missing}
        )
        lines += [
            f"  open: {rule}: {missing}"
            for rule, missing in lacking
            if any(name in missing for name in of_beads) and "supplies" not in missing
        ]
        lines.append("")
    pinned(HERE / "checked.txt", "\n".join(lines))
