"""Cone, crimp, wire link, bead drop, ear wire, clasps of several types: what each measures."""

from __future__ import annotations

import math

import pytest

from running import ROOT
from wellstrung.formulas import thread
from wellstrung.formulas.rings import loop_wire
from wellstrung.judging.checker import Checker
from wellstrung.kinds.metal import ring_mass
from wellstrung.plugins.host import Host

PLAN = (ROOT / "tests" / "rules" / "strands.yaml").read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def found(installed: Host) -> dict[str, float]:
    result = Checker(installed, quantities=True).check_text(PLAN)
    assert not result.failures and result.quantities
    return {name: value.middle for name, value in result.quantities.items()}


def test_strands_side_by_side_are_as_long_as_the_shortest(found: dict[str, float]) -> None:
    # lobster 18 - 2 walls, rings 2 x 3.4, links 2 x (16 - 8 + 2.5 + 0.6 + 3 x 0.6), strand 420
    assert found["piece.length"] == pytest.approx(16 + 6.8 + 2 * 12.9 + 420)


def test_every_strand_has_its_weight(found: dict[str, float]) -> None:
    both = found["inner.mass"] + found["outer.mass"]
    others = 2 * 1 + 2 * found["link.mass"] + 2 * found["ring.mass"] + 1.5 + 3 * found["drop.mass"]
    assert found["piece.mass"] == pytest.approx(both + others)


def test_a_ring_of_brass_weighs_its_volume(found: dict[str, float]) -> None:
    assert found["ring.mass"] == pytest.approx(ring_mass(3.4, 0.8, 8.53))


def test_a_wire_link_by_walking_along_its_wire(found: dict[str, float]) -> None:
    """Two loops once round, three turns round each neck, the stack, and two grips of 10 mm."""
    steps = 1000
    loop = sum(math.pi * 3.1 / steps for _ in range(steps))
    turn = sum(math.dist(_on(1.2, n / steps), _on(1.2, (n + 1) / steps)) for n in range(steps))
    assert found["link.needed"] == pytest.approx(8 + 2 * (loop + 3 * turn + 10), rel=1e-4)
    assert found["link.mass"] == pytest.approx(math.pi * 0.3**2 * 75 * 8.53e-3)


def _on(diameter: float, turn: float) -> tuple[float, float]:
    angle = 2 * math.pi * turn
    return diameter / 2 * math.cos(angle), diameter / 2 * math.sin(angle)


def test_a_head_pin_wants_one_simple_loop(found: dict[str, float]) -> None:
    assert found["pin.stack"] == 12
    assert found["pin.needed"] == pytest.approx(12 + math.pi * 2.6 + 10)
    assert found["pin.along"] == pytest.approx(12 + 2 * 2.6)


def test_a_drop_counts_its_turn_bead(found: dict[str, float]) -> None:
    assert found["drop.beads"] == 4
    assert found["drop.length"] == pytest.approx(2 + 2 + 6 + 3)  # the turn bead hangs crosswise
    assert found["drop.width"] == 6
    assert found["drop.mass"] == pytest.approx(3 / 35 + 1 / 3.5)
    assert found["drop.thread"] == pytest.approx(thread.fringe(13, (2 + 2 + 6) / 3))


def test_the_small_ones(found: dict[str, float]) -> None:
    assert found["hook.along"] == pytest.approx(17.2)
    assert found["crimp.along"] == pytest.approx(4)
    assert found["button.a.along"] == 14 and found["button.b.along"] == 0
    assert found["cone.along"] == 0


def test_more_wraps_and_wider_loops_take_more_wire() -> None:
    assert loop_wire(2.5, 0.6, 3) > loop_wire(2.5, 0.6, 2)
    assert loop_wire(2.6, 0.6, 3) > loop_wire(2.5, 0.6, 3)
    assert loop_wire(2.5, 0.7, 3) > loop_wire(2.5, 0.6, 3)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            "over: cone",
            "over: ring",
            "`ring` is a jump ring, and `over` takes an end cap or a cone",
        ),
        ("turn: kelp", "turn: kepl", "there is no bead called `kepl`: write `kelp`"),
        (
            "strands: [outer, inner]",
            "strands: [outer, cone]",
            "`cone` is a cone, and `strands` takes a woven rope, a braid or a strand",
        ),
        (
            "run: [lobster.a",
            "run: [lobster",
            "`lobster` is not a place in the run, for a clasp stands there by its halves: write"
            " `lobster.a` or `lobster.b`",
        ),
    ],
)
def test_names_that_do_not_fit(installed: Host, old: str, new: str, says: str) -> None:
    assert PLAN.count(old) == 1
    result = Checker(installed).check_text(PLAN.replace(old, new))
    assert [remark.says for remark in result.remarks] == [says]
