"""One line of a supply list: what has to be bought of one thing for one plan or several."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec.structs import replace

from wellstrung.derived.purchase import Needed, Purchase

#: Groups of a supply list, in the order it is read in a shop.
GROUPS = (
    "beads", "thread", "cord", "core", "chain", "wire", "rings", "findings", "adhesive",
)  # fmt: skip


class SupplyLine(Purchase, frozen=True, kw_only=True):
    """A purchase with what a shop needs to know of the thing, and the plans it is for.

    `unfit` says what of it does not work as the plan has it, so that nobody buys it, `doubt` what
    may not work.
    """

    describes: str = ""
    plans: tuple[str, ...] = ()
    files: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    unfit: tuple[str, ...] = ()
    doubt: tuple[str, ...] = ()

    @property
    def amiss(self) -> tuple[str, ...]:
        """What of it does not work, then what may not."""
        return (*self.unfit, *self.doubt)

    @property
    def key(self) -> tuple[str, str, str]:
        """Two lines with one key are for the same thing."""
        return self.group, self.name, self.describes


def added(lines: Iterable[SupplyLine]) -> list[SupplyLine]:
    """Lines for the same thing as one, added up before anything is rounded."""
    found: dict[tuple[str, str, str], SupplyLine] = {}
    for line in lines:
        found[line.key] = _sum(found[line.key], line) if line.key in found else line
    return list(found.values())


def _sum(one: SupplyLine, other: SupplyLine) -> SupplyLine:
    need = Needed(
        one.need.middle + other.need.middle,
        one.need.low + other.need.low,
        one.need.high + other.need.high,
    )
    return replace(
        one,
        need=need,
        spare=one.spare + other.spare,
        up=one.up + other.up,
        have=one.have + other.have,
        down=one.down + other.down,
        pack=one.pack or other.pack,
        price=one.price or other.price,
        **{
            field: tuple(dict.fromkeys((*getattr(one, field), *getattr(other, field))))
            for field in ("plans", "files", "missing", "notes")
        },
    )
