"""Checks written plans of beaded pieces: what will not fit, hold or add up, and what would."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from wellstrung.library import LoadedPlan, Value, check, load_plan, quantities, supplies

__all__ = ["LoadedPlan", "Value", "check", "load_plan", "quantities", "supplies"]


def __getattr__(name: str) -> object:
    """What `wellstrung.library` offers, loaded when it is first asked for."""
    if name not in __all__:
        raise AttributeError(f"module `wellstrung` has no `{name}`")
    from wellstrung import library

    return getattr(library, name)
