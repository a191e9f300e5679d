"""Thread on its spool, and what each type of thread is like."""

from __future__ import annotations

from collections.abc import Mapping

from wellstrung import tables
from wellstrung.derived import amounts
from wellstrung.model.parts import Kind, Role, Traits
from wellstrung_schemas import fragment

#: of two passes of a gel-spun line one still holds when an edge has cut the other: common practice;
#: one page shows a fused line cut by a crystal, saved by its second pass
_GEL_SPUN = Traits(resists_cuts=True)

#: what differs at the bench from plain thread; a word for several types has what they share
_TRAITS: Mapping[str, Traits] = {
    "flexible wire": Traits(steel=True),
    "memory wire": Traits(steel=True, springs=True),
    "elastic": Traits(stretches=True),
    "fused": _GEL_SPUN,
    "gel-spun braided": _GEL_SPUN,
    "braided": _GEL_SPUN,
}

THREAD = Kind(
    "thread",
    fragment("thread"),
    Role.THREAD,
    quantities={"needed": amounts.thread_needed, "on_hand": amounts.thread_on_hand},
    types={name: _TRAITS.get(name, Traits()) for name in tables.load("line_types").rows},
)
