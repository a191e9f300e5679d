"""Thread, wire and needle of a part, and the spool that it comes from."""

from __future__ import annotations

from wellstrung.start.leaves import Noted
from wellstrung.start.making.draft import Draft
from wellstrung.start.words import Fields

#: what a tail and a working length are for: the sources are in the table `stitch_facts`
_TAIL = Noted("26 cm", "long enough to sew on what closes it")
_WORKING = Noted("1.6 m", "as most makers cut it")
_SPOOLS = {"fused": "45 m", "gel-spun": "45 m", "nylon": "58 m", "silk": "2 m", "elastic": "5 m"}


def thread(draft: Draft, *, short: bool = False) -> Fields:
    """The thread that was chosen, as the fields of a part."""
    fields: Fields = dict(draft.answers["thread"])
    return fields if short else {**fields, "tail": _TAIL, "working_length": _WORKING}


def sewn(draft: Draft, *, tail: bool = True) -> Fields:
    """Thread and needle of a woven part."""
    return {"thread": thread(draft, short=not tail), "needle": draft.answers["needle"]}


def strung(draft: Draft, tail: str, why: str) -> Fields:
    """Thread or wire of a strand."""
    return {"thread": {**draft.answers["thread"], "tail": Noted(tail, why)}}


def spool(draft: Draft) -> None:
    """The spool, of the usual length; what is on hand is counted against it."""
    fields = draft.answers["thread"]
    usual = next((long for kind, long in _SPOOLS.items() if fields["type"].startswith(kind)), "9 m")
    known = {key: value for key, value in fields.items() if key in ("type", "rating", "size")}
    long = Noted(usual, "the usual spool or card: write what yours holds")
    draft.parts["line"] = {"kind": "thread", **known, "length": long}
