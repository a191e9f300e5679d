"""The faults of a class by kind, with the students who have each, and what to teach first."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from wellstrung.report.pages.students import Student

#: an error counts for so many warnings in what to teach first
_ERROR = 2
_UNREADABLE = "plan that cannot be read yet"


class Kind(Struct, frozen=True):
    """A kind of fault: what is wrong, why it matters, and who has it, surely or perhaps."""

    fault: str
    why: str
    errors: tuple[str, ...]
    warnings: tuple[str, ...]

    @property
    def students(self) -> tuple[str, ...]:
        """All who have it, each once."""
        return tuple(dict.fromkeys((*self.errors, *self.warnings)))

    @property
    def weight(self) -> int:
        """How much it weighs in what to teach first."""
        return _ERROR * len(self.errors) + len(self.warnings)


def kinds(students: Sequence[Student]) -> list[Kind]:
    """Every kind of fault, the heaviest first; who has an error of it is not warned of it too."""
    found: dict[str, tuple[str, dict[str, None], dict[str, None]]] = {}
    for student in students:
        for remark in student.plan.numbered:
            if not remark.counts:
                continue
            slip = remark.level == "slip"
            fault = _UNREADABLE if slip else remark.fault
            _, errors, warnings = found.setdefault(fault, (remark.why, {}, {}))
            (warnings if remark.level == "warning" else errors)[student.name] = None
    every = [
        Kind(fault, why, tuple(errors), tuple(name for name in warnings if name not in errors))
        for fault, (why, errors, warnings) in found.items()
    ]
    return sorted(every, key=lambda kind: (-kind.weight, -len(kind.errors), kind.fault))


def shared(found: Sequence[Kind]) -> list[Kind]:
    """The kinds that more than one student has: what to teach the group, in that order.

    What keeps a plan from being read differs from plan to plan, and is each student's own.
    """
    return [kind for kind in found if len(kind.students) > 1 and kind.fault != _UNREADABLE]
