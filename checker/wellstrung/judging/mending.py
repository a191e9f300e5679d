"""Remedies carried out: which edits can be made together, and whether the plan is better for them.

Each remedy was found true alone. Several of them may get in each other's way, so that each is held
against the plan with those before it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from typing import NamedTuple

from wellstrung.common.places import Edit
from wellstrung.common.wording import listed
from wellstrung.judging.result import RANK, PlanResult, Remark
from wellstrung.reading import tree

#: the texts of a plan and of its drawer, by file
Texts = Mapping[str, str]
#: So often a plan is checked and mended again: more than any plan of the tests needs.
MOST_ROUNDS = 12


class LeftOut(NamedTuple):
    """A remedy that was not carried out, and why."""

    remark: Remark
    why: str


class Mended(NamedTuple):
    """A plan after its remedies, with those carried out and those that were not."""

    texts: Texts
    made: tuple[Remark, ...] = ()
    left_out: tuple[LeftOut, ...] = ()


def texts_of(result: PlanResult) -> Texts:
    """The texts that edits of a result are made in."""
    return {**result.beside, result.file: result.text}


def remedies(result: PlanResult, files: Collection[str]) -> dict[int, Remark]:
    """The remarks that carry edits to these files alone, by the number that reports give them."""
    return {
        number: remark
        for number, remark in enumerate(result.numbered, 1)
        if remark.counts and remark.edits and {edit.place.file for edit in remark.edits} <= {*files}
    }


def carried_out(
    result: PlanResult, chosen: Iterable[Remark], check: Callable[[Texts], PlanResult]
) -> Mended:
    """The plan with the chosen remedies, one after the other; what makes it no better is left out.

    Of two that change the same words the second is left out.
    """
    before, texts = result, texts_of(result)
    edits: list[Edit] = []
    made: list[Remark] = []
    left_out: list[LeftOut] = []
    for remark in chosen:
        new = [edit for edit in remark.edits if edit not in edits]
        first = next((one for one in made if _overlap(one.edits, new)), None)
        if first is not None:
            left_out.append(LeftOut(remark, f"`{first.rule}` changes the same words"))
            continue
        changed = _written(texts_of(result), [*edits, *new])
        after = check(changed)
        why = _no_better(before, after, remark)
        if why:
            left_out.append(LeftOut(remark, why))
            continue
        before, texts = after, changed
        edits += new
        made.append(remark)
    return Mended(texts, tuple(made), tuple(left_out))


def all_carried_out(
    result: PlanResult,
    files: Collection[str],
    check: Callable[[Texts], PlanResult],
    offer: Callable[[Texts], PlanResult],
) -> Mended:
    """The plan with all its remedies, and with those that are found then, until none is left.

    What a remedy would only take out may lack no more than its place: that is left to the author.
    `offer` checks as `check` does and looks for remedies as well.
    """
    done = Mended(texts_of(result))
    for _ in range(MOST_ROUNDS):
        can = remedies(result, files).values()
        mended = carried_out(result, [one for one in can if not _takes_out(one)], check)
        kept = [LeftOut(one, _CHOOSE) for one in can if _takes_out(one)]
        done = Mended(mended.texts, (*done.made, *mended.made), (*mended.left_out, *kept))
        if not mended.made:
            break
        result = offer(done.texts)
    return done


#: why what takes words out is left out where nobody chose it
_CHOOSE = "it takes out what you listed: choose it by itself if that is right"


def _takes_out(remark: Remark) -> bool:
    """Whether a remedy takes out what the plan lists, and writes nothing in its place."""
    return remark.level != "slip" and not any(edit.new.strip() for edit in remark.edits)


def _written(texts: Texts, edits: Sequence[Edit]) -> Texts:
    return {
        file: tree.replaced(
            text, [(edit.place, edit.new) for edit in edits if edit.place.file == file]
        )
        for file, text in texts.items()
    }


def _overlap(some: Iterable[Edit], others: Collection[Edit]) -> bool:
    """Whether edits touch the same words, or add at the same point."""
    return any(
        a.file == b.file and (a[1:3] == b[1:3] or (a[1:3] < b[3:] and b[1:3] < a[3:]))
        for a in (edit.place for edit in some)
        for b in (edit.place for edit in others)
    )


def _no_better(before: PlanResult, after: PlanResult, remark: Remark) -> str:
    """Why a plan is no better after a remedy; empty if it is.

    A slip that is mended may bring to light what it hid: more slips are no worse then.
    """
    if after.failures and not before.failures:
        return "a check fails after it"
    if not before.readable:
        slips = _slips(after)
        unread = [one for one in after.remarks if one.rule == "plan-file"]
        if unread and not any(one.rule == "plan-file" for one in before.remarks):
            return f"the plan cannot be read after it: {unread[0].says}"
        still = not after.readable and slips[remark.says] >= _slips(before)[remark.says]
        return "the slip is still there after it" if still else ""
    if not after.readable:
        return f"the plan cannot be read after it: {after.remarks[0].says}"
    brings = [
        rule for (rule, parts), rank in after.raised.items()
        if rank > before.raised.get((rule, parts), 0)
    ]  # fmt: skip
    brings += ["plan-shape"] * ((_slips(after) - _slips(before)).total() > 0)
    if brings:
        return f"it would bring {listed(dict.fromkeys(brings))}"
    return "" if _weight(after) < _weight(before) else "it is not needed any more"


def _slips(result: PlanResult) -> Counter[str]:
    return Counter(one.says for one in result.remarks if one.rule.startswith("plan-"))


def _weight(result: PlanResult) -> tuple[int, int]:
    """How many errors and how many warnings there are, hidden ones included."""
    ranks = Counter(result.raised.values())
    return ranks[RANK["error"]] + _slips(result).total(), ranks[RANK["warning"]]
