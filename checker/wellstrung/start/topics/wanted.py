"""The optional questions, about the class and the price; and the name of the piece."""

from __future__ import annotations

import re

from wellstrung.common import money, units
from wellstrung.start.question import Answers, Choice, Question, Refused, one_of, saying
from wellstrung.start.words import Fields, as_in_a_plan

_MORE = (Choice("no"), Choice("class"), Choice("price"), Choice("both"))


def _class(text: str, answers: Answers) -> Fields:
    """Meetings and hours: `2 x 2.5 h`, `3 h`.

    >>> _class("2 x 2.5 h", Answers({})), _class("3 h", Answers({}))
    ({'length': '2.5 h', 'sessions': 2}, {'length': '3 h'})
    """
    found = re.fullmatch(r"(?:(\d{1,2}) ?(?:x|times|sessions of|meetings of) ?)?(.+)", text)
    assert found is not None
    try:
        units.duration(found[2])
    except units.UnitFault as fault:
        raise Refused(f"{fault.says}; write two meetings as `2 x 2.5 h`") from None
    return {"length": found[2], **({"sessions": int(found[1])} if found[1] else {})}


@as_in_a_plan()
def _budget(text: str, answers: Answers) -> str:
    money.budget(text)
    return text


#: titles of what its name alone does not make a good one of
_TITLES = {
    "one strand": "strung {}",
    "several strands in cones": "{} of strands in cones",
    "several strands with spacer bars": "{} of strands with bars",
    "knotted pearls": "knotted {}",
    "wire links": "wire-linked {}",
    "brick top with a fringe": "fringe {}",
    "bead on a pin": "bead {}",
    "stone in a bezel": "bezel {}",
    "slip-stitch bead crochet": "bead crochet {}",
}


def _title(answers: Answers) -> str:
    name = str(answers["stitch"])
    title = _TITLES.get(name, f"{name} {{}}").format(answers["piece"].word)
    return f"{title[:1].upper()}{title[1:]}"


QUESTIONS = (
    Question(
        "more",
        saying("Shall it be checked for a class, or against a price?"),
        one_of(lambda answers: _MORE),
        proposes=saying("no"),
        choices=lambda answers: _MORE,
        aside=True,
    ),
    Question(
        "class",
        saying("How many meetings, of how many hours? (`2 x 2.5 h`)"),
        _class,
        applies=lambda answers: answers["more"] in ("class", "both"),
    ),
    Question(
        "budget",
        saying("What may each piece cost? (`40 EUR`; prices stand in your bench file)"),
        _budget,
        applies=lambda answers: answers["more"] in ("price", "both"),
    ),
    Question(
        "title",
        saying("What is the piece called?"),
        lambda text, answers: text,
        proposes=_title,
        aside=True,
    ),
)
