"""What the words of a note are after what a person did to them: the first wording and every later one are kept."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any

from worklog_tui.model import Act


def wordings(first: str, note: str, acts: Iterable[Act]) -> list[str]:
    """All wordings of a note in order, the first one first; `acts` are those that stand, in their order."""
    row = [first]
    for act in acts:
        value: Mapping[str, Any] = act.value if isinstance(act.value, dict) else {}
        if act.verb == "edit note" and act.target == note:
            row.append(str(value.get("words", row[-1])))
        elif act.verb == "mend word" and note in value.get("notes", ()):
            row.append(mended(row[-1], str(value.get("said", "")), str(value.get("meant", ""))))
    return [words for place, words in enumerate(row) if not place or words != row[place - 1]]


def is_struck(note: str, acts: Iterable[Act]) -> bool:
    """Whether a note is struck out by one of the acts that stand."""
    return any(
        (act.verb == "strike note" and act.target == note)
        or (act.verb == "strike lines" and isinstance(act.value, dict) and note in act.value.get("notes", ()))
        for act in acts
    )  # fmt: skip


def mended(words: str, said: str, meant: str) -> str:
    """The words with one word or phrase put in the place of another, whole words only, whatever their capitals."""
    if not said.strip():
        return words
    pattern = r"(?<!\w)" + r"\s+".join(map(re.escape, said.split())) + r"(?!\w)"
    return re.sub(pattern, lambda _: meant, words, flags=re.IGNORECASE)
