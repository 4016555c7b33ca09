"""The hand-over sheet: what the next owner must know, in the words of the one who had it on the bench."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from worklog_tui.logbook.limits import Judge
from worklog_tui.logbook.outcomes import Limits
from worklog_tui.model import Note, Number, Place, Reading, Trait
from worklog_tui.reports.log_rows import VERDICTS, quantity, subject_key
from worklog_tui.reports.material import Material, spot
from worklog_tui.reports.plain_readings import should_be
from worklog_tui.reports.publishing_words import PublishingWords, alternatives
from worklog_tui.reports.repair_log import PartRow, RepairLog, Spot, Told
from worklog_tui.reports.sentence import amount
from worklog_tui.reports.what_measured import what_measured

_IN = frozenset({"replaced", "fitted", "made", "substituted", "used again", "from a donor"})
_MOST = 4
"So many notes that tell how to start or stop it are quoted, the latest."
NOT_TOLD = "The log does not tell how it is {}. Find out before you start it."


@dataclass(frozen=True, slots=True)
class HandOver:
    """The sheet."""

    log: RepairLog
    starting: tuple[Told, ...]
    stopping: tuple[Told, ...]
    settings: tuple[tuple[str, str, str, Spot | None], ...]
    "What, as it was set or measured last, what it should be, and where."
    replaced: tuple[PartRow, ...]
    numbers: tuple[tuple[str, str, Spot | None], ...]


def hand_over(of: Material, log: RepairLog, words: PublishingWords) -> HandOver:
    """The sheet for a log that came through the gate."""
    return HandOver(
        log, _quoted(of, words.starting), _stopping(of, words), tuple(_settings(of)), _replaced(log.parts),
        tuple(_numbers(of)),
    )  # fmt: skip


def _quoted(of: Material, says: Sequence[str]) -> tuple[Told, ...]:
    """The latest notes that hold such words, in the order said."""
    sought = re.compile(alternatives(says), re.IGNORECASE)
    found = [note for note in _notes(of) if sought.search(note.words)]
    return tuple(Told(of.words(n.uid), "", spot(of.history.place(n.uid))) for n in found[-_MOST:])


def _stopping(of: Material, words: PublishingWords) -> tuple[Told, ...]:
    """The latest notes that tell how it is stopped, else those that name what stops it."""
    from worklog_tui.logbook.before_start import before_start

    told = _quoted(of, words.stopping)
    named = () if told else before_start(of.history, of.items).stops_with
    return told or tuple(Told(of.words(p.note), "", spot(p)) for p in named[-_MOST:])


def _notes(of: Material) -> Iterator[Note]:
    return (note for record in of.history.sessions for note in record.notes)


def _settings(of: Material) -> Iterator[tuple[str, str, str, Spot | None]]:
    """The last reading of everything that was set, or that a value is specified for; dry and wet in one row."""
    judge = Judge(of.history)
    last: dict[object, tuple[Place, Reading, Limits | None]] = {}
    for place, fact in of.everything():
        if isinstance(fact, Reading) and fact.role in ("set", "measured") and fact.quantity != "duration":
            limits = judge.limits(fact)
            if fact.role == "set" or limits is not None:
                key = subject_key(fact), fact.taken_words & _TAKEN_SO
                last.pop(key, None)
                last[key] = (place, fact, limits)
    rows: dict[tuple[str, str], tuple[list[str], Spot | None]] = {}
    for place, fact, limits in last.values():
        what = what_measured(fact.subject, quantity(fact.quantity), fact.unit)
        how = ", ".join(filter(None, (fact.condition, "doubtful" if fact.doubtful else "")))
        value = amount(fact.value, fact.unit) + (f" ({how})" if how else "")
        verdict = VERDICTS[judge.compares(fact)]
        said, _ = rows.pop((what, should_be(limits)), ([], None))
        rows[what, should_be(limits)] = ([*said, value + (f", {verdict}" if "too" in verdict else "")], spot(place))
    for (what, should), (said, at) in rows.items():
        yield what, "; ".join(said), should, at


_TAKEN_SO = frozenset("dry wet oil hot cold warm cranking idle load throttle running".split())
"Words of a condition that make another reading of it; where on the belt it was taken does not."


def _replaced(parts: tuple[PartRow, ...]) -> tuple[PartRow, ...]:
    return tuple(p for p in parts if p.state.split(",")[0] in _IN)


def _numbers(of: Material) -> Iterator[tuple[str, str, Spot | None]]:
    for place, fact in of.everything():
        if isinstance(fact, Number):
            yield fact.of or "number", fact.number + (f" ({fact.source})" if fact.source else ""), spot(place)
        elif isinstance(fact, Trait):
            yield fact.trait, fact.value + (", doubtful" if fact.doubtful else ""), spot(place)
