"""A bench file: what it changes, how it is refused, and which one holds for a plan."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from running import ROOT, Run
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import Remark
from wellstrung.plugins.host import Host
from wellstrung.reading.bench import read, read_text
from wellstrung.reading.settings import (
    ALLOWANCES,
    LIMITS,
    PACES,
    RATES,
    Bench,
    Setting,
)

#: The collar with a cap that the default limits refuse: 2.2 mm looser than the rope.
LOOSE = (
    "bore: 10 mm, depth: 7 mm, outside: 11.5 mm",
    "bore: 12 mm, depth: 7 mm, outside: 13.5 mm",
)


#: limits as rules bring them, for the cases below
OF_RULES = {
    "cap tight": Setting(0.05, "", "a rule's own"),
    "cap loose": Setting(1.5, "mm", "a rule's own"),
    "ring swing": Setting(0.2, "mm", "a rule's own"),
}
KNOWN = {**LIMITS, **OF_RULES}
#: with three limits that have one word in common
KNOWN_OF_TAILS = {
    **KNOWN,
    **{
        name: Setting(75.0, "mm", "a rule's own")
        for name in ("tail that is tied", "tail woven in", "thread between tails")
    },
}


def bench(text: str) -> Bench:
    found, faults = read_text(text, "bench.yaml", ["tubular peyote", "flat knotwork"], KNOWN)
    assert not faults and found is not None
    return found


def refusal(text: str) -> list[str]:
    found, faults = read_text(text, "bench.yaml", ["tubular peyote"], KNOWN)
    assert found is None
    return [f"{fault.place.line}:{fault.place.column} {fault.in_a_line}" for fault in faults]


def spoken(checker: Checker, text: str) -> list[Remark]:
    return [remark for remark in checker.check_text(text).remarks if remark.counts]


def test_a_bench_that_says_nothing_changes_nothing() -> None:
    empty = bench("bench: 1")
    assert (empty.allowances, empty.limits, empty.rates) == (ALLOWANCES, KNOWN, RATES)
    assert empty.paces == PACES and empty.prices == {} and empty.file == "bench.yaml"


@pytest.mark.parametrize(
    ("line", "group", "name", "value", "unit"),
    [
        ("allowances: {ring size: 0.1 mm}", "allowances", "ring size", 0.1, "mm"),
        ('allowances: {wire: 1/1000"}', "allowances", "wire", 0.0254, "mm"),
        ("allowances: {wire: 0 mm}", "allowances", "wire", 0.0, "mm"),
        ("limits: {cap tight: 4 %}", "limits", "cap tight", 0.04, ""),
        ("limits: {cap tight: 0.04}", "limits", "cap tight", 0.04, ""),
        ("limits: {cap tight: 0}", "limits", "cap tight", 0.0, ""),
        ("limits: {cap loose: 0.2 cm}", "limits", "cap loose", 2.0, "mm"),
        ("rates: {glue: 90 s}", "rates", "glue", 1.5, "min"),
        ("rates: {weaving: 9 beads per min}", "rates", "weaving", 9.0, "beads/min"),
        ("rates: {weaving: 9 a minute}", "rates", "weaving", 9.0, "beads/min"),
        ("rates: {stringing: 600 beads/h}", "rates", "stringing", 10.0, "beads/min"),
        ("rates: {stringing: 100 beads per 8 min}", "rates", "stringing", 12.5, "beads/min"),
        ("rates: {flat knotwork: 1 bead per min}", "rates", "flat knotwork", 1.0, "beads/min"),
        ("paces: {student: 2.5}", "paces", "student", 2.5, ""),
        ("paces: {maker: 80 %}", "paces", "maker", 0.8, ""),
    ],
)
def test_a_value_in_the_spelling_of_the_author(
    line: str, group: str, name: str, value: float, unit: str
) -> None:
    found = getattr(bench(f"bench: 1\n{line}"), group)[name]
    written = line.partition(f"{name}: ")[2].removesuffix("}")
    assert found.value == pytest.approx(value)
    assert found == Setting(found.value, unit, f"bench.yaml:2, written `{written}`")


def test_prices_are_kept_as_written() -> None:
    prices = "{kelp: 4.20 EUR per 10 g, cap: £1.80 each, small: 3 USD per 100, frame: 12 €}"
    assert bench(f"bench: 1\nprices: {prices}").prices == {
        "kelp": "4.20 EUR per 10 g",
        "cap": "£1.80 each",
        "small": "3 USD per 100",
        "frame": "12 €",
    }


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "1:1 the file is empty: write settings below `bench: 1`, or delete the file"),
        ("- 1", "1:1 a bench file is made of named entries: begin with `bench: 1`"),
        ("limits: {cap tight: 4 %}", "1:1 the bench file lacks `bench`: write `bench: 1`"),
        ("bench: 2", "1:8 `bench` of the bench file is `2`: write `1`"),
        (
            "bench: 1\nlimit: {cap tight: 4 %}",
            "2:1 `limit` is not a field of the bench file: write `limits`",
        ),
        (
            "bench: 1\nallowances: {ring sise: 0.1 mm}",
            "2:14 there is no allowance called `ring sise`: write `ring size`",
        ),
        (
            "bench: 1\nrates: {tubular payote: 9 beads per min}",
            "2:9 there is no rate called `tubular payote`: write `tubular peyote`",
        ),
        (
            "bench: 1\npaces: {pupil: 2}",
            "2:9 there is no pace called `pupil`: write `student`",
        ),
        (
            "bench: 1\nlimits: {ring swing: 0.3}",
            "2:22 `ring swing` of `limits`: a length needs a unit: write `0.3 mm` or `0.3 cm`",
        ),
        (
            "bench: 1\nlimits: {ring swing: 3 g}",
            "2:22 `ring swing` of `limits`: `g` in `3 g` is not a unit of length:"
            " use mm, cm, m, in, ft or yd",
        ),
        (
            "bench: 1\nlimits: {ring swing: 0.2 ± 0.1 mm}",
            "2:22 `ring swing` of `limits`: `0.2 ± 0.1 mm` is a range: write the one value that you"
            " work to",
        ),
        (
            "bench: 1\nlimits: {ring swing: -0.2 mm}",
            "2:22 `ring swing` of `limits`: `-0.2 mm` is negative: write a length of more than 0",
        ),
        (
            "bench: 1\nlimits: {cap tight: 5}",
            "2:21 `cap tight` of `limits`: `5` may be a share or per cent: write `5 %` or `0.05`",
        ),
        (
            "bench: 1\nlimits: {cap tight: a little}",
            "2:21 `cap tight` of `limits`: `a little` is not a number: write one such as `0.05`"
            " or `5 %`",
        ),
        (
            "bench: 1\nlimits: {cap tight: 0.05 mm}",
            "2:21 `cap tight` of `limits`: `0.05 mm` is not a number: write one such as `0.05`"
            " or `5 %`",
        ),
        (
            "bench: 1\npaces: {student: 0}",
            "2:18 `student` of `paces`: `0` is far outside the usual range (about 3)",
        ),
        (
            "bench: 1\nrates: {glue: 5}",
            "2:15 `glue` of `rates`: a time needs a unit: write `5 min` or `5 h`",
        ),
        (
            "bench: 1\nrates: {weaving: 9}",
            "2:18 `weaving` of `rates`: `9` needs beads and a time: write `9 beads per min`",
        ),
        (
            "bench: 1\nrates: {weaving: 5 min}",
            "2:18 `weaving` of `rates`: `5 min` is not a rate of beads: write `9 beads per min`",
        ),
        (
            "bench: 1\nrates: {weaving: 0 beads per min}",
            "2:18 `weaving` of `rates`: `0 beads per min` is not a speed of hands: write how many"
            " beads in a time",
        ),
        (
            "bench: 1\nrates: {weaving: 9 beads per mm}",
            "2:18 `weaving` of `rates`: `mm` in `1 mm` is not a unit of time: use s, min, h, d"
            " or week",
        ),
        (
            "bench: 1\nprices: {cap: 3}",
            "2:15 `cap` of `prices`: `3` is not a price: write it with its currency, as in"
            " `1.80 EUR each`",
        ),
        (
            "bench: 1\nlimits: {ring swing: {at least: 0.2 mm}}",
            "2:22 `ring swing` of `limits` of the bench file is a group: write words or a number,"
            " such as `0.3 mm`",
        ),
        ("bench: 1\nlimits: [0.2 mm]", "2:9 `limits` of the bench file is a list: write names"),
        ("bench: 1\nlimits:\n\tring swing: 0.2 mm", "3:1 there is a tab here: indent with spaces"),
        (
            "bench: 1\nlimits: &mine {cap tight: 4 %}",
            '2:9 a text cannot begin with &: put it in quotes, "&mine"',
        ),
        (
            "bench: 1\nlimits: *mine",
            '2:9 a text cannot begin with *: put it in quotes, "*mine"',
        ),
        (
            "bench: 1\n---\nbench: 1",
            "2:1 a second bench file begins here: put each bench file in a file of its own",
        ),
    ],
)
def test_a_slip_is_told_at_its_place(text: str, says: str) -> None:
    first, *more = refusal(text)
    assert first.startswith(says)
    assert not more


MEANT = {
    "limits: {tail: 10 cm}": "there is no limit called `tail`: you may mean `tail that is tied`,"
    " `tail woven in` or `thread between tails`; `wellstrung bench` says what each is",
    "limits: {ring size: 0.1 mm}": "there is no limit called `ring size`: `ring size` is an"
    " allowance, write it under `allowances`",
    "limits: {ring sise: 0.1 mm}": "there is no limit called `ring sise`: `ring size` is an"
    " allowance, write it under `allowances`",
    "paces: {pupil: 2}": "there is no pace called `pupil`: write `student`",
    "limits: {extra beads: 5 %}": "there is no limit called `extra beads`: you may mean"
    " `spare Japanese beads`, `spare Czech beads` or `spare cylinder beads`;"
    " `wellstrung bench` says what each is",
    "limits: {pliers: 8 mm}": "there is no limit called `pliers`: you may mean `pin grip`;"
    " `wellstrung bench` says what each is",
    "limits: {hole: 1 mm}": "there is no limit called `hole`: you may mean `crimp hole` of"
    " `allowances`; `wellstrung bench` says what each is",
    "limits: {colour: 1 mm}": "there is no limit called `colour`: `wellstrung bench` lists them",
    "limits: {the: 1 mm}": "there is no limit called `the`: `wellstrung bench` lists them",
}


@pytest.mark.parametrize("line", MEANT)
def test_a_name_that_is_none_is_answered_by_its_meaning(line: str) -> None:
    _, (fault,) = read_text(f"bench: 1\n{line}", "bench.yaml", ["tubular peyote"], KNOWN_OF_TAILS)
    assert fault.says == MEANT[line]
    assert bool(fault.edits) == ("write `student`" in fault.says)


def test_every_slip_is_told_at_once_in_the_order_written() -> None:
    text = "bench: 1\nprices: {cap: 3}\nlimits: {cap tihgt: 4 %, ring swing: 1}\nnotes: x"
    assert [line.partition(" ")[0] for line in refusal(text)] == ["2:15", "3:10", "3:38", "4:1"]


def test_a_name_may_be_a_slip_twice() -> None:
    (says,) = refusal("bench: 1\nlimits: {cap tight: 4 %, cap tight: 5 %}")
    assert says.startswith("2:26 ")


@given(st.text(alphabet=st.characters(codec="utf-8"), max_size=80))
def test_no_text_breaks_it(text: str) -> None:
    for whole in (text, f"bench: 1\nlimits: {{cap tight: {text}}}", f"bench: 1\nrates: {text}"):
        found, faults = read_text(whole, "bench.yaml", (), KNOWN)
        assert (found is None) == bool(faults)


@given(
    st.dictionaries(st.sampled_from([*KNOWN, *RATES]), st.text("0159./%- mbpeadsrinh", max_size=9))
)
def test_no_value_breaks_it_and_none_below_zero_gets_through(values: dict[str, str]) -> None:
    text = f"bench: 1\nlimits: {json.dumps(values)}\nrates: {json.dumps(values)}"
    found, faults = read_text(text, "bench.yaml", (), KNOWN)
    assert (found is None) == bool(faults)
    if found is not None:
        assert all(
            setting.value >= 0 for setting in (*found.limits.values(), *found.rates.values())
        )


@pytest.mark.parametrize("name", ["missing.yaml", "folder"])
def test_what_is_no_file_is_refused(name: str, tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    found, (fault,) = read(tmp_path / name)
    assert found is None and str(tmp_path / name) in fault.says


def test_a_limit_of_the_bench_decides_and_is_the_source_in_the_working(
    whole_collar: str, installed: Host
) -> None:
    text = whole_collar.replace(*LOOSE)
    assert [remark.rule for remark in spoken(Checker(installed), text)] == ["cap-bore"]
    mine = Checker(installed, bench=bench("bench: 1\nlimits: {cap loose: 2 mm}"))
    (remark,) = spoken(mine, text)
    assert "cap loose = 2 mm; bench.yaml:2, written `2 mm`" in remark.working
    wide = Checker(installed, bench=bench("bench: 1\nlimits: {cap loose: 3 mm}"))
    assert spoken(wide, text) == [] and wide.check_text(text).bench == "bench.yaml"


def test_an_allowance_of_the_bench_is_the_spread_of_a_size(collar: str, installed: Host) -> None:
    exact = Checker(installed, bench=bench("bench: 1\nallowances: {cap size: 0 mm}"))
    usual = Checker(installed)
    kept = [
        next(kept for kept in checker.check_text(collar).held if kept.rule == "cap-bore")
        for checker in (exact, usual)
    ]
    margins = [entry.margin for entry in kept]
    assert margins[0] and margins[1]
    assert [len(margin.causes) for margin in margins if margin] == [0, 1]


# --- which bench holds for a plan


@pytest.fixture
def shelf(tmp_path: Path, whole_collar: str) -> Path:
    """A class folder with a plan in it whose cap the default limits call too loose."""
    (tmp_path / "class" / "orla").mkdir(parents=True)
    (tmp_path / "class" / "orla" / "plan.yaml").write_text(whole_collar.replace(*LOOSE), "utf-8")
    return tmp_path


def settings(folder: Path, loose: str) -> Path:
    file = folder / "bench.yaml"
    file.write_text(f"bench: 1\nlimits: {{cap loose: {loose}}}\n", encoding="utf-8")
    return file


def checked(run: Run, *arguments: str | Path, cwd: Path = ROOT) -> tuple[int, str | None]:
    ran = run("check", *arguments, "--strict", "--as", "json", cwd=cwd)
    (plan,) = json.loads(ran.out)["plans"]
    return ran.code, plan["bench"]


def test_no_bench_is_null(run: Run, shelf: Path) -> None:
    assert checked(run, shelf / "class/orla/plan.yaml") == (1, None)


def test_the_nearest_bench_above_a_plan_holds_and_is_named(run: Run, shelf: Path) -> None:
    plan = shelf / "class/orla/plan.yaml"
    far = settings(shelf, "3 mm")
    assert checked(run, plan) == (0, str(far))
    near = settings(shelf / "class", "0.5 mm")
    assert checked(run, plan) == (1, str(near))
    beside = settings(shelf / "class/orla", "3 mm")
    assert checked(run, plan) == (0, str(beside))


def test_a_bench_is_named_as_the_plan_is_from_where_one_stands(run: Run, shelf: Path) -> None:
    settings(shelf / "class", "3 mm")
    assert checked(run, "class/orla/plan.yaml", cwd=shelf) == (0, "class/bench.yaml")
    above = str(shelf / "class" / "bench.yaml")
    assert checked(run, "plan.yaml", cwd=shelf / "class/orla") == (0, above)


def test_a_bench_that_is_named_beats_the_one_beside_the_plan(run: Run, shelf: Path) -> None:
    settings(shelf / "class/orla", "0.5 mm")
    mine = settings(shelf, "3 mm").rename(shelf / "mine.yaml")
    found = checked(run, shelf / "class/orla/plan.yaml", "--bench", mine)
    assert found == (0, str(mine))


def test_the_report_for_people_names_the_bench(run: Run, shelf: Path, collar: str) -> None:
    settings(shelf / "class", "1.6 mm")
    ran = run("check", "class/orla/plan.yaml", "--workings", "--strict", cwd=shelf)
    assert ran.code == 1
    assert ran.out.splitlines()[3] == "bench: class/bench.yaml"
    assert "cap loose = 1.6 mm; class/bench.yaml:2, written `1.6 mm`" in ran.out
    (shelf / "class/other.yaml").write_text(collar, encoding="utf-8")
    settings(shelf / "class/orla", "3 mm")
    out = run("check", "class", cwd=shelf).out
    assert "bench: class/bench.yaml\n" in out and "bench: class/orla/bench.yaml\n" in out


@pytest.mark.parametrize("way", ["found", "named"])
def test_a_bench_that_cannot_be_read_stops_the_run(run: Run, shelf: Path, way: str) -> None:
    file = shelf / "class" / ("bench.yaml" if way == "found" else "mine.yaml")
    file.write_text("bench: 1\nlimits: {cap lose: 2 mm, ring swing: 1}\n", encoding="utf-8")
    named: list[str | Path] = [] if way == "found" else ["--bench", file]
    ran = run("check", shelf / "class/orla/plan.yaml", *named)
    assert ran.code == 2 and ran.out == ""
    assert ran.err == (
        "wellstrung: the bench file cannot be used:\n"
        f"  {file}:2:10 there is no limit called `cap lose`: write `cap loose`\n"
        f"  {file}:2:38 `ring swing` of `limits`: a length needs a unit: write `1 mm` or `1 cm`\n"
    )


def test_a_bench_that_is_not_there_stops_the_run(run: Run, shelf: Path) -> None:
    ran = run("check", shelf / "class/orla/plan.yaml", "--bench", "none.yaml")
    assert ran.code == 2 and "`none.yaml` cannot be read: no such file or directory" in ran.err
    (shelf / "bench.yaml").symlink_to(shelf / "nowhere")
    ran = run("check", shelf / "class/orla/plan.yaml")
    assert ran.code == 2 and "bench.yaml` cannot be read: no such file or directory" in ran.err


def test_a_bench_reached_by_a_link_out_of_its_folder_is_not_used(run: Run, shelf: Path) -> None:
    secret = shelf.parent / "secret.yaml"
    secret.write_text("bench: 1\nlimits: {secret: 2 mm}\n", encoding="utf-8")
    (shelf / "class/orla/bench.yaml").symlink_to(secret)
    ran = run("check", shelf / "class/orla/plan.yaml", "--as", "json")
    assert "secret: 2 mm" not in ran.out + ran.err
    assert "bench.yaml is a link out of its folder and is not used: copy it" in ran.err


def test_a_bad_bench_stops_its_own_plans_alone(run: Run, shelf: Path) -> None:
    (shelf / "class/orla/bench.yaml").write_text("bench: 1\nlimits: 3\n", encoding="utf-8")
    plan = shelf / "class/plan.yaml"
    plan.write_bytes((shelf / "class/orla/plan.yaml").read_bytes())
    ran = run("check", shelf / "class")
    assert ran.code == 2 and "1. ERROR" not in ran.out
    said = " ".join(ran.out.split())
    assert "is not checked: the bench file cannot be used" in said
    assert run("check", plan).code == 0


def test_a_bench_loads_no_code(run: Run, shelf: Path) -> None:
    (shelf / "class/orla/bench.py").write_text("open('loaded', 'w')", encoding="utf-8")
    (shelf / "class/orla/bench.yaml").write_text("bench: 1\nrules: bench.py\n", encoding="utf-8")
    ran = run("check", "plan.yaml", cwd=shelf / "class/orla")
    assert ran.code == 2 and "`rules` is not a field of the bench file" in ran.err
    assert not (shelf / "class/orla/loaded").exists()


def test_names_of_settings_in_words_of_the_trade() -> None:
    text = "bench: 1\nrates: {tubular gourd stitch: 9 beads per min}\n"
    text += "allowances: {Ring-Size: 0.1 mm}\n"
    found, faults = read_text(text, "bench.yaml", ["tubular peyote"], KNOWN)
    assert found is not None and not faults
    assert found.rates["tubular peyote"].value == 9
    assert found.allowances["ring size"].value == 0.1
