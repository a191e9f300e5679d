"""Answers as people give them."""

from __future__ import annotations

import pytest

from wellstrung.start.question import Answers, Choice, Refused, one_of
from wellstrung.start.words import length, measure, wearer


@pytest.mark.parametrize(
    ("said", "mm"),
    [
        ("16 cm", 160),
        ("wrist 16 cm", 160),
        ("about 16 cm", 160),
        ("Wrist: 6 1/2 in", 165.1),
        ("½ in", 12.7),
    ],
)
def test_a_measure(said: str, mm: float) -> None:
    assert measure(said, Answers({})).value == pytest.approx(mm)
    assert length(said, Answers({})).value == pytest.approx(mm)


def test_what_is_no_measure() -> None:
    with pytest.raises(Refused, match="is not a length"):
        measure("as my wrist", Answers({}))


@pytest.mark.parametrize(
    ("said", "one"),
    [
        ("netted", "netting"),
        ("net", "netting"),
        ("raw", "right-angle weave"),
        ("bead crochet", "slip-stitch bead crochet"),
        ("square stitch", "square"),
        ("3", "netting"),
        ("10", "10"),
        ("925", "sterling silver"),
    ],
)
def test_one_of_what_is_offered(said: str, one: str) -> None:
    stitches = ("right-angle weave", "square", "netting", "slip-stitch bead crochet")
    choices = [*(Choice(name) for name in stitches), Choice("10"), Choice("sterling silver")]
    choices[2] = Choice("netting", also=("netted", "netted collar"))
    assert one_of(lambda answers: choices)(said, Answers({})) == one


def test_a_number_past_what_is_offered() -> None:
    with pytest.raises(Refused, match="choose a number from 1 to 1"):
        one_of(lambda answers: [Choice("hook")])("2", Answers({}))


@pytest.mark.parametrize(
    ("said", "age", "metals"),
    [
        ("me", "adult", False),
        ("a lady, metals trouble her", "adult", True),
        ("my friend's daughter", "child", False),
        ("a kid", "child", False),
        ("a baby", "under three", False),
        ("child under three", "under three", False),
        ("a boy of 18 months", "18 months", False),
        ("nickel allergy", "adult", True),
    ],
)
def test_a_wearer(said: str, age: str, metals: bool) -> None:
    assert wearer(said, Answers({})) == (age, metals)
