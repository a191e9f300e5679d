"""Needle: what a part is worked with."""

from __future__ import annotations

from wellstrung.model.parts import Kind
from wellstrung_schemas import fragment

NEEDLE = Kind("needle", fragment("needle"))
