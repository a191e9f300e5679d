"""Thread that is trimmed with heat: one caution at the steps that finish thread."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Piece, Rule


def check(piece: Piece, ask: Ask) -> Answer:
    steps = tuple(ask.plan.steps_that("finish thread"))
    if not steps:
        return None
    return Caution(
        "trimming with a thread burner or a flame: the tip burns skin, scorches thread beside the"
        " end and marks beads; use it in fresh air, away from solvent and uncured glue, put it"
        " down cold and out of the reach of children, and cut silk, cotton and linen with scissors:"
        " they burn instead of melting",
        steps[0].place,
        steps,
    )


RULE = Rule(
    name="hot-tools",
    family="wearer",
    subject=Piece,
    check=check,
    fault="thread burner or flame",
    title="steps that finish thread come with a reminder about thread burners",
    why="the wire of a thread burner glows within a second and looks cold again before it is",
    sources=("care with thread burners and flames: common practice, no source",),
    good="{do: finish thread, part: rope, ends: 2}",
    level="caution",
)
