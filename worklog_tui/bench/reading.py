"""Reads notes on from where the reading stands, or again from the last context that is still right."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Protocol

from worklog_tui.model import Fact, FactKey, Machine, Note
from worklog_tui.store.derived import Mark, Readout

if TYPE_CHECKING:
    from worklog_tui.rulebook import Rulebook

SNAPSHOT_EACH = 50
"Notes between two stored contexts of a track."
REACH = 12
"A note may add or withdraw facts of so many notes before it, and no further."


class Context(Protocol):
    """What the reader keeps in mind from note to note."""

    def to_json(self) -> str:
        """The context as JSON text."""
        ...


class Changes(Protocol):
    """What one more note changes."""

    @property
    def added(self) -> tuple[Fact, ...]:
        """Facts that are new, or stand in the place of those with the same key."""
        ...

    @property
    def withdrawn(self) -> tuple[FactKey, ...]:
        """Facts that no longer hold."""
        ...


@dataclass(frozen=True, slots=True)
class Unread:
    """A note that the reader failed on: it changes nothing, and is to be read again with a mended grammar."""

    problem: str
    added: tuple[Fact, ...] = ()
    withdrawn: tuple[FactKey, ...] = ()


class Reader(Protocol):
    """What turns notes into facts."""

    @property
    def stamp(self) -> str:
        """Another stamp, other facts from the same notes."""
        ...

    @property
    def confidence_line(self) -> float:
        """Facts of less confidence are questions."""
        ...

    def start(self) -> Context:
        """The context before the first note."""
        ...

    def resume(self, text: str) -> Context:
        """The context of a stored text."""
        ...

    def feed(self, machine: Machine, context: Any, note: Note) -> tuple[Context, Changes]:
        """The context after one more note, and what the note changes."""
        ...


class GrammarReader:
    """The reader of the grammars."""

    def __init__(self, book: Rulebook) -> None:
        self._book = book

    @property
    def stamp(self) -> str:
        """That of the grammar files."""
        return self._book.stamp

    @property
    def confidence_line(self) -> float:
        """That of the reader."""
        from worklog_tui.extract import CONFIDENCE_LINE

        return CONFIDENCE_LINE

    def start(self) -> Context:
        """The context before the first note."""
        from worklog_tui import extract

        return extract.Context.start()

    def resume(self, text: str) -> Context:
        """The context of a stored text; one that an older version wrote and this one cannot read begins anew."""
        from worklog_tui import extract

        try:
            return extract.Context.from_json(text)
        except (ValueError, KeyError, TypeError):
            return extract.Context.start()

    def feed(self, machine: Machine, context: Any, note: Note) -> tuple[Context, Changes]:
        """The context after one more note, and what the note changes."""
        from worklog_tui import extract

        return extract.feed(self._book, machine, context, note)


@dataclass(slots=True)
class Fold:
    """The sum of many changes: what is to be withdrawn from the log, and what then to be added."""

    added: dict[FactKey, Fact] = field(default_factory=dict)
    withdrawn: set[FactKey] = field(default_factory=set)
    complete: bool = True
    "False when the reader failed on a note."

    def take(self, changes: Changes, notes: frozenset[str] | None = None) -> None:
        """Take in the changes of one more note; with `notes`, only what they change there."""
        self.complete = self.complete and not isinstance(changes, Unread)
        for key in changes.withdrawn:
            if notes is None or key.note in notes:
                self.added.pop(key, None)
                self.withdrawn.add(key)
        for fact in changes.added:
            if notes is None or fact.key.note in notes:
                self.withdrawn.discard(fact.key)
                self.added[fact.key] = fact


@dataclass(frozen=True, slots=True)
class Track:
    """One track of a session, and what reads it."""

    reader: Reader
    machine: Machine
    session: str
    name: str
    "typed or captions."
    stamp: str

    def feed(self, context: Context, notes: Iterable[Note]) -> Iterator[tuple[Note, Context, Changes]]:
        """Each note with the context after it and what it changes."""
        for note in notes:
            changes: Changes
            try:
                context, changes = self.reader.feed(self.machine, context, note)
            except Exception as mistake:  # a slip of a grammar must not cost the words
                changes = Unread(str(mistake) or type(mistake).__name__)
            yield note, context, changes

    def readout(self, cleared: Iterable[str], fold: Fold, snapshots: Iterable[Mark], tail: Mark | None) -> Readout:
        """The outcome in the shape that the store takes."""
        return Readout(
            self.session, self.name, self.stamp if fold.complete else "", self.reader.confidence_line, tuple(cleared),
            tuple(fold.withdrawn), tuple(fold.added.values()), tuple(snapshots), tail,
        )  # fmt: skip


def read_on(track: Track, mark: Mark | None, notes: Sequence[Note]) -> tuple[Readout, tuple[Changes, ...]]:
    """Read notes that follow the last one of the track; also gives what each of them changed."""
    position = mark.position if mark else 0
    start = track.reader.resume(mark.context) if mark else track.reader.start()
    fold, each, snapshots, tail = Fold(), [], [], mark
    for note, context, changes in track.feed(start, notes):
        position += 1
        fold.take(changes)
        each.append(changes)
        tail = Mark(note.uid, position, "")
        if position % SNAPSHOT_EACH == 0:
            snapshots.append(Mark(note.uid, position, context.to_json()))
    if each and tail:
        tail = Mark(tail.note, tail.position, context.to_json())
    return track.readout((), fold, snapshots, tail), tuple(each)


def read_all(track: Track, notes: Sequence[Note]) -> Readout:
    """Read a whole track anew."""
    return read_again(track, notes, {}, None, 0, len(notes) - 1)


def read_again(
    track: Track, notes: Sequence[Note], stored: Mapping[str, Mark], tail: Mark | None, first: int, last: int
) -> Readout:
    """Read a track again after notes were put in or altered, the first and last of them at these positions (from 0).

    Starts from the stored context at or before `first` less REACH, and stops once the context is the stored one again:
    from there on every note would be read as before.
    """
    base = next((i for i in range(max(first - REACH, 0), 0, -1) if notes[i - 1].uid in stored), 0)
    start = track.reader.resume(stored[notes[base - 1].uid].context) if base else track.reader.start()
    fold, snapshots, text = Fold(), [], ""
    for place, (note, context, changes) in enumerate(track.feed(start, notes[base:]), base):
        fold.take(changes)
        text = context.to_json() if place > last or (place + 1) % SNAPSHOT_EACH == 0 or note is notes[-1] else ""
        if place > last and note.uid in stored and stored[note.uid].context == text and tail is not None:
            snapshots.append(Mark(note.uid, place + 1, text))
            read = frozenset(one.uid for one in notes[: place + 1])
            for _, _, later in track.feed(context, notes[place + 1 : place + 1 + REACH]):
                fold.take(later, read)
            end = Mark(notes[-1].uid, len(notes), tail.context)
            return track.readout((one.uid for one in notes[base : place + 1]), fold, snapshots, end)
        if (place + 1) % SNAPSHOT_EACH == 0:
            snapshots.append(Mark(note.uid, place + 1, text))
    end_mark = Mark(notes[-1].uid, len(notes), text) if notes else None
    return track.readout((one.uid for one in notes[base:]), fold, snapshots, end_mark)
