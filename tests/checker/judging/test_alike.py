"""Alike remarks as one: what they advise together."""

from __future__ import annotations

from msgspec.structs import replace

from pages import keeper
from wellstrung.judging.alike import together
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
