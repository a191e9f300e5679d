"""Adhesives of all types."""

from __future__ import annotations

from generated.draft import Draft, Fields

TYPES = ("two-part epoxy", "cyanoacrylate", "UV resin", "contact cement")


def adhesive(draft: Draft, *, likely: bool = True) -> str:
    """An adhesive; most plans use epoxy, which suits a cap."""
    type_ = draft.pick(TYPES[0], TYPES[0], TYPES[0], *TYPES) if likely else draft.pick(*TYPES)
    fields: Fields = {"kind": "adhesive", "type": type_}
    if draft.chance(25):
        fields["usable"] = draft.pick("5 min", "30 min", "4 min")
        draft.maybe(60, fields, mixing=draft.pick("1 min", "90 s"))
        draft.maybe(60, fields, handling=draft.pick("1 h", "30 min"))
        draft.maybe(60, fields, full_cure=draft.pick("24 h", "2 days", "16 h"))
    draft.maybe(12, fields, bridges=draft.length(draft.pick(0.5, 1.0, 0.2)))
    draft.maybe(15, fields, room=draft.pick("15 °C", "20 °C", "23 °C", "68 °F"))
    return draft.add("glue", fields)
