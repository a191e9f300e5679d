"""Chain pieces cut in phase: each begins and ends with its own link, and cuts fall between."""

from __future__ import annotations

from wellstrung.formulas import chain as links
from wellstrung.rulebook import Answer, Ask, Held, Misfit, Missing, PieceCut, Remedy, Rule


def check(cut: PieceCut, ask: Ask) -> Answer:
    run = cut.links
    if cut.piece.has("ends_with") and cut.piece.text("ends_with") != run[-1]:
        return _wrong_end(cut)
    every = cut.step.get("every") if cut.step else None
    if not isinstance(every, int):
        if cut.count == 1 or cut.chain.traits.cups:
            return Held()  # nothing is cut after it, or between two cups
        raise Missing(f"`every` in a step `{{do: cut, part: {cut.piece.name}, every: ...}}`")
    needed = links.stride(cut.pattern, run, soldered=cut.soldered)
    lost = needed - len(run)
    if every >= needed and links.in_phase(cut.pattern, run, every):
        return Held()
    assert cut.step is not None
    place = cut.step.node.entries["every"].node.place
    return Misfit(
        says=f"`{cut.piece.name}` is cut every {every} links, but its {len(run)} links and the"
        f" {lost} lost between pieces make {needed}: {_what_happens(cut, every)}",
        place=place,
        found=f"every {every} links",
        needed=f"every {needed} links",
        remedies=(Remedy.write(place, str(needed), f"write `every: {needed}`"),),
        also=(cut.piece.key.place,),
        working=(
            f"one piece = {' '.join(run)} = {len(run)} links",
            f"lost until the pattern ({' '.join(cut.pattern)}) is in phase again = {lost}, with"
            " pieces turned end for end where that fits",
        ),
    )


def _what_happens(cut: PieceCut, every: int) -> str:
    run, cycle = cut.links, cut.pattern
    if every < len(run):
        return "each piece would be too short"
    if every == len(run) and cut.soldered:
        lost = cycle[(cycle.index(run[0]) + every) % len(cycle)]
        return f"`{cut.chain.name}` is soldered, so the `{lost}` that is cut through is lost"
    number, first = links.out_of_phase(cycle, run, every)[0]
    which = "the next piece" if number == 2 else f"piece {number}"
    no_end = first not in (run[0], run[-1])
    return f"{which} would {f'begin at `{first}`' if no_end else 'have its links out of order'}"


def _wrong_end(cut: PieceCut) -> Misfit:
    run, wanted = cut.links, cut.piece.text("ends_with")
    fields = {"ends_with": run[-1]}
    if cut.piece.has("links"):
        cycle = cut.pattern
        after = links.piece(cycle, run[0], len(run) + len(cycle))[len(run) :]
        fields = {"links": str(len(run) + 1 + after.index(wanted)), **fields}
    return Misfit(
        says=f"`{cut.piece.name}` should end with `{wanted}`, but its {len(run)} links from"
        f" `{run[0]}` end with `{run[-1]}`",
        place=cut.piece.place_of("ends_with"),
        found=f"ends with {run[-1]}",
        needed=f"ends with {wanted}",
        remedies=tuple(
            Remedy.write(cut.piece.place_of(field), new, f"write `{field}: {new}`")
            for field, new in fields.items()
        ),
        also=(cut.chain.place_of("pattern"),),
        working=(f"one piece = {' '.join(run)}",),
    )


RULE = Rule(
    name="chain-cut",
    family="length",
    subject=PieceCut,
    check=check,
    fault="chain cut at the wrong link",
    title="chain is cut in phase, lost links counted (whether there is enough is `chain-enough`)",
    why="a chain cut at the wrong link cannot be repaired, and every piece after it is wrong too",
    sources=("counting along the pattern, worked out for this project",),
    bad="{do: cut, part: drop, every: 6} for six links of a soldered loop-and-bar chain",
    good="{do: cut, part: drop, every: 7} for six links of a soldered loop-and-bar chain",
)
