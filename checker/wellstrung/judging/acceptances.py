"""Acceptances: the warnings that a plan accepts, and the lines of `accept` that accept nothing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec.structs import replace

from wellstrung.common.places import Edit
from wellstrung.common.wording import article, nearest
from wellstrung.judging.result import Remark
from wellstrung.model.plan import Plan
from wellstrung.reading import tree
from wellstrung.rulebook import Rule

#: the rule that a line accepts, and of which part
_Key = tuple[str, str | None]


def accepted(remarks: Sequence[Remark], plan: Plan, rules: Mapping[str, Rule]) -> Iterator[Remark]:
    """The remarks, with accepted warnings marked and one more for each acceptance of nothing."""
    lines = plan.entries("accept")
    by_key: dict[_Key, list[int]] = {}
    for index, line in enumerate(lines):
        by_key.setdefault((line.value["rule"], line.value.get("part")), []).append(index)
    used: set[int] = set()
    first: dict[_Key, Remark] = {}
    for remark in remarks:
        keys = [(remark.rule, part) for part in (None, *remark.parts)]
        for key in keys:
            first.setdefault(key, remark)
        fits = [index for key in keys for index in by_key.get(key, ())]
        if fits and remark.level == "warning":
            used.update(fits)
            yield replace(remark, accepted=str(lines[max(fits)].value["because"]))
        else:
            yield remark
    for index, line in enumerate(lines):
        if index not in used:
            about = first.get((line.value["rule"], line.value.get("part")))
            yield _useless(line, about, plan, rules)


def _useless(
    line: tree.Mapping, about: Remark | None, plan: Plan, rules: Mapping[str, Rule]
) -> Remark:
    """The remark on a line of `accept` that accepts nothing."""
    for name, what, known in (("rule", "rule", rules), ("part", "part", plan.parts)):
        if name not in line.entries or (name == "part" and line.value[name] in plan.beads):
            continue
        word, place = str(line.value[name]), line.entries[name].node.place
        if word not in known:
            near = nearest(word, known)
            otherwise = "`wellstrung rules` lists them" if what == "rule" else "delete the line"
            advice = f"write `{near}`" if near else otherwise
            says = f"there is no {what} called `{word}`: {advice}"
            edits = (Edit(place, near),) if near else ()
            return Remark("plan-shape", "error", (), says, place, word, near or "", advice, edits)
    rule, place = str(line.value["rule"]), line.entries["rule"].node.place
    if about:
        level = about.level
        advice = "fix it, or measure" if level == "error" else "delete the line, and heed it"
        says = f"`{rule}` is {article(level)} here, and only a warning can be accepted: {advice}"
    else:
        advice = "delete the line"
        says = f"there is nothing to accept of `{rule}` here: {advice}"
    also = (about.place,) if about else ()
    return Remark("plan-shape", "warning", (), says, place, rule, "", advice, also=also)
