"""Whether a name is that of the machine itself, as its card calls it: what it does wrong is a trouble and no job."""

from __future__ import annotations

import re

from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Machine


def is_the_machine(machine: Machine, words: str) -> bool:
    """Whether words call the machine by the head of its name or of its kind: the ironer of a flatwork ironer."""
    said = tokens(words)
    kind = re.split(r"[,;(]", machine.kind)[0]
    for name in (machine.name, kind):
        called = tokens(name)
        if said and said[-1:] == called[-1:] and set(said) <= set(called):
            return True
    return False
