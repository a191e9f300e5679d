"""The plan in the making: its sections in the order of a file, and what several parts share."""

from __future__ import annotations

from typing import Any

from wellstrung.start.leaves import Choose, Noted, Plan
from wellstrung.start.question import Answers
from wellstrung.start.words import Fields, is_seed

UNKNOWN = "you did not know: this is usual"


class Draft:
    """The sections of a plan, filled by what makes its parts."""

    def __init__(self, answers: Answers) -> None:
        self.answers = answers
        self.head: Plan = {}
        self.beads: Plan = {}
        self.parts: Plan = {}
        self.run: list[Any] = []
        self.hung: list[Any] = []
        self.work: list[Any] = []
        self.supplies: list[Any] = []
        #: steps that come after the work on the main part and before the ends are closed
        self.before_ends: list[Any] = []

    def plan(self) -> Plan:
        """The whole plan, without the sections that nothing is in."""
        sections = {"beads": self.beads, "parts": self.parts, "run": self.run, "hung": self.hung}
        more = {"work": self.work, "supplies": self.supplies}
        wanted: Plan = {
            name: self.head.pop(name) for name in ("class", "budget") if name in self.head
        }
        filled: Plan = {name: inside for name, inside in {**sections, **more}.items() if inside}
        note = (
            "what you have, as `{bead: ..., pack: 10 g}`; `wellstrung supplies` lists what to buy"
        )
        filled["supplies"] = Noted(self.supplies or None, note)
        return {"plan": 1, **self.head, **filled, **wanted}

    def bead(self, fields: Fields, name: str) -> str:
        """A bead of the palette by a name; the same bead has one name."""
        for known, others in self.beads.items():
            if _same(others, fields):
                return known
        name = self._called(fields, name)
        self.beads[name] = fields
        self._on_hand(fields, name)
        return name

    def repeat(self, beads: list[Fields], *names: str) -> list[str]:
        """Beads in their order, by name."""
        return [
            self.bead(one, names[number] if number < len(names) else f"bead {number + 1}")
            for number, one in enumerate(beads)
        ]

    def _called(self, fields: Fields, name: str) -> str:
        """A bead by the last word of its colour, material or type, or by its place in the work."""
        own = ("colour",) if is_seed(fields) else ("colour", "material", "type")
        words = [str(fields[one]).split()[-1] for one in own if one in fields]
        free = [one for one in words if one.isalpha() and one not in (*self.beads, *_PARTS)]
        return free[0] if free else name

    def _on_hand(self, fields: Fields, name: str) -> None:
        for one in self.answers["have"] or ():
            if one.bead == fields and one.grams:
                self.supplies.append({"bead": name, "pack": one.grams, "packs": 1})
            elif one.bead == fields and one.pieces:
                self.supplies.append({"bead": name, "count": one.pieces})

    def metal(self, fields: Fields) -> Fields:
        """The fields of a part of the metal that was chosen."""
        return {**fields, "metal": self.answers["metal"]}

    def value(self, name: str, choose: Choose) -> Any:
        """What the author answered on the screen, or the values that the checker chooses from."""
        given = self.answers.given.get(name)
        if given is not None and given.known:
            return Noted(given.value.text, "as you said")
        return choose

    def asked(self, name: str, value: Any, why: str) -> Any:
        """A value with its reason, or with the remark that the author did not know it."""
        return Noted(value, UNKNOWN if self.answers.unsure(name) else why)

    def do(self, verb: str, part: str, **more: Any) -> None:
        """A step of the work."""
        self.work.append({"do": verb, "part": part, **more})


#: names that parts have here
_PARTS = frozenset(
    ("rope", "band", "strand", "clasp", "cap", "ring", "loop", "glue", "line", "crimp", "tip")
) | {"cone", "link", "bar", "pin", "hook", "top", "leg", "button", "slide", "bail", "pendant"}


def _same(one: Any, other: Fields) -> bool:
    return {key: _bare(value) for key, value in one.items()} == other


def _bare(value: Any) -> Any:
    return value.value if isinstance(value, Noted) else value
