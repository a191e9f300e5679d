"""Thread, wire and needle of a part, and the spool that it comes from."""

from __future__ import annotations

from typing import Any

from wellstrung.start import said
from wellstrung.start.leaves import Choose, Noted
from wellstrung.start.making.draft import Draft
from wellstrung.start.words import Fields

#: what a tail and a working length are for: the sources are in the table `stitch_facts`
_TAIL = Noted("26 cm", "long enough to sew on what closes it")
_WORKING = Noted("1.6 m", "as most makers cut it")
#: what a spool or card of each type usually holds: common practice, no source
_SPOOLS = {"fused": "45 m", "gel-spun": "45 m", "nylon": "58 m", "silk": "2 m", "elastic": "5 m"}
_SPOOL = "the usual spool or card: write what yours holds"


def thread(*, short: bool = False) -> Fields:
    """The thread of a part: from the one spool that the plan has."""
    fields: Fields = {"spool": "line"}
    return fields if short else {**fields, "tail": _TAIL, "working_length": _WORKING}


def sewn(draft: Draft) -> Fields:
    """Thread and needle of a woven part."""
    return {"thread": thread(), "needle": draft.answers["needle"]}


def strung(tail: str, why: str) -> Fields:
    """Thread or wire of a strand."""
    return {"thread": {"spool": "line", "tail": Noted(tail, why)}}


def spool(draft: Draft, threads: tuple[str, ...]) -> None:
    """The spool: the thread that was named, or the first of those usual that will do."""
    chosen = draft.answers["thread"]
    if chosen is not None:
        draft.parts["line"] = _spool(chosen)
    else:
        spools = tuple(_spool(said.thread(one)) for one in threads)
        draft.parts["line"] = Choose(spools, "", of_all=True)


def _spool(fields: Fields) -> Any:
    kind = fields["type"].split()[0]
    return {"kind": "thread", **fields, "length": Noted(_SPOOLS.get(kind, "9 m"), _SPOOL)}
