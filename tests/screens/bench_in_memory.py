"""A bench for the screens to call: it reads gaps and parts that are needed, and keeps everything in memory."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from threading import Event
from types import SimpleNamespace
from typing import Any, cast

from textual.app import App
from textual.pilot import Pilot

from worklog_tui.bench.camera import Filmed
from worklog_tui.bench.filming import FilmOf
from worklog_tui.bench.machines import MachineLine
from worklog_tui.bench.note_facts import NoteFacts
from worklog_tui.bench.outlook import Outlook, outlook_of
from worklog_tui.bench.pages import Page, Part, Wanted
from worklog_tui.bench.record import Kept
from worklog_tui.bench.review import Review
from worklog_tui.bench.telling import Stopped
from worklog_tui.bench.trying import TriedOut
from worklog_tui.model import (
    Advice,
    Fact,
    FollowUp,
    History,
    Instant,
    Machine,
    Note,
    OpenItem,
    Reading,
    Session,
    SessionRecord,
    Span,
    Step,
)  # fmt: skip
from worklog_tui.notes.lines import ReadSession
from worklog_tui.screens.errands import Errands
from worklog_tui.screens.looking_up import Preview
from worklog_tui.widgets.note_line import NoteLine

START = Instant.of(datetime(2031, 4, 12, 14, 5, tzinfo=UTC))


@dataclass
class Bench(Errands):
    """Errands that need no logbook. `refuse` makes the next keeping fail, `spool` sends notes beside the logbook."""

    path: Path
    cards: list[Machine] = field(default_factory=list)
    notes: list[Note] = field(default_factory=list)
    is_film_of: FilmOf | None = None
    pastes: list[str] = field(default_factory=list)
    comments: list[str] = field(default_factory=list)
    refuse: Exception | None = None
    hold: Event = field(default_factory=Event)
    "Long work waits while it is not set."
    spool: bool = False
    step: str = "look at the spark"
    clock: datetime = field(default_factory=lambda: datetime(2031, 4, 12, 14, 30, tzinfo=UTC))
    session: Session = field(default_factory=lambda: Session("s1", "m1", START))

    def __post_init__(self) -> None:
        self.hold.set()
        super().__init__(cast(Any, SimpleNamespace(logbook=self.path, can_read=True, settings=None)))

    def now(self) -> datetime:
        return self.clock

    def machines(self) -> Sequence[MachineLine]:
        return [MachineLine(c.uid, c.name, c.kind, 1, len(self.notes), START, None) for c in self.cards]

    def add_machine(self, card: Machine) -> Machine:
        self.cards.append(card)
        return card

    def preview(self, name: str, words: str) -> Preview:
        return Preview(read(Note("typing", "s1", words)))

    def keep_note(self, name: str, words: str) -> Kept:
        if self.refuse is not None:
            refusal, self.refuse = self.refuse, None
            raise refusal
        count = len(self.notes)
        note = Note(f"n{count}", "s1", words, at=count, said_at="14:05", arrival=count)
        self.notes.append(note)
        return Kept(note, self.session, read(note), spooled=self.spool)

    def keep_lines(
        self, name: str, text: str, told: Callable[[int], bool] | None = None, without: Collection[int] = ()
    ) -> Sequence[Kept]:
        lines = [line for n, line in enumerate(self.look(text).read.lines) if n not in without]
        for done in range(1, len(lines) + 1):
            self.hold.wait(20.0)
            if told is not None and not told(done):
                raise Stopped
        self.pastes.append(text)
        return [self.keep_note(name, line.words) for line in lines]

    def keep_comments(self, name: str, text: str) -> int:
        self.comments.append(text)
        return 1

    def try_out(self, name: str, read: ReadSession) -> Iterator[TriedOut]:
        found = {place: facts for place, line in enumerate(read.lines) if (facts := read_facts(line.words))}
        yield TriedOut(len(read.lines), found, {})

    def film_of(self, name: str, read: ReadSession) -> FilmOf | None:
        return self.is_film_of

    def history(self, name: str) -> History:
        facts = tuple(fact for note in self.notes for fact in read(note))
        records = (SessionRecord(self.session, tuple(self.notes), facts),) if self.notes else ()
        return History(Machine(name), records)

    def page(self, name: str, wanted: Wanted) -> Page:
        end = wanted.before[1] if wanted.before else len(self.notes)
        notes = self.notes[max(end - wanted.count, 0) : end]
        facts = tuple(fact for note in notes for fact in read(note))
        parts = (Part(self.session, 1, max(end - wanted.count, 0), tuple(notes), facts),) if notes else ()
        return Page(parts, ((self.session.uid, len(self.notes)),) if self.notes else ())

    def news(self, name: str, known: tuple[tuple[str, int], ...], wanted: Wanted) -> Page | None:
        page = self.page(name, wanted)
        return None if page.lengths == known else page

    def outlooks(self, name: str) -> Iterator[Outlook]:
        history = self.history(name)
        raised = [fact for fact in history.facts() if isinstance(fact, FollowUp)]
        items = [
            OpenItem((f.key,), f.topic, "", f.reason, "open", history.place(f.main.note), quote=f.quote) for f in raised
        ]
        step = Step(self.step, "it is quick, and most faults are there", 5, ("mind the high voltage",))
        advice = Advice("no sign of life", steps=(step,)) if history.sessions else Advice("")
        yield outlook_of(Review(history, (), tuple(items)), advice, self.clock, 4.0)

    def film(self, call: Callable[[Any], Filmed]) -> Filmed:
        return Filmed(None)

    def note_facts(self, note: str) -> NoteFacts:
        found = next(one for one in self.notes if one.uid == note)
        return NoteFacts(found, read(found), (), ())

    def get_ready(self, name: str) -> Sequence[NoteFacts]:
        """Nothing to load."""
        return ()


def read(note: Note) -> tuple[Fact, ...]:
    """Gaps in thou and parts that are needed."""
    found: list[Fact] = []
    for match in re.finditer(r"gap (\d+) thou", note.words):
        span = Span(note.uid, match.start(1), match.end())
        evidence = (Span(note.uid, *match.span()),)
        value = int(match[1]) / 1000
        gap = partial(Reading, quantity="gap", unit="in", subject="points", role="set")
        found.append(gap(main=span, evidence=evidence, quote=match[0], value=value))
    for match in re.finditer(r"need a new ([\w\[\]./= ]+)", note.words):
        found.append(
            FollowUp(main=Span(note.uid, *match.span()), quote=match[0], topic=match[1].strip(), reason="part needed")
        )
    return tuple(found)


def read_facts(words: str) -> tuple[Fact, ...]:
    """The same for words that are no note yet."""
    return read(Note("typing", "s1", words))


def on_screen(app: App[int]) -> str:
    """The text that stands on the screen, line by line."""
    lines = app.screen._compositor.render_strips()
    return "\n".join("".join(segment.text for segment in line).rstrip() for line in lines)


async def type_in(pilot: Pilot[int], words: str) -> None:
    """Put words into the note line, the last sign by its key (a pilot takes 80 ms a key)."""
    pilot.app.screen.query_one(NoteLine).insert(words[:-1])
    await pilot.press(words[-1])


async def settle(pilot: Pilot[int]) -> None:
    """Wait until no call is under way and all is drawn."""
    for _ in range(3):
        await pilot.pause()
        while any(timer._callback is not None and timer._repeat == 0 for timer in pilot.app.screen._timers):
            await pilot.pause(0.02)
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()
