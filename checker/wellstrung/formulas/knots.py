"""Knots in a line: how thick knotted lines are together, and a knot of turns round two cords.

Sizes in mm. What one knot of a sort is wide, long and takes up is so many lines: trade table
`knots`. The tightest overhand that is spliced to a ring is 16.4 lines long (ropelength of the
trefoil: 32.74 to 32.86 radii, two publications, copies seen); one in an open line takes up less.
"""

from __future__ import annotations

from wellstrung.formulas.arithmetic import pi, sqrt

#: one turn round two cords side by side, at the middle of the cord that turns: so many cords
_TURN = 2 * pi + 2


def as_one(line: float, lines: float) -> float:
    """Thickness of lines that are knotted together, mm: of one cord with as much in it.

    Geometry: their areas added. Doubled silk knots as a cord 1.4 times as thick.

    >>> round(as_one(0.5, lines=2), 2)
    0.71
    """
    return line * sqrt(lines)


def of_turns(turns: float, line: float, tight: float) -> float:
    """How long a knot of turns is, mm: its turns side by side, and the line through them.

    Geometry of this project; no published figure.

    >>> of_turns(turns=4, line=1.0, tight=1.0)
    5.0
    """
    return (turns + 1) * line * tight


def taken_by_turns(turns: float, line: float) -> float:
    """The cord in a knot round two cords, mm: so many turns round both, and back through them.

    Geometry of this project. Two knots take about 25 mm of the cord of one page (`Reverse Sliding
    Knot for Bracelets`, copy seen: overhand knots of one turn each), 21 mm of 1 mm cord here.

    >>> round(2 * taken_by_turns(turns=1, line=1.0), 1)
    20.6
    """
    return turns * _TURN * line + (turns + 1) * line
