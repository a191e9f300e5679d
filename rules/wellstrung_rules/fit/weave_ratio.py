"""The rings of a weave of rings against the ratio of inside to wire that the weave takes."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Misfit, Rule, WovenOfRings, kept, tightest
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.values import derived, exact, table
from wellstrung.rulebook.wording import about, number, raised, spelled, within


def check(join: WovenOfRings, ask: Ask) -> Answer:
    ring, weave = join.ring, join.weave
    row = table("ring_weaves").row(weave.text("type"))
    inside, wire = ask.of(ring, "inside"), ask.of(ring, "wire")
    least, most = (
        derived(
            f"{end} inside",
            "mm",
            lambda wire, times: wire * times,
            wire=wire,
            times=exact(f"{end} ratio", row.cell(end).value),
        )
        for end in ("least", "most")
    )
    tight, loose = inside - least, most - inside
    if answer := kept(tight, loose):
        return answer
    margin = tightest(tight, loose)
    low, high = inside.middle - tight.likely.low, inside.middle + loose.likely.low
    has = number(inside.middle / wire.middle)
    window = f"{number(row.cell('least').value)} to {number(row.cell('most').value)}"
    needed = within(low, high, inside) if low < high else raised(inside, tight)
    so = "the next ring {does|may} not go in" if margin is tight else "it {falls|may fall} open"
    too = "tight" if margin is tight else "loose"
    field = "inside" if ring.has("inside") else "outside"
    return Misfit(
        says=f"the rings `{ring.name}` ({about(inside)} inside, {spelled(wire)} wire, {has} times)"
        f" {{are|may be}} too {too} for {row.name} weave, which takes {window} times: {so}",
        place=ring.place_of(field),
        found=f"{about(inside)} inside",
        needed=f"{needed} inside",
        remedies=(in_words(f"take rings of {needed} inside", ring, "inside", low=low, high=high),),
        margin=margin,
        at_most="error" if margin is tight else "warning",
        fault=f"rings too {too} for their weave",
        also=(weave.key.place,),
    )


RULE = Rule(
    name="weave-ratio",
    family="fit",
    subject=WovenOfRings,
    check=check,
    fault="rings do not suit their weave",
    title="the rings of a weave of rings are as many times their wire inside as the weave takes",
    why="below the least a ring has no room for the wires that pass it; above the most the weave"
    " falls open and loses its pattern",
    sources=("trade table `ring_weaves`: printed ratios and printed rings an inch",),
    bad="Byzantine of rings 6 mm inside, 18 AWG",
    good="Byzantine of rings 3.75 mm inside, 18 AWG",
)
