"""What a glass bead of a size weighs: a check on the sizes and counts that a plan states."""

from __future__ import annotations

from wellstrung.formulas.arithmetic import most, pi, require

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


def by_volume(
    outside: float, reach: float, length: float, hole: float, filled: float, density: float
) -> float:
    """How many beads of a shape weigh a gram.

    Geometry: `filled` is the share of the block outside x outside x reach that the bead fills with
    its hole closed; `reach` is its length along the hole, or how far it hangs where the hole goes
    through its top. At least a fifth of it is solid. Sizes in mm, density in g/cm3.

    >>> round(by_volume(outside=6, reach=6, length=6, hole=1.0, filled=pi / 6, density=2.52), 1)
    3.7
    """
    block = filled * outside**2 * reach
    return 1000 / (density * most(block - pi / 4 * hole**2 * length, block / 5))
