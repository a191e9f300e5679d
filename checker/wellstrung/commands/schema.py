"""`schema`: the JSON Schema of a plan, a bench or a drawer, or the page that explains them."""

from __future__ import annotations

import argparse
import json

from wellstrung.commands.output import OK, show
from wellstrung.plugins import host as hosts
from wellstrung.report import bench_list, language_page
from wellstrung_schemas import Schema, editor_schema, published_bench, published_drawer


def run(options: argparse.Namespace) -> int:
    """Print the schema, with all that is installed; the exit code."""
    host = hosts.load()
    kinds = {name: dict(kind.fragment) for name, kind in host.kinds.items()}
    if options.of == "language":
        makes = {one.name: (one.makes, *one.also_makes) for one in host.stitches.values()}
        show(language_page.page(kinds, makes).rstrip("\n"))
        return OK
    if options.of == "bench":
        schema = _of_bench(host)
    else:
        schema = (editor_schema if options.of == "plan" else published_drawer)(kinds)
    show(json.dumps(schema, indent=2, ensure_ascii=False))
    return OK


def _of_bench(host: hosts.Host) -> Schema:
    """The schema of a bench, with the default and the reason of every setting."""
    settings: dict[str, dict[str, str]] = {}
    for one in bench_list.listed(host, None, {}):
        if one.usual:
            says = f"{one.usual} by default: {one.default.reason}"
            settings.setdefault(one.group, {})[one.name] = says
    return published_bench(settings)
