"""Drawings to scale: shapes in millimetres, gathered on a canvas, written as SVG."""

from __future__ import annotations

from msgspec import Struct


class Figure(Struct, frozen=True):
    """One drawing for a page: its SVG, what is said above and below it, and what it says in words.

    `remarks` are the numbers of the remarks that it marks, `high` is its height on paper, mm.
    """

    title: str
    alt: str
    caption: str
    svg: str
    remarks: tuple[int, ...] = ()
    high: float = 0.0
