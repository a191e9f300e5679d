"""Drawings to scale: shapes in millimetres, gathered on a canvas, written as SVG."""

from __future__ import annotations

from msgspec import Struct


class Figure(Struct, frozen=True):
    """One drawing for a page: its SVG, what is said above and below it, and what it says in words.

    `remarks` are the numbers of the remarks that it marks, `high` is its height on paper, mm, and
    `scale` how many times larger than life it is.
    `narrow` is the same for the screen of a phone, where lettering that shrinks with the drawing
    could not be read. `steps` is what is done in turn, as a list below what is said.
    """

    title: str
    alt: str
    caption: str
    svg: str
    remarks: tuple[int, ...] = ()
    high: float = 0.0
    narrow: str = ""
    steps: tuple[str, ...] = ()
    scale: float = 0.0
