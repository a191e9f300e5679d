"""The times of the work as named quantities: what `work` brings to the quantities of a piece.

The times themselves are imported when one is asked for: few runs ask.
"""

from __future__ import annotations

from collections.abc import Callable

from wellstrung.derived.of_plan import Brought, PieceQuantity, Quantities, StepQuantity
from wellstrung.quantity.value import Quantity


def _time(what: str) -> Callable[[Quantities], Quantity]:
    def work_out(ask: Quantities) -> Quantity:
        from wellstrung.work import work_time

        found: Quantity = getattr(work_time, what)(ask)
        return found

    return work_out


def _step(ask: Quantities, number: int) -> Quantity:
    from wellstrung.work import work_time

    return work_time.student_step(ask, number)


TIMES: tuple[Brought, ...] = (
    PieceQuantity("bench_time", _time("hands_on")),
    PieceQuantity("student_time", _time("student_time")),
    PieceQuantity("class_time", _time("class_time")),
    PieceQuantity("finish_as_written", _time("as_written")),
    PieceQuantity("finish_earliest", _time("earliest")),
    StepQuantity("step", _step),
)
