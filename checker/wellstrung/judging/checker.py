"""One plan through all stages: read, fill from its drawer, check its shape, build, judge."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path

from msgspec.structs import replace

from wellstrung.common.places import Edit, Fault
from wellstrung.common.wording import advice_in
from wellstrung.derived.learnt import used
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging import failures
from wellstrung.judging.acceptances import accepted
from wellstrung.judging.alike import together
from wellstrung.judging.judge import Judge
from wellstrung.judging.one_cause import one_cause_each
from wellstrung.judging.one_size import one_size_each
from wellstrung.judging.result import RANK, Identity, PlanResult, Remark
from wellstrung.judging.trials import MOST_TRIALS, Trials
from wellstrung.judging.true_remedies import edited, with_true_remedies
from wellstrung.model import build
from wellstrung.model.plan import Plan
from wellstrung.reading import drawer as drawers
from wellstrung.reading import parser, schema, tree
from wellstrung.reading.json_plan import as_json, is_json
from wellstrung.reading.most import too_many
from wellstrung.reading.settings import Bench
from wellstrung.rulebook.installed import Installed
from wellstrung.short_forms import spelled_out
from wellstrung.subjects.alone import Piece
from wellstrung.subjects.find import find, standing


class Checker:
    """Checks plans by all that is installed.

    With `quantities` a result lists every quantity of its plan. With `keep`, or with `quantities`,
    it keeps the plan itself, for lists and drawings. `trials` says how many changed copies
    of a plan may be checked to try remedies.
    """

    def __init__(
        self,
        installed: Installed,
        *,
        bench: Bench | None = None,
        quantities: bool = False,
        keep: bool = False,
        trials: int = MOST_TRIALS,
    ) -> None:
        self.installed = installed
        self.bench = bench or Bench(limits=installed.limits)
        self.quantities = quantities
        self.keep = keep
        self._trials = trials
        self._known = schema.Known(installed.fragments)

    def check_file(
        self, path: Path, bench: Bench | None = None, drawer: tree.Read | None = None
    ) -> PlanResult:
        """The result of a file, whatever it holds.

        A bench that is given replaces the checker's own, a drawer the one that the plan names.
        """
        read = parser.read(path)
        drawer = drawer or drawers.named_by(read, path.parent, self._known.kinds)
        return self.check_read(read, bench, drawer)

    def check_text(
        self, text: str, file: str = "plan.yaml", drawer: tree.Read | None = None
    ) -> PlanResult:
        """The result of a plan given as text, with its drawer if it has one."""
        read = parser.read_text(text, file)
        return self.check_read(read, self.bench, drawer or drawers.named_by(read, None))

    def check_read(
        self, read: tree.Read, bench: Bench | None, drawer: tree.Read | None
    ) -> PlanResult:
        """The result of a plan that was read; a bench that is given replaces the checker's own.

        An error in the checker itself is a failure of the plan, which then never passes.
        """
        try:
            return _json_as_json(self._check(read, bench or self.bench, drawer, offer=True))
        except Exception as error:
            failure = failures.of_stage(read.file, error)
            return PlanResult(read.file, text=read.text, failures=(failure,), readable=False)

    def raised_about(self, text: str, plan: Plan, part: str) -> Mapping[Identity, int] | None:
        """The rank of each remark about one part and about the whole piece, in a changed text.

        `plan` is the plan before the change; None if the changed text is no longer a plan.
        """
        read = self.spelled(parser.read_text(text, plan.file), plan)
        changed = self.rebuilt(read, plan) if read is not None else None
        if changed is None:
            return None
        judged = self._judge(changed)
        judged.run(one for one in standing(changed) if part in one.parts or isinstance(one, Piece))
        changed.let_go()
        return judged.raised

    def spelled(self, read: tree.Read, plan: Plan) -> tree.Read | None:
        """A changed text of a plan, filled from its drawer and in the plan's own words."""
        read, faults, _ = self._filled(read, plan.drawer)
        read, said = self._spelled_out(read)
        return None if faults or said else read

    def rebuilt(self, read: tree.Read, plan: Plan, *, within_parts: bool = True) -> Plan | None:
        """The changed plan of a text that is `spelled`; None where it is no plan."""
        kinds, stitches = self.installed.kinds, self.installed.stitches
        of = read, kinds, stitches, plan.bench, plan.drawer
        return build.build(*of, within_parts=within_parts)[0]

    def _spelled_out(self, read: tree.Read) -> tuple[tree.Read, tuple[Fault, ...]]:
        return spelled_out(read, self._known.kinds, self.installed.stitches)

    def _filled(self, read: tree.Read, drawer: tree.Read | None) -> drawers.Filled:
        """The plan with what it takes from its drawer, which is spelled out before."""
        if drawer is not None and not drawer.faults:
            drawer, said = self._spelled_out(drawer)
            if drawers.is_list(drawer.file):
                from wellstrung.reading import stock_list  # most plans have none

                slips = stock_list.slips(drawer, self._known.kinds)
                said = (*said, *_elsewhere(slips, said))
            if said:
                return drawers.Filled(read, said)
        return drawers.filled(read, drawer)

    def _built(
        self, read: tree.Read, bench: Bench, drawer: tree.Read | None
    ) -> tuple[Plan | None, tuple[Fault, ...]]:
        return build.build(read, self.installed.kinds, self.installed.stitches, bench, drawer)

    def _judge(self, plan: Plan) -> Judge:
        return Judge(self.installed, plan, Quantities(plan, self.installed.quantities))

    def _check(
        self, read: tree.Read, bench: Bench, drawer: tree.Read | None, *, offer: bool
    ) -> PlanResult:
        if read.tree is None or read.faults:
            return _refused(read, read.faults)
        if too_long := too_many(read.tree):
            return _refused(read, too_long)
        beside = {drawer.file: drawer.text} if drawer is not None else {}
        beside.pop(read.file, None)  # of a drawer that could not be found
        read, faults, prices = self._filled(read, drawer)
        if prices:
            bench = replace(bench, prices={**prices, **bench.prices})
        read, said = self._spelled_out(read)
        shape = (*said, *_elsewhere(schema.check(read, self._known), said))
        not_taken, faults = faults, faults or shape
        if faults:
            kinds, stitches = self.installed.kinds, self.installed.stitches
            names = build.names_beside(read, (*not_taken, *shape), kinds, stitches, bench)
            return _refused(read, (*faults, *_elsewhere(names, said)), beside)
        plan, faults = self._built(read, bench, drawer)
        if plan is None:
            return _refused(read, faults, beside)
        judged, rules = self._judge(plan), self.installed.rules
        judged.run(find(plan))

        def try_edits(edits: Sequence[Edit]) -> PlanResult:
            changed, changed_drawer = edited(plan, edits, self._known.kinds)
            return self._check(changed, bench, changed_drawer, offer=False)

        remarks: Iterable[Remark]
        if offer:
            found = together(one_cause_each(judged.remarks, rules), plan)
            found = one_size_each(found, judged.remarks)
            found.sort(
                key=lambda one: _reading_order(one.remark)
            )  # what to fix first is tried first
            trials = Trials(try_edits, self._trials, sum(map(len, plan.texts.values())))
            cured = list(with_true_remedies(found, judged.raised, trials))
            remarks = accepted(cured, plan, rules)
        else:  # an acceptance has no say in whether a remedy is true
            remarks = [remark for remark, _ in one_cause_each(judged.remarks, rules)]
        kept = (self.quantities or self.keep) and offer
        result = PlanResult(
            file=read.file,
            title=plan.title,
            piece=plan.piece,
            maker=str(plan.tree.value.get("maker", "")),
            text=read.text,
            beside=beside,
            notes=(*(drawer.notes if drawer is not None else ()), *_doubts(bench)),
            bench=bench.file,
            swatches=used(plan),
            remarks=tuple(sorted(remarks, key=_reading_order)),
            held=judged.held,
            unjudged=judged.unjudged,
            quantities=judged.quantities() if self.quantities and offer else {},
            failures=tuple(judged.failures),
            ask=judged.ask if kept else None,
            raised=judged.raised,
        )
        if not kept:
            plan.let_go()
        return result


def _doubts(bench: Bench) -> Iterator[str]:
    """What is to be measured again of the bench's swatches."""
    for place, says in bench.learnt.doubts if bench.learnt is not None else ():
        yield f"{place.file}:{place.line} {says}"


def _elsewhere(faults: Iterable[Fault], said: Iterable[Fault]) -> Iterator[Fault]:
    """The faults at places that have none yet: each word gets one message."""
    places = {fault.place for fault in said}
    return (fault for fault in faults if fault.place not in places)


def _refused(
    read: tree.Read,
    faults: Iterable[Fault],
    beside: Mapping[str, str] | None = None,
) -> PlanResult:
    """The result of a file that is no plan: its faults as slips."""
    remarks = [
        Remark(
            fault.rule,
            "slip",
            (),
            fault.says,
            fault.place,
            fault.found,
            fault.needed,
            fault.remedy or advice_in(fault.says),
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
        maker=str(value.get("maker", "")),
        text=read.text,
        beside=beside or {},
        remarks=tuple(sorted(remarks, key=_reading_order)),
        readable=False,
    )


def _json_as_json(result: PlanResult) -> PlanResult:
    """The result with edits to files in JSON written as JSON."""
    texts = {result.file: result.text, **result.beside}
    files = {file for file, text in texts.items() if is_json(text)}
    if not files:
        return result

    def written(edit: Edit) -> Edit:
        if edit.place.file not in files:
            return edit
        line = tree.BREAK.split(texts[edit.place.file])[edit.place.line - 1]
        return replace(edit, new=as_json(edit.new, line[: edit.place.column - 1]))

    remarks = [replace(one, edits=tuple(map(written, one.edits))) for one in result.remarks]
    return replace(result, remarks=tuple(remarks))


def _reading_order(remark: Remark) -> tuple[int, str, int, int, str]:
    """Errors first, then warnings and cautions, each from the top of the file down."""
    place = remark.place
    return -RANK[remark.level], place.file, place.line, place.column, remark.rule
