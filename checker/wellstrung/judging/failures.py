"""An error inside the checker or a rule, as a failure that a report can show."""

from __future__ import annotations

from wellstrung.common.places import Place
from wellstrung.judging.result import Failure
from wellstrung.rulebook import Caution, Held, Misfit, Rule, Subject


def of_stage(file: str, error: BaseException) -> Failure:
    """The failure of a stage on one plan."""
    return Failure("", "wellstrung", f"{type(error).__name__}: {error} (in {file})", _trace(error))


def of_rule(rule: Rule, owner: str, subject: Subject, error: BaseException) -> Failure:
    """The failure of a rule on one subject, with the line of the rule's own file."""
    on = ", ".join(subject.parts) or "piece"
    says = f"{type(error).__name__}: {error} (on {on}; {_line_in(rule, error)})"
    return Failure(rule.name, owner, says, _trace(error))


def check_shape(answer: object) -> None:
    """Raises TypeError for an answer of a rule that no report can show."""
    if answer is None or isinstance(answer, Held):
        return
    if not isinstance(answer, Misfit | Caution):
        raise TypeError(f"a rule answers Held, Misfit, Caution or None, not {answer!r:.60}")
    if not isinstance(answer.says, str) or not isinstance(answer.place, Place):
        raise TypeError(f"`says` of a {type(answer).__name__} is a text, its `place` a Place")


def _line_in(rule: Rule, error: BaseException) -> str:
    """Where in its own file a rule raised an error, or where the rule begins."""
    import traceback  # only where something failed

    code = getattr(rule.check, "__code__", None)
    if code is None:
        return f"in {rule.check!r}"
    frames = traceback.extract_tb(error.__traceback__)
    lines = [frame.lineno for frame in frames if frame.filename == code.co_filename]
    return f"{code.co_filename}:{lines[-1] if lines else code.co_firstlineno}"


def _trace(error: BaseException) -> str:
    import traceback

    return "".join(traceback.format_exception(error))
