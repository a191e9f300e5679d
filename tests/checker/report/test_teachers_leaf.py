"""The teacher's leaf of a class: faults by kind, who goes on tonight, what to bring and measure."""

from __future__ import annotations

import html
import re
from collections.abc import Sequence
from pathlib import Path

import pytest

from browser import started
from pages import checked, keeper
from running import SAMPLES, SHARED, Pinned
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.plugins import host
from wellstrung.report.pages import index
from wellstrung.report.pages.faults_by_kind import kinds, shared
from wellstrung.report.pages.measurements import measurements
from wellstrung.report.pages.next_time import cures, to_measure
from wellstrung.report.pages.students import Student, students
from wellstrung.report.pages.to_bring import Loan, loans
from wellstrung.report.pages.tonight import evenings

CLASS = sorted((SAMPLES / "class").glob("*.yaml"))
RIGHT = (SHARED / "slack_tide_collar.yaml").read_text(encoding="utf-8")
WRONG = (SHARED / "lantern_collar.yaml").read_text(encoding="utf-8")
#: makers of the right plan and of the wrong one
TAMSIN, ORLA = "maker: Tamsin", "maker: Orla"
RULE = """\
from wellstrung.rulebook import Misfit, Piece, Remedy, Rule


def check(piece, ask):
    return Misfit("no tag", piece.place, "no tag", "a tag", (Remedy("tie on a tag"),))


RULE = Rule(
    "shop-tag", "count", Piece, check, title="a tag with the price", why="the shop asks",
    sources=("none",),{more}
)
"""


def plan(text: str, file: str = "plan.yaml", checker: Checker | None = None) -> PlanResult:
    return (checker or keeper()).check_text(text, file)


def of(*texts: str) -> list[Student]:
    """Students with these plans, in files `a.yaml` and so on."""
    return students(
        {f"{name}.html": plan(text, f"{name}.yaml") for name, text in zip("abcdefg", texts)}  # noqa: B905
    )


def leaf(plans: Sequence[PlanResult]) -> str:
    """What a reader reads on the leaf, a line for each paragraph or entry."""
    page = index(Result(tuple(plans)))
    [shown] = re.findall(r'<div class="leaf">(.*)<div class="behind">', page, re.DOTALL)
    shown = re.sub(r"\s+", " ", shown)
    shown = re.sub(r"<(h2|h3)[^>]*>", lambda found: f"\n{'#' * int(found[1][1])} ", shown)
    shown = re.sub(r"<(?:p|li)\b[^>]*>", "\n", shown)
    text = html.unescape(re.sub(r"<[^>]*>", "", shown))
    return "\n".join(filter(None, (line.strip() for line in text.split("\n")))) + "\n"


def test_the_leaf_of_the_sample_class_on_paper(pinned: Pinned) -> None:
    shown = leaf([checked(path) for path in CLASS])
    head, _, tail = shown.partition("## Take care\n")
    on_paper = tail[tail.index("Thread burner or flame: ") :]
    pinned(Path(__file__).parent / "class_leaf.txt", f"{head}## Take care\n{on_paper}")


def test_each_caution_stands_once_on_the_screen_with_all_whom_it_is_for() -> None:
    shown = leaf([checked(path) for path in CLASS])
    for says in {one.says for path in CLASS for one in checked(path).cautions}:
        assert shown.count(f": {says.replace('`', '')}.") == 1
    assert "\nKerra, Merryn, Piran, Sampson: glue (two-part epoxy): work in fresh air" in shown


def test_nothing_is_taught_where_nobody_is_wrong() -> None:
    everyone = of(RIGHT, RIGHT.replace(TAMSIN, "maker: Kitto"))
    assert kinds(everyone) == [] and loans(everyone) == []
    assert [(one.student.name, one.whole) for one in evenings(everyone)] == [
        ("Kitto", True),
        ("Tamsin", True),
    ]
    shown = leaf([one.plan for one in everyone])
    assert "Nothing is wrong in any plan that could be checked." in shown
    assert "Finished with the plan: Kitto, Tamsin." in shown
    assert "Faults by kind" not in shown and "Bring to lend" not in shown


def test_what_all_have_is_taught_first_with_its_reason() -> None:
    makers = ("Orla", "Kitto", "Lowena")
    everyone = of(RIGHT, *(WRONG.replace(ORLA, f"maker: {name}") for name in makers))
    first = shared(kinds(everyone))[0]
    assert (first.fault, first.students) == ("cap too small", ("Kitto", "Lowena", "Orla"))
    shown = leaf([one.plan for one in everyone])
    assert "Cap too small, 3 of 4: Kitto, Lowena, Orla. Why: caps are bought before" in shown
    assert "Cap too small: 3 of 4: Kitto, Lowena, Orla" in shown
    assert not any(one.whole for one in evenings(everyone) if one.student.name != "Tamsin")


def test_equal_things_to_lend_are_added_up() -> None:
    everyone = of(WRONG, WRONG.replace(ORLA, "maker: Kitto"))
    assert Loan(4, "end caps, bore 8.5 mm, outside 9.5 mm", ("Kitto", "Orla")) in loans(everyone)
    assert Loan(2, "end caps, bore 8.5 mm, outside 9.5 mm", ("Orla",)) in loans(of(WRONG))


def test_errors_weigh_more_than_warnings_and_more_students_than_fewer() -> None:
    loose = RIGHT.replace("bore: 10 mm", "bore: 12 mm").replace("11.5 mm", "13.5 mm")
    everyone = of(WRONG, *(loose.replace(TAMSIN, f"maker: {name}") for name in "KLM"))
    found = kinds(everyone)
    assert found[0].fault == "cap too large" and found[0].warnings == ("K", "L", "M")
    found = kinds(of(WRONG, loose))
    assert found[-1].fault == "cap too large" and found[0].errors == ("Orla",)


def test_one_student_shares_no_fault() -> None:
    everyone = of(WRONG)
    assert kinds(everyone) and shared(kinds(everyone)) == []
    shown = leaf([everyone[0].plan])
    assert "No two students share a fault." in shown and "1 of 1" not in shown


def test_a_plan_that_cannot_be_read_is_its_students_to_mend_first() -> None:
    everyone = of(RIGHT, "maker: Kitto  # in a hurry\n: : :", "title: 'Slip'\nplan: 1\n", "")
    assert [one.name for one in everyone] == ["d.yaml", "Kitto", "Slip", "Tamsin"]
    first, *_, last = evenings(everyone)
    assert first.stuck and first.says == "the plan cannot be read yet" and last.whole
    assert [kind.fault for kind in kinds(everyone)] == ["plan that cannot be read yet"]
    assert shared(kinds(everyone)) == []
    assert "Plan that cannot be read yet: 3 of 4: d.yaml, Kitto, Slip" in leaf(
        [one.plan for one in everyone]
    )


def test_equal_names_show_as_much_of_the_file_as_tells_them_apart() -> None:
    files = ("one/plan.yaml", "two/plan.yaml", "two/other.yaml")
    found = students({file: plan(WRONG, file) for file in files})
    assert [one.name for one in found] == [
        "Orla (one/plan.yaml)", "Orla (other.yaml)", "Orla (two/plan.yaml)",
    ]  # fmt: skip


def test_without_a_maker_a_student_goes_by_the_title_and_without_it_by_the_file() -> None:
    nobody = WRONG.replace(f"{ORLA}\n", "")
    [by_title] = students({"a": plan(nobody, "deep/a.yaml")})
    assert (by_title.name, by_title.piece) == ("Lantern collar", "")
    [by_file] = students({"a": plan("work: []\n", "deep/a.yaml")})
    assert by_file.name == "a.yaml"


@pytest.mark.parametrize(
    ("more", "fault"),
    [("", "not kept: a tag with the price"), (' fault="no tag",', "no tag")],
)
def test_a_rule_from_a_plugin_has_its_kind_of_fault(more: str, fault: str, tmp_path: Path) -> None:
    rule = tmp_path / "shop_tag.py"
    rule.write_text(RULE.format(more=more), encoding="utf-8")
    checker = Checker(host.load([rule]), quantities=True)
    plans = {name: plan(RIGHT.replace("Tamsin", name), name, checker) for name in "KL"}
    [kind] = shared(kinds(students(plans)))
    assert (kind.fault, kind.why, kind.students) == (fault, "the shop asks", ("K", "L"))
    shown = leaf([*plans.values()])
    assert f"{fault[0].upper()}{fault[1:]}, 2 of 2: K, L. Why: the shop asks." in shown


def test_a_plan_that_a_rule_failed_on_is_not_said_to_be_fine(tmp_path: Path) -> None:
    rule = tmp_path / "shop_tag.py"
    rule.write_text(RULE.format(more="").replace("return Misfit", "raise Misfit"), encoding="utf-8")
    everyone = students({"a": plan(RIGHT, "a.yaml", Checker(host.load([rule]), quantities=True))})
    [one] = evenings(everyone)
    assert one.stuck and one.says == "a check could not be made"
    shown = leaf([one.plan for one in everyone])
    assert "Finished with the plan: nobody yet." in shown and "## Internal errors" in shown


def test_what_a_plan_says_cannot_change_the_page() -> None:
    shown = index(Result((plan(WRONG.replace(ORLA, 'maker: "<b>Orla\u202e</b>"')),)))
    assert "<b>Orla" not in shown and "&lt;b&gt;Orla" in shown and "\u202e" not in shown


def test_every_built_in_rule_has_a_short_word_of_its_own_for_its_fault() -> None:
    rules = host.load().rules.values()
    found = [rule.fault for rule in rules]
    assert all(fault and len(fault) <= 40 and fault[0].islower() for fault in found)
    assert len(set(found)) == len(found)


@pytest.mark.parametrize(
    ("change", "says", "stuck"),
    [
        # the caps are glued after all of the rope is woven
        ({}, r"12 h \d+ min of work, before step 5, glue `cap`", False),
        # what the whole piece is wrong in stops the first step
        ({"finished_length: 46 cm": "finished_length: 60 cm", "bore: 8": "bore: 10"}, "", True),
        # what is brought ready made takes no time of the class
        (
            {"work:": "class: {length: 2 h, sessions: 2, prepared: [rope]}\n\nwork:"},
            r"\d+ min of work, before step 5, glue `cap`",
            False,
        ),
        # a step whose time nobody knows
        ({"{do: measure, part: rope}": "{do: etch, part: rope}"}, "", True),
    ],
    ids=["cap", "length", "prepared", "slip"],
)
def test_a_student_works_up_to_the_step_that_an_error_touches(
    change: dict[str, str], says: str, stuck: bool
) -> None:
    text = RIGHT.replace("bore: 10 mm", "bore: 8 mm")
    for old, new in change.items():
        assert old in text
        text = text.replace(old, new)
    [one] = evenings(of(text))
    assert one.stuck is stuck and not one.whole
    assert re.fullmatch(says, one.says) or not says


def test_a_step_in_the_wrong_place_is_where_the_work_stops() -> None:
    [one] = evenings(of((SAMPLES / "class" / "piran_rope_bracelet.yaml").read_text("utf-8")))
    assert one.says.endswith(" of work, before step 3, glue `cap`")
    assert one.mend is not None and one.mend.rule == "capped-too-soon"


@pytest.mark.parametrize(
    ("plan_file", "change", "up_to"),
    [
        # strands are strung before the cone that gathers them is there
        ("wenna_three_strand", {}, "step 4, wrap loop `link`"),
        # the ring that closes a lariat is named by what a step joins alone
        ("kerra_lariat", {"count: 1}": "count: 2}"}, "step 6, close `ring`"),
        # no step names the clasp: the ring that holds it is closed
        ("wella_child_necklace", {}, "step 3, close `ring`"),
    ],
)
def test_what_no_step_names_is_needed_where_its_neighbours_are_joined(
    plan_file: str, change: dict[str, str], up_to: str
) -> None:
    text = (SAMPLES / "class" / f"{plan_file}.yaml").read_text(encoding="utf-8")
    for old, new in change.items():
        assert old in text
        text = text.replace(old, new)
    [one] = evenings(of(text))
    assert one.says.endswith(f"before {up_to}")


def test_a_wait_that_is_missing_stops_the_work_behind_the_glue() -> None:
    [one] = evenings(of(RIGHT.replace("  - {do: wait, time: 24 h}\n", "")))
    assert "before step 6, cut `drop`" in one.says


def test_waiting_is_told_beside_the_work() -> None:
    [one] = evenings(of(RIGHT))
    assert re.fullmatch(r"[\d]+ h [\d]+ min of work, and 1 day of waiting", one.says)


def test_plans_without_steps_say_so() -> None:
    def without(text: str) -> str:
        return re.sub(r"(?ms)^work:\n.*?\n(?=\n|\Z)", "", text)

    [right], [wrong] = (evenings(of(without(text))) for text in (RIGHT, WRONG))
    assert right.whole and wrong.stuck
    assert right.says == wrong.says == "the plan lists no steps"


@pytest.mark.parametrize(
    ("old", "new", "lent"),
    [
        ("bore: 10 mm", "bore: 10 mm", []),
        ("outside: 16 mm", "outside: 10 mm", ["soldered jump rings, outside 15 mm, wire 16 AWG"]),
        # what passes an eye is the ring, what is too narrow the cap
        ("eye: {hole: 2.4 mm", "eye: {hole: 0.8 mm", ["end caps: a hole of 1.22 mm or wider"]),
    ],
)
def test_what_to_lend_is_named_as_a_shop_names_it(old: str, new: str, lent: list[str]) -> None:
    assert old in RIGHT
    assert [one.what for one in loans(of(RIGHT.replace(old, new, 1)))] == lent


def test_what_a_warning_alone_asks_for_is_lent_to_who_is_warned() -> None:
    loose = RIGHT.replace("bore: 10 mm", "bore: 12 mm").replace("11.5 mm", "13.5 mm")
    [one] = loans(of(loose))
    assert (one.count, one.students) == (2, ("Tamsin (warned)",))


def test_a_size_that_was_measured_is_named_as_a_shop_names_it() -> None:
    [one] = loans(of(RIGHT.replace("bore: 10 mm", "bore: 10 mm\n    measured: {bore: 8 mm}")))
    assert one.what.startswith("end caps, bore ")


def test_packs_on_hand_count_by_the_piece() -> None:
    few = "{part: small, pack_of: 5, packs: 2}"
    short = RIGHT.replace("{part: small, pack_of: 20, packs: 1}", few)
    [one] = loans(of(short))
    assert (one.count, one.what) == (4, "open jump rings, outside 6 mm, wire 18 AWG")


def test_what_is_short_on_hand_is_lent_too() -> None:
    [one] = loans(
        of(RIGHT.replace("{part: small, pack_of: 20, packs: 1}", "{part: small, count: 12}"))
    )
    assert (one.count, one.what) == (2, "open jump rings, outside 6 mm, wire 18 AWG")


def test_what_cures_is_told_by_adhesive_with_everybody_who_glues() -> None:
    quick = WRONG.replace("type: two-part epoxy", "type: superglue")
    found = cures(of(RIGHT, WRONG, quick.replace(ORLA, "maker: Kitto")))
    assert [(one.adhesive, one.students) for one in found] == [
        ("superglue", ("Kitto",)),
        ("two-part epoxy", ("Orla", "Tamsin")),
    ]
    assert all(one.full and one.handling for one in found)


def test_only_what_decides_something_is_still_to_be_measured() -> None:
    [orla] = to_measure((one, measurements(one.plan)) for one in of(WRONG))
    assert orla.open and orla.first
    everything = [what for what, _ in orla.sizes]
    assert "stays at any" not in leaf([plan(WRONG)]) and len(everything) < 4


@pytest.mark.slow
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_leaf_of_fifteen_students_is_two_pages(paper: str, tmp_path: Path) -> None:
    page = tmp_path / "index.html"
    result = Result(tuple(checked(path) for path in CLASS))
    page.write_text(index(result), encoding="utf-8")
    with started() as browser:
        shown = browser.new_page()
        shown.goto(page.as_uri())
        printed = shown.pdf(format=paper)
    assert len(result.plans) == 15
    assert len(re.findall(rb"/Type /Page\b", printed)) == 2
