"""Ring sizes against the printed chart, and what is no ring size."""

from __future__ import annotations

import pytest

from wellstrung.common import units

#: round the inside, mm: `Ring size` of en.wikipedia.org and its mirrors (liquisearch.com), US and
#: ISO to a tenth, UK letters to the nearest quarter of a US size
CHART = {
    "US 0": 36.5, "US 1": 39.1, "US 3": 44.2, "US 4": 46.8, "UK A": 37.8, "UK B": 39.1,
    "UK C": 40.4, "UK E": 42.9, "UK F": 44.2, "UK G": 45.5, "UK H": 46.8, "UK I": 48.0,
    "EU 49": 49.0, "ISO 72": 72.0, "US 7": 54.4,
}  # fmt: skip


@pytest.mark.parametrize(("size", "round_it"), CHART.items())
def test_a_size_of_the_chart(size: str, round_it: float) -> None:
    off = 0.7 if size.startswith("UK") else 0.15  # a quarter of a US size is 0.64 mm
    assert units.finger(size).value == pytest.approx(round_it, abs=off)


@pytest.mark.parametrize("size", ["7 US", "size US 7", "us 7", "54.4 mm"])
def test_as_people_write_it(size: str) -> None:
    assert units.finger(size).value == pytest.approx(54.4, abs=0.05)


@pytest.mark.parametrize(
    ("size", "says"),
    [
        ("7", "whose ring size"),
        ("N 1/2", "whose ring size"),
        ("US N", "no"),
        ("UK 7", "no"),
        ("US 60", "no size of a finger"),
        ("size", "whose ring size"),
    ],
)
def test_what_is_no_size_is_answered_with_what_to_write(size: str, says: str) -> None:
    with pytest.raises(units.UnitFault, match=says) as fault:
        units.finger(size)
    assert "`US 7`" in str(fault.value)
