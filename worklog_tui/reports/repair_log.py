"""The repair log as it is published: one model for the page, Markdown, JSON and CSV, all of it plain text in words."""

from __future__ import annotations

from dataclasses import dataclass, field

from worklog_tui.reports.left_out import LeftOut
from worklog_tui.reports.what_measured import what_measured


@dataclass(frozen=True, slots=True)
class Spot:
    """A place in the log that one can go to."""

    said: str
    "Such as session 2 at 14:06."
    anchor: str
    "Of the note; the same in every export."


@dataclass(frozen=True, slots=True)
class Told:
    """One thing that the log tells, with where it is told."""

    text: str
    detail: str = ""
    "Why, how, or what came after it."
    spot: Spot | None = None
    quote: str = ""
    "The words that it was read from."


@dataclass(frozen=True, slots=True)
class Group:
    """Things that belong together."""

    title: str
    rows: tuple[Told, ...]


@dataclass(frozen=True, slots=True)
class LogLine:
    """One note of the timeline."""

    anchor: str
    time: str
    words: str
    facts: tuple[str, ...] = ()
    perhaps: tuple[str, ...] = ()
    "What was not understood for sure."


@dataclass(frozen=True, slots=True)
class LogSession:
    """One session of the timeline."""

    number: int
    title: str
    day: str
    lines: tuple[LogLine, ...]


@dataclass(frozen=True, slots=True)
class ReadingRow:
    """One reading, measured or set."""

    session: int
    day: str
    "ISO date; empty when not known."
    time: str
    quantity: str
    subject: str
    value: str
    "With its unit, as people write it."
    low: float | None
    high: float | None
    "The number or the ends of the range; None for a designation."
    unit: str
    condition: str
    how: str
    "measured or set."
    doubtful: bool
    should_be: str
    compares: str
    "too low, too high, as it should be, or empty when nothing tells."
    spot: Spot

    @property
    def what(self) -> str:
        """What it is of, in a few words."""
        return what_measured(self.subject, self.quantity, self.unit)


@dataclass(frozen=True, slots=True)
class WorkRow:
    """One piece of work."""

    session: int
    day: str
    time: str
    done: str
    "In words: belt replaced, with new belt."
    action: str
    part: str
    used: str
    spot: Spot


@dataclass(frozen=True, slots=True)
class PartRow:
    """One part: needed, awaited or fitted."""

    part: str
    state: str
    used: str
    session: int
    time: str
    spot: Spot | None
    later: str = ""
    "What became of it."


@dataclass(frozen=True, slots=True)
class Mark:
    """One reading on a scale."""

    at: float
    "Percent of the scale's length."
    said: str
    last: bool
    verdict: str
    "low, high, good or empty."


@dataclass(frozen=True, slots=True)
class Scale:
    """The readings of one subject on a scale."""

    name: str
    marks: tuple[Mark, ...]
    band: tuple[float, float] | None
    "Where the specified values begin and how far they go, in percent."
    should_be: str
    verdict: str
    trend: tuple[tuple[float, float], ...] = ()
    "The course from the first reading to the last, in percent from the left and from the top."


@dataclass(frozen=True, slots=True)
class Chart:
    """Scales with one axis."""

    title: str
    unit: str
    scales: tuple[Scale, ...]
    ticks: tuple[tuple[float, str], ...]
    told: str
    "The same in words, for those who cannot see it."


@dataclass(frozen=True, slots=True)
class Standing:
    """Where the machine stands, to be read in half a minute."""

    headline: str
    rows: tuple[tuple[str, str, Spot | None], ...] = ()
    "What it is about, what the log says, and where."


@dataclass(frozen=True, slots=True)
class SystemRow:
    """One system in a plain line."""

    system: str
    standing: str
    why: tuple[Told, ...] = ()


@dataclass(frozen=True, slots=True)
class RepairLog:
    """All that is published of a machine."""

    machine: str
    kind: str
    span: str
    "Such as sessions 1 to 2, 20 August to 11 September 2025."
    made: str
    "The day on which it was made; empty when it is not told."
    where_it_stands: Standing
    whole: bool = True
    "Whether it tells the machine's whole life, or ends earlier than the log."
    card: tuple[tuple[str, str], ...] = ()
    cautions: tuple[Told, ...] = ()
    open_items: tuple[Group, ...] = ()
    for_now: tuple[Told, ...] = ()
    left_so: tuple[Told, ...] = ()
    not_proved: tuple[Told, ...] = ()
    dealt_with: tuple[Told, ...] = ()
    next_steps: tuple[Told, ...] = ()
    forbidden: tuple[Told, ...] = ()
    "What was said that forbids a start."
    left: tuple[Told, ...] = ()
    "How it was left."
    off: tuple[Told, ...] = ()
    "What is off it, as far as was heard."
    starts: tuple[Told, ...] = ()
    charts: tuple[Chart, ...] = ()
    readings: tuple[ReadingRow, ...] = ()
    work: tuple[WorkRow, ...] = ()
    parts: tuple[PartRow, ...] = ()
    settled: tuple[Told, ...] = ()
    systems: tuple[SystemRow, ...] = ()
    sessions: tuple[LogSession, ...] = ()
    left_out: LeftOut = field(default_factory=LeftOut)
