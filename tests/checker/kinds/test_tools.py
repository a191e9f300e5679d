"""Adhesives: stated times, and what a room makes of them."""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.quantity.working import working

PLAN = """plan: 1
title: Two caps
piece: bracelet
parts:
  glue: {kind: adhesive, type: %s}
"""


@pytest.mark.parametrize(
    ("glue", "usable", "full_cure"),
    [
        ("two-part epoxy", 5, 1440),
        ("two-part epoxy, room: 25 °C", 5, 1440),
        ("two-part epoxy, room: 15 °C", 10, 2880),
        ("two-part epoxy, room: 35 °C", 2.5, 720),
        ("two-part epoxy, room: 59 °F, full_cure: 8 h, usable: 30 min", 60, 960),
        ("cyanoacrylate, room: 15 °C", None, 1440),
    ],
)
def test_a_room_slows_or_hurries_what_is_stated(
    glue: str, usable: float | None, full_cure: float, installed: Host
) -> None:
    found = Checker(installed, quantities=True).check_text(PLAN % glue).quantities
    assert found["glue.full_cure"].middle == pytest.approx(full_cure)
    if usable is None:
        assert "glue.usable" not in found or "room" not in found["glue.usable"].name
    else:
        assert found["glue.usable"].middle == pytest.approx(usable)


def test_the_working_names_the_room_and_the_doubling(installed: Host) -> None:
    text = PLAN % "two-part epoxy, room: 15 °C"
    cure = Checker(installed, quantities=True).check_text(text).quantities["glue.full_cure"]
    told = "\n".join(working(cure))
    assert "glue.full cure * 2^((stated at - glue.room) / degrees to double)" in told
    assert "written `15 °C`" in told and "several pages" in told


def test_stirring_takes_as_long_in_any_room(installed: Host) -> None:
    checker = Checker(installed, quantities=True)
    for room in ("", ", room: 12 °C"):
        found = checker.check_text(PLAN % f"two-part epoxy{room}").quantities
        assert found["glue.mixing"].middle == 1.5
