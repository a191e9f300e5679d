"""Limits of the maker's own in a bench: how they are written, and how slips are answered."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.plugins import host
from wellstrung.reading.bench import read_text
from wellstrung.reading.settings import HouseLimit
from wellstrung.report.bench_list import listed

INSTALLED = host.load()


def read(line: str) -> tuple[tuple[HouseLimit, ...], list[str]]:
    here = INSTALLED
    text = f"bench: 1\nlimits: {{{line}}}"
    bench, faults = read_text(text, "bench.yaml", here.stitches, here.limits, here.measures)
    return (
        bench.house if bench else (),
        [f"{one.place.line}:{one.place.column} {one.says}" for one in faults],
    )


@pytest.mark.parametrize(
    ("line", "whose", "what", "ends", "text"),
    [
        ("piece.mass: at most 60 g", "piece", "mass", (None, 60.0), "at most 60 g"),
        ("piece.mass: At  most 2 oz", "piece", "mass", (None, 56.699), "at most 2 oz"),
        ("piece.length: between 40 cm and 50 cm", "piece", "length", (400.0, 500.0), ""),
        ("piece.bench_time: at most 3 h", "piece", "bench_time", (None, 180.0), "at most 3 h"),
        ("rope.outside: at most 9 mm", "rope", "outside", (None, 9.0), "at most 9 mm"),
        ("woven rope.rounds: at least 12", "woven rope", "rounds", (12.0, None), "at least 12"),
        ("jumpring.wire: at least 1 mm", "jumpring", "wire", (1.0, None), "at least 1 mm"),
        ("calotte.inside: at least 1 mm", "calotte", "inside", (1.0, None), "at least 1 mm"),
        ("part.mass: at most 5 g", "part", "mass", (None, 5.0), "at most 5 g"),
        ("bead.hole: at least 0.8 mm", "bead", "hole", (0.8, None), "at least 0.8 mm"),
        ("cap.eye.hole: at least 2 mm", "cap", "eye.hole", (2.0, None), "at least 2 mm"),
        ("rope.breaking: at least 20 N", "rope", "breaking", (20.0, None), "at least 20 N"),
        ("thread.needed: at most 5 m", "thread", "needed", (None, 5000.0), "at most 5 m"),
        ("piece.mass: {at least: 5 g}", "piece", "mass", (5.0, None), "at least 5 g"),
        ("piece.mass: {at least: 5 g, at most: 9 g}", "piece", "mass", (5.0, 9.0), ""),
    ],
)
def test_a_limit_of_ones_own(
    line: str, whose: str, what: str, ends: tuple[float | None, float | None], text: str
) -> None:
    (limit,), faults = read(line)
    assert not faults
    assert (limit.whose, limit.what, limit.level) == (whose, what, "warning")
    assert limit.low == pytest.approx(ends[0], abs=1e-3) if ends[0] else limit.low is None
    assert limit.high == pytest.approx(ends[1], abs=1e-3) if ends[1] else limit.high is None
    assert limit.text == (
        text
        or f"between {limit.text.split()[1]} {limit.text.split()[2]} and "
        f"{' '.join(limit.text.split()[4:])}"
    )
    assert limit.place[:3] == ("bench.yaml", 2, 10)


def test_it_stands_in_the_list_of_settings_with_its_place() -> None:
    here = INSTALLED
    text = "bench: 1\nlimits: {rope.outside: at most 9 mm}"
    bench, _ = read_text(text, "bench.yaml", here.stitches, here.limits, here.measures)
    ours = [one for one in listed(here, bench, {}) if one.used_by == ("bench-limit",)]
    assert [(one.group, one.name, one.now, one.place and one.place.line) for one in ours] == [
        ("limits", "rope.outside", "at most 9 mm", 2)
    ]


def test_its_level_pieces_and_reason() -> None:
    line = "piece.mass: {at most: 60 g, level: error, pieces: [bracelet, anklet], because: scales}"
    (limit,), _ = read(line)
    assert (limit.level, limit.pieces, limit.because) == (
        "error",
        ("bracelet", "anklet"),
        "scales",
    )


WRITE = "write `at most 60 g`, `at least 60 g` or both, as `between ... and ...`"
SLIPS = {
    "piece.mass: 60 g": f"2:22 `piece.mass` of `limits`: {WRITE}",
    "piece.mass: {because: x}": f"2:22 `piece.mass` of `limits`: {WRITE}",
    "piece.mass: at most 60": "2:22 `piece.mass` of `limits`: a mass needs a unit: write `60 g` or"
    " `60 oz`",
    "piece.mass: at most 60 mm": "2:22 `piece.mass` of `limits`: `mm` in `60 mm` is not a unit of"
    " mass: use g, kg, mg, oz, lb or ct",
    "piece.mass: at most 60..65 g": "2:22 `piece.mass` of `limits`: `60..65 g` is a range: write"
    " one value for each end",
    "piece.mass: between 60 g and 50 g": "2:22 `piece.mass` of `limits`: `60 g` is more than"
    " `50 g`: put them right",
    "woven rope.rounds: at most 9 mm": "2:29 `woven rope.rounds` of `limits`: `9 mm` is not a"
    " number: write one such as `12`",
    "piece.mas: at most 60 g": "2:10 there is no quantity `mas` of `piece`: write `piece.mass`",
    "piece.weight: at most 60 g": "2:10 there is no quantity `weight` of `piece`: write"
    " `piece.mass`",
    "piece.colour: at most 60 g": "2:10 there is no quantity `colour` of `piece`: `wellstrung"
    " bench` lists those that there are",
    "end cap.boer: at most 9 mm": "2:10 there is no quantity `boer` of `end cap`: write"
    " `end cap.bore`",
    "rope.colour: at most 9 mm": "2:10 there is no quantity `colour` of `rope`: `wellstrung bench`"
    " lists those that there are",
    "woven rop.outside: at most 9 mm": "2:10 there is no kind of part called `woven rop`: write"
    " `woven rope.outside`",
    "piece.mass: {at most: 60 g, level: eror}": "2:45 `level` of `piece.mass` of `limits` of the"
    " bench file is `eror`: write `error`",
    "piece.mass: {at mots: 60 g}": "2:23 `at mots` is not a field of `piece.mass` of `limits` of"
    " the bench file: write `at most`",
    "ring swing: {at most: 1 mm}": "2:22 `ring swing` of `limits` of the bench file is a group:"
    " write words or a number, such as `0.3 mm`",
}


@pytest.mark.parametrize("line", SLIPS)
def test_a_slip_is_answered_at_its_place(line: str) -> None:
    limits, (first, *_) = read(line)
    assert not limits
    assert first == SLIPS[line]


def test_all_slips_in_one_round() -> None:
    _, faults = read("piece.mas: at most 60 g, rope.outside: 9 mm, cap loose: 1, cap lose: 1 mm")
    assert len(faults) == 4


@given(st.text(alphabet=st.sampled_from("atmosleu bwn0156gm.{}"), max_size=24))
def test_no_text_breaks_it(text: str) -> None:
    for name in ("piece.mass", "rope.outside", "thread.needed", "woven rope.rounds"):
        limits, faults = read(f"{json.dumps(name)}: {json.dumps(text)}")
        assert bool(limits) != bool(faults)
