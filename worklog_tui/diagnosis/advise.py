"""The advice: what troubles the machine, what may cause it, and what to do next."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from worklog_tui.diagnosis.candidate import Tier, best
from worklog_tui.diagnosis.item_steps import ItemSteps
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.model import Advice, History, OpenItem
from worklog_tui.rulebook.faults import FaultBook

MOST = 5
"How many steps are shown at most."


def advise(history: History, items: Sequence[OpenItem], faults: FaultBook, now: datetime | None) -> Advice:
    """The advice for a machine from its whole history and its open items, best step first."""
    log = Log(history)
    safety = Safety(faults)
    wording = Wording(faults.words, log)
    candidates = ItemSteps(log, wording, safety).candidates(items)
    steps = [c for c in best(candidates, MOST + 5) if c.tier is not Tier.DOUBTFUL][:MOST]
    return Advice("", steps=tuple(c.step for c in steps))
