"""Since last time: half a minute to know how a machine was left and what comes first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import TYPE_CHECKING, Protocol

from worklog_tui.model import Advice, Fact, Finding, Instant, OpenItem, Reading, Suspect, Work
from worklog_tui.reports.again import open_again
from worklog_tui.reports.sentence import REASONS, briefly
from worklog_tui.widgets.before_rows import forbidden_rows, left_rows
from worklog_tui.widgets.days import day
from worklog_tui.widgets.head_line import wait_told
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows

if TYPE_CHECKING:
    from worklog_tui.logbook.outcomes import BeforeStart
    from worklog_tui.logbook.wait import Wait

MOST = 8
"So many things of a kind are told; the rest are counted."


class SessionTold(Protocol):
    """What is told of a session, and how things stand since."""

    @property
    def session(self) -> int:
        """Its number; 0 when there is none."""

    @property
    def start(self) -> Instant | None:
        """When it began."""

    @property
    def done(self) -> Sequence[Work]:
        """What was done."""

    @property
    def found(self) -> Sequence[Finding | Suspect]:
        """What was found."""

    @property
    def measured(self) -> Sequence[Reading]:
        """What was measured."""

    @property
    def open(self) -> Sequence[OpenItem]:
        """What is open, and what was left so on purpose."""

    @property
    def awaited(self) -> Sequence[OpenItem]:
        """What is waited for."""

    @property
    def closed(self) -> Sequence[OpenItem]:
        """What the session dealt with."""

    @property
    def planned(self) -> Sequence[OpenItem]:
        """What was to come next, in the person's order."""


class LastTime(Rows):
    """What is read first after a break."""

    def __init__(self) -> None:
        super().__init__("Looking back …")

    def show_recap(
        self, told: SessionTold, last_words: str, advice: Advice, now: datetime, before: BeforeStart,
        waits: Sequence[Wait] = (),
    ) -> None:  # fmt: skip
        """Show it, with what comes first at the top."""
        self.empty = "There is no earlier session to look back on."
        waited = [wait_told(one, now) for one in waits]
        self.show(_rows(told, last_words, advice, now, before, waited) if told.session else [])
        if self.is_attached:
            self.scroll_home(animate=False, immediate=True, force=True)
        self.here = 0


def _rows(
    told: SessionTold, last_words: str, advice: Advice, now: datetime, before: BeforeStart, waited: Sequence[str]
) -> list[Row]:  # fmt: skip
    rows = [Row.of(f"Session {told.session}{_when(told.start, now)}", heading=True)]
    rows += forbidden_rows(before)
    if last_words and all(one.told != last_words for one in before.forbidden):
        rows.append(Row.of(f"Last said: “{last_words}”"))
    left = [item for item in told.open if item.state == "left so" or item.reason == "temporary"]
    rows += left_rows(before)
    rows += _group("For now only, or left so on purpose", (_item(item) for item in left))
    rows += _group("Awaited", [*waited, *(_item(item) for item in told.awaited)])
    rows += _group("What was to come next", (_item(item) for item in told.planned))
    if advice.steps:
        first = advice.steps[0]
        rows += [Row.of("What the log points to", heading=True), Row.of(first.step, below=first.why)]
    told_already = {*map(id, left), *map(id, told.planned)}
    rows += _group("Still open besides", (_item(item) for item in told.open if id(item) not in told_already))
    rows += _group("Dealt with", (item.about for item in told.closed))
    rows += _group("Done", map(briefly, told.done))
    rows += _group("Measured", map(briefly, _last_of_each(told.measured)))
    rows += _group("Found", map(briefly, _worth_telling(told.found)))
    return rows


def _group(title: str, said: Iterable[str]) -> list[Row]:
    lines = list(dict.fromkeys(said))
    if not lines:
        return []
    more = [Row.of(f"and {len(lines) - MOST} more")] if len(lines) > MOST else []
    return [Row.of(title, heading=True), *map(Row.of, lines[:MOST]), *more]


def _item(item: OpenItem) -> str:
    why = "" if item.reason == "to do" else REASONS.get(item.reason, "")
    return ", ".join(filter(None, (item.about, why, open_again(item))))


def _worth_telling(found: Sequence[Finding | Suspect]) -> list[Fact]:
    return [fact for fact in found if not (isinstance(fact, Finding) and fact.verdict == "noted")]


def _last_of_each(readings: Sequence[Reading]) -> list[Reading]:
    """The last reading of each quantity, subject and condition."""
    last = {(one.quantity, one.subject.lower(), one.condition): one for one in readings}
    return list(last.values())


def _when(start: Instant | None, now: datetime) -> str:
    """Such as `, Saturday 12 April 2031, 3 weeks ago`."""
    if start is None:
        return ", date not known"
    days = (now.astimezone().date() - start.moment().astimezone().date()).days
    return f", {day(start)}" + (f", {_ago(days)}" if days >= 0 else "")


def _ago(days: int) -> str:
    if days < 2:
        return "yesterday" if days else "today"
    for name, length in (("year", 365), ("month", 30), ("week", 7)):
        if days >= 2 * length:
            return f"{days // length} {name}s ago"
    return f"{days} days ago"
