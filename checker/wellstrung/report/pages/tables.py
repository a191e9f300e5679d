"""A table for a page, whatever it lists."""

from __future__ import annotations

from msgspec import Struct


class Table(Struct, frozen=True):
    """A table for a page: what it is, its columns, its rows, and what is to be said below it.

    `decides` is the column that a reader looks for, counted from 0; it is set in bold.
    """

    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()
    decides: int | None = None
