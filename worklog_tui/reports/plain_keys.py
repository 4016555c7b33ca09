"""The keys of the recorder as plain text, with the names by which they are given others."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.reports.lines import heading, wrapped

Told = tuple[str, str, str]
"Keys as printed, the name of what they do, and what that is."


def keys_text(places: Sequence[tuple[str, Sequence[Told]]], file: str, wrong: str, width: int) -> str:
    """Every place with its keys; `file` takes other keys, `wrong` is what is wrong with it, if anything."""
    rows = wrapped(f'Another key, for a pedal too: a line such as "note.keep" = "f13" in {file}', width)
    rows += wrapped(wrong, width) if wrong else []
    for title, keys in places:
        rows += ["", *heading(title)]
        for key, name, tells in keys:
            rows += wrapped(f"{key}: {tells} ({name})", width, "  ", "    ")
    return "\n".join(rows)
