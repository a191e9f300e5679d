"""Every rule on every subject of one plan, each guarded by itself.

The level of a remark is decided here and nowhere else, by the tolerance principle, and with it what
the maker can do about a doubtful one.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cached_property
from math import hypot

from msgspec.structs import replace

from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.common.unsettled import Unsettled
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging import failures
from wellstrung.judging.result import RANK, Failure, HeldCheck, Identity, Remark, Unjudged
from wellstrung.model.item import Missing
from wellstrung.model.plan import Plan
from wellstrung.quantity.assumed import UNSURE, fails_anyway, rests_on
from wellstrung.quantity.choices import chosen, freed
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.verdict import Verdict, compare, holds
from wellstrung.quantity.working import number
from wellstrung.rulebook import (
    Answer,
    Ask,
    Caution,
    Held,
    Level,
    Misfit,
    Remedy,
    Rule,
    Subject,
    worded,
)
from wellstrung.rulebook.installed import Installed
from wellstrung.rulebook.wording import between


class Judge:
    """Runs the rules on one plan and gathers their answers."""

    def __init__(self, installed: Installed, plan: Plan, quantities: Quantities) -> None:
        self._installed = installed
        self.ask = Ask(plan, quantities)
        self._quantities = quantities
        self._remarks: dict[tuple[str, Place, str], tuple[Remark, Sequence[Remedy]]] = {}
        self.raised: dict[Identity, int] = {}
        self._held: dict[tuple[str, tuple[str, ...]], HeldCheck] = {}
        self._unjudged: dict[tuple[str, tuple[str, ...], tuple[str, ...]], Unjudged] = {}
        self.failures: list[Failure] = []

    @property
    def remarks(self) -> list[tuple[Remark, Sequence[Remedy]]]:
        """The remarks, each once, with the remedies that its rule offers."""
        return list(self._remarks.values())

    @property
    def held(self) -> tuple[HeldCheck, ...]:
        """The checks that hold, one for each rule and its parts."""
        return tuple(self._held.values())

    @property
    def unjudged(self) -> tuple[Unjudged, ...]:
        """The checks that lack a value, each once."""
        return tuple(self._unjudged.values())

    def run(self, subjects: Iterable[Subject]) -> None:
        """Judge these subjects by every rule for their type."""
        by_type: dict[type[Subject], list[Subject]] = {}
        for subject in subjects:
            by_type.setdefault(type(subject), []).append(subject)
        for rule in self._installed.rules.values():
            for subject in by_type.get(rule.subject, ()):
                self.judge(rule, subject)

    def quantities(self) -> dict[str, Quantity]:
        """Every quantity that the plan has the values for; an error in one is a failure."""
        found = {}
        for name in self._quantities.offered():
            try:
                found[name] = self._quantities.get(name)
            except Missing:
                continue
            except Exception as error:
                message = f"{type(error).__name__}: {error} (in the quantity {name})"
                self.failures.append(Failure("", "wellstrung", message))
        return found

    def judge(self, rule: Rule, subject: Subject) -> None:
        """Judge one subject by one rule; raises Unsettled where that takes such a value."""
        try:
            self._take(rule, subject, self._answer(rule, subject))
        except Missing as missing:
            self._leave_open(rule, subject, missing.fields)
        except (KeyboardInterrupt, Unsettled):
            raise
        except (
            BaseException
        ) as error:  # an error in one rule, or its exit, must not stop the others
            owner = self._installed.owners[rule.name]
            self.failures.append(failures.of_rule(rule, owner, subject, error))

    def _answer(self, rule: Rule, subject: Subject) -> Answer:
        """What a rule answers; of a load, what is known of it may be too much already."""
        try:
            return rule.check(subject, self.ask)
        except Missing as missing:
            known = rule.check(subject, self._at_least) if rule.loads else None
            if not isinstance(known, Misfit):
                raise
            return replace(known, says=f"{known.says}, and {missing.field} is still to add")

    @cached_property
    def _at_least(self) -> Ask:
        return Ask(self.ask.plan, self._quantities.at_least())

    def _take(self, rule: Rule, subject: Subject, answer: Answer) -> None:
        failures.check_shape(answer)
        if isinstance(answer, Held):
            note = f"makers differ: {answer.differ}" if answer.differ else answer.assumed
            self._hold(rule, subject, answer.margin, note)
        elif isinstance(answer, Caution):
            self._add(
                Remark(
                    rule.name,
                    "caution",
                    subject.parts,
                    answer.says,
                    answer.place,
                    sources=rule.sources,
                    steps=tuple(step.number for step in answer.steps),
                    cuts=answer.cuts,
                    fault=rule.wrong,
                ),
                (),
            )
        elif isinstance(answer, Misfit):
            margin = answer.margin
            if margin is not None and chosen(margin) and holds(freed(margin), over=rule.over):
                self._hold(rule, subject, freed(margin), f"makers differ: {_differ(margin)}")
            elif margin is not None and (assumed := rests_on(freed(margin), over=rule.over)):
                fields = tuple(map(_to_measure, assumed))
                self._leave_open(rule, subject, fields, margin)
            else:
                remark = _stamped(rule, subject, answer)
                self._add(remark, answer.remedies)

    def _leave_open(
        self, rule: Rule, subject: Subject, fields: tuple[str, ...], margin: Quantity | None = None
    ) -> None:
        lacks = rule.name, subject.parts, fields
        self._unjudged.setdefault(lacks, Unjudged(*lacks, rule.family, margin))

    def _hold(self, rule: Rule, subject: Subject, margin: Quantity | None, note: str = "") -> None:
        held = rule.name, subject.parts
        if held not in self._held or note:
            self._held[held] = HeldCheck(*held, margin, rule.title, note, rule.family)

    def _add(self, remark: Remark, remedies: Sequence[Remedy]) -> None:
        rank = self.raised.get(remark.identity, 0)
        self.raised[remark.identity] = max(rank, RANK[remark.level])
        # one thing to fix at one place is one remark, however many joins it spoils
        key = (remark.rule, remark.place, remark.needed or remark.says)
        if key in self._remarks:
            first, remedies = self._remarks[key]
            remark = replace(first, also=tuple(dict.fromkeys((*first.also, *remark.also))))
        self._remarks[key] = (remark, remedies)


def _to_measure(leaf: Quantity) -> str:
    """The field of an assumed value, with the span that is assumed."""
    part, _, field = leaf.name.partition(".")
    return f"`{field}` of `{part}` ({between(*leaf.worst, leaf)} is assumed)"


def _differ(margin: Quantity) -> str:
    """The choices in which makers differ, in one line."""
    spans = []
    for leaf, (low, high, source, _) in chosen(margin):
        if leaf.unit:
            span = between(low, high, leaf)
        elif high < 1:  # a share
            span = f"{number(low * 100)} to {number(high * 100)} %"
        else:
            span = f"{number(low)} to {number(high)}"
        spans.append(f"{leaf.name} {span} ({source})")
    return "; ".join(spans)


def _decides(margin: Quantity) -> bool:
    """Whether a margin would hold or fail for sure once its chief cause is known, at either end."""
    assert margin.chief_cause is not None
    chief, effect = margin.chief_cause
    others = [by for cause, by in margin.effects.items() if cause != chief]
    down, up = hypot(*(by.low for by in others)), hypot(*(by.high for by in others))
    return margin.middle + effect >= down or margin.middle - effect < -up


def _stamped(rule: Rule, subject: Subject, misfit: Misfit) -> Remark:
    """The remark of a misfit: its level by the tolerance principle, its cure if it is doubtful.

    What makers choose is chosen in favour of the plan before an error is made of it.
    """
    level: Level = "warning" if "warning" in (rule.level, misfit.at_most) else rule.level
    says, cure = worded(misfit.says, sure=True), ""
    margin = misfit.margin
    if margin is not None:
        verdict = compare(freed(margin), over=rule.over)
        unsure = next((leaf for leaf in margin.leaves if leaf.grade in UNSURE), None)
        if verdict is Verdict.MAY_FAIL:
            level, says = "warning", worded(misfit.says, sure=False)
            if margin.chief_cause is not None:
                cause, effect = margin.chief_cause
                off = f"{number(effect)} {margin.unit}".rstrip()
                if margin.unit == "N":
                    off = units.hanging(effect)
                says += f"; most of the doubt is {cause} (± {off})"
                cure = cause.cure if _decides(margin) else ""
        elif compare(freed(margin, careful=True), over=rule.over) is not Verdict.FAILS:
            level = "warning"
        elif level == "error" and unsure and not fails_anyway(freed(margin), over=rule.over):
            level = "warning"
            says += f" by {UNSURE[unsure.grade]} ({unsure.source}): check yours"
    return Remark(
        rule=rule.name,
        level=level,
        parts=subject.parts,
        says=says,
        place=misfit.place,
        found=misfit.found,
        needed=misfit.needed,
        remedy=cure,
        lines=misfit.working,
        sources=rule.sources,
        also=tuple(place for place in dict.fromkeys(misfit.also) if place != misfit.place),
        margin=margin,
        fault=misfit.fault or rule.wrong,
        why=rule.why,
    )
