"""Facts: what was read from the words. They are derived and have no id; their key is where they were said."""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Any, ClassVar, NamedTuple

BY_HAND = "by hand"
"What stands in the place of a pattern's id when a person corrected or added the fact."

Value = float | tuple[float, float] | str
"A number, a range (low, high), or the designation of a thread as text."


class Span(NamedTuple):
    """Words of a note: characters start to end (exclusive) of its current wording."""

    note: str
    start: int
    end: int


class FactKey(NamedTuple):
    """Where a fact stands: the main words (value, condition, action, cause), and which one of equals it is.

    A tuple, because it is made and looked for so often: a frozen dataclass takes several times as long for either.
    """

    note: str
    kind: str
    start: int
    end: int
    nth: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """What all facts have in common."""

    kind: ClassVar[str] = ""

    main: Span
    "The words that made it: value, condition, action or cause."
    nth: int = 0
    evidence: tuple[Span, ...] = ()
    "All words that it was read from; a thought may break across notes."
    quote: str = ""
    rule: str = ""
    "Id of the pattern."
    confidence: float = 1.0
    filled: tuple[str, ...] = ()
    "Names of the fields that were not said but filled in from what was talked of."

    @property
    def key(self) -> FactKey:
        """Where the fact stands in the notes."""
        return FactKey(self.main.note, self.kind, self.main.start, self.main.end, self.nth)

    @property
    def about(self) -> str:
        """The thing that it is about, in the speaker's words."""
        return ""

    @property
    def by_hand(self) -> bool:
        """Whether a person corrected or added it."""
        return self.rule == BY_HAND


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading(Fact):
    """A number that describes the machine or the work."""

    kind: ClassVar[str] = "reading"
    quantity: str
    value: Value
    unit: str = ""
    subject: str = ""
    name: str = ""
    "The subject's name in the vocabulary; empty when it has none."
    role: str = "measured"
    "measured, specified, set, planned or rated."
    condition: str = ""
    "How it was taken, one way after another, a comma between: `hot, at fast idle`."
    doubtful: bool = False
    source: str = ""
    "Who says so, of what it should be where that is not this machine's own book or plate."

    @property
    def about(self) -> str:
        return self.subject

    @property
    def taken_words(self) -> frozenset[str]:
        """The words that tell how it was taken."""
        return frozenset(self.condition.lower().replace(",", " ").split())

    @property
    def ways(self) -> frozenset[str]:
        """The ways in which it was taken; what it came after is none: it is laid beside what was before."""
        return frozenset(way for way in self.condition.lower().split(", ") if way and not way.startswith("after "))


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding(Fact):
    """What a look or a test showed."""

    kind: ClassVar[str] = "finding"
    part: str
    condition: str
    verdict: str
    "bad, good or noted."
    name: str = ""
    state: str = ""
    "The condition's name in the vocabulary, such as worn."

    @property
    def about(self) -> str:
        return self.part


@dataclass(frozen=True, slots=True, kw_only=True)
class Work(Fact):
    """What was done in this session."""

    kind: ClassVar[str] = "work"
    action: str
    part: str
    used: str = ""
    "What was put in or used."
    name: str = ""

    @property
    def about(self) -> str:
        return self.part


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspect(Fact):
    """A possible cause of the trouble."""

    kind: ClassVar[str] = "suspect"
    cause: str
    standing: str = "suspected"
    "suspected, ruled out or confirmed."
    name: str = ""

    @property
    def about(self) -> str:
        return self.cause


@dataclass(frozen=True, slots=True, kw_only=True)
class FollowUp(Fact):
    """Something that must be come back to."""

    kind: ClassVar[str] = "follow_up"
    topic: str
    reason: str
    "temporary, part needed, fault, to do, fallback or question."
    name: str = ""

    @property
    def about(self) -> str:
        return self.topic


@dataclass(frozen=True, slots=True, kw_only=True)
class Trait(Fact):
    """What the machine is, from the talk: firing order, earth side, how a control moves."""

    kind: ClassVar[str] = "trait"
    trait: str
    value: str
    source: str = ""
    doubtful: bool = False

    @property
    def about(self) -> str:
        return self.trait


@dataclass(frozen=True, slots=True, kw_only=True)
class Number(Fact):
    """A number that names a thing: serial, casting, part, plug, belt, bearing, tyre."""

    kind: ClassVar[str] = "number"
    number: str
    of: str
    source: str = ""

    @property
    def about(self) -> str:
        return self.of


KINDS: dict[str, type[Fact]] = {c.kind: c for c in (Reading, Finding, Work, Suspect, FollowUp, Trait, Number)}


def to_plain(fact: Fact) -> dict[str, Any]:
    """A fact as JSON data, with its kind."""
    data: dict[str, Any] = {"kind": fact.kind}
    for f in fields(fact):
        value = getattr(fact, f.name)
        if isinstance(value, Span):
            value = [value.note, value.start, value.end]
        elif f.name == "evidence":
            value = [[s.note, s.start, s.end] for s in value]
        elif isinstance(value, tuple):
            value = list(value)
        data[f.name] = value
    return data


def from_plain(data: dict[str, Any]) -> Fact:
    """The fact that `to_plain` wrote; a KeyError for an unknown kind."""
    rest = dict(data)
    kind = KINDS[rest.pop("kind")]
    rest["main"] = Span(*rest["main"])
    rest["evidence"] = tuple(Span(*s) for s in rest["evidence"])
    rest["filled"] = tuple(rest["filled"])
    if isinstance(rest.get("value"), list):
        rest["value"] = tuple(rest["value"])
    return kind(**rest)
