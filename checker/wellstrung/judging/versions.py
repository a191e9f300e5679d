"""What is known of a plan since an earlier version of it: records alone."""

from __future__ import annotations

from typing import NamedTuple

from msgspec import Struct

from wellstrung.judging.remark import Remark


class Fate(NamedTuple):
    """A remark on either of two versions of a plan, with what else there is to say of it."""

    remark: Remark
    note: str = ""


class Change(NamedTuple):
    """A field, a size or an amount that two versions of a plan have in different ways.

    `of` is a part, a bead, something that is bought, or the `piece`; `before` and `after` are in
    the author's words and units. `was` and `now` are in the base unit, None where it is no number.
    """

    of: str
    what: str
    before: str
    after: str
    unit: str = ""
    was: float | None = None
    now: float | None = None


class Since(Struct, frozen=True):
    """What became of the remarks on an earlier version of a plan, and what else changed.

    `had` says how many remarks affected the outcome then. Each of them is in one of `mended`,
    `accepted`, `unknown` (not checked now) and `still`, which also holds the remarks that only
    followed from others then.
    """

    file: str
    outcome: str
    readable: bool
    had: int
    mended: tuple[Fate, ...] = ()
    accepted: tuple[Fate, ...] = ()
    unknown: tuple[Fate, ...] = ()
    new: tuple[Fate, ...] = ()
    still: tuple[Fate, ...] = ()
    cautions: tuple[Fate, ...] = ()
    #: values that checks waited for and have now, and those that they wait for only now
    answered: tuple[tuple[str, int], ...] = ()
    opened: tuple[tuple[str, int], ...] = ()
    renamed: tuple[tuple[str, str], ...] = ()
    came: tuple[str, ...] = ()
    went: tuple[str, ...] = ()
    changed: tuple[Change, ...] = ()
    #: what was not compared, or not by the same measure
    notes: tuple[str, ...] = ()
