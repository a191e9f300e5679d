"""One plan through all stages, and what comes out: remarks, held, unjudged, failures.

The level of a remark is decided here and nowhere else, by the tolerance principle; so are the cure
for a doubtful one, "one cause, one remark", acceptances, and whether a remedy is true.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import chain
from pathlib import Path
from typing import NamedTuple

from msgspec import Struct, field
from msgspec.structs import replace

from wellstrung.common.places import Edit, Fault, Place
from wellstrung.common.wording import article, nearest
from wellstrung.derived.of_plan import Quantities
from wellstrung.model import build
from wellstrung.model import parts as model
from wellstrung.plugins.host import Host
from wellstrung.quantity.value import Quantity, Verdict, compare, number
from wellstrung.reading import drawer as drawers
from wellstrung.reading import schema, tree
from wellstrung.reading.settings import Bench
from wellstrung.rulebook import Answer, Ask, Caution, Held, Level, Misfit, Remedy, Rule, Subject
from wellstrung.subjects import along_the_run, joins, joins_made, on_thread, steps, supplies

FROM_MEMORY = "from memory"


class Remark(Struct, frozen=True):
    """What a rule says about a subject, stamped by the core."""

    rule: str
    level: Level
    parts: tuple[str, ...]
    says: str
    place: Place
    found: str = ""
    needed: str = ""
    remedy: str = ""
    edits: tuple[Edit, ...] = ()
    working: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    also: tuple[Place, ...] = ()
    affects: tuple[str, ...] = ()
    accepted: str | None = None
    margin: Quantity | None = None

    @property
    def counts(self) -> bool:
        """Whether it bears on the outcome: not a caution, not accepted."""
        return self.level != "caution" and self.accepted is None


class Kept(NamedTuple):
    """A rule that was checked and kept, with what is left; `title` is what the rule asks for."""

    rule: str
    parts: tuple[str, ...]
    margin: Quantity | None
    title: str = ""


class Unjudged(NamedTuple):
    """A rule that applies but lacks a value, with the field to fill in."""

    rule: str
    parts: tuple[str, ...]
    missing: tuple[str, ...]


class Failure(Struct, frozen=True):
    """A rule that broke; the run cannot be trusted to be complete."""

    rule: str
    plugin: str
    message: str


class PlanResult(Struct, frozen=True):
    """All that is known of one plan.

    `ask` has the plan itself and every quantity of it, for lists and for drawings; it is there
    where the checker was to keep it and the plan has the right shape.
    """

    file: str
    title: str = ""
    piece: str = ""
    text: str = ""
    #: the text of its drawer, by the drawer's file, where it has one
    beside: Mapping[str, str] = field(default_factory=dict)
    bench: str | None = None
    remarks: tuple[Remark, ...] = ()
    held: tuple[Kept, ...] = ()
    unjudged: tuple[Unjudged, ...] = ()
    quantities: Mapping[str, Quantity] = field(default_factory=dict)
    failures: tuple[Failure, ...] = ()
    readable: bool = True
    ask: Ask | None = None

    @property
    def numbered(self) -> tuple[Remark, ...]:
        """The remarks that reports number from 1, in reading order: all but the cautions."""
        return tuple(remark for remark in self.remarks if remark.level != "caution")

    @property
    def mend_first(self) -> Remark | None:
        """The first error in the plan, else the first warning; None where nothing is to mend."""
        return next((remark for remark in self.remarks if remark.counts), None)

    def count(self, level: Level) -> int:
        """How many remarks of a level bear on the outcome (all, for cautions)."""
        return sum(
            remark.level == level and (remark.counts or level == "caution")
            for remark in self.remarks
        )

    @property
    def outcome(self) -> str:
        """makeable, makeable with warnings, not makeable or unreadable."""
        if not self.readable:
            return "unreadable"
        if self.count("error"):
            return "not makeable"
        return "makeable with warnings" if self.count("warning") else "makeable"


class Result(Struct, frozen=True):
    """What one run found, plan by plan."""

    plans: tuple[PlanResult, ...]

    @property
    def failures(self) -> tuple[Failure, ...]:
        """Rules that broke, each once."""
        return tuple(dict.fromkeys(broken for plan in self.plans for broken in plan.failures))

    def count(self, level: Level) -> int:
        """How many remarks of a level there are in all."""
        return sum(plan.count(level) for plan in self.plans)


class Checker:
    """Checks plans with everything the host has.

    With `quantities` every quantity of a plan is listed in its result; with `keep`, or with those,
    the plan itself is kept in it, to be asked for more.
    """

    def __init__(
        self,
        host: Host,
        *,
        bench: Bench | None = None,
        quantities: bool = False,
        keep: bool = False,
    ) -> None:
        self.host = host
        self.bench = bench or Bench()
        self.quantities = quantities
        self.keep = keep
        self._known = schema.Known({name: kind.fragment for name, kind in host.kinds.items()})

    def check_file(
        self, path: Path, bench: Bench | None = None, drawer: tree.Read | None = None
    ) -> PlanResult:
        """The result of one file, whatever it holds, by a bench of its own where one is given.

        A drawer that is given stands for the one that the plan names.
        """
        read = tree.read(path)
        return self._guarded(
            read, bench or self.bench, drawer or drawers.named_by(read, path.parent)
        )

    def check_text(
        self, text: str, file: str = "plan.yaml", drawer: tree.Read | None = None
    ) -> PlanResult:
        """The result of a plan given as text, with its drawer where it has one."""
        read = tree.read_text(text, file)
        return self._guarded(read, self.bench, drawer or drawers.named_by(read, None))

    def raised_about(
        self, text: str, plan: model.Plan, part: str
    ) -> Mapping[_Identity, int] | None:
        """How high each rule speaks of the joins and needs of one part, and of the whole piece.

        For trying a changed text of a plan that was understood; None where it no longer is one.
        """
        host = self.host
        read, faults = drawers.filled(tree.read_text(text, plan.file), plan.drawer)
        changed = None
        if not faults:
            changed, _ = build.build(read, host.kinds, host.stitches, plan.bench, plan.drawer)
        if changed is None:
            return None
        judged = _Judged(host, changed, Quantities(changed, host.quantities))
        judged.run(
            one for one in _standing(changed) if part in one.parts or isinstance(one, joins.Piece)
        )
        return judged.raised

    def _guarded(self, read: tree.Read, bench: Bench, drawer: tree.Read | None) -> PlanResult:
        """A plan on which a stage of the checker itself breaks is a failure, never green."""
        try:
            return self._check(read, bench, drawer, offer=True)
        except Exception as error:
            message = f"{type(error).__name__}: {error} (in {read.file})"
            failure = Failure("checking", "wellstrung", message)
            return PlanResult(read.file, text=read.text, failures=(failure,), readable=False)

    def _check(
        self, read: tree.Read, bench: Bench, drawer: tree.Read | None, *, offer: bool
    ) -> PlanResult:
        if read.tree is None or read.faults:
            return _refused(read, read.faults, readable=False)
        beside = {drawer.file: drawer.text} if drawer is not None else {}
        read, faults = drawers.filled(read, drawer)
        faults = faults or schema.check(read, self._known)
        if faults:
            return _refused(read, faults, beside=beside)
        host = self.host
        plan, faults = build.build(read, host.kinds, host.stitches, bench, drawer)
        if plan is None:
            return _refused(read, faults, beside=beside)
        quantities = Quantities(plan, host.quantities)
        judged = _Judged(self.host, plan, quantities)
        judged.run((*_standing(plan), *steps.simulate(plan), *joins_made.find(plan)))
        spoken = list(_one_cause_each(judged.remarks, self.host.rules))
        found = [
            self._with_true_remedy(plan, remark, remedies, judged.raised) if offer else remark
            for remark, remedies in spoken
        ]
        # what an acceptance fits says nothing of whether a remedy is true
        remarks = _accepted(found, plan, self.host.rules) if offer else found
        return PlanResult(
            file=read.file,
            title=plan.title,
            piece=plan.piece,
            text=read.text,
            beside=beside,
            bench=bench.file,
            remarks=tuple(sorted(remarks, key=_reading_order)),
            held=judged.held,
            unjudged=judged.unjudged,
            quantities=judged.quantities() if self.quantities and offer else {},
            failures=tuple(judged.failures),
            ask=judged.ask if (self.quantities or self.keep) and offer else None,
        )

    def _with_true_remedy(
        self,
        plan: model.Plan,
        remark: Remark,
        remedies: Sequence[Remedy],
        known: Mapping[_Identity, int],
    ) -> Remark:
        """The first remedy that holds: its edits, on a copy, remove the remark and add none."""
        for remedy in remedies:
            if not remedy.edits or self._holds(plan, remark, remedy, known):
                text = f"{remark.remedy}; or {remedy.text}" if remark.remedy else remedy.text
                return replace(remark, remedy=text, edits=remedy.edits)
        return remark

    def _holds(
        self, plan: model.Plan, remark: Remark, remedy: Remedy, known: Mapping[_Identity, int]
    ) -> bool:
        texts = {
            file: tree.replaced(
                text, [(edit.place, edit.new) for edit in remedy.edits if edit.place.file == file]
            )
            for file, text in plan.texts.items()
        }
        read, kept = tree.read_text(texts[plan.file], plan.file), plan.drawer
        changed = drawers.read_text(texts[kept.file], kept.file) if kept is not None else None
        after = self._check(read, plan.bench, changed, offer=False)
        return after.readable and all(
            _identity(left) != _identity(remark)
            and _RANK[left.level] <= known.get(_identity(left), 0)
            for left in after.remarks
            if left.counts
        )


_Identity = tuple[str, tuple[str, ...]]
_RANK: Mapping[Level, int] = {"caution": 0, "warning": 1, "error": 2}


class _Judged:
    """Every rule on every subject of one plan, each guarded alone."""

    def __init__(self, host: Host, plan: model.Plan, quantities: Quantities) -> None:
        self.host = host
        self.ask = Ask(plan, quantities)
        self._quantities = quantities
        self._remarks: dict[tuple[str, Place, str], tuple[Remark, Sequence[Remedy]]] = {}
        self.raised: dict[_Identity, int] = {}
        self._held: dict[tuple[str, tuple[str, ...]], Kept] = {}
        self._unjudged: dict[Unjudged, None] = {}
        self.failures: list[Failure] = []

    @property
    def remarks(self) -> list[tuple[Remark, Sequence[Remedy]]]:
        """What was said, each once, with the remedies offered for it."""
        return list(self._remarks.values())

    @property
    def held(self) -> tuple[Kept, ...]:
        """What was kept, once for the same parts."""
        return tuple(self._held.values())

    @property
    def unjudged(self) -> tuple[Unjudged, ...]:
        """What could not be judged, each once."""
        return tuple(self._unjudged)

    def run(self, subjects: Iterable[Subject]) -> None:
        by_type: dict[type[Subject], list[Subject]] = {}
        for subject in subjects:
            by_type.setdefault(type(subject), []).append(subject)
        for rule in self.host.rules.values():
            for subject in by_type.get(rule.subject, ()):
                self._judge(rule, subject)

    def quantities(self) -> dict[str, Quantity]:
        """Every quantity the plan has the values for; one that breaks is a failure, not a crash."""
        found = {}
        for name in self._quantities.offered():
            try:
                found[name] = self._quantities.get(name)
            except model.Missing:
                continue
            except Exception as error:
                message = f"{type(error).__name__}: {error} (in the quantity {name})"
                self.failures.append(Failure("", "wellstrung", message))
        return found

    def _judge(self, rule: Rule, subject: Subject) -> None:
        try:
            answer = rule.check(subject, self.ask)
            self._take(rule, subject, answer)
        except model.Missing as missing:
            self._unjudged[Unjudged(rule.name, subject.parts, (missing.field,))] = None
        except Exception as error:  # a broken rule must not take the others with it
            self.failures.append(
                Failure(
                    rule.name,
                    self.host.owners[rule.name],
                    f"{type(error).__name__}: {error} (on {', '.join(subject.parts) or 'piece'})",
                )
            )

    def _take(self, rule: Rule, subject: Subject, answer: Answer) -> None:
        if isinstance(answer, Held):
            held = rule.name, subject.parts
            if held not in self._held:
                self._held[held] = Kept(*held, answer.margin, rule.title)
        elif isinstance(answer, Caution):
            self._add(
                Remark(
                    rule.name,
                    "caution",
                    subject.parts,
                    answer.says,
                    answer.place,
                    sources=rule.sources,
                ),
                (),
            )
        elif isinstance(answer, Misfit):
            self._add(_stamped(rule, subject, answer), answer.remedies)

    def _add(self, remark: Remark, remedies: Sequence[Remedy]) -> None:
        rank = self.raised.get(_identity(remark), 0)
        self.raised[_identity(remark)] = max(rank, _RANK[remark.level])
        # the same thing to mend at the same place is one cause, however many joins it spoils
        key = (remark.rule, remark.place, remark.needed or remark.says)
        if key in self._remarks:
            first, remedies = self._remarks[key]
            remark = replace(first, also=tuple(dict.fromkeys((*first.also, *remark.also))))
        self._remarks[key] = (remark, remedies)


def _stamped(rule: Rule, subject: Subject, misfit: Misfit) -> Remark:
    """Level by the tolerance principle, and what the maker can do about a doubtful one."""
    level: Level = "warning" if "warning" in (rule.level, misfit.at_most) else rule.level
    says, cure = misfit.says, ""
    margin = misfit.margin
    if margin is not None:
        verdict = compare(margin, over=rule.over)
        recalled = [leaf.source for leaf in margin.leaves if leaf.grade == FROM_MEMORY]
        if verdict is Verdict.MAY_FAIL:
            level, says = "warning", misfit.may or misfit.says
            if margin.chief_cause is not None:
                cause, effect = margin.chief_cause
                unit = f" {margin.unit}" if margin.unit else ""
                says += f"; most of the doubt is {cause} (± {number(effect)}{unit})"
                cure = cause.cure
        elif recalled and level == "error":
            level = "warning"
            says += f" by a value from memory ({recalled[0]}): check yours"
    return Remark(
        rule=rule.name,
        level=level,
        parts=subject.parts,
        says=says,
        place=misfit.place,
        found=misfit.found,
        needed=misfit.needed,
        remedy=cure,
        working=(*misfit.working, *(margin.working() if margin is not None else ())),
        sources=rule.sources,
        also=tuple(place for place in dict.fromkeys(misfit.also) if place != misfit.place),
        margin=margin,
    )


def _one_cause_each(
    remarks: Sequence[tuple[Remark, Sequence[Remedy]]], rules: Mapping[str, Rule]
) -> Iterator[tuple[Remark, Sequence[Remedy]]]:
    """Drop a remark where a deeper one about the same part speaks, and let that one name it.

    What names no part is about the piece as a whole.
    """
    by_rule: dict[str, list[int]] = {}
    for index, (remark, _) in enumerate(remarks):
        by_rule.setdefault(remark.rule, []).append(index)
    affected: dict[int, dict[str, None]] = {}
    dropped: set[int] = set()
    for index, (remark, _) in enumerate(remarks):
        for deeper in rules[remark.rule].yields_to:
            for other in by_rule.get(deeper, ()):
                parts = remarks[other][0].parts
                if set(parts) & set(remark.parts) or not (parts or remark.parts):
                    affected.setdefault(other, {})[remark.rule] = None
                    dropped.add(index)
    for index, (remark, remedies) in enumerate(remarks):
        if index not in dropped:
            yield replace(remark, affects=tuple(affected.get(index, ()))), remedies


def _accepted(
    remarks: Sequence[Remark], plan: model.Plan, rules: Mapping[str, Rule]
) -> Iterator[Remark]:
    """Mark the warnings that the plan accepts; remark on acceptances that fit nothing."""
    lines = plan.entries("accept")
    used: set[int] = set()
    for remark in remarks:
        fits = [index for index, line in enumerate(lines) if _is_about(line, remark)]
        if fits and remark.level == "warning":
            used.update(fits)
            yield replace(remark, accepted=str(lines[fits[-1]].value["because"]))
        else:
            yield remark
    for index, line in enumerate(lines):
        if index not in used:
            yield _useless(line, [one for one in remarks if _is_about(line, one)], plan, rules)


def _is_about(line: tree.Mapping, remark: Remark) -> bool:
    part = line.value.get("part")
    return bool(line.value["rule"] == remark.rule and part in (None, *remark.parts))


def _useless(
    line: tree.Mapping, about: list[Remark], plan: model.Plan, rules: Mapping[str, Rule]
) -> Remark:
    """What to say of an acceptance that accepts nothing."""
    for name, what, known in (("rule", "rule", rules), ("part", "part", plan.parts)):
        if name not in line.entries or (name == "part" and line.value[name] in plan.beads):
            continue
        word, place = str(line.value[name]), line.entries[name].node.place
        if word not in known:
            near = nearest(word, known)
            otherwise = "`wellstrung rules` lists them" if what == "rule" else "take the line out"
            advice = f"write `{near}`" if near else otherwise
            says = f"there is no {what} called `{word}`: {advice}"
            edits = (Edit(place, near),) if near else ()
            return Remark("plan-shape", "error", (), says, place, word, near or "", advice, edits)
    rule, place = str(line.value["rule"]), line.entries["rule"].node.place
    if about:
        level = about[0].level
        advice = "mend it, or measure" if level == "error" else "take the line out, and heed it"
        says = f"`{rule}` is {article(level)} here, and only a warning can be accepted: {advice}"
    else:
        advice = "take the line out"
        says = f"nothing is left to accept of `{rule}` here: {advice}"
    also = tuple(remark.place for remark in about[:1])
    return Remark("plan-shape", "warning", (), says, place, rule, "", advice, also=also)


def _refused(
    read: tree.Read,
    faults: Iterable[Fault],
    *,
    readable: bool = True,
    beside: Mapping[str, str] | None = None,
) -> PlanResult:
    remarks = [
        Remark(
            fault.rule,
            "error",
            (),
            fault.says,
            fault.place,
            fault.found,
            fault.needed,
            fault.remedy,
            fault.edits,
            also=fault.also,
        )
        for fault in faults
    ]
    value = read.tree.value if read.tree is not None else {}
    return PlanResult(
        file=read.file,
        title=str(value.get("title", "")),
        piece=str(value.get("piece", "")),
        text=read.text,
        beside=beside or {},
        remarks=tuple(sorted(remarks, key=_reading_order)),
        readable=readable,
    )


def _standing(plan: model.Plan) -> tuple[Subject, ...]:
    """Every subject of a plan that does not come from its work steps."""
    parts = (joins.find(plan), on_thread.find(plan), supplies.find(plan), along_the_run.find(plan))
    return tuple(chain.from_iterable(parts))


def _identity(remark: Remark) -> _Identity:
    return remark.rule, remark.parts


def _reading_order(remark: Remark) -> tuple[int, str, int, int, str]:
    """What cannot be made comes first, then from the top of the file down."""
    place = remark.place
    return -_RANK[remark.level], place.file, place.line, place.column, remark.rule
