"""What the log comes to, as plain nouns: a screen keeps these for hours, and loads nothing of what works them out."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.model import Act, Fact, FactKey, Finding, Instant, Note, OpenItem, Place, Reading, Suspect, Work

_OWN = frozenset("own handbook plate the book manual its this machine's maker's sheet spec nameplate data card".split())


def own_source(source: str) -> bool:
    """Whether a figure comes from the machine's own book or plate, or nothing was told of where it comes from."""
    return set(source.casefold().replace(",", " ").split()) <= _OWN


@dataclass(frozen=True, slots=True)
class Left:
    """A state as it was last heard."""

    state: str
    about: str
    "The thing that it is of, as far as the same line names one."
    place: Place
    told: str
    asks: str
    stops: bool
    "Whether the machine should not be started before it is cleared."


@dataclass(frozen=True, slots=True)
class DoNotStart:
    """What was said that forbids a start."""

    place: Place
    told: str


@dataclass(frozen=True, slots=True)
class OffPart:
    """One thing that is off, apart or drained as far as was heard."""

    work: Work
    place: Place
    how: str
    "off, apart, disconnected, loosened or drained."
    told: str
    "The whole line: fasteners, wires and place as they were said."
    sizes: tuple[Reading, ...] = ()
    "Threads and dimensions that were said in the same line or the next."
    tried: bool = False
    "Whether a start was tried since, or the machine ran: it may be back without a word."


@dataclass(frozen=True, slots=True)
class StartAttempt:
    """One attempt, and what was found in the lines that follow."""

    work: Work
    place: Place
    outcome: Finding | None
    "None when nothing was said of it."
    ran: bool


@dataclass(frozen=True, slots=True)
class FluidLook:
    """A fluid, and where it was last looked at or filled; None: nothing was heard of it."""

    name: str
    place: Place | None


@dataclass(frozen=True, slots=True)
class BeforeStart:
    """What to go through before the machine is started."""

    forbidden: tuple[DoNotStart, ...]
    left: tuple[Left, ...]
    "States that stop a start first."
    off: tuple[OffPart, ...]
    fluids: tuple[FluidLook, ...]
    stops_with: tuple[Place, ...]
    "Where something was said of what stops it; empty: ask how it is stopped."
    due: tuple[OpenItem, ...]
    "Items that the person set to be done before a start."
    attempts: tuple[StartAttempt, ...]


@dataclass(frozen=True, slots=True)
class Unheard:
    """A job that was announced."""

    note: Note
    verb: str
    "What was to be done, as said."
    part: str
    action: str
    "The action that work is recorded under which does it."


@dataclass(frozen=True, slots=True)
class Clash:
    """Two acts on one thing that had not seen each other."""

    earlier: Act
    later: Act
    "The one that counts."

    @property
    def key(self) -> str:
        """Names the clash; an act that lets it go names this."""
        return f"{self.earlier.uid} {self.later.uid} clash"


@dataclass(frozen=True, slots=True)
class Question:
    """One thing to ask, with the answers that can be given."""

    key: str
    "Names it; an act that lets it go names this."
    kind: str
    "clash, wording, doubtful, check, announced, off, left or noticed."
    asks: str
    place: Place | None
    told: str
    "The words that it is about."
    answers: tuple[str, ...]
    "Such as yes, no, good, bad, done, back on, still so."
    fact: FactKey | None = None
    item: OpenItem | None = None
    read: Fact | None = None
    "The fact that is in doubt."
    promised: Unheard | None = None
    "The job that was announced."
    clash: Clash | None = None
    "What two computers did to one thing."


@dataclass(frozen=True, slots=True)
class ClosingUp:
    """The questions in their order, and how many more there would be."""

    questions: tuple[Question, ...]
    more: int = 0


@dataclass(frozen=True, slots=True)
class Limits:
    """The range that a reading should lie in; None where there is no end to it."""

    low: float | None
    high: float | None
    unit: str
    text: str
    "As the card or the person gave it."
    nominal: float | None = None
    "The single figure that was given; the range is then what is near to it."
    source: str = ""
    "Who says so; empty when that was not told."

    @property
    def borrowed(self) -> str:
        """Who says so, where that is not this machine's own book or plate."""
        return "" if own_source(self.source) else self.source


WET = "wet"
"The condition of a compression that was taken with oil in the bores, also where only the order of the log tells."


@dataclass(frozen=True, slots=True)
class Point:
    """One reading, and how it compares."""

    reading: Reading
    place: Place
    verdict: str
    """low, high, good, or empty when nothing tells: neither what was taken with oil in the bores nor what was poured in
    is laid beside the card."""


@dataclass(frozen=True, slots=True)
class Series:
    """All readings of one quantity of one subject, in order."""

    quantity: str
    subject: str
    points: tuple[Point, ...]
    limits: Limits | None = None

    @property
    def last(self) -> Point:
        """The reading that stands now; one taken with oil in the bores only where there is no other."""
        return next((one for one in reversed(self.points) if one.reading.condition != WET), self.points[-1])


@dataclass(frozen=True, slots=True)
class Odd:
    """Two things that do not go together, or one that cannot be."""

    kind: str
    "figures, findings, book, traits, cylinder, part, beyond, gauge or backwards."
    says: str
    places: tuple[Place, ...]
    told: tuple[str, ...]
    "The words of each place."


@dataclass(frozen=True, slots=True)
class Recap:
    """Where things stood when the session ended."""

    session: int
    "Number of the session that is told of; 0 when there is none."
    start: Instant | None
    done: tuple[Work, ...] = ()
    found: tuple[Finding | Suspect, ...] = ()
    measured: tuple[Reading, ...] = ()
    open: tuple[OpenItem, ...] = ()
    awaited: tuple[OpenItem, ...] = ()
    closed: tuple[OpenItem, ...] = ()
    "Items that this session dealt with."
    planned: tuple[OpenItem, ...] = ()
    "What the person said last that he would do, in his order."
