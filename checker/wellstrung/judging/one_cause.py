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

    Both must be about the same part; a remark without parts is about the whole piece.
    """
    about: dict[tuple[str, str | None], list[int]] = {}
    for index, (remark, _) in enumerate(remarks):
        for name in remark.parts or (None,):
            about.setdefault((remark.rule, name), []).append(index)
    affected: dict[int, dict[str, None]] = {}
    dropped: set[int] = set()
    for index, (remark, _) in enumerate(remarks):
        for deeper in rules[remark.rule].yields_to:
            for name in remark.parts or (None,):
                deep = about.get((deeper, name), ())
                if deep:
                    dropped.add(index)
                for other in deep:
                    affected.setdefault(other, {})[remark.rule] = None
    for index, (remark, remedies) in enumerate(remarks):
        if index not in dropped:
            yield replace(remark, affects=tuple(affected.get(index, ()))), remedies
