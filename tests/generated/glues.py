"""Adhesives of all types."""

from __future__ import annotations

from typing import Any

from generated.draft import Draft, Fields

TYPES = ("two-part epoxy", "cyanoacrylate", "UV resin", "contact cement")


#: how long to wait for each type before a piece is worn
CURES = {
    "two-part epoxy": "24 h",
    "cyanoacrylate": "1 day",
    "UV resin": "24 h",
    "contact cement": "2 days",
}


def glued(draft: Draft, part: str, to: str, *, joints: int = 2) -> None:
    """The steps that glue a cap or a clasp on, and wait until it holds."""
    glue = adhesive(draft)
    more: dict[str, Any] = {"to": to, "with_": glue}
    draft.maybe(97, more, joints=joints)
    if draft.chance(70):
        more["prepared"] = draft.pick(
            ["roughened", "degreased"], ["roughened", "degreased", "eye plugged"], ["degreased"]
        )
    draft.maybe(8, more, mixes=draft.pick(1, 2))
    draft.step("glue", "glue", part, **more)
    cures = CURES[draft.parts[glue]["type"]] if draft.chance(92) else draft.pick("1 h", "12 h")
    if "room" in draft.parts[glue]:
        cures = "3 days"
    if draft.chance(97):
        draft.step("wait", "wait", time=cures)


def on_layers(draft: Draft, stone: str) -> None:
    """The steps that glue a stone on its foundation before it is sewn, and on its backing after."""
    glue = draft.add("glue", {"kind": "adhesive", "type": "contact cement"})
    draft.step("make", "glue", stone, to="foundation", with_=glue)
    draft.step("make", "wait", time=draft.pick("3 h", "1 h"))
    draft.step("glue", "glue", stone, to="backing", with_=glue)
    draft.step("wait", "wait", time="2 days")


def adhesive(draft: Draft, *, likely: bool = True) -> str:
    """An adhesive; most plans use epoxy, which suits a cap."""
    type_ = draft.pick(TYPES[0], TYPES[0], TYPES[0], *TYPES) if likely else draft.pick(*TYPES)
    fields: Fields = {"kind": "adhesive", "type": type_}
    if draft.chance(25):
        fields["usable"] = draft.pick("5 min", "30 min", "4 min")
        draft.maybe(60, fields, mixing=draft.pick("1 min", "90 s"))
        draft.maybe(60, fields, handling=draft.pick("1 h", "30 min"))
        draft.maybe(60, fields, full_cure=draft.pick("24 h", "16 h", "36 h"))
    draft.maybe(12, fields, bridges=draft.length(draft.pick(0.5, 1.0, 0.2)))
    draft.maybe(15, fields, room=draft.pick("15 °C", "20 °C", "23 °C", "68 °F"))
    return draft.add("glue", fields)
