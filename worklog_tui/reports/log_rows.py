"""Rows of a published log: the timeline, the readings, the work."""

from __future__ import annotations

from worklog_tui.logbook.amounts import bounds
from worklog_tui.logbook.limits import Judge
from worklog_tui.logbook.readings import TAKEN
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.timeline import TimelineLine, TimelineSession, timeline
from worklog_tui.logbook.words import one_form
from worklog_tui.model import Reading, Work
from worklog_tui.reports.material import Material, anchor, spot
from worklog_tui.reports.plain_readings import should_be
from worklog_tui.reports.repair_log import LogLine, LogSession, ReadingRow, WorkRow
from worklog_tui.reports.sentence import QUANTITIES, UNITS, amount, briefly, sentence
from worklog_tui.reports.when import session_title

VERDICTS = {"low": "too low", "high": "too high", "good": "as it should be", "": ""}
"How a reading compares, in words."


def sessions(of: Material) -> tuple[LogSession, ...]:
    """The sessions that are told, with all their lines."""
    return tuple(
        LogSession(one.number, session_title(one.number, one.session.start), of.day(one.number), _lines(one))
        for one in timeline(of.history)
        if one.number >= of.first
    )


def _lines(one: TimelineSession) -> tuple[LogLine, ...]:
    return tuple(map(_line, one.lines))


def _line(line: TimelineLine) -> LogLine:
    return LogLine(
        anchor(line.note.uid), line.place.at, line.note.words, tuple(sentence(f, brief=True) for f in line.facts),
        tuple(sentence(f, brief=True) for f in line.questions),
    )  # fmt: skip


def reading_rows(of: Material) -> tuple[ReadingRow, ...]:
    """Everything that was measured or set, in order."""
    judge = Judge(of.history)
    rows = []
    for place, fact in of.told():
        if isinstance(fact, Reading) and fact.role in TAKEN:
            limits = judge.limits(fact)
            low, high = bounds(fact.value) or (None, None)
            rows.append(ReadingRow(
                place.session, of.day(place.session), place.at, quantity(fact.quantity), fact.subject,
                amount(fact.value, fact.unit), low, high, UNITS.get(fact.unit, fact.unit), fact.condition, fact.role,
                fact.doubtful, should_be(limits), VERDICTS[judge.compares(fact)], spot(place),
            ))  # fmt: skip
    return tuple(rows)


def work_rows(of: Material) -> tuple[WorkRow, ...]:
    """Everything that was done, in order."""
    return tuple(
        WorkRow(place.session, of.day(place.session), place.at, briefly(f), f.action, f.part, f.used, spot(place))
        for place, f in of.told()
        if isinstance(f, Work)
    )


_SAYS_WHAT = frozenset(map(one_form, "gap clearance setting level deflection reading".split()))
"Words of a subject that only say what is measured on it."


def subject_key(fact: Reading) -> tuple[str, frozenset[str]]:
    """What readings of one subject share, however it was called: points, points gap."""
    about = thing(fact.subject, fact.name)
    words = about.words - _SAYS_WHAT - {one_form(word) for word in fact.quantity.split("_")}
    return fact.quantity, (words or about.words) | about.marks


def quantity(name: str) -> str:
    """What was measured, in words."""
    return QUANTITIES.get(name, name.replace("_", " "))
