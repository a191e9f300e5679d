"""Steps and parts agree: every part of the piece is made, and made before a step needs it."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, PartAtWork, Remedy, Rule
from wellstrung.rulebook.plan import Edit
from wellstrung.rulebook.wording import in_yaml, often, plural
from wellstrung_rules.work import out_of_order

_DOES = {"weave": "weaves", "string": "strings", "cut": "cuts"}
#: the field that says how often a step is done; a step without `times` does all of them
_COUNTED = {"glue": "joints", "hang": "times", "crimp": "times", "close ring": "times"}


def check(work: PartAtWork, ask: Ask) -> Answer:
    if not work.verb:
        return _stray(work)
    if not work.made:
        return _never_made(work)
    first = work.made[0]
    early = next((step for step in work.needed_by if step.number < first.number), None)
    if early is None:
        return _counted(work, _COUNTED[work.verb]) if work.verb in _COUNTED else Held()
    needs = f"step {early.number} (`{early.verb}`) needs `{work.part.name}`, but only step"
    return out_of_order(f"{needs} {first.number} {_DOES[work.verb]} it", first, early, early, ask)


def _stray(work: PartAtWork) -> Misfit:
    name, step = work.part.name, work.needed_by[0]
    return Misfit(
        says=f"step {step.number} (`{step.verb}`) works on `{name}`, which neither stands in `run`"
        " nor hangs from anything",
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
    needs = f", and step {work.needed_by[0].number} needs it" if work.needed_by else ""
    line = f"{{do: {work.verb}, part: {in_yaml(name)}}}"
    return Misfit(
        says=f"`{name}` is a part of the piece, but no step {does} it{needs}",
        place=work.part.key.place,
        found="no step",
        needed=f"a step that {does} `{name}`",
        remedies=(Remedy(f"write a step `{line}` under `work`"),),
        at_most="warning",
    )


def _counted(work: PartAtWork, field: str) -> Answer:
    counts = [count for step in work.made if isinstance(count := step.get(field), int)]
    unsaid, last = len(work.made) - len(counts), work.made[-1]
    done = sum(counts) + unsaid
    if done == work.wanted or (field == "times" and (unsaid or done == work.rings)):
        return Held()
    right, place = work.wanted - done + int(last.get(field) or 1), last.place_of(field)
    remedy = Remedy(f"take the extra ones out of step {last.number}")
    if right > 0:
        said = often(right) if field == "times" else plural(right, "joint")
        new, said = (said, said) if last.in_words else (str(right), f"{field}: {right}")
        edits = (Edit(place, new),) if place != last.place else ()
        remedy = Remedy(f"write `{said}` in step {last.number}", edits)
    return Misfit(
        says=f"the steps {work.verb.removesuffix(' ring')} `{work.part.name}` {often(done)},"
        f" but the piece has it {often(work.wanted)}",
        place=place,
        found=often(done),
        needed=often(work.wanted),
        remedies=(remedy,),
        at_most="warning",
        also=(work.part.key.place,),
    )


RULE = Rule(
    name="step-parts",
    family="work",
    subject=PartAtWork,
    check=check,
    fault="steps leave out a part",
    title="every part of the piece is made by a step, and before another step needs it",
    why="a class follows the steps line by line: a cap that no step names stays on the table, and"
    " a drop that is hung before it is cut stops everybody",
    sources=("counting, and the order of the steps as written",),
    bad="{do: hang, part: drop}, {do: cut, part: drop}",
    good="{do: cut, part: drop}, {do: hang, part: drop}",
)
