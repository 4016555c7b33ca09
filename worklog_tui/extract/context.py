"""The reader's context: what is being talked of, and the words that a thought may still be going on from.

A plain frozen value that goes to JSON and back, at most 8 kB. It fades with time: `age` counts notes.
"""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from typing import Any, NamedTuple

from worklog_tui.model import Fact, Note
from worklog_tui.model.facts import from_plain, to_plain

HEADING_LIFE = 10
THINGS_BACK, SUSPECTS_BACK = 8, 10
SUBJECT_LIFE = 5
"Notes for which the last thing named stays what `it` means."
AIM_LIFE = 1
"Notes after which nobody knows any more what the meter was put on."
LISTING_LIFE = 1
"Notes after the last thing of a list in which it may go on."
FIGURES_BACK = 14
TOPIC_LIFE = 7
"Notes for which a running test stays the subject of bare numbers."
SLOWEST = 0.8
"Words a second: who says less before the next note has made a pause."

_new = tuple.__new__  # makes a Subject, a Stand or a Topic at half the cost of calling it; their age is the last field


class Subject(NamedTuple):
    """A thing that was named, as the next sentence may mean it by `it`."""

    words: str
    name: str = ""
    kind: str = "part"
    which: str = ""
    quantities: tuple[str, ...] = ()
    system: str = ""
    per: str = ""
    age: int = 0

    def older(self) -> Subject:
        """The same, one note later."""
        return _new(Subject, (*self[:-1], self.age + 1))


class Topic(NamedTuple):
    """A running test: what bare numbers are, and of what."""

    quantity: str
    unit: str = ""
    words: str = ""
    name: str = ""
    which: str = ""
    role: str = "measured"
    scale: float = 1.0
    "What a bare number is multiplied by: 0.001 where thou were said."
    quality: bool = False
    "Whether `words` name what is measured (`oil pressure`), not the part that it is measured on."
    value: float = 0.0
    "The last value; a bare number of another size is something else."
    age: int = 0


class Stand(NamedTuple):
    """How the machine stands in one respect, as it was last said: `motion`, `cranking`."""

    slot: str
    value: str
    age: int = 0


class Figure(NamedTuple):
    """A value that was told of a thing; `value` in units of `scale`, 0.001 where thou were said."""

    quantity: str
    unit: str
    value: float
    scale: float
    name: str


@dataclass(frozen=True, slots=True)
class Tail:
    """The end of the last note, when its sentence was not finished."""

    note: str
    words: str
    offset: int
    "Where these words begin in their note."
    due: int | None = None
    "Session time in seconds by which even a slow talker is through with the note; None without a time."

    @classmethod
    def of(cls, note: Note, words: str, offset: int) -> Tail:
        """The last words of a note."""
        due = None if note.at is None else note.at + int(len(note.words.split()) / SLOWEST)
        return cls(note.uid, words, offset, due)

    def ended_before(self, note: Note) -> bool:
        """Whether so long was nothing said before a note that the sentence was finished, with or without a stop."""
        return self.due is not None and note.at is not None and note.at > self.due


class Context(NamedTuple):
    """Everything that the reader remembers between two notes."""

    things: tuple[Subject, ...] = ()
    "The last things that were named, newest first; the first is what `it` means."
    heading: Subject | None = None
    "A thing that was named alone, as what comes next."
    which: str = ""
    "Which one was last said (`left`, `3`), while it is fresh."
    topic: Topic | None = None
    suspects: tuple[str, ...] = ()
    "Names of what is suspected and not yet cleared, newest first."
    system: str = ""
    listing: str = ""
    "Why the things of a list that is being told are come back to (`part needed`, `to do`); empty outside a list."
    listing_age: int = 0
    tail: Tail | None = None
    recent: tuple[Fact, ...] = ()
    "The last facts of the last notes, newest last; without those of a sentence that is not finished."
    pending: tuple[Fact, ...] = ()
    "The facts of the tail as far as it goes: they are read again with what follows."
    notes: tuple[str, ...] = ()
    "The uids of the last notes, newest last."
    long: int = 0
    "How many very long notes have come one after another."
    units: tuple[str, ...] = ()
    "The units that were said, the last one first."
    figures: tuple[Figure, ...] = ()
    "What was measured on which thing, and how much, the last one first."
    aim: Subject | None = None
    "What an instrument was put on in the last sentence: the number to come is of it."
    said: str = ""
    "The last words of the sentence before, as they were said."
    standing: tuple[Stand, ...] = ()
    "How the machine stands: hot or cold, at rest or running; it is still so when the next number is told."
    tried: str = ""
    "What is being tried: the `engine` on its handle, or the `spark`; empty when nothing is."
    tried_age: int = 0

    @classmethod
    def start(cls) -> Context:
        """The context at the beginning of a session: nothing."""
        return cls()

    def to_json(self) -> str:
        """One line of JSON."""
        data = self._asdict() | {"things": [subject._asdict() for subject in self.things]}
        told = (("heading", self.heading), ("aim", self.aim), ("topic", self.topic))
        data |= {name: value and value._asdict() for name, value in told}
        data |= {"tail": self.tail and asdict(self.tail)}
        data |= {name: [to_plain(fact) for fact in getattr(self, name)] for name in ("recent", "pending")}
        return json.dumps(data, ensure_ascii=False, separators=(",", ":"))

    @classmethod
    def from_json(cls, text: str) -> Context:
        """The context that `to_json` wrote."""
        data = json.loads(text)
        topic, tail, heading = data["topic"], data["tail"], data["heading"]
        return cls(
            tuple(map(_subject, data["things"])), _subject(heading) if heading else None, data["which"],
            Topic(**topic) if topic else None, tuple(data["suspects"]), data["system"],
            data["listing"], data["listing_age"], Tail(**tail) if tail else None,
            tuple(map(from_plain, data["recent"])), tuple(map(from_plain, data["pending"])),
            tuple(data["notes"]), data["long"], tuple(data["units"]),
            tuple(Figure(*row) for row in data["figures"]), _subject(data["aim"]) if data["aim"] else None,
            data["said"],
            tuple(Stand(*row) for row in data["standing"]), data["tried"], data["tried_age"],
        )  # fmt: skip

    def aged(self) -> Context:
        """One note later: what was not named again fades."""
        topic = self.topic and _new(Topic, (*self.topic[:-1], self.topic.age + 1))
        heading = self.heading.older() if self.heading and self.heading.age < HEADING_LIFE else None
        return self._replace(
            things=tuple([_new(Subject, (*t[:-1], t.age + 1)) for t in self.things if t.age < SUBJECT_LIFE]),
            heading=heading,
            topic=topic if topic and topic.age <= TOPIC_LIFE else None,
            aim=self.aim.older() if self.aim and self.aim.age < AIM_LIFE else None,
            standing=tuple([_new(Stand, (*s[:-1], s.age + 1)) for s in self.standing]),
            listing=self.listing if self.listing_age < LISTING_LIFE else "", listing_age=self.listing_age + 1,
            tried_age=self.tried_age + 1,
        )  # fmt: skip


def _subject(data: dict[str, Any]) -> Subject:
    return Subject(**{**data, "quantities": tuple(data["quantities"])})
