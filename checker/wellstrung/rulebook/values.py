"""What a rule reckons with: values with their spread, and the figures of the trade tables."""

from __future__ import annotations

from wellstrung.derived.piece import turns as turns
from wellstrung.quantity.arithmetic import derived as derived
from wellstrung.quantity.arithmetic import exact as exact
from wellstrung.quantity.arithmetic import leaf as leaf
from wellstrung.quantity.arithmetic import product as product
from wellstrung.quantity.arithmetic import times as times
from wellstrung.quantity.arithmetic import total as total
from wellstrung.quantity.causes import Cause as Cause
from wellstrung.quantity.causes import Spread as Spread
from wellstrung.quantity.causes import Window as Window
from wellstrung.quantity.value import Quantity as Quantity
from wellstrung.quantity.verdict import SLACK as SLACK
from wellstrung.quantity.working import working as working
from wellstrung.tables import Cell as Cell
from wellstrung.tables import load
from wellstrung.tables import metal as metal

#: A trade table by its name.
table = load


def printed(trade_table: str, row: str, column: str) -> Quantity:
    """The middle of a cell of a trade table, without its spread, with the table as its source.

    >>> printed("clasps", "toggle", "bar_short").unit
    'mm'
    """
    cell, source = table(trade_table).row(row).cell(column), f"trade table `{trade_table}`, {row}"
    return exact(column.replace("_", " "), cell.value, cell.unit, source)
