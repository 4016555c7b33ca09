"""Whether a name is that of the machine itself, as its card calls it: what it does wrong is a trouble and no job."""

from __future__ import annotations

import re

from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Machine

SHORT = 4
"So many letters of a word stand for it (judgement)."


def is_the_machine(machine: Machine, words: str) -> bool:
    """Whether words call the machine by the head of its name or of its kind: the ironer of a flatwork ironer."""
    said = tokens(words)
    if not said:
        return False
    kind = re.split(r"[,;(]", machine.kind)[0]
    for name in (machine.name, kind):
        called = tokens(name)
        if said[-1:] == called[-1:] and all(any(_shortens(w, c) for c in called) for w in said):
            return True
    return False


def _shortens(word: str, whole: str) -> bool:
    """Whether a word is another or the beginning of it: orch for orchestra."""
    return word == whole or (len(word) >= SHORT and whole.startswith(word))
