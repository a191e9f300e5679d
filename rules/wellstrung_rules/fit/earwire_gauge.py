"""The wire of an ear wire or a post against the piercing that it goes through."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Choice, InEar, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.remedies import take_wire, thicker_wires, thinner_wires
from wellstrung.rulebook.values import Window, exact, table
from wellstrung.rulebook.wording import between, in_unit_of, spelled

#: 19 AWG, drawn as thick as its allowance lets it be, mm
_NINETEEN = 0.912 + 0.02


def check(join: InEar, ask: Ask) -> Answer:
    part, wire = join.ear_wire, ask.of(join.ear_wire, "wire")
    usual = _usual(part.traits.stays_in)
    thin = wire - exact("thinnest ear wire", usual.low, "mm", source=RULE.sources[0])
    some = Choice(usual.high, max(usual.high, _NINETEEN), "19 AWG, common practice, no source")
    thick = exact("thickest ear wire", usual.high, "mm", RULE.sources[0], some) - wire
    if answer := kept(thin, thick):
        return answer
    too_thin = thin.likely.low <= thick.likely.low
    off = ask.plan.bench.allowances["wire"].value  # what drawn wire is off, with room for that
    if too_thin:
        too, does, wires = "thinner", "cuts into the lobe", thicker_wires(wire, usual.low + off)
    else:
        too, does = "thicker", "does not go in without pain"
        wires = thinner_wires(wire, usual.high - off)
    low, high = in_unit_of(usual.low, wire), in_unit_of(usual.high, wire)
    return Misfit(
        says=f"the wire of `{part.name}` ({spelled(wire)}) {{is|may be}} {too} than ears are"
        f" usually pierced for: it {does}",
        place=part.place_of("wire"),
        found=spelled(wire),
        needed=f"a wire of {between(usual.low, usual.high, exact('mm', 0.0, 'mm'))}",
        remedies=(*take_wire(part, wires), Remedy(f"take a wire of {low} to {high}")),
        margin=thin if too_thin else thick,
    )


def _usual(post: bool) -> Window:
    """The usual thickness of wires, and of posts, which stay in the ear and may be thicker, mm."""
    rows = table("ear_wires")
    hook = rows.row("ear wire").cell("wire_usual")
    return Window(hook.low, rows.row("post").cell("wire").high if post else hook.high)


RULE = Rule(
    name="earwire-gauge",
    family="fit",
    subject=InEar,
    check=check,
    fault="ear wire of the wrong gauge",
    title="an ear wire is as thick as ears are pierced for",
    why=(
        "a wire of 18 AWG is a needle to an ear pierced for 20, and one as thin as 24 hangs in the"
        " lobe like a cheese wire"
    ),
    sources=(
        "20 to 22 AWG (0.81 to 0.64 mm) usual, 18 AWG too thick for many: trade table `ear_wires`,"
        " ear wire: several pages; limits of 0.6 and 0.9 mm, of posts 1 mm, derived from them",
        "19 AWG is taken by some makers: common practice, no source",
    ),
    bad="hook: {kind: ear wire, type: hook, wire: 18 AWG}",
    good="hook: {kind: ear wire, type: hook, wire: 20 AWG}",
    level="warning",
)
