"""`schema`: the JSON Schema of a plan, a bench or a drawer, or the page that explains them."""

from __future__ import annotations

import argparse
import json

from wellstrung.commands.output import OK, show
from wellstrung.plugins import host as hosts
from wellstrung.report import language_page
from wellstrung_schemas import bench, editor_schema, published_drawer


def run(options: argparse.Namespace) -> int:
    """Print the schema, with every kind of part that is installed; the exit code."""
    installed = hosts.load()
    kinds = {name: dict(kind.fragment) for name, kind in installed.kinds.items()}
    if options.of == "language":
        makes = {one.name: (one.makes, *one.also_makes) for one in installed.stitches.values()}
        show(language_page.page(kinds, makes).rstrip("\n"))
        return OK
    if options.of == "bench":
        schema = bench()
    else:
        schema = (editor_schema if options.of == "plan" else published_drawer)(kinds)
    show(json.dumps(schema, indent=2, ensure_ascii=False))
    return OK
