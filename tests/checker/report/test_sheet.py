"""The page of a plan: what stands on it, in which order, and that what it says is true."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pytest

from pages import ALL, checked, keeper
from running import SAMPLES, SHARED
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.report.pages import sheet, work_order
from wellstrung.report.pages.measurements import measurements
from wellstrung.report.pages.remarks import numbered, right
from wellstrung.report.writer import Options

COLLAR = SHARED / "slack_tide_collar.yaml"
ORLA = SHARED / "lantern_collar.yaml"
FULL = Options(full=True)
MERRYN = SAMPLES / "class" / "merryn_tideline_necklace.yaml"


class Page(HTMLParser):
    """What a page holds: its tags in order, its headings, ids and words."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.headings: list[tuple[int, str]] = []
        self.ids: list[str] = []
        self.links: list[str] = []
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str, str]] = []
        self._words: list[str] = []
        self._within: list[str] = []
        self.feed(text)
        self.words = re.sub(r"\s+", " ", "".join(self._words))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self._within.append(tag)
        if tag in ("p", "li", "dt", "dd", "td", "th", "h2", "h3"):
            self._words.append(" ")
        if re.fullmatch("h[1-6]", tag):
            self.headings.append((int(tag[1]), ""))
        for name, value in attrs:
            self.attributes.append((tag, name, value or ""))
            if name == "id":
                self.ids.append(value or "")
            if name == "href" and tag == "a":
                self.links.append(value or "")
        if tag in ("meta", "link", "br"):
            self._within.pop()

    def handle_endtag(self, tag: str) -> None:
        while self._within and self._within.pop() != tag:
            pass

    def handle_data(self, data: str) -> None:
        if "style" in self._within:
            return
        self._words.append(data)
        if self._within and re.fullmatch("h[1-6]", self._within[-1]):
            level, words = self.headings[-1]
            self.headings[-1] = (level, words + data)


def page(path: Path) -> Page:
    return Page(sheet(checked(path)))


def changed(old: str, new: str, path: Path = ORLA, checker: Checker | None = None) -> PlanResult:
    text = path.read_text(encoding="utf-8")
    assert old in text
    return (checker or keeper()).check_text(text.replace(old, new))


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_headings_step_down_one_at_a_time_and_ids_are_unique(path: Path) -> None:
    found = page(path)
    levels = [level for level, _ in found.headings]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert len(found.ids) == len(set(found.ids))
    assert found.tags.count("svg") == found.tags.count("desc") >= 2
    assert not {"script", "img", "iframe", "object"} & set(found.tags)
    assert all("http" not in link for link in found.links)


def test_the_order_of_a_sheet() -> None:
    leaf = [
        "Verdict", "The piece", "What is right", "Fix this first", "Then this",
        "Measure before next time", "Take care", "Open checks",
        "The fits that have remarks, in section", "The work, in order", "Supplies", "Cutting list",
        "To take home",
    ]  # fmt: skip
    behind = ["Sizes as drawn", "The other fits, in section", "More on the supplies", "Workings"]
    for options, titles in ((Options(), leaf), (FULL, [*leaf, *behind])):
        headings = Page(sheet(checked(ORLA), None, options)).headings
        assert [words for level, words in headings if level == 2] == titles


def test_the_first_thing_to_fix_comes_first_with_both_units() -> None:
    words = page(ORLA).words
    assert words.index("NOT MAKEABLE") < words.index("Fix this first 1")
    assert "Do this: take a cap of 8.5 mm bore (7.94..8.71 mm works)." in words


def test_a_remark_shows_the_line_as_written_and_what_is_meant_in_it() -> None:
    assert "bore: <mark>6 mm</mark>, depth" in sheet(checked(ORLA))
    words = page(ORLA).words
    assert "You have 6 mm; you need a bore of 7.94..8.71 mm." in words
    assert "mm works). error · cap-bore · line 19" in words


def test_at_most_five_remarks_stand_on_the_first_page_errors_first() -> None:
    text = ORLA.read_text(encoding="utf-8")
    for old, new in (
        ("wire: 20 AWG", "wire: 14 AWG"),
        ("finished_length: 44 cm", "finished_length: 60 cm"),
        ("eye: {hole: 2 mm", "eye: {hole: 0.5 mm"),
        ("time: 24 h", "time: 1 h"),
        ("every: 7", "every: 3"),
    ):
        text = text.replace(old, new)
    result = keeper().check_text(text)
    remarks = numbered(result)
    assert len(remarks) > 5
    levels = [one.remark.level for one in remarks]
    assert levels == sorted(levels, key=lambda level: level != "error")
    found = Page(sheet(result))
    assert f"{len(remarks) - 5} more remark" in found.words
    ids = [name for name in found.ids if name.startswith("remark-")]
    assert ids == [f"remark-{one.number}" for one in remarks]
    assert "The other remarks in full" in Page(sheet(result, None, FULL)).words


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_what_is_right_names_three_checks_with_room_each_of_another_rule(path: Path) -> None:
    result = checked(path)
    praised = right(result)
    assert len(praised) == 3
    for one in praised:
        assert one.title and "`" not in one.title
        if one.spare is not None:
            assert one.spare.likely.low > 0
            assert any(kept.margin is one.spare for kept in result.held)


def test_a_swatch_settles_a_remark_just_where_the_page_says() -> None:
    """The page's threshold, written into the plan as a measurement, turns the verdict."""
    [measured] = [one for one in measurements(bored(7)) if "swatch" in one.what]
    [settled] = [one for one in measured.changes if "(cap-bore) is settled at " in one]
    limit = float(re.findall(r"at ([\d.]+) mm or less", settled)[0])
    assert measured.taken.worst.low < limit < measured.taken.worst.high
    for outside, fails in ((limit - 0.02, False), (limit + 0.02, True)):
        assert any(one.rule == "cap-bore" for one in bored(7, outside).remarks) is fails


def test_a_remark_that_no_swatch_can_settle_stays() -> None:
    """Nothing is said of a size that the rope cannot have."""
    [measured] = [one for one in measurements(bored(6)) if "swatch" in one.what]
    stays = r"remark 1 \(cap-bore\) stays at any likely size, from ([\d.]+) to ([\d.]+) mm"
    found = re.fullmatch(stays, measured.changes[0])
    assert found, measured.changes[0]
    for outside in map(float, found.groups()):
        assert any(one.rule == "cap-bore" for one in bored(6, outside).remarks)


def bored(mm: int, outside: float | None = None) -> PlanResult:
    """The collar with caps of a bore, its rope measured or not."""
    old = "  rope:\n    kind: woven rope\n"
    cap = "bore: {} mm, depth: 6 mm, outside: {} mm"
    text = ORLA.read_text(encoding="utf-8").replace(cap.format(6, 7), cap.format(mm, mm + 1))
    if outside is not None:
        text = text.replace(old, f"{old}    measured: {{outside: {outside:.2f} mm}}\n")
    return keeper().check_text(text)


@pytest.mark.parametrize("path", [COLLAR, ORLA, MERRYN], ids=lambda path: path.stem)
def test_a_check_that_holds_fails_beyond_what_the_page_says(path: Path) -> None:
    """Each threshold told of the swatch is held against the checker itself."""
    result = checked(path)
    [swatch] = [one for one in measurements(result) if "swatch" in one.what]
    old = "  rope:\n    kind: woven rope\n"
    held = [change for change in swatch.changes if " passes at " in change]
    assert held
    for change in held:
        rule, size, side = re.fullmatch(
            r"(\S+) passes at ([\d.]+) mm or (less|more)", change
        ).groups()  # type: ignore[union-attr]
        beyond = float(size) + (0.05 if side == "less" else -0.05)
        after = changed(old, f"{old}    measured: {{outside: {beyond:.2f} mm}}\n", path)
        assert any(remark.rule == rule or rule in remark.affects for remark in after.remarks)


def test_ten_beads_are_told_as_ten() -> None:
    [beads] = [one for one in measurements(checked(ORLA)) if one.what.startswith("ten")]
    assert beads.times == 10 and "checked with 14.5 mm, likely 13.3..15.7 mm" in page(ORLA).words


def test_what_is_measured_already_is_not_asked_for() -> None:
    old = "  rope:\n    kind: woven rope\n"
    result = changed(old, f"{old}    measured: {{outside: 9.8 mm}}\n", COLLAR)
    assert not any("swatch" in one.what for one in measurements(result))


def test_there_is_room_for_the_teacher_and_a_date() -> None:
    words = page(COLLAR).words
    assert words.index("Date:") < words.index("The whole piece") < words.index("Measure before")
    assert words.index("Measure before") < words.index("Teacher:")
    assert "Version:" in words


def test_a_version_that_the_plan_gives_is_printed() -> None:
    text = sheet(changed("maker: Orla", "maker: Orla\nversion: second try"))
    assert " · by Orla · version second try · " in text and "Version:" not in text


def test_sizes_on_the_page_are_those_of_the_report() -> None:
    result = checked(COLLAR)
    told = dict(re.findall(r'<b data-quantity="([^"]+)">([^<]+)</b>', sheet(result, None, FULL)))
    assert {"rope.outside", "cap.bore", "carrier.wire", "drop.length", "toggle.bar.length"} <= set(
        told
    )
    for name, shown in told.items():
        assert float(shown) == pytest.approx(result.quantities[name].middle, rel=1e-3, abs=6e-3)


def test_workings_come_last_with_their_sources() -> None:
    words = Page(sheet(checked(ORLA), None, FULL)).words
    last = words[words.index("Workings") :]
    assert "rope.outside = " in last and "Source: trade table caps" in last
    assert "Checks that passed" in last
    for section in ("The piece", "The work, in order", "Take care", "Open checks"):
        assert words.index(section) < words.index("Workings")


def test_each_caution_stands_once_and_its_steps_name_it() -> None:
    cautions = checked(ORLA).cautions
    words = page(ORLA).words
    for one in cautions:
        assert words.count(one.says.replace("`", "")[12:60]) == 1
    steps = words[words.index("The work, in order") : words.index("Supplies")]
    assert "2 joints Take care: a (fresh air), b (gloves and eye protection)" in steps
    assert "They defer to the product's own safety data sheet" in words


def test_the_work_uses_the_wait_and_tells_both_paces() -> None:
    order = work_order.order_of(checked(COLLAR))
    assert order is not None and order.steps and not order.missing
    [wait] = [step for step in order.steps if step.waits]
    assert wait.words == "wait 24 h" and "cut `drop`" in " ".join(wait.meanwhile)
    assert wait.rest == 24 * 60
    quantities = checked(COLLAR).quantities
    assert order.hands == pytest.approx(quantities["piece.bench_time"].middle)
    assert order.student_hands == pytest.approx(quantities["piece.student_time"].middle)
    assert order.maker_ends == pytest.approx(quantities["piece.finish_earliest"].middle)
    assert sorted(step.number for step in order.steps) == list(range(1, len(order.steps) + 1))
    words = page(COLLAR).words
    assert "Meanwhile: cut drop" in words and "Hands in all" in words


def test_a_card_to_take_home_has_the_time_of_full_cure() -> None:
    assert checked(COLLAR).quantities["glue.full_cure"].middle == 24 * 60
    assert "full cure takes 1 day" in page(COLLAR).words
    assert "full cure" not in page(SAMPLES / "tidepool_stretch.yaml").words


def test_work_without_a_known_time_lists_the_steps_and_what_is_missing() -> None:
    """A mix that lacks its bead's size has no count of beads, so weaving has no time."""
    result = changed("size: 11/0, make: Japanese", "size: 11/0")
    found = Page(sheet(result)).words
    assert "The times are not known without" in found and "weave rope" in found


@pytest.mark.parametrize(
    ("text", "outcome"),
    [
        (
            "plan: 1\ntitle: Odd\npiece: necklace\n",
            "NOT CHECKED YET the plan cannot be read as it is: 1 slip",
        ),
        ("\x00", "NOT CHECKED YET the plan cannot be read as it is: 1 slip"),
    ],
)
def test_a_plan_that_cannot_be_judged_still_has_its_page(text: str, outcome: str) -> None:
    found = Page(sheet(keeper().check_text(text)))
    assert outcome in found.words and "Fix this first 1" in found.words
    assert "The whole piece" not in found.words


def test_what_a_plan_says_cannot_become_markup() -> None:
    evil = "<script>alert(1)</script>"
    text = ORLA.read_text(encoding="utf-8")
    text = text.replace("title: Lantern collar", f"title: '{evil}'")
    text = text.replace("maker: Orla", f"maker: '</style>{evil}'")
    text = re.sub(r"\bdusk\b(?! blue)", "'<i>dusk'", text)
    text = re.sub(r"\blantern\b", "'<b onload=x>lantern'", text)
    result = keeper().check_text(text)
    assert result.readable and result.count("error") == 2
    found = Page(sheet(result))
    assert not {"script", "i"} & set(found.tags)
    assert ("b", "onload", "x") not in found.attributes
    assert evil in found.words


def test_a_student_is_never_told_to_buy_what_does_not_fit() -> None:
    words = page(ORLA).words
    supplies = words[words.index("Supplies") : words.index("Cutting list")]
    assert "The bore as written does not work (take a bore of 7.94..8.71 mm, such as" in supplies
    assert "2 2, not as written" in supplies
    assert "ot makeable as written, 2 errors: the remarks say what to change first" in supplies


def test_a_full_sheet_has_the_other_fits_and_sizes_behind_the_leaf() -> None:
    text = sheet(checked(ORLA), keeper(), FULL)
    assert "Marked here: 1." in text and "Sizes that would also work" in text
    assert re.search(r"<strong>depth [\d.]+\.\.[\d.]+ mm", text)
    assert "then open link 7" in text and "Bags for one maker" in text


def test_a_leaf_draws_the_misfits_alone_and_a_full_sheet_eight_others() -> None:
    text = sheet(checked(ORLA), keeper(), FULL)
    for section, after, marked in (
        ("fits", "work", [True]),
        ("other-fits", "other-sizes", [False] * 8),
    ):
        fits = text[text.index(f'<section id="{section}">') : text.index(f'<section id="{after}')]
        captions = re.findall(r"<figcaption>(.*?)</figcaption>", fits, re.S)
        assert ["Marked here" in caption for caption in captions] == marked


def test_a_remark_about_a_part_of_the_drawer_shows_the_line_of_the_drawer(
    tmp_path: Path,
) -> None:
    text = ORLA.read_text(encoding="utf-8")
    [cap] = re.findall(r"^  cap: (.*)$", text, re.M)
    (tmp_path / "mine.yaml").write_text(f"drawer: 1\nparts:\n  tight: {cap}\n", encoding="utf-8")
    plan = tmp_path / "plan.yaml"
    taken = text.replace(f"cap: {cap}", "cap: {from: tight}")
    plan.write_text(taken.replace("plan: 1\n", "plan: 1\ndrawer: mine.yaml\n", 1), encoding="utf-8")
    page = sheet(keeper().check_file(plan))
    assert re.search(r"line 3 of [^<]*mine.yaml", page)
    assert "bore: <mark>6 mm</mark>, depth" in page


def test_a_plan_with_slips_has_no_empty_workings(checker: Checker) -> None:
    result = checker.check_text("plan: 1\ntitle: Slips\npiece: bracelet\n")
    assert not result.readable
    assert "<h2>Workings</h2>" not in sheet(result, None, FULL)
