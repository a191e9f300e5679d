"""What the talk says of a draft: values as they stand, what is open, the outcome."""

from __future__ import annotations

from wellstrung.start.dialogue import Dialogue
from wellstrung.start.leaves import plain
from wellstrung.start.question import Question
from wellstrung.start.trial import Tried


def not_known(dialogue: Dialogue, question: Question) -> str:
    """What is done about an answer that is not known."""
    proposed = question.proposes(dialogue.answers)
    return f"I take {proposed} for now" if proposed else "left open; the plan says what to measure"


#: where a value that the checker chose stands in the plan
_PLACES = {
    "wire": ("link", "wire"),
    "cap": ("cap", "bore"),
    "ring": ("ring", "outside"),
    "crimp": ("crimp", "inside"),
    "bead tip": ("tip", "hole"),
    "cone": ("cone", "bore"),
}


def settled(tried: Tried, name: str) -> str:
    """The value that the checker chose, with why, as it stands in the draft."""
    if name == "thread":
        line = plain(tried.plan["parts"]["line"])
        return " ".join(str(line[key]) for key in ("type", "size", "rating") if key in line)
    part, field = _PLACES.get(name, ("", ""))
    entry = tried.plan["parts"].get(part)
    entry = getattr(entry, "value", entry)
    value = entry.get(field) if entry else None
    if value is None:
        return "-"
    return f"{value.value} - {value.why}" if value.value is not None else str(value.why)


def verdict(tried: Tried) -> str:
    """The piece, its outcome, and how much is open."""
    said = f"{tried.plan['title']}: {tried.result.outcome}"
    waiting = len(tried.result.unjudged)
    if not waiting:
        return said
    checks = "1 check waits" if waiting == 1 else f"{waiting} checks wait"
    return f"{said}; {checks} for what is not known yet"
