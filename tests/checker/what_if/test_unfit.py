"""What a list says beside a thing that does not work as written."""

from __future__ import annotations

import pytest

from pages import checked
from running import SAMPLES
from wellstrung.what_if.unfit import unfit


@pytest.mark.parametrize(
    ("plan", "thing", "says"),
    [
        # what is needed is a wider hole elsewhere, or a finer wire here
        (
            "merryn_tideline_necklace",
            "heavy",
            "the wire as written does not work (take 14 AWG wire for `heavy`)",
        ),
        ("kitto_cuff", "closure", "the loop count as written does not work (string 34 beads"),
        (
            "wenna_three_strand",
            "cone",
            "the bore as written does not work (take 10.51 mm or wider, such as 11 mm)",
        ),
        ("massen_pearl_strand", "tip", "the hole as written may not work (take a hole of 0.8 mm"),
        ("daveth_loom_band", "slide", "the tube length as written does not work (take a tube of"),
    ],
)
def test_what_to_take_is_of_the_size_that_does_not_work(plan: str, thing: str, says: str) -> None:
    result = checked(SAMPLES / "class" / f"{plan}.yaml")
    assert any(one.says.startswith(says) for one in unfit(result) if one.thing == thing)


def test_what_is_wrong_with_a_step_is_wrong_with_no_thing() -> None:
    result = checked(SAMPLES / "class" / "massen_pearl_strand.yaml")
    assert {remark.rule for remark in result.numbered if remark.counts} == {
        "passes-over-end",
        "tip-cover",
    }
    assert [one.thing for one in unfit(result)] == ["tip"]
