"""Plans to measure with: the sample collar at about 110 lines, and plans of any number of parts."""

from __future__ import annotations

from pathlib import Path

SAMPLE = Path(__file__).parents[2] / "tests" / "plans" / "slack_tide_collar.yaml"


def about_110_lines() -> str:
    """The sample collar with rings of its own hung on the rope, a right plan of about 110 lines."""
    text = SAMPLE.read_text(encoding="utf-8")
    added = {"\nrun: ": "", "\nwork:": "", "  - {do: wear}": "", "": ""}
    for n in range((110 - text.count("\n")) // len(added)):
        ring = f"outside: {23 + n % 3} mm, wire: 10 AWG, closing: open, metal: brass"
        added["\nrun: "] += f"  hoop {n}: {{kind: jump ring, {ring}}}\n"
        added["\nwork:"] += f"  - {{part: hoop {n}, from: rope}}\n"
        added["  - {do: wear}"] += f"  - {{do: hang, part: hoop {n}, from: rope}}\n"
        added[""] += f"  - {{part: hoop {n}, count: 1}}\n"
    text += added.pop("")
    for before, lines in added.items():
        text = text.replace(before, lines + before, 1)
    return text


def of_parts(count: int) -> str:
    """A right plan with this many connectors in its run, a ring between each two."""
    parts = "".join(
        f"  bar {n}: {{kind: connector, length: 18 mm,"
        " eyes: {count: 2, hole: 2 mm, wire: 1 mm}}\n"
        for n in range(count)
    )
    run = ", ring, ".join(f"bar {n}" for n in range(count))
    return (
        "plan: 1\ntitle: Long\npiece: necklace\nparts:\n"
        "  ring: {kind: jump ring, outside: 5 mm, wire: 20 AWG, closing: open}\n"
        f"{parts}run: [{run}]\n"
    )


def of_rings(count: int, *, thick: bool) -> str:
    """A plan with this many rings in its run, each `thick` for its size by an amount of its own."""
    first = 2.0 if thick else 0.8
    rings = "".join(
        f"  loop {n}: {{kind: jump ring, outside: 5 mm, wire: {first + n / 100_000} mm,"
        " closing: open}\n"
        for n in range(count)
    )
    return (
        "plan: 1\ntitle: Rings\npiece: necklace\nparts:\n"
        f"{rings}run: [{', '.join(f'loop {n}' for n in range(count))}]\n"
    )
