"""Places in a file, edits at them, and faults that the first stages find there."""

from __future__ import annotations

from typing import NamedTuple

from msgspec import Struct


class Place(NamedTuple):
    """A stretch of a plan file; lines and columns count from 1, the end is exclusive."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int

    def holds(self, other: Place) -> bool:
        """Whether another place lies within this one."""
        return (
            self.file == other.file
            and (self.line, self.column) <= (other.line, other.column)
            and (other.end_line, other.end_column) <= (self.end_line, self.end_column)
        )


class Edit(Struct, frozen=True):
    """Replace the text at `place` by `new`."""

    place: Place
    new: str


class Fault(Struct, frozen=True):
    """Something that keeps a plan from being judged, found in reading, shape or model.

    `rule` is `plan-file` (cannot be read) or `plan-shape` (reads, but is not a plan);
    `also` holds further places that the same fault is about.
    """

    rule: str
    says: str
    place: Place
    found: str = ""
    needed: str = ""
    remedy: str = ""
    also: tuple[Place, ...] = ()
    edits: tuple[Edit, ...] = ()

    @property
    def in_a_line(self) -> str:
        """The fault with what is needed, where the message does not say that itself."""
        listed = self.needed.startswith("one of ") and self.needed not in self.says
        return f"{self.says}: write {self.needed}" if listed else self.says
