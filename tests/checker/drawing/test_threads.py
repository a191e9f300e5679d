"""The thread that is seen between the beads: from bead to bead, as each stitch leads it."""

from __future__ import annotations

import pytest

from wellstrung.drawing.canvas import Spot
from wellstrung.drawing.looks.faces import Cloth, rows_of
from wellstrung.drawing.looks.threads import pieces
from wellstrung.model.looks import Face, Pattern, Thread, Weave

Ends = tuple[float, float, float, float]


def seen(pattern: Pattern, thread: Thread, columns: int, rows: int, long: float) -> list[Ends]:
    """The pieces of thread of a face 8 mm wide, of beads 1.5 mm long and 2 mm outside."""
    cloth = Cloth(
        Weave(pattern, Face, thread=thread), Face(columns), rows, long, width=8.0, bead=(1.5, 2.0)
    )
    return sorted(_ends(*one) for one in pieces(cloth, list(rows_of(cloth))))


def _ends(one: Spot, other: Spot) -> Ends:
    """Both ends of a piece, along and across, the nearer end first."""
    (x1, y1), (x2, y2) = sorted([one, other])
    return round(x1, 3), round(y1, 3), round(x2, 3), round(y2, 3)


def test_warps_run_from_end_to_end_between_the_columns_and_beside_them() -> None:
    warps = seen(Pattern.ROWS, Thread.WARPS, columns=4, rows=3, long=6.0)
    assert warps == [(0, across, 6, across) for across in (-3.8, -1.9, 0, 1.9, 3.8)]


def test_bridges_lie_on_the_edge_between_two_rows() -> None:
    bridges = seen(Pattern.BRICKS, Thread.BRIDGES, columns=4, rows=3, long=6.0)
    assert [(x1, x2) for x1, _, x2, _ in bridges] == [(2, 2), (4, 4)]
    assert all(y2 - y1 == pytest.approx(3 * 8 / 4.5, abs=0.01) for _, y1, _, y2 in bridges)


def test_links_lead_from_row_to_row_at_both_ends_of_every_bead() -> None:
    links = seen(Pattern.ROWS, Thread.LINKS, columns=4, rows=3, long=6.0)
    ends = [middle + side for middle in (-3, -1, 1, 3) for side in (-0.75, 0.75)]
    assert links == [(at, end, at + 2, end) for at in (1, 3) for end in ends]


def test_rungs_lead_from_row_to_row_along_both_edges() -> None:
    rungs = seen(Pattern.ROWS, Thread.RUNGS, columns=4, rows=3, long=6.0)
    assert rungs == [(at, edge, at + 2, edge) for at in (1, 3) for edge in (-4, 4)]


def test_thread_leads_round_all_four_corners_of_a_square() -> None:
    """The beads across lie at 1 and 7 along, those along at 3 to either side."""
    corners = seen(Pattern.SQUARES, Thread.ROUND, columns=1, rows=1, long=8.0)
    assert corners == [
        (1, -0.75, 3.25, -3), (1, 0.75, 3.25, 3), (4.75, -3, 7, -0.75), (4.75, 3, 7, 0.75),
    ]  # fmt: skip
    assert len(seen(Pattern.SQUARES, Thread.ROUND, columns=3, rows=2, long=8.0)) == 4 * 3 * 2
