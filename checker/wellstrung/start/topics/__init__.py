"""The questions, topic by topic, in the order in which they are asked."""

from __future__ import annotations

from collections.abc import Mapping

from wellstrung.start.question import Question
from wellstrung.start.topics import (
    beads,
    closing,
    hanging,
    piece,
    screen,
    sitting,
    technique,
    wanted,
)

QUESTIONS: Mapping[str, Question] = {
    question.name: question
    for topic in (piece, sitting, technique, beads, closing, hanging, screen, wanted)
    for question in topic.QUESTIONS
}
