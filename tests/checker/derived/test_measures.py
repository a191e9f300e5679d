"""The units of quantities by their names, before any plan is read, are those that plans give."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress

import pytest

from generated.plans import seeded
from running import ROOT, SAMPLES
from wellstrung.derived.measures import has
from wellstrung.judging.checker import Checker
from wellstrung.model.item import Missing
from wellstrung.plugins.host import Host


def texts() -> Iterator[str]:
    for file in sorted([*SAMPLES.glob("*.yaml"), *(ROOT / "tests" / "rules").glob("*.yaml")]):
        yield file.read_text(encoding="utf-8")
    yield from seeded(24)


def test_every_quantity_has_its_unit(installed: Host) -> None:
    checker, measures, seen = Checker(installed, quantities=True, trials=0), installed.measures, 0
    for text in texts():
        result = checker.check_text(text)
        if result.ask is None:
            continue
        parts = result.ask.plan.parts
        for name, found in result.quantities.items():
            owner, _, what = name.partition(".")
            known = measures["piece" if owner == "piece" else parts[owner].kind.name]
            assert what in known, name
            assert known[what] in (None, found.unit), name
            assert owner == "piece" or has(parts[owner], what), name
            seen += 1
        for bead in result.ask.plan.beads:
            for what, unit in measures["bead"].items():
                with suppress(Missing):
                    assert result.ask.get(f"beads.{bead}.{what}").unit == unit, what
    assert seen > 500


@pytest.mark.parametrize("what", ["outside", "eye.hole", "mass"])
def test_a_part_has_what_its_kind_has(what: str, checker: Checker, collar: str) -> None:
    ask = Checker(checker.installed, keep=True).check_text(collar).ask
    assert ask is not None
    assert has(ask.plan.parts["cap"], what)
    assert not has(ask.plan.parts["cap"], "links")
