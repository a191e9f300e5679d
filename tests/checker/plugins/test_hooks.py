"""Every hook is documented, and used by us or by the package that a test installs."""

from __future__ import annotations

import inspect

from running import ROOT
from wellstrung.plugins import hooks

HOOKS = [name for name, one in inspect.getmembers(hooks) if hasattr(one, "wellstrung_spec")]


def test_the_developers_page_lists_every_hook() -> None:
    page = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert len(HOOKS) >= 7
    assert [name for name in HOOKS if f"| `{name}` |" not in page] == []


def test_every_hook_has_a_user() -> None:
    files = [
        ROOT / "checker" / "wellstrung" / "builtin.py",
        ROOT / "rules" / "wellstrung_rules" / "__init__.py",
        ROOT / "tests" / "example_package" / "harbour_extras" / "__init__.py",
    ]
    text = "".join(file.read_text(encoding="utf-8") for file in files)
    assert [name for name in HOOKS if f"def {name}(" not in text] == []
