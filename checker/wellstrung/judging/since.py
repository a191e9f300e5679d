"""A plan since an earlier version of it: what was mended, what is new, what is still there.

A remark is the same by what it is about, its rule and its parts, wherever its line stands now.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence

from wellstrung.common.wording import listed, together
from wellstrung.judging.changed import changes
from wellstrung.judging.renamed import came_and_went, renamed
from wellstrung.judging.result import PlanResult, Remark, Unjudged
from wellstrung.judging.versions import Fate, Since

#: what a remark is about, in the names of the new plan; a slip is about what it says
_About = tuple[str, frozenset[str]]
_CODE = re.compile("`[^`]*`")
_WORD = re.compile(r"[\w'-]+(?: [\w'-]+)*")
_LETTERS = re.compile(r"[^\W\d]+")
_NUMBER = re.compile(r"\d+(?:\.\d+)?")


def since(old: PlanResult, new: PlanResult, notes: Iterable[str] = ()) -> Since:
    """What became of a plan; both results are of a checker that lists quantities."""
    there = old.ask is not None and new.ask is not None
    names: dict[str, str] = {}
    if old.ask is not None and new.ask is not None:
        names = renamed(old.ask.plan, new.ask.plan)
    found = _Remarks(old, new, names)
    opened, answered = _open(old, new, names) if there else ((), ())
    came: tuple[str, ...] = ()
    went: tuple[str, ...] = ()
    if old.ask is not None and new.ask is not None:
        came, went = came_and_went(old.ask.plan, new.ask.plan, names)
    return Since(
        old.file,
        old.outcome,
        old.readable,
        len(found.had),
        **found.fates(),
        cautions=tuple(_new_cautions(old, new, names)) if there else (),
        opened=opened,
        answered=answered,
        renamed=tuple(names.items()),
        came=came,
        went=went,
        changed=tuple(changes(old, new, names)) if there else (),
        notes=(*notes, *_notes(old, new)),
    )


def _notes(old: PlanResult, new: PlanResult) -> Iterator[str]:
    """What is not compared, and why."""
    if not old.readable:
        what = "slips alone are compared" if not new.readable else "only its slips are compared"
        yield f"the earlier plan could not be checked, so {what}"
    elif not new.readable:
        yield "this plan cannot be checked yet, so nothing but its slips is known"
    elif old.piece != new.piece:
        yield f"the earlier plan was of another piece: {old.piece}, now {new.piece}"
    if old.failures:
        yield "a check of the earlier plan could not be made: a remark may be older than it seems"


class _Remarks:
    """The remarks on two versions of a plan, and which of them are the same."""

    def __init__(self, old: PlanResult, new: PlanResult, names: Mapping[str, str]) -> None:
        self._old, self._new, self._names = old, new, names
        self._olds, self._news = old.numbered, new.numbered
        self.had = [one for one in self._olds if one.counts]
        self._raised = {
            _about(rule, parts, names): rank for (rule, parts), rank in old.raised.items()
        }
        self._raises = {_about(rule, parts, {}): rank for (rule, parts), rank in new.raised.items()}
        self._of_old = [self._abouts(one, self._raised, names) for one in self._olds]
        self._of_new = [self._abouts(one, self._raises, {}) for one in self._news]
        self._then: dict[int, list[int]] = defaultdict(list)
        self._now: dict[int, list[int]] = defaultdict(list)
        for was, now in self._same():
            self._then[now].append(was)
            self._now[was].append(now)
        self._shown_then = {one for each in self._of_old for one in each}
        self._shown_now = {one for each in self._of_new for one in each}
        self._open_then = {_about(one.rule, one.parts, names) for one in old.unjudged}
        self._open_now = {_about(one.rule, one.parts, {}): one for one in reversed(new.unjudged)}
        plan = new.ask.plan if new.ask is not None else None
        self._here = {*plan.parts, *plan.beads} if plan is not None else set()

    def _abouts(
        self, remark: Remark, raised: Mapping[_About, int], names: Mapping[str, str]
    ) -> frozenset[_About]:
        """What a remark is about: one that stands for alike ones is about all that they were."""
        if remark.level == "slip":
            return frozenset({(remark.rule, frozenset({remark.says}))})
        whole = _about(remark.rule, remark.parts, names)
        if whole in raised:
            return frozenset({whole})
        within = {one for one in raised if one[0] == remark.rule and one[1] <= whole[1]}
        return frozenset(within or {whole})

    def _same(self) -> Iterator[tuple[int, int]]:
        """The old and the new remarks that are about the same, by their positions."""
        about: dict[_About, tuple[list[int], list[int]]] = defaultdict(lambda: ([], []))
        for side, all_of in enumerate((self._of_old, self._of_new)):
            for index, each in enumerate(all_of):
                for one in each:
                    about[one][side].append(index)
        found = {pair for olds, news in about.values() for pair in self._paired(olds, news)}
        return iter(sorted(found))

    def _paired(self, olds: Sequence[int], news: Sequence[int]) -> Iterator[tuple[int, int]]:
        """Remarks of one rule on the same parts: those that say the same first, then in order."""
        left = list(news)
        rest = []
        for old in olds:
            words = _words(self._olds[old].says, self._names)
            alike = [new for new in left if _words(self._news[new].says, {}) == words]
            if alike:
                left.remove(alike[0])
                yield old, alike[0]
            else:
                rest.append(old)
        yield from zip(rest, left, strict=False)

    def fates(self) -> dict[str, tuple[Fate, ...]]:
        """The remarks by what became of them."""
        found: dict[str, list[Fate]] = defaultdict(list)
        for number, remark in enumerate(self._olds):
            if remark.counts and number not in self._now:
                what, note = self._without_it(number)
                found[what].append(Fate(remark, note))
        for number, remark in enumerate(self._news):
            then = [self._olds[old] for old in self._then[number] if self._olds[old].counts]
            if not remark.counts:
                found["accepted"] += [Fate(remark)] * bool(then)
            elif then:
                found["still"].append(Fate(remark, self._changed(number, then)))
            elif self._hidden_then(number):
                followed = _deeper(remark, self._olds)
                found["still"].append(Fate(remark, f"it followed from {followed or 'another'}"))
            else:
                found["new"].append(Fate(remark, self._new_because(number)))
        return {what: tuple(fates) for what, fates in found.items()}

    def _without_it(self, number: int) -> tuple[str, str]:
        """What became of an old remark that the new plan has not, and why."""
        remark, about = self._olds[number], self._of_old[number]
        if not self._new.readable:
            return ("unknown" if self._old.readable else "mended"), ""
        if any(failure.rule in ("", remark.rule) for failure in self._new.failures):
            return "unknown", "the check could not be made"
        hidden = [one for one in about if self._raises.get(one)]
        if hidden and not self._shown_now.intersection(hidden):
            deeper = _deeper(remark, self._news)
            return "still", f"it follows from {deeper} now" if deeper else ""
        lacks = [self._open_now[one] for one in about if one in self._open_now]
        if lacks:
            return "unknown", f"open now: it needs {together(lacks[0].missing)}"
        names = [self._names.get(name, name) for name in remark.parts]
        gone = [name for name in names if name not in self._here]
        return "mended", f"{listed(gone)} {'is' if len(gone) == 1 else 'are'} gone" if gone else ""

    def _hidden_then(self, number: int) -> bool:
        """Whether a new remark was there, and followed from another one."""
        about = self._of_new[number]
        return any(map(self._raised.get, about)) and not about & self._shown_then

    def _new_because(self, number: int) -> str:
        """What else is known of a new remark: that it was accepted, or could not be judged."""
        if self._then[number]:
            return "it was accepted"
        return "the check was open" if self._open_then & self._of_new[number] else ""

    def _changed(self, number: int, then: Sequence[Remark]) -> str:
        """How a remark that is still there differs from what it was."""
        remark, notes = self._news[number], []
        before = {about for old in self._then[number] for about in self._of_old[old]}
        mended = _parts_of(
            about
            for old in self._then[number]
            if number == min(self._now[old])  # what became of one is said once
            for about in self._of_old[old] - self._raises.keys()
        )
        more = _parts_of(self._of_new[number] - before)
        if before & self._of_new[number]:  # else its words were the same, and its parts not
            notes += [f"mended for {listed(mended)}"] if mended else []
            notes += [f"new for {listed(more)}"] if more else []
        if all(one.level != remark.level for one in then):
            notes.append(f"it was {'an error' if then[0].level == 'error' else 'a warning'}")
        if len(then) == 1 and remark.found and then[0].found not in ("", remark.found):
            notes.append(f"{then[0].found} before")
        return "; ".join(notes)


def _deeper(remark: Remark, others: Iterable[Remark]) -> str:
    """The rules of the remarks that a remark follows from."""
    return listed(dict.fromkeys(one.rule for one in others if remark.rule in one.affects))


def _about(rule: str, parts: Iterable[str], names: Mapping[str, str]) -> _About:
    return rule, frozenset(names.get(part, part) for part in parts)


def _parts_of(abouts: Iterable[_About]) -> list[str]:
    return sorted({part for _, parts in abouts for part in parts})


def _words(says: str, names: Mapping[str, str]) -> list[str]:
    """The words of a remark, in the new names and without its figures; parts in any order."""
    return sorted(_LETTERS.findall(_NUMBER.sub("", _in_names(says, names))))


def _in_names(text: str, names: Mapping[str, str]) -> str:
    """A sentence whose code has the new names of what was renamed."""
    if not names:
        return text

    def named(word: re.Match[str]) -> str:
        return names.get(word[0], word[0])

    return _CODE.sub(lambda code: _WORD.sub(named, code[0]), text)


def _new_cautions(old: PlanResult, new: PlanResult, names: Mapping[str, str]) -> Iterator[Fate]:
    said = [_words(one.says, names) for one in old.cautions]
    for one in new.cautions:
        if _words(one.says, {}) not in said:
            yield Fate(one)


_Counted = tuple[tuple[str, int], ...]


def _open(old: PlanResult, new: PlanResult, names: Mapping[str, str]) -> tuple[_Counted, _Counted]:
    """The values that checks wait for only now, and those that they waited for and have."""
    before, after = _waiting(old.unjudged, names), _waiting(new.unjudged, {})
    then, now = _still_open(before), _still_open(after)
    opened = Counter(missing for about, missing in after if not then & _keys(about, missing))
    asked = {about for about, _ in after}
    asked |= {_about(one.rule, one.parts, {}) for one in new.held}
    asked |= {_about(rule, parts, {}) for rule, parts in new.raised}
    answered = Counter(
        missing for about, missing in before
        if about in asked and not now & _keys(about, missing)
    )  # fmt: skip
    return tuple(opened.items()), tuple(answered.items())


def _still_open(waiting: Iterable[tuple[_About, str]]) -> set[object]:
    return {key for about, missing in waiting for key in _keys(about, missing)}


def _keys(about: _About, missing: str) -> set[object]:
    """By what an open check is the same: its rule and the value that it waits for.

    Or its parts, where it waits for the same field of one of them: which one may go by their order.
    """
    of_one = _CODE.sub(lambda code: "" if code[0][1:-1] in about[1] else code[0], missing)
    return {(about[0], missing), (about, of_one)}


def _waiting(
    entries: Iterable[Unjudged], names: Mapping[str, str]
) -> dict[tuple[_About, str], None]:
    """Each open check with the value that it waits for."""
    return {
        (
            _about(one.rule, one.parts, names),
            _in_names(together(one.missing), names),
        ): None
        for one in entries
    }
