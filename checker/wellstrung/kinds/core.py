"""Core: a cord or a tube that fills a woven rope."""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size
from wellstrung.model.parts import Kind, Role
from wellstrung_schemas import fragment

CORE = Kind(
    "core",
    fragment("core"),
    Role.CORE,
    quantities={"outside": size("outside", "cap size"), "mass": stated_mass},
)
