"""Enough chain on hand for every piece, cut in phase, with what cutting loses."""

from __future__ import annotations

import math

from wellstrung import chain as links
from wellstrung import reading
from wellstrung.kinds.chain import (
    cut_list,
    is_soldered,
    link_inside,
    needed,
    pattern,
)
from wellstrung.rulebook import (
    Answer,
    Ask,
    ChainCut,
    Edit,
    Held,
    Misfit,
    Missing,
    Quantity,
    Remedy,
    Rule,
    Verdict,
    compare,
    exact,
    in_unit_of,
    leaf,
    worked,
)
from wellstrung.units import length as read_length


def check(cut: ChainCut, ask: Ask) -> Answer:
    if not cut.pieces:
        return None
    lines = [
        line for line in ask.plan.entries("supplies") if line.value.get("chain") == cut.chain.name
    ]
    if not lines or any("length" not in line.entries for line in lines):
        raise Missing(f"a line `{{chain: {cut.chain.name}, length: ...}}` under `supplies`")
    wanted = cut_list(cut)
    lengths = [length for line in lines for length in _lengths(line)]
    had, whole = _pieces_had(cut, lengths, wanted), needed(cut)
    last = lines[-1].entries["length"].node
    on_hand = leaf("on hand", lengths[0], "mm", spelled_unit=read_length(last.value).unit)
    # one length is judged in mm, several by the whole pieces that each of them gives
    margin = on_hand - whole if len(lengths) == 1 else had - exact("pieces wanted", len(wanted))
    # chain is bought by the centimetre: round up, never below what the likely links need
    need = in_unit_of(math.ceil(whole.likely.high / 10) * 10, on_hand)
    if compare(margin) is Verdict.HOLDS:
        return Held(margin)
    alike = len({tuple(run) for run in wanted}) == 1
    written = " and ".join(str(line.entries["length"].node.value) for line in lines)
    gives = f"{had.middle:g} of the {len(wanted)} pieces"
    return Misfit(
        says=f"the chain `{cut.chain.name}` on hand ({written}) gives {gives}, cut in phase",
        may=f"the chain `{cut.chain.name}` on hand ({written}) may give only {had.worst.low:g} of"
        f" the {len(wanted)} pieces",
        place=last.place,
        found=written,
        needed=f"{need} in one length",
        remedies=_remedies(lines, last, need),
        margin=margin,
        at_most="error" if alike else "warning",
        also=(cut.chain.key.place,),
        working=tuple(whole.working()),
    )


def _lengths(line: reading.Mapping) -> list[float]:
    each = read_length(line.value["length"]).value
    return [each] * int(line.value.get("pieces", 1))


def _pieces_had(cut: ChainCut, lengths: list[float], wanted: list[list[str]]) -> Quantity:
    names = list(dict.fromkeys(pattern(cut.chain)))
    wires = {link: cut.chain.wire("links", link, "wire").middle for link in names}

    def had(**insides: float) -> float:
        sizes = dict(zip(names, insides.values(), strict=True))
        return links.pieces_had(
            lengths, pattern(cut.chain), wanted, sizes, wires, soldered=is_soldered(cut.chain)
        )

    return worked(
        "pieces to be had",
        "",
        had,
        "cut in phase, lost links counted, from " + " and ".join(f"{n:g} mm" for n in lengths),
        {f"link{n}": link_inside(cut.chain, link) for n, link in enumerate(names)},
    )


def _remedies(lines: list[reading.Mapping], last: reading.Node, need: str) -> tuple[Remedy, ...]:
    by_hand = Remedy(f"have {need} in one length, or more in several")
    if len(lines) > 1 or "pieces" in lines[-1].entries:
        return (by_hand,)
    return (Remedy(f"buy {need} in one length", (Edit(last.place, need),)), by_hand)


RULE = Rule(
    name="chain-enough",
    family="length",
    subject=ChainCut,
    check=check,
    title="the chain on hand gives every piece (where it is cut is `chain-cut`)",
    why=(
        "length over length says there is enough; links lost in cutting and in getting back in"
        " phase say not"
    ),
    sources=("counting along the pattern, worked out for this project",),
    bad="seven pieces of 40 mm from {chain: bar chain, length: 28 cm}",
    good="seven pieces of 40 mm from {chain: bar chain, length: 40 cm}",
    yields_to=("chain-cut",),
)
