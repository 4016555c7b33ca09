"""Which acts repeat the words of a note that a person erased for good."""

from __future__ import annotations

import json
from collections.abc import Collection

from worklog_tui.model import Act
from worklog_tui.model.acts import WORDED


def repeats(act: Act, note: str, erased: Collection[str]) -> bool:
    """Whether an act repeats words of an erased note; `erased` are the uids of all that are.

    What was done to a run of lines goes when all of them are erased.
    """
    if act.verb not in WORDED or not isinstance(act.value, dict):
        return False
    if act.target == note or act.target.startswith(f"{note}/"):
        return True
    run = act.value.get("notes")
    if run:
        return note in run and all(one in erased for one in run)
    if str(act.value.get("with", "")).startswith(f"{note}/"):
        return True
    return note in json.dumps(act.value.get("fact", ""))
