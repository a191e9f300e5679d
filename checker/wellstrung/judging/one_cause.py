"""One cause, one remark: a remark that follows from a deeper one is dropped."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec.structs import replace

from wellstrung.judging.result import Remark
from wellstrung.rulebook import Remedy, Rule


def one_cause_each(
    remarks: Sequence[tuple[Remark, Sequence[Remedy]]], rules: Mapping[str, Rule]
) -> Iterator[tuple[Remark, Sequence[Remedy]]]:
    """The remarks without those that yield to a deeper one, which names the dropped rules.

    Both must be about the same: all parts of one are parts of the other. A remark without parts is
    about the whole piece.
    """
    by_rule: dict[str, list[int]] = {}
    for index, (remark, _) in enumerate(remarks):
        by_rule.setdefault(remark.rule, []).append(index)
    parts = [frozenset(remark.parts) for remark, _ in remarks]
    affected: dict[int, dict[str, None]] = {}
    dropped: set[int] = set()
    for index, (remark, _) in enumerate(remarks):
        for deeper in rules[remark.rule].yields_to:
            for other in by_rule.get(deeper, ()):
                if _about_the_same(parts[index], parts[other]):
                    dropped.add(index)
                    affected.setdefault(other, {})[remark.rule] = None
    for index, (remark, remedies) in enumerate(remarks):
        if index not in dropped:
            yield replace(remark, affects=tuple(affected.get(index, ()))), remedies


def _about_the_same(one: frozenset[str], other: frozenset[str]) -> bool:
    return (one <= other or other <= one) if one and other else one == other
