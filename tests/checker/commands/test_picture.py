"""`picture`: the piece alone as a file that any program shows, life-size or as large as asked."""

from __future__ import annotations

import re
import struct
from pathlib import Path
from xml.etree import ElementTree

import pytest

from pages import box_of, checked, looks, parsed
from running import SAMPLES, SHARED, Run

CUFF = SAMPLES / "breakwater_cuff.yaml"
COLLAR = SHARED / "slack_tide_collar.yaml"


def drawn(run: Run, out: Path, *options: str, plan: Path = COLLAR) -> ElementTree.Element:
    ran = run("picture", plan, "--out", out, *options)
    assert (ran.code, ran.err) == (0, ""), ran.err
    return ElementTree.fromstring(out.read_text(encoding="utf-8"))


def sides(tree: ElementTree.Element) -> tuple[float, float]:
    wide, high = (tree.get(side, "").removesuffix("mm") for side in ("width", "height"))
    return float(wide), float(high)


def chunks(png: bytes) -> dict[bytes, bytes]:
    found, at = {}, 8
    while at < len(png):
        [long] = struct.unpack(">I", png[at : at + 4])
        found[png[at + 4 : at + 8]] = png[at + 8 : at + 8 + long]
        at += long + 12
    return found


def test_a_picture_is_life_size_and_shows_the_piece_alone(run: Run, tmp_path: Path) -> None:
    tree = drawn(run, tmp_path / "piece.svg")
    assert tree.get("data-scale") == "1"
    assert not [one for one in tree.iter() if one.tag.endswith(("text", "use", "script"))]
    things = {one.get("data-part") for one in looks(tree, "thing")}
    assert {"toggle", "rope", "cap", "frame", "drop"} <= things
    [rope] = [one for one in looks(tree, "thing") if one.get("data-part") == "rope"]
    box = box_of(rope)
    assert box.right - box.left == pytest.approx(397, abs=1.5)


def test_every_bead_is_drawn_where_a_page_has_bands(run: Run, tmp_path: Path) -> None:
    tree = drawn(run, tmp_path / "piece.svg", plan=CUFF)
    band = next(one for one in looks(tree, "thing") if one.get("data-part") == "band")
    beads = [one for one in band.iter() if "bead" in one.get("class", "").split()]
    count = checked(CUFF).quantities["band.beads"].middle
    assert len(beads) == pytest.approx(count, abs=2), "the row that closes it may be short of one"


def test_a_picture_stands_alone(run: Run, tmp_path: Path) -> None:
    out = tmp_path / "piece.svg"
    tree = drawn(run, out)
    text = out.read_text(encoding="utf-8")
    assert "var(" not in text and "@media" not in text and "vector-effect" not in text
    assert "href" not in text and not re.search(r"\d+mm", text.partition("<style>")[2])
    style = next(one.text or "" for one in tree.iter() if one.tag.endswith("style"))
    known = set(re.findall(r"\.([a-z][a-z0-9-]*)", style)) | {"thing", "measured", "drawing"}
    used = {look for one in tree.iter() for look in one.get("class", "").split()}
    assert {one for one in used if not re.fullmatch(r"b\d+", one)} <= known
    ground = next(one for one in tree if one.tag.endswith("rect"))
    assert ground.get("style") == "fill:#ffffff"


@pytest.mark.parametrize(
    ("options", "wide"),
    [(["--width", "12cm"], 120), (["--width", "4 in"], 101.6), (["--width", "800px"], 211.67)],
)
@pytest.mark.parametrize("marks", [[], ["--marks"]])
def test_a_picture_is_as_wide_as_asked(
    run: Run, tmp_path: Path, options: list[str], wide: float, marks: list[str]
) -> None:
    tree = drawn(run, tmp_path / "piece.svg", *options, *marks)
    assert sides(tree)[0] == pytest.approx(wide, rel=0.01)


@pytest.mark.parametrize("width", ["8cm", "40cm"])
def test_lines_are_as_thick_on_paper_at_any_width(run: Run, tmp_path: Path, width: str) -> None:
    tree = drawn(run, tmp_path / "piece.svg", "--width", width)
    style = next(one.text or "" for one in tree.iter() if one.tag.endswith("style"))
    thick = re.search(r"\.bead \{[^}]*stroke-width: ([\d.]+)", style)
    assert thick
    assert float(thick[1]) * float(tree.get("data-scale", "")) == pytest.approx(0.15, rel=1e-3)


@pytest.mark.parametrize(("sheet", "room"), [("A4", (180, 267)), ("letter", (185.9, 249.4))])
def test_a_picture_fits_a_sheet(
    run: Run, tmp_path: Path, sheet: str, room: tuple[float, float]
) -> None:
    for plan in (COLLAR, SAMPLES / "spindrift_earrings.yaml"):
        size = sides(drawn(run, tmp_path / "piece.svg", "--fit", sheet, "--force", plan=plan))
        assert min(size) <= room[0] * 1.01 and max(size) <= room[1] * 1.01
        assert max(min(size) / room[0], max(size) / room[1]) > 0.98


def test_marks_bring_names_and_the_numbers_of_remarks(run: Run, tmp_path: Path) -> None:
    plan = SAMPLES / "class" / "kitto_cuff.yaml"
    out = tmp_path / "piece.svg"
    assert run("picture", plan, "--out", out, "--marks").code == 1, "the plan has an error"
    tree = parsed(out.read_text(encoding="utf-8"))
    numbers = {one.text for one in looks(tree, "number")}
    assert numbers == {str(n) for n, _ in enumerate(checked(plan).numbered, 1)}
    assert any("band" in (one.text or "") for one in looks(tree, "label"))


def test_a_png_has_its_dots_and_says_how_large_it_prints(run: Run, tmp_path: Path) -> None:
    pytest.importorskip("resvg_py")
    life, small = tmp_path / "piece.png", tmp_path / "small.png"
    assert run("picture", COLLAR, "--out", life).code == 0
    assert run("picture", COLLAR, "--out", small, "--width", "400px").code == 0
    found = chunks(life.read_bytes())
    wide, high = struct.unpack(">II", found[b"IHDR"][:8])
    per_metre, _, unit = struct.unpack(">IIB", found[b"pHYs"])
    size = sides(drawn(run, tmp_path / "piece.svg"))
    assert unit == 1 and wide / per_metre * 1000 == pytest.approx(size[0], rel=1e-3)
    assert high / per_metre * 1000 == pytest.approx(size[1], rel=0.01)
    found = chunks(small.read_bytes())
    wide, high = struct.unpack(">II", found[b"IHDR"][:8])
    size = sides(drawn(run, tmp_path / "small.svg", "--width", "400px"))
    assert wide == 400 and high == pytest.approx(400 * size[1] / size[0], abs=1)
    assert b"pHYs" not in found


def test_a_png_is_not_blank(run: Run, tmp_path: Path) -> None:
    pytest.importorskip("resvg_py")
    out = tmp_path / "piece.png"
    assert run("picture", CUFF, "--out", out, "--width", "600px").code == 0
    assert len(out.read_bytes()) > 20_000


def test_bad_input_is_said_in_a_line_and_writes_nothing(run: Run, tmp_path: Path) -> None:
    plan = tmp_path / "plan.yaml"
    plan.write_bytes(COLLAR.read_bytes())
    (tmp_path / "torn.yaml").write_text("plan: 1\nparts: [\n", encoding="utf-8")
    (tmp_path / "mine.svg").write_text("<svg/>", encoding="utf-8")
    for arguments, code, says in (
        (["plan.yaml", "--out", "piece.jpg"], 2, "piece.jpg is neither: take --out piece.svg"),
        (["plan.yaml", "--out", "piece"], 2, "is neither"),
        (["torn.yaml", "--out", "piece.svg"], 1, "there is nothing to draw in torn.yaml"),
        (["plan.yaml", "--out", "mine.svg"], 2, "is there already"),
        (["plan.yaml", "--out", "piece.svg", "--width", "wide"], 2, "`wide` is no width"),
        (["plan.yaml", "--out", "piece.svg", "--width", "0px"], 2, "no width of a picture"),
        (["plan.yaml", "--out", "piece.png", "--width", "9 m"], 2, "too many dots"),
    ):
        before = sorted(path.name for path in tmp_path.iterdir())
        ran = run("picture", *arguments, cwd=tmp_path)
        assert ran.code == code and says in ran.err and ran.err.count("\n") == 1, ran.err
        assert sorted(path.name for path in tmp_path.iterdir()) == before
    assert (tmp_path / "mine.svg").read_text(encoding="utf-8") == "<svg/>"
    ran = run("picture", "plan.yaml", "--out", "mine.svg", "--force", cwd=tmp_path)
    assert ran.code == 0 and "wrote mine.svg" in ran.out
    assert run("picture", "plan.yaml", "--out", "mine.svg", cwd=tmp_path).code == 0, "ours now"


def test_a_picture_is_never_written_over_the_plan(run: Run, tmp_path: Path) -> None:
    plan = tmp_path / "plan.yaml"
    plan.write_bytes(COLLAR.read_bytes())
    link = tmp_path / "plan.svg"
    link.symlink_to(plan)
    ran = run("picture", plan, "--out", link, "--force")
    assert ran.code == 2 and "give another --out" in ran.err
    assert plan.read_bytes() == COLLAR.read_bytes()


def test_a_picture_is_curved_as_it_is_worn(run: Run, tmp_path: Path) -> None:
    tree = drawn(run, tmp_path / "piece.svg", "--worn")
    wide, high = sides(tree)
    assert 100 < wide < 160 and 150 < high < 300
    ran = run("picture", SAMPLES / "spindrift_earrings.yaml", "--out", tmp_path / "a.svg", "--worn")
    assert ran.code == 2 and "goes round no neck, wrist or ankle" in ran.err
