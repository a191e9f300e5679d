"""The maker's own settings, with the defaults that hold where the maker says nothing.

Every default gives its reason; "common practice" means that no printed source was found.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple


class Setting(NamedTuple):
    """One setting: a length in mm, or a plain share or factor where `unit` is empty."""

    value: float
    unit: str
    reason: str


#: How far a bought or made size may be off its nominal, either way.
ALLOWANCES: Mapping[str, Setting] = {
    "ring size": Setting(0.2, "mm", "spring-back and saw cut of jump rings, common practice"),
    "wire": Setting(0.02, "mm", "drawn wire against its gauge, common practice"),
    "cap size": Setting(0.1, "mm", "bore of cast or stamped caps, common practice"),
    "eye size": Setting(0.1, "mm", "hole of cast or stamped eyes, common practice"),
    "part length": Setting(0.3, "mm", "length of a bought metal part, common practice"),
    "link size": Setting(0.05, "mm", "links of machine-made chain, common practice"),
    "woven length": Setting(2.0, "mm", "stopping a woven rope at a length, common practice"),
    "toggle seat": Setting(1.0, "mm", "how a toggle settles when closed, common practice"),
}

#: Limits that a maker can hold an opinion on.
LIMITS: Mapping[str, Setting] = {
    "cap tight": Setting(
        0.05, "", "a hollow rope gives by about a twentieth of its outside, common practice"
    ),
    "cap loose": Setting(
        1.5, "mm", "end-cap check where the cap covers beads, -0.5..+1.5 mm: derived, no print"
    ),
    "ring swing": Setting(0.2, "mm", "room left for a ring to swing, common practice"),
    "cap depth share": Setting(
        0.4, "", "a woven end goes into a cap by about 0.4 of its bore, common practice, no source"
    ),
    "cap depth": Setting(4.0, "mm", "deep enough for a woven end of any bore, common practice"),
    "ring opened": Setting(
        0.6, "", "share of an open ring's inside that it still closes true around, common practice"
    ),
    "ring wire": Setting(
        0.7, "mm", "21 AWG (0.72 mm) stays shut, 22 AWG is pulled open: trade table `jump_rings`"
    ),
    "ring slack": Setting(
        8.0, "", "inside over wire is 3 to 7.5 in the trade table `jump_rings`, a little more held"
    ),
    "ring stiff": Setting(
        1.5, "", "inside over wire; 4 mm of 18 AWG, the stiffest common ring, has 1.9: derived"
    ),
}


@dataclass(frozen=True)
class Bench:
    """The settings in force: the maker's own over the defaults."""

    file: str | None = None
    allowances: Mapping[str, Setting] = field(default_factory=lambda: ALLOWANCES)
    limits: Mapping[str, Setting] = field(default_factory=lambda: LIMITS)
