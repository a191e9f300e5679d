"""Lettering is read on paper, on a screen and on a phone, in light, in dark and in print."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import wellstrung.drawing
from pages import ALL, checked, keeper, looks, parsed, words_of
from running import SAMPLES
from wellstrung.drawing import Figure
from wellstrung.drawing.piece import PHONE, drawings
from wellstrung.drawing.sections import sections
from wellstrung.drawing.sections.section import WIDTH

#: the least height of letters, mm: 8 pt on paper, 12 pixels on a screen
LEAST = max(8 * 25.4 / 72, 12 * 25.4 / 96)
STYLES = sorted(Path(wellstrung.drawing.__file__).parent.glob("*.css"))
#: what letters are drawn in, and what lies behind them
LETTERS = {
    "--ink": ("--paper", "--metal", "--work", "--threads", "--likely"),
    "--error-ink": ("--error",),
    "--warning": ("--paper",),
}


def size(svg: str, side: str) -> float:
    return float(parsed(svg).get(side, "").removesuffix("mm"))


def least_letters(svg: str) -> float:
    """The height of the smallest letters as drawn, mm."""
    tree = parsed(svg)
    scale = float(tree.get("data-scale", ""))
    heights = [float(one.get("font-size", "")) for one in tree.iter() if one.tag.endswith("text")]
    return min(heights) * scale


def shown(path: Path) -> list[Figure]:
    result = checked(path)
    return [figure for figure in (*drawings(result), *sections(result)) if figure.svg]


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_letters_are_large_enough_on_paper_and_on_a_screen(path: Path) -> None:
    for figure in shown(path):
        for svg in filter(None, (figure.svg, figure.narrow)):
            assert least_letters(svg) >= LEAST


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_a_phone_shows_a_piece_that_needs_no_shrinking(path: Path) -> None:
    for figure in drawings(checked(path)):
        assert size(figure.narrow, "width") <= PHONE[0]
        words = words_of(parsed(figure.narrow))
        for index, (_, one) in enumerate(words):
            assert not any(one.meets(other) for _, other in words[index + 1 :])
        marks = {one.text for one in looks(parsed(figure.narrow), "number")}
        assert marks == {str(number) for number in figure.remarks}


def test_two_fits_stand_side_by_side_on_paper() -> None:
    widths = [
        size(figure.svg, "width")
        for path in SAMPLES.rglob("*.yaml")
        for figure in sections(checked(path))
    ]
    wide = [width for width in widths if width > WIDTH]
    assert len(wide) < 0.05 * len(widths) and max(widths) <= PHONE[0]


def test_a_narrow_drawing_shows_the_shapes_of_the_wide_one() -> None:
    figure = drawings(checked(SAMPLES / "breakwater_cuff.yaml"))[1]
    [shapes] = [one for one in parsed(figure.svg) if one.tag.endswith("}g") and one.get("id")]
    [use] = [one for one in parsed(figure.narrow) if one.tag.endswith("}use")]
    assert use.get("href") == f"#{shapes.get('id')}"
    assert set(shapes.get("class", "").split()) == {"drawing", "piece"}
    assert len(figure.narrow) < len(figure.svg) / 2


def test_a_long_name_is_cut_where_it_would_widen_the_drawing() -> None:
    text = (SAMPLES / "breakwater_cuff.yaml").read_text(encoding="utf-8")
    text = re.sub(r"\bclosure\b", "a closure that is long in the telling and longer still", text)
    for figure in drawings(keeper().check_text(text)):
        assert size(figure.narrow, "width") <= PHONE[0]


def test_a_long_entry_of_the_key_is_cut_where_it_would_widen_the_drawing() -> None:
    text = (SAMPLES / "breakwater_cuff.yaml").read_text(encoding="utf-8")
    assert re.search(r"\bcolour: [^,}]*", text)
    text = re.sub(r"\bcolour: [^,}\n]*", f"colour: {'grey as a wet slate ' * 4}", text)
    for figure in drawings(keeper().check_text(text)):
        assert size(figure.narrow, "width") <= PHONE[0]


def modes(css: str) -> dict[str, dict[str, str]]:
    """The colours of light, dark and print, by their names; print and dark begin from light."""
    found: dict[str, dict[str, str]] = {"light": {}, "dark": {}, "print": {}}
    names = {"(prefers-color-scheme: dark)": "dark", "print": "print"}
    for query, block in re.findall(r"@media ([^{]*?) \{(.*?)\n\}", css, flags=re.S):
        if query in names:
            found[names[query]] |= dict(re.findall(r"(--[a-z0-9-]+): (#[0-9a-f]+)", block))
    plain = re.sub(r"@media [^{]* \{.*?\n\}", "", css, flags=re.S)
    found["light"] = dict(re.findall(r"(--[a-z0-9-]+): (#[0-9a-f]+)", plain))
    return {mode: found["light"] | colours for mode, colours in found.items()}


def bright(colour: str) -> float:
    """Relative luminance, as the W3C's guidelines define it."""
    digits = colour[1:] if len(colour) == 7 else "".join(2 * digit for digit in colour[1:])
    parts = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    linear = [one / 12.92 if one <= 0.03928 else ((one + 0.055) / 1.055) ** 2.4 for one in parts]
    return sum(share * one for share, one in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


@pytest.mark.parametrize("mode", ["light", "dark", "print"])
def test_letters_stand_out_from_what_lies_behind_them(mode: str) -> None:
    colours = modes("".join(sheet.read_text(encoding="utf-8") for sheet in STYLES))[mode]
    for letters, grounds in LETTERS.items():
        for ground in grounds:
            high, low = sorted((bright(colours[letters]), bright(colours[ground])), reverse=True)
            assert (high + 0.05) / (low + 0.05) >= 4.5, f"{letters} on {ground} in {mode}"


def test_every_colour_of_letters_is_held_against_its_ground() -> None:
    css = "".join(sheet.read_text(encoding="utf-8") for sheet in STYLES)
    fills = set(re.findall(r"\.(?:text|number)[^{]*\{[^}]*fill: var\((--[a-z-]+)\)", css))
    fills |= set(re.findall(r"\btext \{[^}]*fill: var\((--[a-z-]+)\)", css))
    assert fills == set(LETTERS)
