"""An end of cup chain against the cup that it closes over: by the stones of both, or by sizes."""

from __future__ import annotations

from wellstrung.formulas.arithmetic import most
from wellstrung.rulebook import Answer, Ask, CupInEnd, Limit, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.plan import USUAL
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, spelled, within
from wellstrung_rules.fit import sizes_of_hole

STONES_APART = Limit(
    "stones apart",
    0.35,
    "mm",
    "ends are sold for one size of stones, and do for the size beside it: from memory",
)
CUP_LOOSE = Limit(
    "cup loose",
    0.8,
    "mm",
    "tabs reach over a cup that much narrower, and hold it: from memory",
)


def check(join: CupInEnd, ask: Ask) -> Answer:
    end, chain = join.end, join.piece.cut_from
    assert chain is not None  # cups are cut from it
    named = all(one.by_size and one.text("size") != USUAL for one in (end, chain))
    if named and not (end.has("bore") or chain.has("cup", "outside")):
        return _by_stones(join, end.size("size"), chain.size("size"), ask)
    bore, cup = ask.of(end, "bore"), ask.of(join.piece, "width")
    tight, loose = bore - cup, cup + ask.limit(CUP_LOOSE) - bore
    if answer := kept(tight, loose):
        return answer
    too_tight = tight.likely.low < loose.likely.low
    low, high = sizes_of_hole(bore, tight, loose, cup, cup + ask.limit(CUP_LOOSE))
    needed = f"{within(low, high, bore)} inside"
    remedy = in_words(f"take an end of {needed}", end, "bore", low=low, high=high)
    if low > high:
        needed = f"the size of the cups, {about(cup, bore)}"
        remedy = Remedy(f"take an end made for cups of {about(cup, bore)}")
    return Misfit(
        says=f"`{end.name}` ({spelled(bore)} inside) {{is|may be}} too"
        f" {'small' if too_tight else 'large'} for the cups of `{join.piece.name}`"
        f" ({about(cup, bore)} across)",
        place=end.place_of("bore"),
        found=f"{spelled(bore)} inside",
        needed=needed,
        remedies=(remedy,),
        margin=tight if too_tight else loose,
        also=(join.piece.key.place,),
    )


def _by_stones(join: CupInEnd, ends: Quantity, stones: Quantity, ask: Ask) -> Answer:
    apart = derived("stones apart", "mm", lambda a, b: most(a - b, b - a), a=ends, b=stones)
    if answer := kept(margin := ask.limit(STONES_APART) - apart):
        return answer
    chain = join.piece.cut_from
    assert chain is not None
    size = chain.said("size")
    return Misfit(
        says=f"`{join.end.name}` is for stones of {join.end.said('size')}, and those of"
        f" `{join.piece.name}` are {size}",
        place=join.end.place_of("size"),
        found=join.end.said("size"),
        needed=size,
        remedies=(
            Remedy.write(join.end.place_of("size"), size, f"take an end for stones of {size}"),
        ),
        margin=margin,
        also=(chain.place_of("size"),),
    )


RULE = Rule(
    name="cup-chain-end",
    family="fit",
    subject=CupInEnd,
    check=check,
    fault="end does not fit its cup",
    title="an end of cup chain is made for cups of that size",
    why="an end that is too small does not go round the cup, and the tabs of one that is too large"
    " close over nothing: the chain slips out, and its owner loses it",
    limits=(STONES_APART, CUP_LOOSE),
    sources=("the cup lies inside the end: geometry", "how loose it may be is from memory"),
    bad="end: cup chain end 4 mm, on a 3 mm cup chain",
    good="end: cup chain end 3 mm, on a 3 mm cup chain",
)
