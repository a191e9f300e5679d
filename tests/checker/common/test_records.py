"""Frozen records behave as the standard library's do."""

from __future__ import annotations

import dataclasses

import pytest

from wellstrung.common.records import field, record, replace


@record
class Base:
    place: int = field(compare=False)

    @property
    def words(self) -> str:
        return f"at {self.place}"


@record
class Ring(Base):
    wire: float
    closing: str = "open"
    notes: dict[str, int] = field(default_factory=dict)


@record
class Eye(Base):
    wire: float


@record(eq=False)
class Part:
    name: str


def test_the_fields_of_a_base_come_first() -> None:
    ring = Ring(3, 0.8)
    assert (ring.place, ring.wire, ring.closing, ring.notes) == (3, 0.8, "open", {})
    assert ring.words == "at 3"
    assert repr(ring) == "Ring(place=3, wire=0.8, closing='open', notes={})"


def test_nothing_can_be_set_again() -> None:
    ring = Ring(3, 0.8)
    with pytest.raises(AttributeError, match="`wire` of a record is set once"):
        ring.wire = 1.0  # type: ignore[misc]
    with pytest.raises(AttributeError):
        del ring.wire
    assert ring.wire == 0.8


@pytest.mark.parametrize("arguments", [{}, {"place": 1}, {"place": 1, "wire": 1, "colour": "red"}])
def test_what_is_missing_or_unknown_is_refused(arguments: dict[str, object]) -> None:
    with pytest.raises(TypeError, match=r"Ring.__init__\(\)"):
        Ring(**arguments)  # type: ignore[arg-type]


def test_every_record_has_a_default_of_its_own() -> None:
    one, other = Ring(1, 0.8), Ring(1, 0.8)
    one.notes["seen"] = 1
    assert other.notes == {}


def test_records_are_equal_by_class_and_by_what_they_compare() -> None:
    assert Eye(1, 0.8) == Eye(2, 0.8)
    assert hash(Eye(1, 0.8)) == hash(Eye(2, 0.8))
    assert Eye(1, 0.8) != Eye(1, 0.9)
    assert Base(1) == Base(2)
    unlike: list[object] = [Eye(1, 0.8), 0.8]
    assert Ring(1, 0.8) not in unlike
    assert Eye(1, 0.8) not in unlike[1:]


def test_a_record_may_be_equal_to_itself_alone() -> None:
    part = Part("cap")
    assert part == part
    assert part != Part("cap")
    assert {part: 1}[part] == 1


def test_a_copy_changes_what_is_named() -> None:
    ring = Ring(3, 0.8, "soldered", {"seen": 1})
    assert vars(replace(ring, wire=1.0)) == {**vars(ring), "wire": 1.0}
    with pytest.raises(TypeError):
        replace(ring, colour="red")


def test_the_standard_library_agrees() -> None:
    @dataclasses.dataclass(frozen=True)
    class Theirs:
        place: int = dataclasses.field(compare=False)
        wire: float = 0.8

    @record
    class Ours:
        place: int = field(compare=False)
        wire: float = 0.8

    for theirs, ours in ((Theirs(1), Ours(1)), (Theirs(1, wire=2), Ours(1, wire=2))):
        assert vars(theirs) == vars(ours)
        assert repr(theirs).replace("Theirs", "Ours") == repr(ours)
    assert Theirs.wire == Ours.wire
    assert not hasattr(Ours, "place")
