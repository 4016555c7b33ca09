"""A word that was put right by hand, offered for the person's own vocabulary: from then on it is heard right."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from worklog_tui.bench.acting import CannotAct
from worklog_tui.logbook.words import NUMBERS

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

FILE = "misheard.toml"
MOST = 3
"So many words are one slip of the ear; more are another sentence."
_WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")


def put_right(before: str, after: str) -> tuple[str, str] | None:
    """The words that were heard and those that were meant, when that is all that differs between two wordings."""
    from difflib import SequenceMatcher

    old, new = before.casefold().split(), after.casefold().split()
    changes = [c for c in SequenceMatcher(None, old, new, autojunk=False).get_opcodes() if c[0] != "equal"]
    if len(changes) != 1 or changes[0][0] != "replace":
        return None
    _, a, b, c, d = changes[0]
    heard, meant = (" ".join(words).strip(".,;:!?") for words in (old[a:b], new[c:d]))
    words = (*heard.split(), *meant.split())
    if max(b - a, d - c) > MOST or any(w in NUMBERS or not _WORD.fullmatch(w) for w in words):
        return None  # another number is another fact, not the same one heard right
    return (heard, meant) if heard and meant and heard != meant else None


def to_offer(desk: Desk, before: str, after: str) -> tuple[str, str] | None:
    """As `put_right`, but nothing when what was heard is a word of the trade or of plain talk: it may be meant."""
    found = put_right(before, after)
    if found is None or len(desk.grammars) < 2:
        return None
    return None if " " not in found[0] and found[0] in desk.book().table else found


def hear_as(desk: Desk, heard: str, meant: str) -> str:
    """Put it into the person's own folder of grammars; says what is so from now on. CannotAct when it cannot be."""
    import json
    import tomllib

    file = desk.grammars[-1] / FILE
    try:
        before = file.read_text("utf-8") if file.is_file() else ""
        entry = f"[[misheard]]\nheard = [{json.dumps(heard, ensure_ascii=False)}]\n"
        text = f"{before.rstrip()}\n\n{entry}means = {json.dumps(meant, ensure_ascii=False)}\n".lstrip()
        tomllib.loads(text)
        file.parent.mkdir(parents=True, exist_ok=True)
        part = file.with_suffix(".part")
        part.write_text(text, "utf-8")
        part.replace(file)
    except (OSError, ValueError) as fault:
        raise CannotAct(f"It could not be written to your own words ({file.name}): {fault}") from fault
    return f"From the next start on “{heard}” is heard as “{meant}”; it stands in your own words, {file.name}."
