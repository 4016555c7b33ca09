"""Keys of the person's own: a file that gives bindings, by their names, other keys; for a pedal, or for one hand."""

from __future__ import annotations

import re
from pathlib import Path

KEY = re.compile(r"[a-z0-9_+]+(?:,[a-z0-9_+]+)*")
"One or more keys as they are written in the file: `f13`, `ctrl+k`, `f13,1`."


def own_keys(file: Path) -> tuple[dict[str, str], str]:
    """The keys by the names of what they do, and what is wrong with the file, if anything: then none of it counts."""
    if not file.is_file():
        return {}, ""
    import tomllib

    try:
        found = tomllib.loads(file.read_text("utf-8"))
    except (OSError, ValueError) as fault:
        return {}, f"{file.name} cannot be read: {fault}. The usual keys hold."
    wrong = [name for name, keys in found.items() if not isinstance(keys, str) or not KEY.fullmatch(keys)]
    if wrong:
        first = wrong[0]
        return {}, f'{file.name}: “{first}” needs its key as text, such as "{first}" = "f13". The usual keys hold.'
    return found, ""
