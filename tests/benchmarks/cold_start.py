"""One plan from the command line, cold, against importing yaml and jsonschema: at most 1.6 x.

Wants an environment with the run-time packages only; the first argument names its Python.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time

from plans import SAMPLE

RUNS, MOST = 21, 1.6
#: Compiled modules are kept, as they are for whoever has installed the command.
SETTINGS = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}


def wall(arguments: list[str]) -> float:
    """Seconds of one run."""
    start = time.perf_counter()
    subprocess.run(arguments, capture_output=True, check=True, env=SETTINGS)
    return time.perf_counter() - start


def main() -> int:
    """Print the ratio of the medians, taken turn by turn so that both meet the same machine."""
    python = sys.argv[1] if len(sys.argv) > 1 else sys.executable
    ours = [python, "-m", "wellstrung", "check", str(SAMPLE)]
    theirs = [python, "-c", "import yaml, jsonschema"]
    for warm in (ours, theirs):
        wall(warm)
    pairs = [(wall(ours), wall(theirs)) for _ in range(RUNS)]
    check, imports = (statistics.median(times) for times in zip(*pairs, strict=True))
    print(f"check {check * 1000:.0f} ms, imports {imports * 1000:.0f} ms: {check / imports:.2f} x")
    return 0 if check <= MOST * imports else 1


if __name__ == "__main__":
    sys.exit(main())
