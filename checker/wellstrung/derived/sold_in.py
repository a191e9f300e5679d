"""What a thing is sold in, by the lines of supplies: beads, thread, glue, and what is counted."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from wellstrung.derived import packs
from wellstrung.derived.purchase import Pack
from wellstrung.model.item import Bead, Item
from wellstrung.model.parts import Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import times
from wellstrung.quantity.value import Quantity


def of_beads(
    bead: Bead, lines: Sequence[Item], per_gram: Quantity | None, ask: Quantities
) -> Pack | None:
    """What beads are sold in, as the last line of supplies: by weight, on strands, or counted."""
    last = lines[-1] if lines else None
    if last is None or not packs.weighed_or_strung(last) or per_gram is None:
        return counted(lines) if last is not None and last.has("pack_of") else None
    alike = [
        (packs.in_one_pack(bead, line, ask), line)
        for line in lines
        if packs.weighed_or_strung(line) and line.has("pack") == last.has("pack")
    ]
    one, line = max(reversed(alike), key=lambda found: found[0].middle)
    less, word = one.middle - one.likely.low, _sold_as(line, "pack")
    if not line.has("pack"):
        # half a hank is bought as what it is, and not as a whole one
        strands = [f"{line.count('strands')} strands"] if line.has("strands") else []
        long = [line.text("strand")] if line.has("strand") else []
        return Pack(one.middle, word, " of ".join([*strands, *long]), less)
    grams = line.mass("pack")
    return Pack(one.middle, word, grams.spelling, less, grams.middle)


def of_thread(spool: Part, lines: Sequence[Item]) -> Pack | None:
    """The longest spool of the lines of supplies, or the thread's own length."""
    measured = [line for line in lines if line.has("length")]
    if not measured and not spool.has("length"):
        return None
    item = _fullest(measured, lambda one: one.length("length").middle) if measured else spool
    length = item.length("length")
    less = length.middle - length.likely.low
    return Pack(length.middle, _sold_as(item, "spool"), length.spelling, less)


def of_glue(lines: Sequence[Item]) -> Pack:
    """The fullest bottle of the supplies; one is enough where no line says how much it holds."""
    measured = [line for line in lines if line.has("volume")]
    if not measured:
        return Pack(None, _sold_as(lines[-1], "pack") if lines else "pack")
    line = _fullest(measured, lambda one: one.volume("volume").middle)
    volume = line.volume("volume")
    one = times(volume, line.count("count", default=1))
    return Pack(one.middle, _sold_as(line, "pack"), volume.spelling, one.middle - one.likely.low)


def counted(lines: Sequence[Item]) -> Pack | None:
    """The fullest pack of the lines of supplies that count what is in one."""
    packed = [line for line in lines if line.has("pack_of")]
    if not packed:
        return None
    line = _fullest(packed, lambda one: one.count("pack_of"))
    return Pack(line.count("pack_of"), _sold_as(line, "pack"), f"{line.count('pack_of')}")


def _fullest(lines: Sequence[Item], holds: Callable[[Item], float]) -> Item:
    """The line with the fullest pack, the last of equal ones; a smaller one may be opened."""
    return max(reversed(lines), key=holds)


def _sold_as(line: Item, usual: str) -> str:
    return line.text("sold_as") if line.has("sold_as") else usual
