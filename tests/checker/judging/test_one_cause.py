"""A remark yields to a deeper one about the same parts, and to none about others on its rope."""

from __future__ import annotations

import pytest

from wellstrung.common.places import Place
from wellstrung.judging.one_cause import one_cause_each
from wellstrung.judging.result import Remark
from wellstrung.plugins.host import Host


@pytest.mark.parametrize(
    ("deep", "gap", "stays"),
    [
        (("cap", "rope"), ("cap", "rope"), False),
        (("cap", "rope"), ("cap",), False),
        (("cap",), ("cap", "rope"), False),
        (("cap", "rope"), ("lid", "rope"), True),
        (("cap", "rope"), (), True),
        ((), (), False),
    ],
)
def test_a_remark_yields_where_all_parts_of_one_are_parts_of_the_other(
    installed: Host, deep: tuple[str, ...], gap: tuple[str, ...], stays: bool
) -> None:
    place = Place("plan.yaml", 1, 1, 1, 2)
    remarks = [
        (Remark("glue-gap", "warning", gap, "a wide gap", place), ()),
        (Remark("cap-bore", "error", deep, "too tight", place), ()),
    ]
    found = [remark for remark, _ in one_cause_each(remarks, installed.rules)]
    assert [remark.rule for remark in found] == ["glue-gap"] * stays + ["cap-bore"]
    assert found[-1].affects == (() if stays else ("glue-gap",))
