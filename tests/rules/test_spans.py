"""Where makers differ: what they were seen to do draws no remark."""

from __future__ import annotations

import json

import pytest

from wellstrung.plugins.host import Host
from wellstrung.reading.settings import PACES
from wellstrung.report import rule_list
from wellstrung_rules.wearer import child_neck

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


def test_what_lanyards_let_go_at_begins_with_the_pull_for_a_child(installed: Host) -> None:
    choice = installed.limits["lanyard lets go"].choice
    assert choice is not None and choice.low == pytest.approx(child_neck.LETS_GO, abs=0.05)


def test_the_rules_as_json_hold_what_a_limit_spans(installed: Host) -> None:
    listed = json.loads(rule_list.as_json(installed, ["breakaway", "cap-depth"]))
    pull, deep = (rule["limits"][0]["choice"] for rule in listed)
    assert (pull["low"], pull["high"], pull["careful"]) == (66.7, 98.1, False) and deep is None


def test_a_class_takes_two_to_four_times_as_long() -> None:
    choice = PACES["student"].choice
    assert choice is not None and (choice.low, choice.high) == (2, 4)
