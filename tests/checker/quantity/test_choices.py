"""What makers choose, made as favourably as any of them makes it."""

from __future__ import annotations

import pytest

from wellstrung.common.choice import Choice
from wellstrung.quantity.arithmetic import exact, leaf, product
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.choices import chosen, freed

PACE = leaf(
    "pace", 3.0, "", [Spread(Cause("pace"), 1.0, 1.0)], choice=Choice(2.0, 4.0, "a teacher")
)
FACTOR = exact("hold factor", 5.0, choice=Choice(1.0, 5.0, "the load at rest", careful=True))


def test_a_choice_that_enters_twice_is_made_once() -> None:
    room = exact("class", 100.0) - product("weave", "", exact("hands", 10.0), PACE)
    room = room - product("glue", "", exact("hands", 5.0), PACE)
    assert room.middle == 100 - 45
    assert freed(room).middle == 100 - 30
    assert freed(room).worst == (70, 70), "what is chosen varies no more"
    assert [leaf.name for leaf, _ in chosen(room)] == ["pace"]


def test_a_careful_choice_is_kept_unless_it_is_asked_for() -> None:
    spare = exact("bears", 3.0, "N") - product("pull", "N", exact("load", 1.0, "N"), FACTOR)
    assert not chosen(spare) and freed(spare) is spare
    assert freed(spare, careful=True).middle == 2


@pytest.mark.parametrize(("ease", "left"), [(Choice(6.0, 25.0), 2.0), (Choice(20.0, 25.0), -5.0)])
def test_the_choice_that_leaves_most_may_be_the_default(ease: Choice, left: float) -> None:
    least = exact("least ease", 13.0, "mm", choice=ease)
    room = exact("room", 8.0, "mm") - least
    assert freed(room).middle == max(left, room.middle)
