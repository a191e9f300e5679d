"""`schema`: the JSON Schema of a plan, a bench or a drawer, for editors and other programs."""

from __future__ import annotations

import argparse
import json

from wellstrung.commands.output import OK, show
from wellstrung.plugins import host as hosts
from wellstrung_schemas import bench, editor_schema, published_drawer


def run(options: argparse.Namespace) -> int:
    """Print the schema, with every kind of part that is installed; the exit code."""
    kinds = {name: dict(kind.fragment) for name, kind in hosts.load().kinds.items()}
    if options.of == "bench":
        schema = bench()
    else:
        schema = (editor_schema if options.of == "plan" else published_drawer)(kinds)
    show(json.dumps(schema, indent=2, ensure_ascii=False))
    return OK
