"""Instructions for a student: every verb has its words, and nothing that does not fit is used."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

import wellstrung_schemas as schemas
from generated.plans import seeded
from pages import ALL, checked, keeper
from running import ROOT, SAMPLES, SHARED, Pinned, Run
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.model.parts import Role
from wellstrung.report.pages import making_words, step_tools, step_words
from wellstrung.report.pages.steps import Instruction, instructions, steps
from wellstrung.report.pages.time_line import Row, time_line
from wellstrung.report.pages.work_order import Done, Order, in_words
from wellstrung.what_if.work_found import steps_of, with_work

COLLAR = SHARED / "slack_tide_collar.yaml"
ORLA = SHARED / "lantern_collar.yaml"
CLASS = SAMPLES / "class"
PLANS = sorted((Path(__file__).parent / "steps").glob("*.yaml"))
PINNED = [
    COLLAR,
    *PLANS,
    SAMPLES / "spindrift_earrings.yaml",
    SAMPLES / "ebb_line_three_strand.yaml",
]
#: roles of a part that a step makes bead by bead
MADE = {
    kind.role
    for kind in keeper().installed.kinds.values()
    if kind.traits.made_by in ("weave", "string") or kind.role is Role.DROP
}


def said(one: Instruction) -> str:
    return " | ".join(one.says)


@cache
def of(path: Path) -> tuple[Instruction, ...]:
    return tuple(instructions(checked(path)))


def without_work(path: Path) -> PlanResult:
    """A sample with its steps left out."""
    text = re.sub(r"(?ms)^work:\n(?:  .*\n|\s*#.*\n)+", "", path.read_text(encoding="utf-8"))
    return keeper().check_text(text)


def test_every_verb_has_its_words_and_tools_and_no_other() -> None:
    assert set(step_words.WORDS) == set(step_tools.TOOLS) == set(schemas.verbs())


def test_memory_wire_is_cut_with_its_own_shears_alone() -> None:
    result = checked(ROOT / "tests" / "ordinary" / "memory_wire_in_words.yaml")
    assert result.ask is not None
    string, loops, _ = (" ".join(step_tools.tools(step)) for step in result.ask.plan.steps)
    assert "memory wire shears" in string and "memory wire shears" in loops
    assert not {"scissors", "flush cutters"} & {*string.split(" "), *loops.split(", ")}
    says = [said(one) for one in instructions(result)]
    assert says[0].startswith("File both cut ends smooth | Turn a loop in one of them first")
    assert "against the curve of the coil" in says[1]


def test_every_way_to_prepare_a_cap_has_its_words() -> None:
    prepared = schemas.verbs()["glue"]["properties"]["prepared"]["items"]["enum"]
    assert set(step_words.PREPARED) == set(prepared)


def test_every_role_that_is_woven_or_strung_says_how() -> None:
    assert set(making_words.HOW) == MADE


@pytest.mark.slow
def test_every_step_of_any_plan_says_something_of_every_kind_and_stitch() -> None:
    kinds, verbs, stitches = set(), set(), set()
    checker = Checker(keeper().installed, quantities=True, trials=0)
    for text in seeded(240):
        result = checker.check_text(text)
        assert result.ask is not None
        plan = result.ask.plan
        for one, step in zip(instructions(result), plan.steps, strict=True):
            assert one.held or one.says, (text, one.what)
            assert not re.search(r"\bNone\b|  |\(\)|``| ,", said(one)), said(one)
            verbs.add(step.verb)
            kinds |= {part.kind.name for part in step.parts.values()}
            stitches |= {part.stitch.name for part in step.parts.values() if part.stitch}
    assert verbs == set(schemas.verbs()) - {"edge"}  # a test below has it
    # tests/checker/stitches/test_netting.py and test_hexagon.py have them
    seldom = {"hexagon weave", "netting", "vertical netting"}
    assert stitches >= set(keeper().installed.stitches) - seldom
    roles = {keeper().installed.kinds[name].role for name in kinds}
    named = {
        Role.THREAD,
        Role.CORE,
        Role.CHAIN,
        Role.LOOSE,
        Role.TIP,
        Role.CONE,
        Role.SLEEVE,
        Role.COVER,
    }
    assert roles >= set(Role) - named, set(Role) - named - roles


@pytest.mark.parametrize("path", PINNED, ids=lambda one: one.stem)
def test_the_words_of_a_sample(path: Path, pinned: Pinned) -> None:
    lines = []
    for one in of(path):
        lines += [f"{one.number}. {one.what}" + (f" ({one.hands})" if one.hands else "")]
        lines += [f"   {says}" for says in (*one.held, *one.says)]
        lines += [f"   meanwhile: {'; '.join(one.meanwhile)}"] if one.meanwhile else []
        lines += [f"   measure: {check.what}" for check in one.checks]
        lines += [f"   care: {says[:60]}" for says in one.care]
    name = Path(__file__).parent / "steps" / f"{path.stem}.txt"
    pinned(name, "\n".join(lines) + "\n")


@pytest.mark.parametrize(
    ("fields", "says"),
    [
        ("{do: weave, part: rope, times: 2}", "weave `rope`, 2 times"),
        ("{do: finish thread, part: rope, ends: 3}", "finish thread of `rope`, 3 ends"),
        ("{do: slide, part: carrier, onto: rope}", "slide `carrier` onto `rope`"),
        (
            "{do: glue, part: cap, to: rope, with: glue, joints: 2}",
            "glue `cap` to `rope` with `glue`, 2 joints",
        ),
        ("{do: wait, time: 24 h}", "wait 24 h"),
        (
            "{do: hang, part: drop, from: frame, by: small, times: 7}",
            "hang `drop` from `frame` by `small`, 7 times",
        ),
        ("{do: close ring, part: small, around: rope}", "close ring `small` around `rope`"),
        ("{do: sew, part: toggle, to: rope, times: 1}", "sew `toggle` to `rope`, 1 time"),
        ("{do: wear}", "wear"),
    ],
)
def test_a_step_names_all_that_it_is_about(fields: str, says: str) -> None:
    text = COLLAR.read_text(encoding="utf-8").replace("  - {do: wear}", f"  - {fields}")
    plan = keeper().check_text(text).ask
    assert plan is not None and in_words(plan.plan.steps[-1]) == says


def test_the_time_line_of_the_maker_is_drawn_at_the_pace_of_the_maker() -> None:
    """The maker's two steps are 10 and 30 min; the student is slower at the first alone."""
    done = (
        Done(1, "weave", 0.0, 10.0, 0.0, 0.0, 90.0),
        Done(2, "sew", 10.0, 30.0, 0.0, 90.0, 30.0),
    )
    order = Order(done, 40.0, 120.0)

    def bars(*, student: bool) -> list[tuple[float, float]]:
        svg = time_line("line", [Row("row", order, student=student)]).svg
        hands = [box for box in re.findall(r"<rect [^>]*>", svg) if 'class="hands"' in box]
        sizes = (re.findall(r'\b(?:x|width)="([\d.]+)"', box) for box in hands)
        return [(float(left), float(wide)) for left, wide in sizes]

    maker, student = bars(student=False), bars(student=True)
    assert maker[0][1] < maker[1][1] and student[0][1] > student[1][1]
    for (left, wide), (after, _) in (maker, student):  # each goes on where the last one ends
        assert after == pytest.approx(left + wide, abs=0.01)


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_no_step_uses_what_an_error_is_about(path: Path) -> None:
    """Each error holds back a step, or is about the whole piece; a held step says nothing else."""
    result = checked(path)
    found = of(path)
    held = " ".join(says for one in found for says in one.held)
    for remark in result.numbered:
        if remark.level == "error" and remark.parts:
            assert remark.problem in held, remark.says
    for one in found:
        assert not (one.held and (one.says or one.checks))


def test_what_to_do_is_held_back_where_the_cap_does_not_fit() -> None:
    glued = next(one for one in of(ORLA) if one.what.startswith("glue"))
    assert glued.says == () and "take a cap of 8.5 mm bore" in glued.held[0]
    page = steps(checked(ORLA))
    assert "This piece cannot be made as written: 2 things to fix first." in page
    assert page.index("NOT YET") < page.index("Lay ready") < page.index("2, not as written")
    assert "Prepare the inside" not in page and "Prepare the inside" in steps(checked(COLLAR))


def test_a_remark_is_said_once_and_then_pointed_to() -> None:
    braid = of(CLASS / "daveth_loom_band.yaml")
    assert "stands out on both sides" in braid[0].held[0]
    assert all(one.held[0] == "see step 1" for one in braid[1:4])


def test_a_step_in_the_wrong_place_holds_its_own_steps_alone() -> None:
    weave, finish, glue, slide, *_ = of(CLASS / "piran_rope_bracelet.yaml")
    assert not weave.held and not finish.held
    assert "has capped both ends" in glue.held[0] and "see step 3" in slide.held[0]


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_a_plan_without_work_has_an_order_that_works_or_says_what_to_write(path: Path) -> None:
    result = without_work(path)
    assert result.ask is not None and not result.ask.plan.steps
    found = with_work(result, keeper())
    page = steps(result, keeper())
    if found is None:
        assert "no order of its steps is known" in page
        assert all(f"  - {line}" in page for line in steps_of(result.ask.plan))
        return
    assert found.ask is not None and "in an order that works" in page
    before = {remark.identity for remark in result.numbered}
    assert {remark.identity for remark in found.numbered} <= before


def test_a_stone_is_sewn_down_row_by_row_and_its_bezel_counted_from_one() -> None:
    sewn, *_ = of(SAMPLES / "roadstead_lamp_pendant.yaml")
    after = [says for says in sewn.says if says.startswith(("Bezel", "Trim"))]
    assert after == [
        "Bezel, round 1, a bead for every second of the base: `kelp` [A]",
        "Bezel, round 2, a bead for every second of the base: `spark` [C]",
        "Trim the foundation to 53 x 43 mm, and cut no thread, and glue on a backing as large",
    ]


@pytest.mark.parametrize(("verb", "at"), [("", 3), ("  - {do: edge, part: lamp}\n", 5)])
def test_the_edge_is_sewn_when_the_backing_is_on(verb: str, at: int) -> None:
    text = (SAMPLES / "roadstead_lamp_pendant.yaml").read_text(encoding="utf-8")
    text = text.replace("parts:\n", "parts:\n  glue: contact cement\n")
    text = text.partition("work:\n")[0] + EDGED + verb + "  - {do: wear}\n"
    says = [said(one) for one in instructions(keeper().check_text(text))]
    assert ["side by side round the edge" in each for each in says].index(True) == at
    assert sum("through both layers" in each for each in says) == 1


EDGED = """work:
  - {do: glue, part: lamp, to: foundation, with: glue}
  - {do: wait, time: 24 h}
  - {do: weave, part: lamp}
  - {do: glue, part: lamp, to: backing, with: glue}
  - {do: wait, time: 24 h}
"""


def test_most_samples_have_an_order_found() -> None:
    found = [path.stem for path in ALL if with_work(without_work(path), keeper()) is None]
    assert found == ["tressa_uv_braid"]


def test_what_is_measured_stands_at_the_first_step_that_it_is_for() -> None:
    weave, measure, *_ = of(COLLAR)
    assert [one.what for one in weave.checks] == [
        "outside of a 2 cm swatch of `rope`",
        "ten beads of `kelp` along the thread",
        "the smallest hole among ten beads of `kelp`",
    ]
    assert [one.what for one in measure.checks] == ["length of `rope`", "outside of `rope`"]


def test_a_caution_is_whole_at_its_first_step_and_pointed_to_later() -> None:
    page = steps(checked(SAMPLES / "driftnet_pouch.yaml"))
    assert page.count("trimming with a thread burner") == 1 and ", as at step 4" in page


def test_a_plan_that_cannot_be_read_says_so() -> None:
    page = steps(keeper().check_text("plan: 1\ntitle: Odd\npiece: necklace\n"), keeper())
    assert "The plan cannot be read yet: 1 slip to put right first." in page
    assert "<h2>The work</h2>" not in page


def test_a_pair_is_told_to_do_each_step_for_both() -> None:
    assert "The plan makes 2: do each step for every one of them." in steps(
        checked(SAMPLES / "spindrift_earrings.yaml")
    )


@pytest.mark.slow
def test_the_page_of_steps_is_written_beside_the_sheet(run: Run, tmp_path: Path) -> None:
    ran = run("sheet", COLLAR, "--steps", cwd=tmp_path)
    assert (ran.code, ran.out) == (0, "wrote slack_tide_collar-steps.html\n")
    page = (tmp_path / "slack_tide_collar-steps.html").read_text(encoding="utf-8")
    assert "<title>Slack Tide collar: step by step</title>" in page


def test_a_split_ring_is_turned_on_round_and_not_opened_sideways() -> None:
    open_, split = "wire: 18 AWG, closing: open", "wire: 18 AWG, closing: split"
    text = COLLAR.read_text(encoding="utf-8")
    told = [
        " ".join(said for step in instructions(keeper().check_text(one)) for said in step.says)
        for one in (text, text.replace(open_, split))
    ]
    assert told[1].count("sideways") < told[0].count("sideways")  # its links and pins are opened so
    assert ["until what it carries hangs in both coils" in one for one in told] == [False, True]


def test_a_knotted_strand_is_strung_on_its_lines_side_by_side() -> None:
    text = (SAMPLES / "landfall_pearls.yaml").read_text(encoding="utf-8")
    text = text.replace("stitch: knotted", "stitch: knotted\n    passes: 2", 1)
    text = text.replace("hole: 0.8 ± 0.05 mm", "hole: 1.4 mm").replace("hole: 0.9 ", "hole: 1.4 ")
    words = " ".join(said(step) for step in instructions(keeper().check_text(text)))
    assert "Take 2 lines through every bead side by side, and tie each knot with all" in words
    assert "Run the line" not in words
