"""A drawer: parts by name, the places of their values, slips in it, and which file is read."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellstrung.commands.cli import main
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, Result
from wellstrung.model.plan import Plan
from wellstrung.plugins import host
from wellstrung.reading import drawer, tree
from wellstrung.report.text import write
from wellstrung.report.writer import Options

CHECKER = Checker(host.load())
DRAWER = """\
drawer: 1
maker: Tamsin
parts:
  brass cap: {kind: end cap, bore: 6 mm, depth: 7 mm, outside: 13 mm, length: 15 mm}
  small ring: {kind: jump ring, outside: 6 mm, wire: 18 AWG, closing: open}
  bad ring: {kind: jump ring, outside: 6, wire: 18 AWG, closing: open}
  no kind: {outside: 6 mm}
"""
PLAN = """\
plan: 1
title: Two caps
piece: bracelet
drawer: drawer.yaml
beads:
  kelp: {type: round, size: 8/0, make: Japanese}
parts:
  rope: {kind: woven rope, stitch: tubular peyote, around: 10, beads: kelp,
    length: 16 cm, measured: {outside: 9.8 mm}}
  cap: {from: brass cap}
run: [cap, rope, cap]
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "drawer.yaml").write_text(DRAWER, encoding="utf-8")
    (tmp_path / "plan.yaml").write_text(PLAN, encoding="utf-8")
    return tmp_path


def told(result: PlanResult) -> list[tuple[str, str, str]]:
    """File, place and words of every error and warning."""
    return [
        (Path(r.place.file).name, f"{r.place.line}:{r.place.column}", r.says)
        for r in result.remarks
        if r.level != "caution"
    ]


TOO_TIGHT = "the bore of cap `cap` (6 mm) is too tight for the rope `rope` (9.8 mm outside)"


def test_a_remark_points_into_the_drawer_where_the_fault_is(folder: Path, checker: Checker) -> None:
    result = checker.check_file(folder / "plan.yaml")
    assert told(result) == [("drawer.yaml", "4:36", TOO_TIGHT)]
    (remark,) = (r for r in result.remarks if r.rule == "cap-bore")
    assert [(Path(place.file).name, place.line) for place in remark.also] == [("plan.yaml", 8)]
    page = write(Result((result,)), Options(width=200))
    assert "you wrote  brass cap: {kind: end cap, bore: 6 mm" in page


def test_the_edit_is_in_the_drawer_and_holds(folder: Path, checker: Checker) -> None:
    (remark,) = (
        r for r in checker.check_file(folder / "plan.yaml").remarks if r.rule == "cap-bore"
    )
    assert remark.edits
    for edit in remark.edits:
        file = Path(edit.place.file)
        assert file == folder / "drawer.yaml"
        text = tree.replaced(file.read_text(encoding="utf-8"), [(edit.place, edit.new)])
        file.write_text(text, encoding="utf-8")
    assert told(checker.check_file(folder / "plan.yaml")) == []


def test_what_the_plan_writes_beats_the_drawer(folder: Path, checker: Checker) -> None:
    own = PLAN.replace("{from: brass cap}", "{from: brass cap, bore: 5 mm}")
    (folder / "plan.yaml").write_text(own, encoding="utf-8")
    says = TOO_TIGHT.replace("6 mm", "5 mm")
    assert told(checker.check_file(folder / "plan.yaml")) == [("plan.yaml", "10:32", says)]


SLIPS = {
    "an unknown name": (
        {"from: brass cap": "from: bras cap"},
        (
            "plan.yaml",
            "10:15",
            "there is no part called `bras cap` in the drawer: write `brass cap`",
        ),
    ),
    "a name like none": (
        {"from: brass cap": "from: xyz"},
        (
            "plan.yaml",
            "10:15",
            "there is no part called `xyz` in the drawer",
        ),
    ),
    "no name": (
        {"from: brass cap": "from: [brass cap]"},
        (
            "plan.yaml",
            "10:15",
            "`from` of `cap` is not a name: write the name of a part in the drawer",
        ),
    ),
    "no drawer": (
        {"drawer: drawer.yaml\n": ""},
        (
            "plan.yaml",
            "9:15",
            "`cap` comes from a drawer, but the plan names none: write one, as in"
            " `drawer: drawer.yaml`",
        ),
    ),
    "a slip in the drawer": (
        {"from: brass cap": "from: bad ring"},
        (
            "drawer.yaml",
            "6:40",
            "`outside` of `cap`: a length needs a unit: write `6 mm` or `6 cm`",
        ),
    ),
    "a part without its kind": (
        {"from: brass cap": "from: no kind"},
        ("plan.yaml", "10:3", "`cap` has no `kind`"),
    ),
    "a field that is none": (
        {"from: brass cap": "from: brass cap, boer: 9 mm"},
        ("plan.yaml", "10:26", "`boer` is not a field of `cap` (an end cap)"),
    ),
    "a kind and a drawer": (
        {"{from: brass cap}": "{kind: end cap, bore: 10 mm, from: brass cap}"},
        ("plan.yaml", "10:37", "`from` is not a field of `cap` (an end cap)"),
    ),
}


@pytest.mark.parametrize("name", SLIPS)
def test_a_slip_is_told_at_its_line(name: str, folder: Path, checker: Checker) -> None:
    changes, (file, place, says) = SLIPS[name]
    text = PLAN
    for old, new in changes.items():
        assert text.count(old) == 1
        text = text.replace(old, new)
    (folder / "plan.yaml").write_text(text, encoding="utf-8")
    found = told(checker.check_file(folder / "plan.yaml"))
    assert [(one[0], one[1]) for one in found] == [(file, place)]
    assert found[0][2].startswith(says)


def test_a_nearly_right_name_is_mended(folder: Path, checker: Checker) -> None:
    text = PLAN.replace("brass cap", "bras cap")
    inside = drawer.read_text(DRAWER, "drawer.yaml")
    (remark,) = checker.check_text(text, drawer=inside).remarks
    mended = tree.replaced(text, [(edit.place, edit.new) for edit in remark.edits])
    assert mended == PLAN


OUTSIDE = "is outside the plan's folder: name one inside it"
NAMES = {
    "/etc/hostname": f"`/etc/hostname` {OUTSIDE}",
    "../drawer.yaml": f"`../drawer.yaml` {OUTSIDE}",
    "mine/../../drawer.yaml": f"`mine/../../drawer.yaml` {OUTSIDE}",
    "'C:drawer.yaml'": f"`C:drawer.yaml` {OUTSIDE}",
    "'..\\drawer.yaml'": f"`..\\drawer.yaml` {OUTSIDE}",
    "'//host/drawer.yaml'": f"`//host/drawer.yaml` {OUTSIDE}",
    "link.yaml": "`link.yaml` is a link out of the plan's folder: copy it here",
    "linked/drawer.yaml": "`linked/drawer.yaml` is a link out of the plan's folder: copy it here",
    "none.yaml": "cannot be read: no such file or directory; name a drawer beside the plan",
    "folder": "is not a regular file: name a drawer; name a drawer beside the plan",
    "pipe": "is not a regular file: name a drawer; name a drawer beside the plan",
    "round.yaml": "cannot be read: too many levels of symbolic links; name a drawer",
}


@pytest.mark.parametrize("name", NAMES)
def test_a_drawer_elsewhere_is_not_read(name: str, tmp_path: Path, checker: Checker) -> None:
    plans = tmp_path / "plans"
    (plans / "folder").mkdir(parents=True)
    (tmp_path / "drawer.yaml").write_text(DRAWER, encoding="utf-8")
    (plans / "link.yaml").symlink_to(tmp_path / "drawer.yaml")
    (plans / "linked").symlink_to(tmp_path)
    (plans / "round.yaml").symlink_to(plans / "round.yaml")
    os.mkfifo(plans / "pipe")
    (plans / "plan.yaml").write_text(PLAN.replace("drawer.yaml", name), encoding="utf-8")
    ((file, place, says),) = told(checker.check_file(plans / "plan.yaml"))
    assert (file, place) == ("plan.yaml", "4:9")
    assert NAMES[name] in says


def test_a_link_within_the_folder_is_followed(folder: Path, checker: Checker) -> None:
    (folder / "mine").mkdir()
    (folder / "mine" / "parts.yaml").symlink_to(folder / "drawer.yaml")
    text = PLAN.replace("drawer: drawer.yaml", "drawer: mine/parts.yaml")
    (folder / "plan.yaml").write_text(text, encoding="utf-8")
    assert told(checker.check_file(folder / "plan.yaml")) == [("parts.yaml", "4:36", TOO_TIGHT)]


BAD = {
    "empty": ("", "1:1", "the file is empty: write parts below `drawer: 1`, or delete the file"),
    "a list": ("- a\n", "1:1", "a drawer is made of named entries: begin with `drawer: 1`"),
    "not begun": ("parts: {a: {kind: needle}}\n", "1:1", "the drawer lacks `drawer`: write"),
    "no parts": ("drawer: 1\n", "1:1", "the drawer lacks one of `parts` or `beads`: write one"),
    "a stray field": (
        f"{DRAWER}run: [cap]\n",
        "8:1",
        "`run` is not a field of the drawer",
    ),
    "another version": (DRAWER.replace("drawer: 1", "drawer: 2"), "1:9", "`drawer` of the drawer"),
    "an alias": (DRAWER.replace("6 mm, depth", "*x, depth"), "4:36", "a text cannot begin with *"),
    "the same name twice": (
        f"{DRAWER}  no kind: {{kind: needle}}\n",
        "8:3",
        "`no kind` appears twice: give one of them another name",
    ),
    "deep": (
        f"drawer: 1\nparts: {'[' * 100}\n",
        "2:71",
        "this nests deeper than 64 levels: use fewer",
    ),
    "a part that is a list": (
        "drawer: 1\nparts: {brass cap: [8 mm]}\n",
        "2:20",
        "`brass cap` of `parts` of the drawer is a list: write a group of fields or words",
    ),
    "a part that is a text": (
        "drawer: 1\nparts: {brass cap: 8 mm}\n",
        "2:20",
        "`8 mm` of part `brass cap` names no known finding: write a part such as",
    ),
}


@pytest.mark.parametrize("name", BAD)
def test_a_bad_drawer_is_told_at_its_lines(name: str, folder: Path, checker: Checker) -> None:
    text, place, says = BAD[name]
    (folder / "drawer.yaml").write_text(text, encoding="utf-8")
    found = told(checker.check_file(folder / "plan.yaml"))
    assert found[0][:2] == ("drawer.yaml", place)
    assert found[0][2].startswith(says)


@settings(max_examples=150)
@given(st.data())
def test_whatever_a_drawer_holds_there_is_an_answer(data: st.DataObject) -> None:
    at = data.draw(st.integers(0, len(DRAWER)))
    cut = data.draw(st.integers(0, 40))
    new = data.draw(
        st.text(max_size=8) | st.sampled_from(["{", "}", "[", ": ", "\n", "from: x", "&"])
    )
    inside = drawer.read_text(DRAWER[:at] + new + DRAWER[at + cut :], "drawer.yaml")
    result = CHECKER.check_text(PLAN, drawer=inside)
    assert not result.failures
    for remark in result.remarks:
        text = {**result.beside, result.file: result.text}[remark.place.file]
        assert remark.place.line <= max(1, len(text.splitlines()) + 1)


BEADS = """\
drawer: 1
beads:
  kelp: {type: round, size: 8/0, make: Japanese, measured: {hole: 0.9 mm}}
  sand: 11/0 round Czech, cream
parts: {brass cap: {kind: end cap, bore: 10 mm, depth: 7 mm}}
supplies:
  - {bead: kelp, pack: 20 g, packs: 3}
  - {part: brass cap, count: 4}
prices: {kelp: 4.20 EUR per 10 g}
"""
OF_BEADS = PLAN.replace("kelp: {type: round, size: 8/0, make: Japanese}", "kelp: {from: kelp}")


def plan_of(text: str, inside: str) -> tuple[PlanResult, Plan]:
    checker = Checker(CHECKER.installed, keep=True)
    result = checker.check_text(text, drawer=drawer.read_text(inside, "drawer.yaml"))
    assert result.ask is not None, [one.says for one in result.remarks]
    return result, result.ask.plan


def test_a_drawer_holds_beads_stock_and_prices() -> None:
    result, plan = plan_of(OF_BEADS, BEADS)
    assert plan.beads["kelp"].size("hole").middle == 0.9
    assert plan.beads["kelp"].place_of("size").file == "drawer.yaml"
    assert [line.value for line in plan.entries("supplies")] == [
        {"bead": "kelp", "pack": "20 g", "packs": 3},
        {"part": "cap", "count": 4},
    ]
    assert plan.bench.prices == {"kelp": "4.20 EUR per 10 g"}
    assert "beads-enough" in {check.rule for check in result.held}


def test_a_field_beside_from_replaces_that_of_the_bead() -> None:
    text = OF_BEADS.replace("{from: kelp}", "{from: kelp, type: cylinder, size: 11/0}")
    _, plan = plan_of(text, BEADS)
    assert plan.beads["kelp"].row == "cylinder 11/0"


def test_a_bead_of_the_drawer_may_be_a_phrase() -> None:
    _, plan = plan_of(OF_BEADS.replace("{from: kelp}", "{from: sand, make: Japanese}"), BEADS)
    assert plan.beads["kelp"].row == "round 11/0 Japanese"
    assert plan.beads["kelp"].text("colour") == "cream"


def test_lines_of_the_plan_replace_those_of_the_drawer() -> None:
    _, plan = plan_of(f"{OF_BEADS}supplies: [{{bead: kelp, pack: 5 g}}]\n", BEADS)
    assert [line.value for line in plan.entries("supplies")] == [
        {"bead": "kelp", "pack": "5 g"},
        {"part": "cap", "count": 4},
    ]


@pytest.mark.parametrize(
    ("text", "inside", "says"),
    [
        (
            OF_BEADS.replace("{from: kelp}", "{from: kepl}"),
            BEADS,
            "plan.yaml:6:16 there is no bead called `kepl` in the drawer: write `kelp`",
        ),
        (
            OF_BEADS,
            DRAWER,
            "plan.yaml:6:16 there is no bead called `kelp` in the drawer, which has no beads",
        ),
        (
            OF_BEADS,
            BEADS.replace("{bead: kelp, pack", "{bead: klep, pack"),
            "drawer.yaml:7:12 there is no bead called `klep` in the drawer: write `kelp`",
        ),
        (
            OF_BEADS,
            BEADS.replace("4.20 EUR per 10 g", "4.20"),
            "drawer.yaml:9:16 the price of `kelp`: `4.2` is not a price: write it with its"
            " currency, as in `1.80 EUR each`",
        ),
        (
            OF_BEADS,
            BEADS.replace("hole: 0.9 mm", "hole: 0.9"),
            "drawer.yaml:3:67 `hole` of `measured` of `kelp` of `beads`: a length needs a unit:"
            " write `0.9 mm` or `0.9 cm`",
        ),
    ],
)
def test_a_slip_with_beads_and_stock(text: str, inside: str, says: str) -> None:
    result = CHECKER.check_text(text, drawer=drawer.read_text(inside, "drawer.yaml"))
    assert [
        f"{one.place.file}:{one.place.line}:{one.place.column} {one.says}" for one in result.remarks
    ] == [says]


def test_a_drawer_that_no_plan_names_is_left_alone(folder: Path, checker: Checker) -> None:
    (folder / "drawer.yaml").write_text("- nonsense\n", encoding="utf-8")
    own = PLAN.replace("drawer: drawer.yaml\n", "").replace(
        "{from: brass cap}", "{kind: end cap, bore: 10 mm, depth: 7 mm}"
    )
    (folder / "plan.yaml").write_text(own, encoding="utf-8")
    assert told(checker.check_file(folder / "plan.yaml")) == []


def test_the_command_takes_a_drawer_from_anywhere_and_no_drawer_for_a_plan(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    wide = elsewhere / "my drawer.yaml"
    wide.write_text(DRAWER.replace("bore: 6 mm", "bore: 10 mm"), encoding="utf-8")
    assert main(["check", str(folder / "plan.yaml")]) == 1
    assert main(["check", str(folder / "plan.yaml"), "--drawer", str(wide)]) == 0
    capsys.readouterr()
    assert main(["check", str(folder)]) == 1
    assert "Two caps" in capsys.readouterr().out
    wide.write_text("drawer: 2\n", encoding="utf-8")
    assert main(["check", str(folder / "plan.yaml"), "--drawer", str(wide)]) == 2
    assert "the drawer cannot be used:" in capsys.readouterr().err
