"""What a person chose once and wants again at the next start: a small file of their own, apart from the logbook."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

UNITS = ("", "metric", "inch")
"How readings are told: as they were said, in metric units, in inch units."


def setting(desk: Desk, name: str) -> str:
    """What was chosen; empty when nothing was, or when the file cannot be read: then the usual holds."""
    if desk.settings is None or not desk.settings.is_file():
        return ""
    import tomllib

    try:
        found = tomllib.loads(desk.settings.read_text("utf-8")).get(name, "")
    except (OSError, ValueError):
        return ""
    return found if isinstance(found, str) else ""


def choose(desk: Desk, name: str, value: str) -> None:
    """Have it so from now on; what else stands in the file stays. Where it cannot be written it holds for this run."""
    import json
    import tomllib

    file = desk.settings
    if file is None or setting(desk, name) == value:
        return
    try:
        before = file.read_text("utf-8") if file.is_file() else ""
        line = f"{name} = {json.dumps(value, ensure_ascii=False)}"
        text, met = re.subn(rf"(?m)^{re.escape(name)}\s*=.*$", lambda _: line, before, count=1)
        text = text if met else f"{before.rstrip()}\n{line}\n".lstrip()
        tomllib.loads(text)
        file.parent.mkdir(parents=True, exist_ok=True)
        part = file.with_suffix(".part")
        part.write_text(text, "utf-8")
        part.replace(file)
    except (OSError, ValueError):
        return


def units(desk: Desk) -> str:
    """How readings are told: one of UNITS."""
    chosen = setting(desk, "units")
    return chosen if chosen in UNITS else ""
