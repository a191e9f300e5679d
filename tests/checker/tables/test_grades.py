"""What a source says of a trade table is what the table says: the row is there, of that grade."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from generated.plans import seeded
from ropes import EVERY_ROPE, checked
from wellstrung import tables
from wellstrung.judging.checker import Checker
from wellstrung.plugins.host import Host
from wellstrung.reading.settings import ALLOWANCES, LIMITS

SAMPLES = Path(__file__).parents[3] / "sample_plans"
MADE = 40
TABLE = re.compile(r"trade table `(\w+)`([^;`]*)")
GRADE = re.compile(f"{'|'.join(tables.GRADES)}")


@pytest.fixture(scope="module")
def said(installed: Host) -> dict[str, str]:
    """Every source and reason by where it is said: rules, limits, settings, quantities."""
    found = {f"setting {name}": it.reason for name, it in {**ALLOWANCES, **LIMITS}.items()}
    for rule in installed.rules.values():
        found |= {f"rule {rule.name}, {n}": text for n, text in enumerate(rule.sources)}
        found |= {f"limit {limit.name}": limit.reason for limit in rule.limits}
    checker = Checker(installed, quantities=True, trials=0)
    texts = [path.read_text(encoding="utf-8") for path in SAMPLES.glob("*.yaml")]
    results = [checker.check_text(text) for text in [*texts, *seeded(MADE)]]
    for result in [*results, *(checked(installed, rope) for rope in EVERY_ROPE)]:
        for name, value in result.quantities.items():
            for leaf in value.leaves:
                found[f"{'range' if leaf.spreads else 'value'} {name}: {leaf.name}"] = leaf.source
    return found


def claims(texts: dict[str, str]) -> Iterator[tuple[str, str, str, set[str]]]:
    """Where, table, what is said of it, and the grades that are claimed."""
    for where, text in texts.items():
        for table, rest in TABLE.findall(text):
            yield where, table, rest, set(GRADE.findall(rest))


def grades_named(table: str, rest: str) -> list[set[str]]:
    """The grades of each row that is named, else of each text column named, else of each row."""
    rows = tables.load(table).rows
    if not any(name in rest for name in rows):
        texts = [text for row in rows.values() for it, text in row.texts.items() if it in rest]
        if texts:
            return [set(GRADE.findall(text)) for text in texts]
    named = [name for name in rows if name in rest] or list(rows)
    return [{cell.grade for cell in rows[name].cells.values()} for name in named]


def test_a_grade_names_the_row_that_has_it(said: dict[str, str]) -> None:
    wrong = []
    for where, table, rest, claimed in claims(said):
        each = grades_named(table, rest)
        if claimed and not all(claimed & grades for grades in each):
            wrong.append(f"{where}: `{table}`{rest}")
    assert not wrong, "\n".join(wrong)


def test_no_range_of_a_hand_is_called_geometry(said: dict[str, str]) -> None:
    assert not [where for where in said if where.startswith("range") and "geometry" in said[where]]
