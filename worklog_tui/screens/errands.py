"""What the screens ask of the bench. Every call may take long: make it in a worker thread."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from worklog_tui.screens.looking_up import LookingUp

if TYPE_CHECKING:
    from datetime import datetime

    from worklog_tui.bench.acting import Done
    from worklog_tui.bench.camera import Filmed
    from worklog_tui.bench.desk import Desk
    from worklog_tui.bench.filming import FilmOf
    from worklog_tui.bench.machines import MachineLine
    from worklog_tui.bench.note_facts import NoteFacts
    from worklog_tui.bench.record import Kept
    from worklog_tui.bench.trying import TriedOut
    from worklog_tui.model import Machine
    from worklog_tui.notes.lines import ReadSession
    from worklog_tui.screens.deeds import Deed


PATIENCE = 30.0
"Seconds that the first notes wait for another program that writes."


class Pasted(NamedTuple):
    """A paste as it was understood."""

    text: str
    read: ReadSession
    from_viewers: bool
    "Whether it looks like comments copied from a page."
    comments: tuple[str, ...]
    "What each comment says, without names, if it is comments."

    def comments_but(self, out: Collection[int]) -> str:
        """The text with its comments; `out` are those to leave out, from 0."""
        kept = [words for nth, words in enumerate(self.comments) if nth not in out]
        return "\n\n".join(kept) if out and self.from_viewers else self.text

    @property
    def rows(self) -> int:
        """Lines of the paste that hold words."""
        return sum(bool(row.strip()) for row in self.text.split("\n"))


class Errands(LookingUp):
    """The bench, loaded at the first call and not before: the screen is painted first."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._early: dict[str, list[Kept]] = {}
        "For each machine the notes that were kept before anything could be read."

    @property
    def logbook(self) -> Path:
        """The file of the logbook."""
        return self.desk.logbook

    def now(self) -> datetime:
        """The time here and now."""
        return self.desk.now()

    def machines(self) -> Sequence[MachineLine]:
        """Every machine, the one last worked on first."""
        from worklog_tui.bench.machines import machines

        return machines(self.desk)

    def add_machine(self, card: Machine) -> Machine:
        """Add a machine card."""
        from worklog_tui.bench.machines import add_machine

        return add_machine(self.desk, card)

    def keep_note(self, name: str, words: str) -> Kept:
        """Keep one note; while the grammars are still being loaded, without reading it."""
        from worklog_tui.bench.record import keep_note

        return keep_note(self.desk, name, words) if self.desk.can_read else self._keep_early(name, words)

    def _keep_early(self, name: str, words: str) -> Kept:
        from dataclasses import replace

        from worklog_tui.bench.live import keep_beside

        before = self._early.setdefault(name, [])
        kept = keep_beside(self.desk, name, words, before[-1] if before else None)
        before.append(kept)
        if not self.desk.can_read:
            return kept
        for found in self._taken_in([kept]):  # they came to be loaded in between
            kept = replace(kept, facts=found.sure, questions=found.asked, spooled=False)
        return kept

    def _taken_in(self, early: Sequence[Kept]) -> list[NoteFacts]:
        from worklog_tui.bench.acting import CannotAct
        from worklog_tui.bench.taking_in import take_in_waiting

        take_in_waiting(self.desk, PATIENCE)
        found = []
        for one in early:
            with suppress(CannotAct):  # it waits still
                found.append(self.note_facts(one.note.uid))
        return found

    def keep_lines(
        self, name: str, text: str, told: Callable[[int], bool] | None = None, without: Collection[int] = ()
    ) -> Sequence[Kept]:
        """Keep a paste `without` some lines; `told` is called with how many are read, and stops it with False."""
        from worklog_tui.bench.record import keep_lines

        return keep_lines(self._reads(), name, text, told, without)

    def keep_comments(self, name: str, text: str) -> int:
        """Keep a paste of viewers' comments; how many were new."""
        from worklog_tui.bench.history import keep_comments
        from worklog_tui.notes.comments import read_comments

        return keep_comments(self.desk, name, [one.words for one in read_comments(text)])

    def look(self, text: str) -> Pasted:
        """What a paste is, before anything of it is kept."""
        from worklog_tui.notes.comments import looks_like_comments, read_comments
        from worklog_tui.notes.reading import read_text

        return Pasted(text, read_text(text), looks_like_comments(text), tuple(one.words for one in read_comments(text)))

    def film_of(self, name: str, read: ReadSession) -> FilmOf | None:
        """The session that captions tell, if they are those of a film of it."""
        from worklog_tui.bench.filming import film_of

        return film_of(self._reads(), name, read)

    def try_out(self, name: str, read: ReadSession) -> Iterator[TriedOut]:
        """What would be read from the lines of a paste, part by part."""
        from worklog_tui.bench.trying import try_out

        return try_out(self._reads(), name, read)

    def act(self, deed: Deed) -> Done:
        """Do something to the log."""
        return deed(self.desk)

    def offered(self, before: str, after: str) -> tuple[str, str] | None:
        """The word that was put right, when it is worth a place in the person's own vocabulary."""
        from worklog_tui.bench.own_words import to_offer

        return to_offer(self._reads(), before, after)

    def hear_as(self, heard: str, meant: str) -> str:
        """Have a word heard right from now on; says so."""
        from worklog_tui.bench.own_words import hear_as

        return hear_as(self.desk, heard, meant)

    def choose(self, name: str, value: str) -> None:
        """Have a choice of the person's hold at the next start too."""
        from worklog_tui.bench.settings import choose

        choose(self.desk, name, value)

    def film(self, call: Callable[[Desk], Filmed]) -> Filmed:
        """Do something with the camera."""
        return call(self.desk)

    def get_ready(self, name: str) -> Sequence[NoteFacts]:
        """Load what reads the notes, before the first one comes; gives those that came before, now read.

        What an earlier window left beside the logbook, when its end came too soon, is taken in too.
        """
        self._reads().reader()
        return self._taken_in(self._early.pop(name, []))

    def lay_out_demo(self) -> Errands:
        """The bench with the invented machines, in a logbook that is made anew and thrown away at the end."""
        import atexit
        from shutil import rmtree
        from tempfile import mkdtemp

        from worklog_tui.bench.demo import fill

        folder = Path(mkdtemp(prefix="worklog-demo-"))
        atexit.register(rmtree, folder, ignore_errors=True)
        desk, _ = fill(folder / "demo.db")
        return Errands(desk)
