"""The lots of a kit's beads in words: which kits have which, and which are mixed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wellstrung.common.wording import together
from wellstrung.lists.kit import Kit
from wellstrung.lists.lots import BOUGHT, Share
from wellstrung.lists.stock import Stocked
from wellstrung.report.terminal import counted

_MIXED = " (mixed: no one lot is enough, and lots may differ in colour and size)"


def of_bags(kit: Kit, stock: Sequence[Stocked]) -> dict[str, str]:
    """Where the beads of each bag come from, by its letter; empty where no lot is named."""
    held = {one.letter: one for one in stock}
    return {bag.letter: _in_words(held.get(bag.letter)) for bag in kit.bags}


def of_labels(stock: Sequence[Stocked], letter: str, makers: int) -> Iterator[str]:
    """The lot on the label of each maker's bag."""
    held = next((one for one in stock if one.letter == letter), None)
    shares = held.shares if held is not None else ()
    labels = [_of(one, held) for one in shares if held is not None for _ in range(one.kits)]
    yield from labels + [""] * (makers - len(labels))


def on_hand(one: Stocked) -> str:
    """The lots of what is on hand; empty where no line names one."""
    if not one.lots:
        return ""
    if len(one.lots) > 1 and all(one.lots):
        return f" (lots {together(one.lots)})"
    return f" ({together(map(_named, one.lots))})"


def left(one: Stocked) -> str:
    """What is left of each lot, where there are several."""
    some = {_named(lot): amount for lot, amount in one.lots.items() if amount}
    if len(one.lots) < 2 or not some:
        return ""
    if len(some) == 1:
        return f" of {next(iter(some))}"
    return f" ({', '.join(f'{one.shown(amount)} of {lot}' for lot, amount in some.items())})"


def _named(lot: str) -> str:
    return lot if lot == BOUGHT else f"lot {lot}" if lot else "no named lot"


def _in_words(held: Stocked | None) -> str:
    if held is None or not held.shares:
        return ""
    several = len(held.shares) > 1
    words = [
        _of(share, held) + (f" for {counted(share.kits, 'kit')}" if several else "")
        for share in held.shares
    ]
    mixed = any(share.mixed for share in held.shares)
    return ", ".join(words) + (_MIXED if mixed else "")


def _of(share: Share, held: Stocked) -> str:
    """The lots of a kit: of several how much of each."""
    if not share.mixed:
        return _named(next(iter(share.of)))
    return together(f"{held.shown(some)} of {_named(lot)}" for lot, some in share.of.items())
