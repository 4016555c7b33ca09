"""Fault finding: the trouble, the causes with their evidence, the systems, and the step that would tell them apart."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from worklog_tui.reports.when import where
from worklog_tui.widgets.next_step import asked, trouble
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows
from worklog_tui.widgets.sections import section

if TYPE_CHECKING:
    from worklog_tui.logbook.outcomes import Odd
    from worklog_tui.model import Advice, Cause, Evidence, SystemStanding

MOST = 12
"So many causes are told."
NO_TROUBLE = "Nothing points to a fault yet. Say what the machine does, or does not do."
EVIDENCE = 3
"So many lines of the log are told for each, the weightiest."
_GRADES = ("likely", "possible", "unlikely")
_ORDER = ("bad", "in doubt", "not looked at", "proved good")


class FaultFinding(Rows):
    """What the log points to."""

    def __init__(self) -> None:
        super().__init__(NO_TROUBLE)

    def show_advice(self, advice: Advice, odd: Sequence[Odd]) -> None:
        """Show what is known about the trouble."""
        rows = trouble(advice)
        causes = sorted(advice.causes, key=lambda one: _GRADES.index(one.grade) if one.grade in _GRADES else 9)
        rows += section("What it may be", map(_cause, causes[:MOST]))
        if len(causes) > MOST:
            rows.append(Row.of(f"and {len(causes) - MOST} more, less likely"))
        systems = sorted(advice.systems, key=lambda one: _ORDER.index(one.standing) if one.standing in _ORDER else 9)
        rows += section("The systems", map(_system, systems))
        rows += section("Next", (Row.of(one.step, below="; ".join(one.outcomes)) for one in advice.steps[:1]))
        rows += asked(advice)
        rows += section("What does not add up", map(_odd, odd))
        self.show(rows if advice.complaint or not rows else [Row.of(NO_TROUBLE), *rows])


def _cause(cause: Cause) -> Row:
    speaks = [one for one in cause.evidence if one.weight > 0]
    against = [one for one in cause.evidence if one.weight < 0]
    said = [_told("for it", speaks), _told("against it", against)]
    key = next((one.place.note for one in cause.evidence if one.place is not None), "")
    return Row.of(f"{cause.grade}: {cause.name}", below="; ".join(filter(None, said)), key=key)


def _system(one: SystemStanding) -> Row:
    key = next((known.place.note for known in one.evidence if known.place is not None), "")
    return Row.of(f"{one.system}: {one.standing}", below=_told("", one.evidence), key=key)


def _told(side: str, evidence: Sequence[Evidence]) -> str:
    heavy = sorted(evidence, key=lambda one: -abs(one.weight))
    lines = list(dict.fromkeys(" ".join(filter(None, (one.words, _place(one)))) for one in heavy))[:EVIDENCE]
    return ": ".join(filter(None, (side, "; ".join(lines)))) if lines else ""


def _place(one: Evidence) -> str:
    return f"({where(one.place)})" if one.place is not None else ""


def _odd(one: Odd) -> Row:
    return Row.of(one.says, below="; ".join(f"“{words}”" for words in one.told), key=_first(one))


def _first(one: Odd) -> str:
    return one.places[0].note if one.places else ""
