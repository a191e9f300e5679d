"""What to do in a step, in sentences for a student: one function for each verb of `work`."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from wellstrung.common.wording import hours, together
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import RunEntry, Step
from wellstrung.quantity.value import Quantity
from wellstrung.report import cuts_list
from wellstrung.report.pages import end_words, round_words
from wellstrung.report.pages.cut_words import Bench, to_cut
from wellstrung.report.pages.end_words import each_of, many_of
from wellstrung.report.pages.hanging_words import hang, hangs_from, often, open_since, wrap_loop
from wellstrung.report.pages.making_words import made
from wellstrung.report.pages.opening_words import opening, shutting
from wellstrung.report.pages.round_words import about
from wellstrung.report.terminal import counted
from wellstrung.work.minutes import times_done

#: of so many pieces of chain the links are counted off in words
_COUNTED = 12


def words(step: Step, at: Bench) -> tuple[str, ...]:
    """The sentences of a step, what its author noted last."""
    note = step.get("note")
    return (*WORDS[step.verb](step, at), *([f"Note: {note}"] if note else []))


def _part(step: Step) -> Part:
    return step.parts["part"]


def _weave(step: Step, at: Bench) -> Iterator[str]:
    yield from made(_part(step), at)


def _edge(step: Step, at: Bench) -> Iterator[str]:
    yield from round_words.edge_sewn(_part(step), at)


def _string(step: Step, at: Bench) -> Iterator[str]:
    if _part(step).thread.stretches:
        yield "Many makers stretch the line once before they string on it"
    if _part(step).thread.springs:
        yield from end_words.first_end(_part(step), at.plan)
    yield from made(_part(step), at)
    if _part(step).traits.in_ear:
        beads = at.known(_part(step), "beads")
        many = f"{about(beads)} of them" if beads is not None else "them"
        yield f"String {many} on the open wire, and leave the end bare that goes through the ear"
    for entry in at.plan.run:
        if entry.twists and entry.parts[-1] is _part(step):
            turns = counted(entry.twists, "full turn")
            yield f"Fasten all strands at one end, twist them {turns}, and hold the other end"
    yield from end_words.brought_back(step, at)


#: what is done to the inside of a cap before it is glued: common practice, no source
PREPARED: Mapping[str, str] = {
    "roughened": "roughen it with a burr or abrasive paper",
    "degreased": "wipe it free of grease",
    "eye plugged": "plug the hole to the eye, so that no glue runs out",
}


#: where a brooch pin lies: common practice, no source
_IN_THE_UPPER_THIRD = "It lies across the upper third of the back, or the piece tips forward"


def _glue(step: Step, at: Bench) -> Iterator[str]:
    cap, glue, onto = step.parts["part"], step.parts["with"], step.parts.get("to")
    if onto is None:
        yield from _stirred(step, glue, at)
        yield from round_words.stone_glued(cap, str(step.get("to")), glue.name, at)
        yield from _cures(glue, at, "nothing may be sewn to it")
        if step.get("to") == cap.traits.glued_on[-1] and not at.plan.steps_that("edge", part=cap):
            yield from round_words.edge_sewn(cap, at, "Then sew")
        return
    if step.has("prepared") and not onto.thread.springs:
        done = together(PREPARED[str(one)] for one in step.node.value["prepared"])
        yield f"Prepare the inside of {many_of(cap, step.joints)}: {done}"
    yield from _stirred(step, glue, at)
    if onto.thread.springs:
        yield from end_words.into_ball(cap, onto, step.joints)
    deep = f", {cap.text('depth')} deep" if cap.has("depth") else ""
    where = "into" if cap.kind.role is Role.CAP else "to"
    one, other = (cap, onto) if cap.part("behind") else (onto, cap)
    yield f"Glue `{one.name}` {where} `{other.name}`{deep}: {counted(step.joints, 'joint')}"
    if one is cap:
        yield _IN_THE_UPPER_THIRD
    yield from _cures(glue, at, "nothing may pull on it")


def _stirred(step: Step, glue: Part, at: Bench) -> Iterator[str]:
    mixing, usable = at.known(glue, "mixing"), at.known(glue, "usable")
    if mixing is not None:
        mixes = f"{step.mixes or 1} mix{'es' if (step.mixes or 1) > 1 else ''}"
        yield f"Stir {mixes} of `{glue.name}` for {hours(mixing.likely.high)}"
    if usable is not None and mixing is None:
        yield f"Once it is spread, `{glue.name}` can be worked for {hours(usable.likely.low)}"
    elif usable is not None:
        yield f"A mix can be used for {hours(usable.likely.low)}, stirring included"


def _cures(glue: Part, at: Bench, rests: str) -> Iterator[str]:
    handling, cure = at.known(glue, "handling"), at.known(glue, "full_cure")
    if handling is not None:
        yield f"Let it lie: {rests} for {_time(handling)}"
    if cure is not None:
        yield f"It has its full strength after {_time(cure)}"


def _time(found: Quantity) -> str:
    """A time on the careful side, where it varies."""
    return hours(found.likely.high, days=True)


def _wait(step: Step, at: Bench) -> Iterator[str]:
    glues = at.plan.steps_that("glue")
    pull = "; pull on no joint meanwhile" if any(one.number < step.number for one in glues) else ""
    yield f"Wait {step.get('time')}{pull}"


def _slide(step: Step, at: Bench) -> Iterator[str]:
    times = times_done(at.plan, step)
    onto = step.parts["onto"].name
    yield f"Slide {many_of(_part(step), times)} on to `{onto}`, over an end that is still open"


def _close_ring(step: Step, at: Bench) -> Iterator[str]:
    ring, count = _part(step), times_done(at.plan, step)
    since = open_since(ring, step, at.plan)
    said = opening(many_of(ring, count), ring)
    yield f"`{ring.name}` is open since step {since.number}" if since is not None else said
    around = step.parts.get("around")
    for many, where in [(1, f"round `{around.name}`")] if around is not None else _where(step, at):
        row = f"{many} in a row" if many > 1 else "it" if count == 1 else "1"
        yield f"Lay {row} {where}"
    yield shutting(each_of(count), ring)


def _where(step: Step, at: Bench) -> list[tuple[int, str]]:
    """How many rings of a step go where, as the run has them, or what hangs by them."""
    ring, found = _part(step), list[tuple[int, str]]()
    for entry, (behind, ahead) in at.plan.with_neighbours():
        beside = [place.called for place in (*behind, *ahead)]
        if entry.part is ring and beside and set(step.joins) <= set(beside):
            rows = f", one for each of {entry.rows} strands" if entry.rows > 1 else ""
            found.append((entry.linked, f"through {_both_sides(behind, ahead)}{rows}"))
    if step.joins and not found:
        return [(1, f"through {together(f'`{name}`' for name in step.joins)}")]
    if found:
        return list(dict.fromkeys(found))
    found = [
        (1, f"through `{line.part.name}` and {hangs_from(line)}")
        for line in at.plan.hung
        if line.by is ring
    ]
    bare = [line for line in at.plan.hung if line.by is None and not line.on_thread]
    held = [f"`{line.part.name}`" for line in bare if line.source is ring]
    held += [hangs_from(line) for line in bare if line.part is ring]
    return list(dict.fromkeys([*found, *([(1, f"through {together(held)}")] if held else [])]))


def _both_sides(behind: Sequence[RunEntry], ahead: Sequence[RunEntry]) -> str:
    """What a ring goes through at both its sides, as it is called: an eye, or a ring."""
    said = [end_words.side_words(one, onwards=True) for one in behind]
    said += [end_words.side_words(one) for one in ahead]
    alike = len(said) == 2 and said[0] == said[1]
    return f"{said[0]}, and of another" if alike else together(said)


def _cut(step: Step, at: Bench) -> Iterator[str]:
    part, chain = _part(step), _part(step).cut_from
    of = f" from `{chain.name}`" if chain is not None else ""
    yield f"Cut {many_of(part, times_done(at.plan, step))}{of}"
    yield from to_cut(part, at)
    every = step.get("every")
    if every is not None:
        yield f"From the start of one piece to the start of the next count {every} links"
    bars = (bar for one in at.cuts.chains if chain and one.chain == chain.name for bar in one.bars)
    for bar in bars:
        mine = [piece for piece in bar.pieces if piece.name == part.name]
        if mine:
            yield f"From {bar.written or at.long(bar.length)}; {cuts_list.begins(bar)}"
            for piece in mine[:_COUNTED]:
                yield cuts_list.counted_off(piece, inches=bar.inches)
        if len(mine) > _COUNTED:
            yield f"Go on so for {len(mine) - _COUNTED} more"


def _measure(step: Step, at: Bench) -> Iterator[str]:
    yield f"Lay `{_part(step).name}` out straight, without pulling it, and measure it"
    yield "If a size is outside its likely range, stop, and show it before you go on"


def _take_apart(step: Step, at: Bench) -> Iterator[str]:
    yield f"Lay `{_part(step).name}` along the groove of a board before you cut its line"
    yield "Cut it beside a bead, never across one, and keep the beads in their order"
    yield "Count them again, and set aside what is chipped or worn at its hole"


def _clean(step: Step, at: Bench) -> Iterator[str]:
    yield f"Wipe what belongs to `{_part(step).name}` with a soft damp cloth, and let it dry"
    yield "Soak nothing and use no cleaner before you know what it is made of"


def _pack(step: Step, at: Bench) -> Iterator[str]:
    part = step.parts.get("part")
    what = f"`{part.name}`" if part is not None else "the piece"
    yield f"Pack {what} so that nothing pulls or rubs on it"


def _wear(step: Step, at: Bench) -> Iterator[str]:
    clasp = any(part.kind.role is Role.CLASP for part in at.plan.in_run)
    yield "Look at every ring, knot and joint once more" + (", and try the clasp" * clasp)
    yield "Then it is ready to be worn"


def _sew(step: Step, at: Bench) -> Iterator[str]:
    part, to, times = _part(step), step.parts.get("to"), times_done(at.plan, step)
    onto = f" to `{to.name}`" if to is not None else ""
    yield f"Sew `{part.name}`{onto}" + (f", {often(times)}" if times > 1 else "")
    if part.part("behind") is not None:
        yield _IN_THE_UPPER_THIRD
        yield "Go through each of its holes, keep the pin shut, and try the catch when it is on"
    halves = [entry.called for entry in at.plan.run if entry.part is part and entry.half]
    if len(halves) > 1:
        yield f"One half goes to either end: {together(f'`{half}`' for half in halves)}"
    if part.has("loop", "beads"):
        count = f"{part.count('loop', 'count')} of " if part.has("loop", "count") else ""
        yield f"For the loop string {count}`{part.text('loop', 'beads')}`; try it over the button"
    passes = step.get("passes")
    through = often(int(passes)) if passes is not None else "until it holds"
    if to is not None and to.on_cords:
        yield "Tie it to the cords, in a knot of both of them at each end, and pull at it"
        return
    if Role.STRAND in (part.kind.role, to.kind.role if to is not None else None):
        yield f"Take the line through {through}, and back through the last bead"
        yield end_words.BACK
        return
    yield f"Take the thread through {through}, and end it in the beads"


#: what to do, by the verb of a step
WORDS: Mapping[str, Callable[[Step, Bench], Iterator[str]]] = {
    "weave": _weave,
    "string": _string,
    "finish thread": end_words.finish_thread,
    "glue": _glue,
    "wait": _wait,
    "slide": _slide,
    "close ring": _close_ring,
    "hang": hang,
    "cut": _cut,
    "measure": _measure,
    "pack": _pack,
    "take apart": _take_apart,
    "clean": _clean,
    "wear": _wear,
    "sew": _sew,
    "edge": _edge,
    "knot": end_words.knot,
    "crimp": end_words.crimp,
    "wrap loop": wrap_loop,
}
