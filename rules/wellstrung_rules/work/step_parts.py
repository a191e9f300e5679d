"""Steps and parts agree: what the piece needs is made, and made before a step needs it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, PartAtWork, Remedy, Rule
from wellstrung.rulebook.plan import Edit, Step
from wellstrung.rulebook.wording import often


def check(work: PartAtWork, ask: Ask) -> Answer:
    if not work.verb:
        return _stray(work)
    if not work.made:
        return _never_made(work)
    first = work.made[0]
    early = next((step for step in work.needed_by if step.number < first.number), None)
    if early is not None:
        return _too_early(work, first, early, ask)
    return _counted(work)


def _stray(work: PartAtWork) -> Misfit:
    name, step = work.part.name, work.needed_by[0]
    return Misfit(
        says=(
            f"step {step.number} (`{step.verb}`) works on `{name}`, which stands neither in the"
            " run nor under `hung`"
        ),
        place=step.place,
        found=f"no place for `{name}`",
        needed=f"a place for `{name}`, or no step for it",
        remedies=(Remedy(f"give `{name}` its place, or name another part in step {step.number}"),),
        at_most="warning",
        also=(work.part.key.place,),
    )


def _never_made(work: PartAtWork) -> Answer:
    name, does = work.part.name, _DOES.get(work.verb)
    if does is None:
        return None  # a join that no step makes: another rule reports each
    line = f"{{do: {work.verb}, part: {name}}}"
    needs = f", and step {work.needed_by[0].number} needs it" if work.needed_by else ""
    return Misfit(
        says=f"`{name}` is a part of the piece, but no step {does} it{needs}",
        place=work.part.key.place,
        found="no step",
        needed=f"a step that {does} `{name}`",
        remedies=(Remedy(f"write a step `{line}` under `work`"),),
        at_most="warning",
    )


def _too_early(work: PartAtWork, first: Step, early: Step, ask: Ask) -> Misfit:
    move = f"move step {first.number} to before step {early.number}"
    return Misfit(
        says=(
            f"step {early.number} (`{early.verb}`) needs `{work.part.name}`, but only step"
            f" {first.number} {_DOES[work.verb]} it"
        ),
        place=early.place,
        found=f"step {first.number}",
        needed=f"before step {early.number}",
        remedies=(Remedy(move, ask.moved_before(first, early)), *ask.in_order(Remedy(move))),
        also=(first.place,),
    )


def _counted(work: PartAtWork) -> Answer:
    field = {"glue": "joints", "hang": "times"}.get(work.verb)
    if field is None:
        return Held()
    written = [step.get(field) for step in work.made]
    counts = [count for count in written if isinstance(count, int)]
    if work.verb == "hang" and len(counts) < len(written):
        return Held()
    done, last = sum(counts) + len(written) - len(counts), work.made[-1]
    if done == work.wanted or (work.verb == "hang" and done == work.rings):
        return Held()
    return _misfit_counted(work, field, done, last)


def _misfit_counted(work: PartAtWork, field: str, done: int, last: Step) -> Misfit:
    wanted = work.wanted
    right = wanted - done + int(last.get(field) or 1)
    place = last.place_of(field)
    edits = (Edit(place, str(right)),) if right > 0 and place != last.place else ()
    return Misfit(
        says=(
            f"the steps {work.verb} `{work.part.name}` {often(done)}, but the piece has it"
            f" {often(wanted)}"
        ),
        place=place,
        found=often(done),
        needed=often(wanted),
        remedies=(Remedy(f"write `{field}: {right}` in step {last.number}", edits),)
        if right > 0
        else (Remedy(f"take the extra ones out of step {last.number}"),),
        at_most="warning",
        also=(work.part.key.place,),
    )


_DOES = {"weave": "weaves", "string": "strings", "cut": "cuts"}

RULE = Rule(
    name="step-parts",
    family="work",
    subject=PartAtWork,
    check=check,
    title="every part of the piece is made by a step, and before another step needs it",
    why=(
        "a class follows the steps line by line: a cap forgotten in them stays on the table, and a"
        " drop that is hung before it is cut stops everybody"
    ),
    sources=("counting, and the order of the steps as written",),
    bad="{do: hang, part: drop}, {do: cut, part: drop}",
    good="{do: cut, part: drop}, {do: hang, part: drop}",
)
