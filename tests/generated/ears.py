"""Ear wires of every type, and ear posts."""

from __future__ import annotations

from generated import palette
from generated.draft import Draft, Fields
from generated.findings import eye

FOR_EARS = ("niobium", "titanium", "sterling silver", "14k gold", "stainless steel", "plated brass")


def ear_wire(draft: Draft, *, opens: str = "yes") -> str:
    """An ear wire: hook, lever back, hoop or post."""
    fields: Fields = {"kind": "ear wire"}
    draft.maybe(
        90,
        fields,
        type=draft.pick("hook", "hook", "lever back", "hoop", "post", "kidney", "clip-on"),
    )
    fields["wire"] = draft.wire(0.65, 0.9).written
    fields["eye"] = eye(draft, 2.2, 0.8, opens=opens, faces=False)
    draft.maybe(90, fields, length=draft.length(draft.between(14, 24, 2)))
    if fields.get("type") == "hoop" and draft.chance(50):
        bead = palette.other(draft, 2, 4)
        fields["beads"] = bead.name
        draft.maybe(80, fields, count=draft.whole(1, 8))
    _of(draft, fields, 0.4)
    return draft.add(draft.pick("hook", "ear wire", "wire"), fields)


def ear_post(draft: Draft, *, opens: str = "yes") -> str:
    """An ear post, with a pad or an eye."""
    fields: Fields = {"kind": "ear post", "wire": draft.wire(0.7, 0.9).written}
    draft.maybe(30, fields, type="loop")
    draft.maybe(80, fields, length=draft.length(10.0))
    draft.maybe(60, fields, pad=draft.length(draft.between(4, 8, 1)))
    fields["eye"] = eye(draft, 2.0, 0.8, opens=opens)
    draft.maybe(12, fields["eye"], faces=draft.pick("side", "front"), through="0.8 mm")
    draft.maybe(60, fields, drop=draft.length(6.0))
    _of(draft, fields, 0.3)
    return draft.add("post", fields)


def _of(draft: Draft, fields: Fields, grams: float) -> None:
    draft.metalwork(fields, grams)
    draft.maybe(80, fields, metal=draft.pick(*FOR_EARS))
