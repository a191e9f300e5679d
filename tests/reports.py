"""The JSON report of results, as the command writes it."""

from __future__ import annotations

import json
from typing import Any

from wellstrung.judging.result import PlanResult
from wellstrung.judging.summary import summary
from wellstrung.report.json import plan_entry, whole


def report(*plans: PlanResult) -> Any:
    """The report of several plans, read back from its text."""
    return json.loads("\n".join(whole((plan_entry(plan), summary(plan)) for plan in plans)))
