"""What a rule looks at, one at a time, and the eyes by which parts meet."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from wellstrung.common.places import Place
from wellstrung.model.item import Bead
from wellstrung.model.parts import EyeField, Part, Role
from wellstrung.model.plan import Hung, RunEntry


class Subject(Struct, frozen=True):
    """What a rule looks at: the parts it is about and where the plan says so.

    Two subjects that differ in their place alone are one: the same cap on both ends is judged once.
    """

    place: Place

    @property
    def parts(self) -> tuple[str, ...]:
        """Names of the parts and beads in its fields, the one most likely to be changed first."""
        return named(*self._compared())

    def _compared(self) -> tuple[object, ...]:
        return tuple([getattr(self, name) for name in self.__struct_fields__[1:]])

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Subject) or type(self) is not type(other):
            return False
        return self._compared() == other._compared()

    def __hash__(self) -> int:
        return hash(self._compared())


class Eyes(Struct, frozen=True):
    """A set of eyes of one part; `key` as the kind calls it."""

    part: Part
    key: str

    @property
    def field(self) -> EyeField:
        """What the kind says of them."""
        return self.part.kind.eyes[self.key]

    @property
    def count(self) -> int:
        """How many eyes there are; one where the kind has just one."""
        if self.field.counted is not None:
            return self.field.counted(self.part)
        return self.part.count(*self.path, "count", default=1) if self.path else 1

    @property
    def stated_count(self) -> int:
        """How many eyes the plan gives; raises Missing where it gives no count."""
        if self.field.counted is not None:
            return self.field.counted(self.part)
        return self.part.count(*self.path, "count", default=None if self.field.several else 1)

    @property
    def woven(self) -> bool:
        """Whether they are the holes of beads along a woven edge."""
        return self.field.counted is not None or self.field.along

    @property
    def count_place(self) -> Place:
        """Where the plan gives their count, or would give it."""
        if not self.woven:
            return self.part.place_of(*self.path, "count")
        by = self.field.counted_by
        return self.part.place_of(next((field for field in by if self.part.has(field)), by[0]))

    @property
    def path(self) -> tuple[str, ...]:
        """Where their fields stand in the part."""
        return self.part.eye_path(self.key)

    @property
    def words(self) -> str:
        """The eyes in the author's words."""
        name = self.key.replace("_", " ")
        if self.count == 1 and name.endswith("eyes"):
            name = name.removesuffix("s")
        if len(name) > 1:
            return f"the {name} of `{self.part.name}`"
        return f"the eye of `{self.part.name}.{name}`"

    def quantity(self, what: str) -> str:
        """The name of one of their quantities."""
        return f"{self.part.name}.{self.key}.{what}"


#: a closed curve of metal, by which a part meets its neighbour: an eye, or a ring
Side = Eyes | Part


def named(*values: object) -> tuple[str, ...]:
    """Names of the parts and beads that some values are or belong to, each once, in their order."""
    return tuple(dict.fromkeys(_names(values)))


def _names(value: object) -> Iterator[str]:
    if isinstance(value, Part | Bead):
        yield value.name
    elif isinstance(value, Eyes | RunEntry | Hung):
        yield value.part.name
    elif type(value) is tuple:
        for one in value:
            yield from _names(one)


def own_eyes(part: Part) -> list[str]:
    """The sets of eyes by which a part runs and hangs: all but those that only carry.

    A piece of cup chain has none: nothing goes through a cup.
    """
    if part.cut_from is not None and part.cut_from.traits.cups:
        return []
    eyes = part.kind.eyes.items()
    return [key for key, eye in eyes if not (eye.counted or eye.carries or eye.along)]


def eyes_facing(entry: RunEntry, *, onwards: bool = False) -> Eyes | None:
    """The eyes by which a place in the run meets its neighbour; chain goes `onwards` by its last.

    Other parts meet both their neighbours by their first set of eyes.
    """
    keys = [entry.half] if entry.half else own_eyes(entry.part)
    if not keys or entry.part.traits.slides:
        return None  # knots have no eye
    by_its_last = onwards is not entry.turned and entry.part.traits.two_ends
    return Eyes(entry.part, keys[-1] if by_its_last else keys[0])


def side_facing(entry: RunEntry, *, onwards: bool = False) -> Side | None:
    """The ring or the eye by which a place in the run meets its neighbour."""
    is_ring = entry.part.kind.role is Role.RING
    return entry.part if is_ring else eyes_facing(entry, onwards=onwards)


def last_eyes(part: Part) -> str:
    """The last of its own sets of eyes, by which others hang from it; empty where it has none."""
    return next(reversed(own_eyes(part)), "")


def hanging_eyes(part: Part) -> Eyes | None:
    """The eyes a part hangs by: its first set."""
    key = next(iter(own_eyes(part)), "")
    return Eyes(part, key) if key else None


def shut_by_wraps(part: Part) -> bool:
    """Whether the loops of a wire are wrapped: each is open until then, and never again."""
    return part.has("loops") and part.text("loops") == "wrapped"


def opens(side: Side) -> bool | None:
    """Whether a ring or an eye can be opened; None where the plan does not say.

    As the traits of its kind say, of chain those of the chain itself; other eyes by their `opens`.
    """
    part = side if isinstance(side, Part) else side.part
    if isinstance(side, Eyes) and side.woven:
        return False
    by_kind = (part.cut_from or part).traits.opens
    if by_kind is not None or isinstance(side, Part):
        return by_kind
    path = side.path
    if not part.has(*path, "opens"):
        return True if side.field.opens else None
    return part.text(*path, "opens") == "yes"
