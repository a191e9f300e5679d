"""The page on the language of plans: every field, word and unit, from the schemas and tables.

Schemas of the kinds and the stitches that are installed in, Markdown out.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

import wellstrung_schemas as schemas
from wellstrung import tables
from wellstrung.common.trade_words import ACCEPTED, ASKED, KNOWN
from wellstrung.common.units.known import FORCES, LENGTHS, MASSES, SPELLINGS, TIMES, VOLUMES
from wellstrung.common.wording import listed, together
from wellstrung.reading.field_errors import written
from wellstrung.reading.values import READERS

Schema = Mapping[str, Any]

_HEAD = """# The language of plans

Everything that a plan, a bench file and a drawer can hold. The [README](../README.md) is the short
way in; [REPORT.md](REPORT.md) explains what the program writes. This page is made by
`wellstrung schema language`, from what the program itself reads a plan by.

A file is YAML: `name: value`, with a space after the colon. What belongs together stands in braces,
`{outside: 5 mm, wire: 20 AWG}`, or in lines below its name, indented alike; a list stands in
brackets, `[cap, rope, cap]`, or in lines that begin with a dash. What follows a # is a comment.
Text with a comma, a colon or a # in it stands in quotes.

In the tables, a field such as `eye.hole` is the `hole` in the group `eye`; `links.NAME.wire` is
the `wire` of every entry of `links`, whose names are your own; `[]` stands for each entry of a
list. The column *left out* says what a field means that is not written: **needed** where a plan
cannot do without it, *open* where the checks that need it wait for it, and otherwise what is taken
for it.
"""

_UNCOVERED = """## What is not covered

- Soldering, pickling, casting, enamelling, and everything else done with a torch, an acid or a
  kiln: no check looks at it.
- Stitches, kinds of parts and findings that are not on this page. The program refuses a word that
  it does not know and names the nearest that it does; a plugin can bring more.
- Colour and design: `colour`, `finish` and `note` are yours, and no check reads them.
- Whether a piece is safe or lawful to sell: cautions are reminders, and defer to the product's own
  safety data sheet, to local law and to qualified advice.
"""

#: how a value of each type of JSON is called here
_TYPES = {
    "object": "a group",
    "array": "a list",
    "integer": "a whole number",
    "number": "a number",
    "string": "words",
}
#: what the kinds of values that have no unit are
_UNITLESS = {"text": "words", "name": "a name", "place_in_run": "a name, or half a clasp"}
_UNITS = {
    "lengths": LENGTHS, "masses": MASSES, "pulls": FORCES, "times": TIMES, "volumes": VOLUMES,
}  # fmt: skip
#: tables whose rows a plan names
_ROWS = {
    "metals": "`metal`",
    "adhesives": "`type` of an adhesive",
    "threads": "a thread, as `type` and `rating` or `size` name its row",
    "needles": "`needle`",
    "beads": "beads, as `type`, `size` and `make` name their row",
}


def page(kinds: Mapping[str, Schema], stitches: Mapping[str, Iterable[str]]) -> str:
    """The whole page, of these kinds and of these stitches with what each makes."""
    plan = schemas.plan()
    parts = [
        _HEAD,
        _section("The plan", plan, "The fields of the whole plan.", deep=False),
        *_groups(plan),
        "## Kinds of parts\n\nEvery part has a name of your own, a `kind`, and the fields of that"
        " kind. Any part takes a `note` and a `source`, which no check reads.",
        *(_kind(name, schema) for name, schema in sorted(kinds.items())),
        _stitches(stitches),
        "## Steps\n\nEvery line of `work` names what is done by `do`, and the fields of that step.",
        *(_step(verb, schema) for verb, schema in schemas.verbs().items()),
        _section("A bench file", schemas.bench(), "Every setting: `wellstrung bench`.", deep=False),
        *_groups(schemas.bench()),
        _section("A drawer", schemas.drawer(), "Parts are those of a plan.", deep=False),
        _values(),
        _words(),
        _UNCOVERED,
    ]
    return "\n\n".join(part.strip() for part in parts) + "\n"


def _section(title: str, schema: Schema, says: str, *, deep: bool = True, level: int = 2) -> str:
    head = f"{'#' * level} {title}\n\n{says}" if says else f"{'#' * level} {title}"
    return f"{head}\n\n{_table(schema, deep=deep)}"


def _groups(plan: Schema) -> Iterator[str]:
    """The groups and lists of a plan, or a bench, that have fields of their own."""
    for name, field in plan["properties"].items():
        inner = field.get("items") or field.get("additionalProperties") or field
        if name not in ("parts", "work") and isinstance(inner, dict) and inner.get("properties"):
            blocks = [_block(f"my {name.removesuffix('s')}: ", one) for one in _said(inner)]
            yield _section(
                f"`{name}`", inner, "\n\n".join([field["description"], *blocks]), level=3
            )


def _said(schema: Schema) -> list[Any]:
    """The examples of an entry that has a name of its own, in braces and in a phrase."""
    return schema.get("examples", []) if "string" in schema.get("type", ()) else []


def _kind(name: str, schema: Schema) -> str:
    said = f"{schema['description']}\n\n{_block(f'my {name}: ', schema['examples'][0])}"
    return _section(f"`{name}`", schema, said, level=3)


def _step(verb: str, schema: Schema) -> str:
    return _section(f"`{verb}`", schema, _block("- ", schema["examples"][0]), level=3)


def _block(before: str, example: object) -> str:
    return f"```yaml\n{before}{_example(example)}\n```"


def _stitches(stitches: Mapping[str, Iterable[str]]) -> str:
    lines = [f"- `{name}`: {together(makes)}" for name, makes in stitches.items()]
    return "\n".join(["## Stitches", "", "Each with the kind of part that it makes.", "", *lines])


def _table(schema: Schema, *, deep: bool) -> str:
    lines = ["| field | what it is | written as | left out | such as |", "|---|---|---|---|---|"]
    for path, field, absent in _fields(schema, "", deep=deep):
        examples = ", ".join(f"`{_example(one)}`" for one in field["examples"])
        cells = (f"`{path}`", field["description"].rstrip("."), _form(field), absent, examples)
        lines.append(f"| {' | '.join(cell.replace('|', '&#124;') for cell in cells)} |")
    return "\n".join(lines)


def _fields(schema: Schema, path: str, *, deep: bool) -> Iterator[tuple[str, Schema, str]]:
    """Every field with its path and what is taken where it is left out."""
    also = schema.get("allOf", ())
    rules = [schema, *also, *(one.get("then", {}) for one in also), schema.get("then", {})]
    needed = {word for rule in rules for word in rule.get("required", ())}
    choices = [
        [
            word
            for one in rule.get("oneOf", rule.get("anyOf", ()))
            for word in one.get("required", ())
            if "not" not in one  # what another field excuses
        ]
        for rule in rules
    ]
    given = schema.get("if", {}).get("not", {}).get("required", ())
    late = {word for words in choices[1:] for word in words} | {*rules[-1].get("required", ())}
    unless = dict.fromkeys(late if given else (), f", unless {listed(given)} is written")
    for name, field in schema.get("properties", {}).items():
        if (path == "" and name in ("kind", "do")) or (not deep and name == "note"):
            continue
        one_of = next((words for words in choices if name in words), [])
        yield f"{path}{name}", field, _absent(name, field, needed, one_of) + unless.get(name, "")
        if deep:
            inner = field.get("items", {})
            rest = field.get("additionalProperties")
            yield from _fields(field, f"{path}{name}.", deep=True)
            yield from _fields(
                inner if isinstance(inner, dict) else {}, f"{path}{name}[].", deep=True
            )
            yield from _fields(
                rest if isinstance(rest, dict) else {}, f"{path}{name}.NAME.", deep=True
            )


def _absent(name: str, field: Schema, needed: Iterable[str], one_of: list[str]) -> str:
    if name in one_of:
        return f"**needed**: one of {listed(one_of)}"
    if name in needed:
        return "**needed**"
    said: str = field.get("absent", "")
    if said:
        return said.removeprefix("none: ").removeprefix("default: ")
    return "never checked" if name in ("note", "source", "maker") else "*open*"


def _form(field: Schema) -> str:
    """How a value is written."""
    kind = field.get("$comment", "")
    if "const" in field:
        return f"`{field['const']}`"
    if "enum" in field:
        return f"one of {listed(field['enum'])}"
    if kind in READERS:
        return f"[{kind.replace('_', ' ')}](#values)"
    if kind in _UNITLESS:
        return _UNITLESS[kind]
    types = field.get("type", "string")
    return " or ".join(_TYPES[one] for one in ([types] if isinstance(types, str) else types))


def _example(value: object) -> str:
    """An example as it is written between the commas of braces."""
    if isinstance(value, str) and (not value.strip() or set(value) & set(",:#{}[]\"'")):
        return f"'{value}'" if '"' in value else f'"{value}"'
    if isinstance(value, dict):
        return f"{{{', '.join(f'{name}: {_example(inner)}' for name, inner in value.items())}}}"
    if isinstance(value, list):
        return f"[{', '.join(map(_example, value))}]"
    return written(value)


def _values() -> str:
    """Every kind of value with its examples, and the units with their spellings."""
    lines = ["## Values", "", "| value | what it is | such as |", "|---|---|---|"]
    for kind, schema in schemas.load("common")["$defs"].items():
        if kind in READERS:
            examples = ", ".join(f"`{one}`" for one in schema.get("examples", ()))
            lines.append(f"| {kind.replace('_', ' ')} | {schema['description']} | {examples} |")
    lines += ["", "A value may carry its tolerance, `8 ± 0.2 mm`, or be a range, `8..8.4 mm` or"]
    lines += ["`7 to 7 1/2 in`. Fractions are taken, `16 1/2 in` or `1/2 h`.", ""]
    for called, units in _UNITS.items():
        names = []
        for unit in units:
            spelled = [word for word, name in SPELLINGS.items() if name == unit]
            names.append(f"`{unit}`" + (f" ({', '.join(spelled)})" if spelled else ""))
        lines.append(f"- {called}: {'; '.join(names)}")
    return "\n".join(lines)


#: what the places of trade words are called
_WHERE = {
    "kind": "kinds of parts",
    "row": "rows of a list of stock",
    "thread": "types of thread",
    "do": "steps of the work",
    "field": "names of fields",
}


def _words() -> str:
    """Words that are taken, asked about and answered, by their place, and the rows of tables."""
    lines = ["## Words", "", "Words of the trade that mean the plan's own, where they stand:"]
    for place, taken in ACCEPTED.items():
        lines += ["", f"### {_WHERE.get(place, f'in `{place}`')}", ""]
        lines += [f"- `{own}`: {means}" for own, means in taken.items()]
    lines += ["", "### types of beads, each as a phrase may have it", ""]
    for family in tables.load("other_beads").rows.values():
        lines.append(f"- `{family.name}`: {family.text('words')}; `{family.text('example')}`")
    for answers, called in (
        (ASKED, "have more than one meaning"),
        (KNOWN, "a plan cannot describe yet"),
    ):
        lines += ["", f"Words that {called}, with what to write:", ""]
        for place, advised in answers.items():
            where = _WHERE.get(place, f"in `{place}`")
            lines += [f"- {asked} ({where}): {advice}" for asked, advice in advised.items()]
    lines += ["", "Names that the trade tables know:", ""]
    for table, where in _ROWS.items():
        lines.append(f"- {where}: {listed(tables.load(table).rows)} (`wellstrung tables {table}`)")
    return "\n".join(lines)
