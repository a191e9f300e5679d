"""Whole dialogues as data: the answers, and the plan that is written, which checks clean."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from running import Pinned
from turns import some
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.start.answers_file import answered
from wellstrung.start.dialogue import Dialogue
from wellstrung.start.trial import Trial
from wellstrung.start.writer import schema_line

HERE = Path(__file__).parent
ANSWERS = sorted((HERE / "answers").glob("*.yaml"))
WALKS = 12


@pytest.fixture(scope="module")
def trial(installed: Host) -> Trial:
    return Trial(Checker(installed, keep=True, trials=0))


@pytest.mark.parametrize("file", ANSWERS, ids=lambda file: file.stem)
def test_answers_become_a_plan_that_checks_clean(
    file: Path, trial: Trial, checker: Checker, pinned: Pinned
) -> None:
    dialogue = Dialogue(trial)
    assert answered(dialogue, file) == []
    text = dialogue.tried().text
    pinned(HERE / "plans" / file.name, text.replace(schema_line(), "# (the schema)"))
    result = checker.check_text(text)
    assert [f"{one.rule}: {one.says}" for one in result.numbered] == []
    assert result.readable and not result.failures
    assert result.outcome in ("makeable", "nothing wrong found")


def test_every_plan_has_its_answers() -> None:
    assert {file.name for file in (HERE / "plans").iterdir()} == {file.name for file in ANSWERS}


@pytest.mark.parametrize("seed", range(WALKS))
def test_any_of_the_offered_answers_end_in_a_plan_without_an_error(seed: int, trial: Trial) -> None:
    tried = walked(seed, trial).tried()
    assert tried.result.readable
    assert [one.says for one in tried.result.numbered if one.level == "error"] == []


@pytest.mark.slow
@pytest.mark.parametrize("seed", some(range(WALKS, 40), 5))
def test_many_more_of_them(seed: int, trial: Trial) -> None:
    test_any_of_the_offered_answers_end_in_a_plan_without_an_error(seed, trial)


def walked(seed: int, trial: Trial) -> Dialogue:
    """A dialogue whose answers are drawn from those that are offered, enter and "don't know"."""
    draw, dialogue = random.Random(seed), Dialogue(trial)
    wearers = ["adult", "a girl of 7", "18 months", "a friend, nickel troubles her"]
    while (question := dialogue.open) is not None:
        offered = [choice.word for choice in dialogue.offered(question)]
        also = [] if question.needed else ["", "", "don't know"]
        also += wearers if question.name == "wearer" else []
        pool = ["no"] if question.name == "more" else [*offered * 2, *also]
        dialogue.answer(question.name, draw.choice(pool))
    return dialogue
