"""One plan whose sizes are changed in place, so that only what depends on a size is judged again.

Each size is first left unsettled (`common.unsettled`): what can be found and judged all the same
holds at every value, and is kept. What looked at the size is judged anew at each value that is
tried. A size that is looked at where the plan is built or its subjects are found has no such short
way, nor has one that is said in a phrase: the changed text is then read as a plan of its own.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any, NamedTuple

from wellstrung.common.places import Place
from wellstrung.common.unsettled import Unsettled, UnsettledValue
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging.checker import Checker
from wellstrung.judging.judge import Judge
from wellstrung.judging.result import Identity
from wellstrung.model.contradictions import within
from wellstrung.model.item import node_at
from wellstrung.model.plan import Plan
from wellstrung.reading import parser, tree
from wellstrung.rulebook import Rule, Subject
from wellstrung.subjects.alone import Piece, names
from wellstrung.subjects.find import standing_but_names

#: a remark and its rank, rule by rule as far as one reads on
Ranks = Iterable[tuple[Identity, int]]
#: the remarks about a part when one of its sizes is written like this; None where it is no plan
Raised = Callable[[str], Ranks | None]


class _Size(NamedTuple):
    """A size in the tree: the group that it is in, its node, and what is written there."""

    group: tree.Node
    name: str
    node: tree.Scalar
    value: Any
    text: str

    def put(self, value: Any, text: str) -> None:
        """Let another value stand there."""
        self.node.value, self.node.text = value, text
        self.group.value[self.name] = value


class Unsettling:
    """A plan with sizes that are tried at other values, each found by its part, path and place."""

    def __init__(
        self, checker: Checker, plan: Plan, sizes: Iterable[tuple[str, tuple[str, ...], Place]]
    ) -> None:
        self._installed, raw = checker.installed, parser.read_text(plan.text, plan.file)
        read = checker.spelled(raw, plan)
        assert read is not None and read.tree is not None and raw.tree is not None
        self._sizes: dict[tuple[str, Place], _Size] = {}
        self._fixed: dict[str, dict[Identity, int]] = {}
        for part, path, place in sizes:
            self._fixed[part] = {}
            for way in (("measured", *path), path):  # what was measured comes first
                found = _found(read.tree, raw.tree, ("parts", part, *way), place)
                if found is not None:
                    self._sizes[part, place] = found
        self._leave_open(self._sizes.values())
        self._plan, subjects = self._built(checker, read, plan)
        self._quantities = Quantities(self._plan, self._installed.quantities)
        self._open: dict[str, list[tuple[Rule, Subject]]] = {part: [] for part in self._fixed}
        for rule in self._installed.rules.values():
            for subject in subjects:
                if type(subject) is rule.subject:
                    self._begin(rule, subject)
        self._kept = self._now()

    def as_written(self, part: str) -> Mapping[Identity, int]:
        """The rank of each remark about a part and about the whole piece, nothing changed."""
        self._back_to(self._kept)
        self._leave_open([])
        found = dict(self._fixed[part])
        for identity, rank in self._each(self._open[part]):
            found[identity] = max(rank, found.get(identity, 0))
        return found

    def of(self, part: str, place: Place) -> Raised | None:
        """The remarks that another size of the part brings, until the next is asked for.

        Those that every size brings are left out. None where it has no short way.
        """
        size = self._sizes.get((part, place))
        if size is None:
            return None
        self._back_to(self._kept)
        self._leave_open([size])
        looking = [one for one in self._open[part] if not self._judged(*one, {})]
        kept = self._now()

        def raised(written: str) -> Ranks | None:
            self._back_to(kept)
            size.put(written, written)
            if any(within(self._plan.parts[part])):
                return None
            return self._each(looking)

        return raised

    def let_go(self) -> None:
        """Free its memory at once."""
        self._plan.let_go()

    def _built(
        self, checker: Checker, read: tree.Read, plan: Plan
    ) -> tuple[Plan, tuple[Subject, ...]]:
        """The plan and its subjects; a size that they look at is settled."""
        while True:
            try:
                built = checker.rebuilt(read, plan, within_parts=False)
                assert built is not None
                subjects = standing_but_names(built)
            except Unsettled as looked:
                (at,) = [at for at, one in self._sizes.items() if one.node.value is looked.value]
                size = self._sizes.pop(at)
                size.put(size.value, size.text)
            else:
                kept = built.cache.kept()
                self._leave_open([])  # a size is looked at among all texts, and names no part
                subjects += tuple(names(built))
                self._leave_open(self._sizes.values())
                built.cache.back_to(kept)
                return built, subjects

    def _begin(self, rule: Rule, subject: Subject) -> None:
        """Judge a subject that looks at no size; note another for each part that it is about."""
        parts = self._fixed if isinstance(subject, Piece) else subject.parts
        about, raised = [part for part in parts if part in self._fixed], dict[Identity, int]()
        looks = about and not self._judged(rule, subject, raised)
        for part in about:
            self._fixed[part].update(raised)
            if looks:
                self._open[part].append((rule, subject))

    def _each(self, looking: list[tuple[Rule, Subject]]) -> Iterator[tuple[Identity, int]]:
        """What is said of these subjects; one that is remarked on is the first to be judged next.

        A rule that a size breaks is broken by most others that are tried.
        """
        for one in tuple(looking):
            raised = dict[Identity, int]()
            self._judged(*one, raised)
            if raised:
                looking.insert(0, looking.pop(looking.index(one)))
            yield from raised.items()

    def _judged(self, rule: Rule, subject: Subject, raised: dict[Identity, int]) -> bool:
        """Whether a subject could be judged; adds the ranks of what is said of it."""
        judge = Judge(self._installed, self._plan, self._quantities)
        try:
            judge.judge(rule, subject)
        except Unsettled:
            return False
        for identity, rank in judge.raised.items():
            raised[identity] = max(rank, raised.get(identity, 0))
        return not judge.failures

    def _leave_open(self, sizes: Iterable[_Size]) -> None:
        """Leave these sizes unsettled, and all others as they are written."""
        for size in self._sizes.values():
            size.put(size.value, size.text)
        for size in sizes:
            unsettled = UnsettledValue()
            size.put(unsettled, unsettled)

    def _now(self) -> tuple[Any, Any]:
        return self._plan.cache.kept(), self._quantities.kept()

    def _back_to(self, kept: tuple[Any, Any]) -> None:
        answers, quantities = kept
        self._plan.cache.back_to(answers)
        self._quantities.back_to(quantities)


def _found(
    spelled: tree.Mapping, raw: tree.Mapping, path: tuple[str, ...], place: Place
) -> _Size | None:
    """A size at a path and a place, if the author wrote it there as it is read."""
    group, node = node_at(spelled, *path[:-1]), node_at(spelled, *path)
    if group is None or not isinstance(node, tree.Scalar) or node.place != place:
        return None
    if node is not node_at(raw, *path):
        return None
    return _Size(group, path[-1], node, node.value, node.text)
