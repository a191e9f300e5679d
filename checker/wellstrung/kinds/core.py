"""Core: a cord or a tube that fills a woven rope."""

from __future__ import annotations

from wellstrung.derived.declared import mass, size
from wellstrung.model.parts import Kind, Role
from wellstrung_schemas import fragment

CORE = Kind(
    "core",
    fragment("core"),
    Role.CORE,
    quantities={"outside": size("outside", allowance="cap size"), "mass": mass("mass")},
)
