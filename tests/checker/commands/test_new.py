"""`new`: files that work as they are written, and a first rule as the developers' page tells it."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from running import ROOT, Run
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host
from wellstrung.testing.cases import Case, answer, cases


@pytest.mark.parametrize(
    ("what", "name", "module"),
    [
        ("rule", "shop-tag", "shop_tag"),
        ("stitch", "twin stitch", "twin_stitch"),
        ("kind", "wax seal", "wax_seal"),
    ],
)
def test_what_is_written_works(what: str, name: str, module: str, run: Run, tmp_path: Path) -> None:
    ran = run("new", what, name, cwd=tmp_path)
    assert (ran.code, ran.err) == (0, "")
    assert ran.out == (
        f"wrote {module}.py and 1 more beside it\n"
        f"its cases: pytest -p wellstrung.testing {module}.yaml\n"
    )
    checker = Checker(host.load([tmp_path / f"{module}.py"]))
    found: list[Case] = list(cases(tmp_path / f"{module}.yaml"))
    assert found
    for case in found:
        assert answer(case, checker) == {"expect": case.expect, **case.pinned}


@pytest.mark.parametrize(
    ("what", "name", "says"),
    [
        (
            "rule",
            "Shop Tag",
            "`Shop Tag` is no name for a rule: use small letters, as in `shop-tag`",
        ),
        (
            "rule",
            "shop tag",
            "`shop tag` is no name for a rule: use small letters, as in `shop-tag`",
        ),
        (
            "kind",
            "../seal",
            "`../seal` is no name for a kind: use small letters, as in `twin kind`",
        ),
    ],
)
def test_a_name_that_is_none(what: str, name: str, says: str, run: Run, tmp_path: Path) -> None:
    ran = run("new", what, name, cwd=tmp_path)
    assert (ran.code, ran.out, ran.err) == (2, "", f"wellstrung: {says}\n")
    assert list(tmp_path.iterdir()) == []


def test_no_file_is_written_over(run: Run, tmp_path: Path) -> None:
    (tmp_path / "shop_tag.yaml").write_text("mine", encoding="utf-8")
    ran = run("new", "rule", "shop-tag", cwd=tmp_path)
    assert ran.code == 2 and "is there already" in ran.err
    assert (tmp_path / "shop_tag.yaml").read_text(encoding="utf-8") == "mine"
    assert run("new", "rule", "shop-tag", "--force", cwd=tmp_path).code == 0


@pytest.mark.slow
def test_the_first_rule_of_the_developers_page(tmp_path: Path) -> None:
    page = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    part = page.partition("## Your first rule in ten minutes")[2].partition("\n## ")[0]
    commands = "\n".join(re.findall(r"```sh\n(.*?)```", part, re.DOTALL))
    assert commands.count("\n") >= 5
    plan = ROOT / "sample_plans" / "quay_lamp_necklace.yaml"
    (tmp_path / "plan.yaml").write_bytes(plan.read_bytes())
    here = f'wellstrung() {{ {sys.executable} -m wellstrung "$@"; }}\n'
    here += f'pytest() {{ {sys.executable} -m pytest "$@"; }}\n'
    done = subprocess.run(
        ["bash", "-euo", "pipefail", "-c", here + commands],
        cwd=tmp_path,
        env=dict(os.environ),
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    said = re.findall(r"```text\n(.*?)```", part, re.DOTALL)
    assert said and all(one.strip() in done.stdout for one in said), done.stdout
