"""The hours of a piece, from a plan's own steps and a bench's rates."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

import wellstrung_schemas as schemas
from pages import keeper
from running import SAMPLES
from wellstrung.derived.of_plan import Quantities
from wellstrung.model.build import build
from wellstrung.model.item import Missing
from wellstrung.model.plan import Plan
from wellstrung.plugins.host import Host
from wellstrung.quantity.working import working
from wellstrung.reading import parser
from wellstrung.reading.bench import read_text
from wellstrung.reading.settings import RATE_SPREAD, RATES, Bench
from wellstrung.rulebook import Ask
from wellstrung.work.dependencies import for_times
from wellstrung.work.hours import HOURS, fastest_order, hands
from wellstrung.work.minutes import times_done
from wellstrung.work.schedule import overlapping

WORK = """\
work:
  - {do: weave, part: rope}
  - {do: slide, part: carrier, onto: rope}
  - {do: glue, part: cap, to: rope, with: glue, joints: 2}
  - {do: wait, time: 24 h}
  - {do: cut, part: drop, every: 8}
  - {do: hang, part: drop, from: frame, by: small}
  - {do: hang, part: frame, from: rope, by: carrier}
  - {do: close ring, part: small, joins: [cap, toggle.a]}
  - {do: wear}
supplies:
"""


@pytest.fixture
def planned(collar: str, installed: Host) -> Callable[..., Plan]:
    """The collar with other work, by a bench."""

    def plan(work: str = WORK, bench: str = "bench: 1") -> Plan:
        head, _, rest = collar.partition("work:\n")
        text = head + work + rest.partition("supplies:\n")[2]
        settings, faults = read_text(bench, "bench.yaml", installed.stitches)
        assert settings is not None, faults
        read = parser.read_text(text, "plan.yaml")
        made, wrong = build(read, installed.kinds, installed.stitches, settings)
        assert made is not None, wrong
        return made

    return plan


def asked(plan: Plan) -> Quantities:
    """The quantities of a plan with the times that `work` brings."""
    return Quantities(plan, {time.name: time for time in HOURS})


OWN = (
    "bench: 1\nrates: {tubular peyote: 10 beads per min, glue: 4 min, slide: 1 min, cut: 2 min,"
    " hang: 3 min, close ring: 1 min}\npaces: {student: 2}"
)


def test_hands_by_the_rates_of_the_bench(planned: Callable[..., Plan]) -> None:
    ask = asked(planned(bench=OWN))
    beads = ask.get("rope.beads").middle
    # weave, slide, 2 joints, 7 pieces cut, 7 hung, 1 frame (two rings of two eyes), 3 rings
    by_hand = beads / 10 + 1 + 2 * 4 + 7 * 2 + 7 * 3 + 1 * 3 + 3 * 1
    assert ask.get("piece.bench_time").middle == pytest.approx(by_hand)
    assert ask.get("piece.student_time").middle == pytest.approx(2 * by_hand)
    assert ask.get("piece.finish_as_written").middle == pytest.approx(by_hand + 1440)
    # the fringe is cut and hung on its frame while the glue cures
    early = ask.get("piece.finish_earliest")
    assert early.middle == pytest.approx(by_hand + 1440 - 7 * 2 - 7 * 3)
    assert working(early)[-1].endswith("[steps in the order 1, 2, 3, 4, 5, 6, 7, 8, 9]")


def after(plan: Plan) -> list[set[int]]:
    """What each step waits for, step by step."""
    return [set(task.after) for task in for_times(asked(plan), [1.0] * len(plan.steps)).tasks]


def test_each_step_waits_for_the_last_on_what_it_works_on(planned: Callable[..., Plan]) -> None:
    assert after(planned()) == [
        set(),  # weave
        {0},  # slide: the rope
        {1},  # glue: the rope and what is on it
        {2},  # the wait for the joint
        set(),  # cut the fringe
        {4},  # hang it from the frame, which is not yet on the rope
        {2, 3, 5},  # the frame on the rope, when the joint has cured
        {2, 6},  # the ring pulls on the joint too
        {2, 7},  # to wear is about all of it
    ]


@pytest.mark.parametrize(
    ("names", "waits"),
    [
        (", joins: [cap, toggle.a]", {2, 3}),
        (", around: carrier", {3}),
        ("", {2, 3, 5}),  # it may be any of the rings, those of the fringe too
    ],
)
def test_a_ring_that_is_closed_waits_for_what_it_joins(
    names: str, waits: set[int], planned: Callable[..., Plan]
) -> None:
    ring = f"  - {{do: close ring, part: small{names}}}\n"
    lines = [line for line in WORK.splitlines(keepends=True) if "close ring" not in line]
    lines.insert(7, ring)  # after the fringe is hung from its frame
    assert after(planned("".join(lines)))[6] == waits


def test_a_wait_for_nothing_that_is_glued_holds_up_everything(
    planned: Callable[..., Plan],
) -> None:
    work = (
        "work:\n  - {do: weave, part: rope}\n  - {do: wait, time: 1 h}\n"
        "  - {do: cut, part: drop}\nsupplies:\n"
    )
    assert after(planned(work)) == [set(), {0}, {1}]


def test_a_second_wait_is_for_the_same_joint(planned: Callable[..., Plan]) -> None:
    work = (
        "work:\n  - {do: glue, part: cap, to: rope, with: glue}\n  - {do: wait, time: 1 h}\n"
        "  - {do: wait, time: 23 h}\n  - {do: cut, part: drop}\nsupplies:\n"
    )
    plan = planned(work)
    assert after(plan) == [set(), {0}, {1}, set()]
    tasks = for_times(asked(plan), [1, 0, 0, 1]).tasks
    assert [task.rest for task in tasks] == [0, 60, 1380, 0]


#: a joint that only the weaving of another part gives time to cure
WOVEN_MEANWHILE = """\
work:
  - {do: glue, part: cap, to: rope, with: glue, joints: 2}
  - {do: cut, part: drop, takes: 24 h}
  - {do: hang, part: frame, from: rope, by: carrier}
  - {do: wear}
supplies:
"""


def test_no_order_loads_a_joint_before_it_has_cured(planned: Callable[..., Plan]) -> None:
    ask = asked(planned(WOVEN_MEANWHILE, OWN))
    # hanging the frame needs nothing of the fringe, but the joint needs 2 h before it
    work = for_times(ask, [time.middle for time in hands(ask)])
    times = overlapping(work, fastest_order(ask).order)
    assert times.starts[2] >= times.over[0] + 120
    assert ask.get("piece.finish_earliest").middle == pytest.approx(8 + 1440 + 3)
    assert ask.get("piece.finish_as_written").middle == pytest.approx(8 + 1440 + 3)


def test_the_time_between_two_steps_is_that_which_is_written(planned: Callable[..., Plan]) -> None:
    plan = planned(WOVEN_MEANWHILE)
    ask = Ask(plan, asked(plan))
    glue, cut, hang, _ = plan.steps
    assert ask.minutes_between(glue, cut) == 0, "a step without a time is quick"
    assert ask.minutes_between(glue, hang) == ask.minutes_between(glue) == 1440
    assert ask.minutes_between(cut) == 0


def test_of_many_steps_the_hours_are_found_quickly(planned: Callable[..., Plan]) -> None:
    many = "".join("  - {do: measure, part: frame}\n" for _ in range(2000))
    ask = asked(planned(f"work:\n{many}supplies:\n"))
    assert ask.get("piece.finish_earliest").middle == 6000


def test_what_is_written_beats_the_rate(planned: Callable[..., Plan]) -> None:
    work = "work:\n  - {do: weave, part: rope, takes: 4 h}\n  - {do: pack}\nsupplies:\n"
    ask = asked(planned(work, "bench: 1\npaces: {maker: 1.5, student: 3}"))
    time = ask.get("piece.bench_time")
    assert time.middle == 240 + 1.5 * RATES["pack"].value, "a pace is for rates only"
    assert ask.get("piece.student_time").middle == 3 * time.middle
    assert any("written `4 h`" in line for line in working(time))


def test_a_rate_from_memory_is_doubtful_and_one_of_the_bench_is_not(
    planned: Callable[..., Plan],
) -> None:
    work = "work:\n  - {do: pack}\n  - {do: measure, part: rope}\nsupplies:\n"
    ask = asked(planned(work, "bench: 1\nrates: {pack: 6 min}"))
    time = ask.get("piece.bench_time")
    assert [cause.name for cause in time.causes] == ["rate of measure"]
    off = RATE_SPREAD * RATES["measure"].value
    assert time.worst == pytest.approx((time.middle - off, time.middle + off))
    assert "write `rates: {measure: 4 min}` in bench.yaml" in time.causes[0].cure
    assert any("pack = 6 min; bench.yaml:2, written `6 min`" in line for line in working(time))


def test_rings_are_counted_where_they_are_closed(planned: Callable[..., Plan]) -> None:
    lines = {
        "{do: close ring, part: small, joins: [cap, toggle.b]}": 4,
        "{do: close ring, part: small}": 7,
        "{do: close ring, part: small, times: 3}": 3,
        "{do: close ring, part: carrier, around: rope}": 1,
        "{do: hang, part: frame, times: 2}": 2,
        "{do: hang, part: frame}": 1,
        "{do: cut, part: drop}": 7,
        "{do: finish thread, part: rope}": 2,
        "{do: finish thread, part: rope, ends: 4}": 4,
    }
    work = "work:\n" + "".join(f"  - {line}\n" for line in lines) + "supplies:\n"
    plan = planned(work)
    assert [times_done(plan, step) for step in plan.steps] == list(lines.values())


def test_a_weave_takes_as_long_as_its_rings_take_to_close() -> None:
    ask = keeper().check_file(SAMPLES / "chain_locker_bracelet.yaml").ask
    assert ask is not None
    part = next(part for part in ask.plan.parts.values() if part.kind.name == "ring weave")
    rings = ask.of(part, "rings").middle
    weave = next(step for step in ask.plan.steps if step.verb == "weave")
    by_hand = hands(ask.quantities)[weave.number - 1]
    assert by_hand.middle == pytest.approx(rings * RATES["close ring"].value)


def test_without_steps_or_beads_there_is_no_time(planned: Callable[..., Plan]) -> None:
    with pytest.raises(Missing, match="`work`, the steps in their order"):
        asked(planned("supplies:\n")).get("piece.bench_time")
    with pytest.raises(Missing):
        asked(planned("work:\n  - {do: string, part: cap}\nsupplies:\n")).get("piece.bench_time")


def test_every_verb_has_a_rate_or_takes_no_hands() -> None:
    for verb in schemas.verbs():
        rate = {"weave": "weaving", "edge": "weaving", "string": "stringing"}.get(verb, verb)
        assert rate in RATES or verb in ("wait", "wear"), verb
    assert Bench().rates is RATES and all(
        "from memory" in rate.reason or "common practice" in rate.reason for rate in RATES.values()
    )


@pytest.mark.parametrize("makes", [1, 2])
def test_hands_make_every_piece_that_the_plan_makes(makes: int) -> None:
    path = Path(__file__).parents[1] / "report" / "steps" / "quayside_pearls.yaml"
    text = path.read_text(encoding="utf-8").replace("plan: 1\n", f"plan: 1\nmakes: {makes}\n")
    ask = keeper().check_text(text).ask
    assert ask is not None
    knots = ask.of(ask.plan.parts["strand"], "beads").middle - 1
    by_the_rates = {"knot": 1.2 * knots, "crimp": 2 * 2.0, "close ring": 2 * 1.0}
    assert hands(ask.quantities)[0].middle == pytest.approx(makes * by_the_rates["knot"])
    bench_time = ask.quantities.get("piece.bench_time").middle
    assert bench_time == pytest.approx(makes * sum(by_the_rates.values()))


@pytest.mark.parametrize(
    ("work", "rows"),
    [
        ("[{do: string, part: row}]", [3]),
        ("[{do: string, part: row, times: 2}]", [2]),
        ("[{do: string, part: row}, {do: string, part: row}]", [1, 1]),
    ],
)
def test_a_step_without_a_count_strings_every_row(work: str, rows: list[int]) -> None:
    text = (
        "plan: 1\ntitle: Three rows\npiece: bracelet\n"
        "beads: {pea: {type: other, outside: 5 mm, length: 5 mm, hole: 1 mm}}\n"
        "parts:\n  row: {kind: strand, stitch: strung, beads: pea, count: 10}\n"
        "  cone: {kind: cone, bore: 12 mm, hole: 2 mm, depth: 8 mm, length: 16 mm}\n"
        f"run: [cone, {{strands: [row, row, row]}}, cone]\nwork: {work}\n"
    )
    ask = keeper().check_text(text).ask
    assert ask is not None
    each = 10 / RATES["stringing"].value
    taken = [step.middle for step in hands(ask.quantities)]
    assert taken == pytest.approx([each * count for count in rows])
