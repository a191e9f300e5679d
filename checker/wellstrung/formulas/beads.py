"""What a glass bead of a size weighs: a check on the sizes and counts that a plan states."""

from __future__ import annotations

from wellstrung.formulas.arithmetic import pi, require

#: Density of bead glass, mg/mm3: 2.49 to 2.53 printed for soda-lime glass (copies of data sheets).
GLASS = 2.5


def by_size(outside: float, hole: float, length: float, filled: float) -> float:
    """How many glass beads of these sizes (mm) weigh a gram.

    `filled` is what rounded edges leave of the cylinder: 0.85 for round beads, fitted to printed
    counts (trade table `bead_packing`), 1 for cylinder beads. Raises ValueError where the hole
    leaves no glass.

    >>> round(by_size(outside=2.1, hole=0.8, length=1.45, filled=0.85))
    110
    """
    require(hole < outside, "a hole as wide as the bead leaves no glass")
    volume = pi / 4 * (outside**2 - hole**2) * length
    return 1000 / (filled * volume * GLASS)
