"""Where makers differ: what they were seen to do draws no remark."""

from __future__ import annotations

import pytest

from wellstrung.plugins.host import Host
from wellstrung.reading.settings import PACES

#: common practice of a designer, shop owner and teacher; no published source
SEEN = {
    "least ease": (6, 6),
    "most ease": (25, 25),
    "spare Japanese beads": (0.05, 0.2),
    "spare Czech beads": (0.05, 0.2),
    "spare cylinder beads": (0.05, 0.2),
    "ear weight": (5, 15),
}


@pytest.mark.parametrize("name", SEEN)
def test_a_limit_spans_what_makers_do(name: str, installed: Host) -> None:
    (low, high), choice = SEEN[name], installed.limits[name].choice
    assert choice is not None and not choice.careful
    assert choice.low <= low and high <= choice.high


def test_a_class_takes_two_to_four_times_as_long() -> None:
    choice = PACES["student"].choice
    assert choice is not None and (choice.low, choice.high) == (2, 4)
