"""Core: a cord or a tube that fills a woven rope."""

from __future__ import annotations

from wellstrung.kinds.metal import stated_mass
from wellstrung.kinds.plain import size
from wellstrung.model.parts import Kind
from wellstrung_schemas import fragment

CORE = Kind(
    "core",
    fragment("core"),
    quantities={"outside": size("outside", "cap size"), "mass": stated_mass},
)
