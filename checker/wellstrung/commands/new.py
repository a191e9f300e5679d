"""`new`: the first file of a rule, a stitch or a kind of one's own, with its cases."""

from __future__ import annotations

import argparse
import re
from pathlib import Path

from wellstrung.commands.output import OK, save, show
from wellstrung.plugins.error import HostError

_FILES = Path(__file__).parent / "new_files"
#: a name in small letters: words with hyphens for a rule, with spaces for the others
_NAME = re.compile(r"[a-z][a-z0-9]*(?:[- ][a-z0-9]+)*")


def run(options: argparse.Namespace) -> int:
    """Write the two files, and say what to do with them; raises HostError for a name unfit."""
    what, name = options.what, options.name
    if not _NAME.fullmatch(name) or (what == "rule" and " " in name):
        example = "shop-tag" if what == "rule" else f"twin {what}"
        raise HostError(f"`{name}` is no name for a {what}: use small letters, as in `{example}`")
    module = re.sub(r"[- ]", "_", name)
    pages = {}
    for ending in ("py", "yaml"):
        text = (_FILES / f"{what}.{ending}.txt").read_text(encoding="utf-8")
        pages[Path(f"{module}.{ending}")] = text.replace("@NAME@", name).replace("@MODULE@", module)
    save(pages, (), force=options.force)
    show(f"its cases: pytest -p wellstrung.testing {module}.yaml")
    return OK
