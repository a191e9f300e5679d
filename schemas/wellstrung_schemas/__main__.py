"""Write the published editor schema again: `python -m wellstrung_schemas`."""

from __future__ import annotations

import json
from pathlib import Path

from wellstrung_schemas import editor_schema

if __name__ == "__main__":
    target = Path(__file__).parent / "editor.json"
    target.write_text(json.dumps(editor_schema(), indent=2, ensure_ascii=False) + "\n", "utf-8")
