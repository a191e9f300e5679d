"""Strands side by side that meet a loop each: what stands between is there once for each."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import takewhile

from msgspec.structs import replace

from wellstrung.model.parts import Role
from wellstrung.model.plan import RunEntry

#: what joins the end of a strand to a loop
BETWEEN = frozenset({Role.RING, Role.CRIMP, Role.TIP, Role.SLEEVE})


def between(run: Sequence[RunEntry], index: int, way: int) -> tuple[RunEntry, ...]:
    """The rings, crimps, tips and coils from a place on, one `way` or the other."""
    onwards = run[index + 1 :] if way > 0 else run[:index][::-1]
    return tuple(takewhile(lambda entry: entry.part.kind.role in BETWEEN, onwards))


def in_rows(run: Sequence[RunEntry]) -> tuple[RunEntry, ...]:
    """The run with how many stand side by side at each place, and which parts are turned."""
    found = list(run)
    for index, entry in enumerate(run):
        if count := entry.part.traits.side_by_side:
            found[index] = replace(entry, rows=entry.part.count(*count, default=1))
        for way in (1, -1) if _loops(entry) > 1 else ():
            far = index + way * (len(between(run, index, way)) + 1)
            rows = _rows(entry, run[far]) if 0 <= far < len(run) else 1
            for at in range(index + way, far, way) if rows > 1 else ():
                found[at] = replace(found[at], rows=rows)
        if entry.part.traits.gathers:
            behind, ahead = (_many(run, index, way) for way in (-1, 1))
            found[index] = replace(found[index], turned=behind > ahead)
    return tuple(found)


def _many(run: Sequence[RunEntry], index: int, way: int) -> int:
    """How much there is to gather at one side of a bar: strands, a band, a line, or nothing."""
    far = index + way * (len(between(run, index, way)) + 1)
    if not 0 <= far < len(run):
        return 0
    role = run[far].part.kind.role
    return len(run[far].parts) if run[far].beside else {Role.BAND: 2, Role.STRAND: 1}.get(role, 0)


def _loops(entry: RunEntry) -> int:
    """How many loops a place has on one side: a connector has half of its eyes at either end."""
    part = entry.part
    if entry.half:
        return part.count(*part.eye_path(entry.half), "count", default=1)
    if part.traits.gathers:
        return part.count(*part.eye_path(list(part.kind.eyes)[-1]), "count", default=1)
    sets = list(part.kind.eyes.values())
    if part.kind.role is not Role.EYED or len(sets) > 1 or not sets or sets[0].strung:
        return 1
    return part.count(*sets[0].path, "count", default=2) // 2 if sets[0].path else 1


def _rows(entry: RunEntry, far: RunEntry) -> int:
    """How many of what stands between two places: one for each strand, or for each loop."""
    if far.beside:
        return len(far.parts)
    return _loops(entry) if far.part.kind.role is Role.BAND or _loops(far) > 1 else 1
