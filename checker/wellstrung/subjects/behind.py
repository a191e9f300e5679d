"""A brooch pin and what it is sewn or glued behind: the two, and the step that joins them."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.wording import in_yaml
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan
from wellstrung.subjects.base import Subject
from wellstrung.subjects.joins_made import JoinAtWork

_HOLDS = ("sew", "glue")


class PinBehind(Subject, frozen=True):
    """A brooch pin, and what it is sewn or glued behind."""

    pin: Part
    carrier: Part


def find(plan: Plan) -> Iterator[PinBehind]:
    """Every brooch pin with what carries it."""
    for pin in plan.parts.values():
        carrier = pin.part("behind")
        if carrier is not None:
            yield PinBehind(pin.key.place, pin, carrier)


def put_on(plan: Plan) -> Iterator[JoinAtWork]:
    """How each is put on, where the plan has steps."""
    for join in find(plan) if plan.steps else ():
        yield _put_on(plan, join.pin, join.carrier)


def _put_on(plan: Plan, pin: Part, carrier: Part) -> JoinAtWork:
    glued = pin.has("held") and pin.text("held") == "glued"
    verb = "glue" if glued else "sew"
    glue = next((one for one in plan.parts.values() if one.kind.role is Role.GLUE), None)
    by = f", with: {in_yaml(glue.name)}" if glued and glue else ""
    line = f"{{do: {verb}, part: {in_yaml(pin.name)}, to: {in_yaml(carrier.name)}{by}}}"
    words = f"`{pin.name}` lies behind `{carrier.name}`"
    made = tuple(plan.steps_that(*_HOLDS, part=pin))
    return JoinAtWork(pin.key.place, (pin, carrier), words, f"{verb}s it on", line, made)
