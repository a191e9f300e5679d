"""Plans in one process: against yaml.load, the screen's report against JSON, few parts and many."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator

import yaml
from timing import Row, ratio, shown

from plans import about_110_lines, of_parts
from wellstrung.commands.checked import collect_new_garbage
from wellstrung.judging.checker import Checker
from wellstrung.plugins import host
from wellstrung.report.writer import Options

PLANS = 200


def rows() -> Iterator[Row]:
    """200 plans of about 110 lines, and one of 10 to 5,000 parts."""
    text, installed = about_110_lines(), host.load()
    checker, lines = Checker(installed), text.count("\n")
    collect_new_garbage()  # as the command does
    result = checker.check_text(text)
    assert result.outcome == "makeable", result.remarks
    times, took = ratio(
        lambda: [checker.check_text(text).outcome for _ in range(PLANS)],
        lambda: [yaml.load(text, Loader=yaml.CSafeLoader) for _ in range(PLANS)] and None,
    )
    on = f"{PLANS} plans of {lines} lines, {took / PLANS * 1000:.1f} ms each"
    yield Row("check a folder, to `yaml.load` with libyaml", times, 4, on=on)
    times, took = ratio(
        _written(installed, "json", text), _written(installed, "text", text), rounds=3
    )
    yield Row("JSON report, to the one on screen", times, 1.5, on=f"{took / 50 * 1000:.1f} ms each")
    for few, many in ((10, 100), (100, 500), (500, 5000)):
        small, large = of_parts(few), of_parts(many)
        each = many // few
        times, took = ratio(
            lambda large=large: checker.check_text(large),  # type: ignore[misc]
            lambda small=small, each=each: [checker.check_text(small) for _ in range(each)],  # type: ignore[misc]
            rounds=3,
        )
        on = f"{many} parts {took * 1000:.0f} ms"
        yield Row(f"{many} parts, to {each} plans of {few}", times, 1.3, on=on)


def _written(installed: host.Host, form: str, text: str) -> Callable[[], None]:
    """Check and write 50 plans, none of which is kept."""
    writer = installed.writers[form]
    assert writer.by_plan is not None
    each, checker = writer.by_plan.each, Checker(installed, quantities=writer.quantities)

    def work() -> None:
        for _ in range(50):
            result = checker.check_text(text)
            each(result, Options())
            result.let_go()

    return work


if __name__ == "__main__":
    sys.exit(shown(rows()))
