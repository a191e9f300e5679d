"""`picture`: the piece alone, as an SVG or PNG file, for a pattern or a shop page."""

from __future__ import annotations

import argparse
import struct
import zlib
from pathlib import Path

from wellstrung.commands.checked import checked_alone, exit_code, inputs
from wellstrung.commands.output import BROKEN, note, save
from wellstrung.common import units
from wellstrung.drawing.alone import alone
from wellstrung.drawing.piece.hanging import can_be_seen, counted
from wellstrung.drawing.piece.picture import Sizing, picture
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host as hosts
from wellstrung.plugins.error import HostError

#: the dots of a PNG to an inch of paper, as printers ask for them: common practice, no source; and
#: the most that it has
_DPI, _MOST_DOTS = 300.0, 60_000_000
#: the pixels of an inch as CSS counts them
_PIXELS = 96.0
#: what is left of sheets of paper (ISO 216, and 8.5 by 11 in) between margins of 15 mm, mm
_SHEETS = {"A4": (180.0, 267.0), "A5": (118.0, 180.0), "letter": (185.9, 249.4)}
#: the widest picture, mm
_WIDEST = 10_000.0


def run(options: argparse.Namespace) -> int:
    """Check the plan and write its picture; the exit code."""
    out: Path = options.out
    if out.suffix.lower() not in (".svg", ".png"):
        note(f"a picture is an .svg or a .png file, and {out} is neither: take --out piece.svg")
        return BROKEN
    mm, pixels = _width(options.width) if options.width else (0.0, 0)
    checker = Checker(hosts.load(options.rule_files), quantities=True)
    plan, result = checked_alone(options, checker)
    if plan.ask is None or not plan.ask.plan.run:
        why = "it has no run" if plan.readable else "it cannot be read yet: see `check`"
        note(f"there is nothing to draw in {plan.file}: {why}")
        return exit_code(result) or BROKEN
    if not can_be_seen(plan.ask.plan):
        note(f"{plan.file} has {counted(plan.ask.plan):,} things to draw, too many for a picture")
        return BROKEN
    canvas = picture(plan, _sizing(mm, options.fit), notes=options.marks, curved=options.worn)
    if canvas is None:
        note(f"{plan.file} goes round no neck, wrist or ankle: leave out --worn")
        return BROKEN
    svg = alone(canvas, plan.title, f"{plan.title}, drawn by its plan")
    is_svg = out.suffix.lower() == ".svg"
    data = svg.encode() if is_svg else _png(svg, canvas.paper_size, pixels)
    save({out: data}, inputs(options, result), force=options.force)
    return exit_code(result)


def _width(text: str) -> tuple[float, int]:
    """A width as it is typed: mm on paper, and in pixels where it is given so, else 0."""
    number = text.strip().lower()
    try:
        if number.endswith("px"):
            pixels = int(number.removesuffix("px"))
            mm = pixels * units.INCH / _PIXELS
        else:
            pixels, mm = 0, units.length(text).value
    except ValueError:
        raise HostError(f"`{text}` is no width: write `--width 12cm` or `800px`") from None
    if not 1 <= mm <= _WIDEST:
        raise HostError(f"`{text}` is no width of a picture: write `--width 12cm` or `800px`")
    return mm, pixels


def _sizing(mm: float, sheet: str | None) -> Sizing | None:
    """The scale for a width or a sheet of paper, whichever way it lies; None for life-size."""
    if mm:
        return lambda wide, high: mm / wide
    if sheet:
        short, long = _SHEETS[sheet]
        return lambda wide, high: max(
            min(short / wide, long / high), min(long / wide, short / high)
        )
    return None


def _png(svg: str, paper: tuple[float, float], pixels: int) -> bytes:
    """A drawing as dots: so many across, or as many as its size on paper has, which it states."""
    try:
        import resvg_py
    except ImportError:
        says = "a .png needs `resvg-py`: install `wellstrung[picture]`, or take --out piece.svg"
        raise HostError(says) from None
    wide, high = (round(side / units.INCH * _DPI) for side in paper)
    if pixels:
        wide, high = pixels, round(pixels * paper[1] / paper[0])
    if wide * high > _MOST_DOTS:
        size = f"{paper[0] / 10:.0f} by {paper[1] / 10:.0f} cm"
        says = f"a picture of {size} has too many dots: take `--fit A4`, `--width 30cm` or an .svg"
        raise HostError(says)
    made = resvg_py.svg_to_bytes(
        svg_string=svg, dpi=_PIXELS, width=max(wide, 1), height=max(high, 1)
    )
    return _signed(bytes(made), 0 if pixels else _DPI)


def _signed(png: bytes, dots: float) -> bytes:
    """A PNG that says what made it, and how many dots an inch has, so that it prints life-size."""
    stated = [b"tEXtSoftware\0wellstrung"]
    if dots:
        metre = round(dots / units.INCH * 1000)
        stated.append(b"pHYs" + struct.pack(">IIB", metre, metre, 1))
    chunks = b"".join(
        struct.pack(">I", len(one) - 4) + one + struct.pack(">I", zlib.crc32(one)) for one in stated
    )
    head = 8 + 25  # the signature, and the chunk of the size, which comes first
    return png[:head] + chunks + png[head:]
