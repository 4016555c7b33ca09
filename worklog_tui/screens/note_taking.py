"""Words on their way from the note line into the log: read while they are typed, kept by Enter, pastes asked about."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from textual import events
from textual.widgets import TextArea

from worklog_tui.screens.background import Latest, Rest, reason
from worklog_tui.screens.errands import Errands, Pasted
from worklog_tui.screens.keeping import Keeping, Outcome, StoppedByHand, Words
from worklog_tui.screens.looking_up import Preview
from worklog_tui.screens.reviewing import LogScreen
from worklog_tui.widgets.counted import counted
from worklog_tui.widgets.log_rows import marks_in
from worklog_tui.widgets.note_line import NoteLine
from worklog_tui.widgets.timeline import Timeline
from worklog_tui.widgets.understood import Understood

if TYPE_CHECKING:
    from worklog_tui.bench.note_facts import NoteFacts
    from worklog_tui.bench.record import Kept
    from worklog_tui.model import Instant, Session

LONG_WORK = 400
"Lines; keeping more than these shows how far it is."


READ_SOON = "It is read in a moment."
GETTING_READY = "Getting ready to read; Enter keeps the words all the same."


class NoteTaking(LogScreen):
    """A screen with a note line, the line that says what was understood, and the timeline that notes go into."""

    def __init__(self, errands: Errands, machine: str) -> None:
        super().__init__()
        self.errands = errands
        self.machine = machine
        self.session: Session | None = None
        "The session that a note of this window was kept in."
        self.half_typed = ""
        self._shot: Instant | None = None
        "When the film was shot whose captions were pasted last, where a session tells it."
        self.pasted = False
        "Whether a paste was kept that nothing was asked about yet."
        self._begun = False
        self._beside: list[Kept] = []
        "Notes of this window that wait beside the logbook: no page of it holds them yet."
        self._keeping = Keeping(self, errands, machine, self._kept, self._not_kept)
        self._drafts = Latest[None, str](self, lambda _: self._keeping.take_draft(), self._restore, self.unread)
        self._previews = Latest[str, Preview](
            self, lambda words: errands.preview(machine, words), self._show_preview, self.unread
        )
        self._stop = Rest(self, 0.05, lambda: self._previews.want(self.half_typed))
        self._grammar = Latest[None, "Sequence[NoteFacts]"](
            self, lambda _: errands.get_ready(machine), self._ready, self.unread
        )
        self._looks = Latest[str, Pasted](self, errands.look, self._ask, self.unread)

    def begin_notes(self) -> None:
        """After the first paint and the newest page: the draft, and the grammar, which takes a while to load."""
        if not self._begun:
            self._begun = True
            self._drafts.want(None)
            self._grammar.want(None)

    def on_unmount(self) -> None:
        self._keeping.leave(self.half_typed)

    async def settled(self) -> None:
        """Wait until every note is kept."""
        await self._keeping.settled()

    def now(self) -> datetime:
        """The time here and now."""
        return self.errands.now()

    def say(self, text: str) -> None:
        """Say something in the line below the note line."""
        self.query_one(Understood).say(text)

    def save_draft(self) -> None:
        """What is not kept yet goes beside the logbook."""
        self._keeping.save_draft(self.half_typed)

    def notes_kept(self, kept: Sequence[Kept]) -> None:
        """Notes were kept: whoever shows more than the timeline takes it from here."""

    def undated_pasted(self, first: Kept, shot: Instant | None) -> None:
        """A paste became a session without a date; `shot` is when it was, where another session tells it."""

    def film_pasted(self, session: str, text: str) -> None:
        """The captions of a film of that session were pasted."""

    def key_came(self) -> None:
        """A key changed the words: work that can wait waits."""

    def on_paste(self, event: events.Paste) -> None:
        """A paste anywhere goes to the note line."""
        event.stop()
        self.query_one(NoteLine).focus()
        self.take_paste(event.text)

    def take_paste(self, text: str) -> None:
        """A paste goes to the note line, and from there to its preview when it is of several lines."""
        self.query_one(NoteLine).take_paste(text)

    def on_text_area_changed(self, event: TextArea.Changed) -> None:
        if isinstance(event.text_area, NoteLine) and event.text_area.text != self.half_typed:
            self.half_typed = event.text_area.text
            if self.half_typed.strip():
                self.key_came()
                if self._grammar.waiting or not self._begun:
                    self.query_one(Understood).say(GETTING_READY, of_typing=True)
                else:
                    self._stop.want()
            else:
                self._show_preview(self.half_typed, Preview())

    def _ready(self, _: None, early: Sequence[NoteFacts]) -> None:
        """What was typed and kept meanwhile is read now."""
        said = self.query_one(Understood)
        for one in early:
            self.query_one(Timeline).take(one.note, None, one.sure)
            if said.said.startswith("Kept"):
                said.kept(one.note.said_at, one.sure, one.asked)
        if early:
            self.notes_kept(())
        if self.query_one(Understood).said == GETTING_READY:
            self._previews.want(self.half_typed)

    def on_note_line_kept(self, message: NoteLine.Kept) -> None:
        self._keeping.keep(Words(message.words))

    def on_note_line_pasted(self, message: NoteLine.Pasted) -> None:
        self.say("Looking at the paste …")
        self._looks.want(message.text)

    def keep_words(self, words: str) -> None:
        """Keep a note that was not typed in the note line."""
        self._keeping.keep(Words(words))

    def _ask(self, _: str, pasted: Pasted) -> None:
        from worklog_tui.screens.paste import FILM, FILM_AND_NEW, PasteQuestion, lines_of, shape_of

        def answer(how: str | None) -> None:
            self._shot = asked.film.start if asked.film is not None else None
            if how == "comments":
                self.say(f"Keeping {shape_of(pasted)} …")
                self._keeping.keep(Words(pasted.comments_but(asked.out), "comments"))
            elif how and how.startswith(FILM_AND_NEW) and asked.film is not None:
                self.film_pasted(how.removeprefix(FILM_AND_NEW), pasted.text)
                fresh = [place for place in asked.film.fresh if place not in asked.out]
                self._keeping.keep(Words(lines_of(pasted.read, fresh), "lines"))
            elif how and how.startswith(FILM):
                self.film_pasted(how.removeprefix(FILM), pasted.text)
            elif how:
                self.say(f"Keeping {shape_of(pasted)} …")
                self._keep_lines(pasted, asked.out if not pasted.from_viewers else frozenset())
            else:
                self.say("Nothing of the paste was kept.")

        asked = PasteQuestion(self.errands, self.machine, pasted)
        self.app.push_screen(asked, answer)

    def _keep_lines(self, pasted: Pasted, out: frozenset[int]) -> None:
        if len(pasted.read.lines) <= LONG_WORK:
            self._keeping.keep(Words(pasted.text, "lines", without=out))
            return
        from worklog_tui.screens.long_work import LongWork

        work = LongWork(f"Reading and keeping {len(pasted.read.lines)} lines.", len(pasted.read.lines))
        self.app.push_screen(work)
        self._keeping.keep(Words(pasted.text, "lines", work.tell, out))

    def _work_ended(self) -> None:
        from worklog_tui.screens.long_work import LongWork

        if isinstance(self.app.screen, LongWork):
            self.app.screen.dismiss(None)

    def _kept(self, words: Words, came: Outcome) -> None:
        when, kept = f"{self.now():%H:%M}", came.notes
        for one in kept:
            if one.session.source == "live":
                self.session = one.session
        if words.how == "comments":
            self.say(f"Kept {when}: {counted(came.comments, 'comment')} of viewers that were not there before.")
        elif words.how == "lines":
            self._work_ended()
            self.pasted = True
            facts = sum(len(one.facts) for one in kept)
            self.say(f"Kept {when}: {counted(len(kept), 'note')}, {counted(facts, 'fact')}.")
        else:
            for one in kept:
                self._beside += [one] if one.spooled else []
                self.query_one(Timeline).take(one.note, one.session, one.facts, one.withdrawn)
                if one.spooled and (self._grammar.waiting or not self._begun):
                    self.say(f"Kept {when}. {READ_SOON}")
                else:
                    self.query_one(Understood).kept(when, one.facts, one.questions, one.spooled, one.unread)
        self.notes_kept(kept)
        if words.how == "lines" and kept and kept[0].session.start is None:
            self.undated_pasted(kept[0], self._shot)

    def _not_kept(self, words: Words, error: Exception) -> None:
        if words.how == "lines":
            self._work_ended()
        if isinstance(error, StoppedByHand):
            self.say("Stopped; nothing of it was kept.")
            self._looks.want(words.text)
            return
        self._put_back(words.text)
        self.say(f"Not kept: {reason(error)}. The words are back in the note line.")

    def unread(self, _: object, error: Exception) -> None:
        """Something could not be read; the words are safe."""
        self.begin_notes()
        self.say(f"That could not be read: {reason(error)}. Notes are kept all the same.")

    def log_shown(self) -> None:
        """A page of the logbook is shown: what waits beside it stands below."""
        timeline = self.query_one(Timeline)
        self._beside = [one for one in self._beside if not timeline.log_rows.holds(one.note.uid)]
        for one in self._beside:
            timeline.take(one.note, one.session, one.facts)

    def _restore(self, _: None, words: str) -> None:
        if words:
            self._put_back(words)
            self.say("These words were left half typed; they are back.")

    def _put_back(self, words: str) -> None:
        """Put words before those that stand in the note line."""
        line = self.query_one(NoteLine)
        line.put("\n".join(filter(None, (words, line.text))))
        self.half_typed = line.text

    def _show_preview(self, words: str, seen: Preview) -> None:
        line = self.query_one(NoteLine)
        if line.text != words:
            return
        known = self.query_one(Timeline).log_rows
        here = next((f.main.note for f in reversed(seen.facts) if not known.holds(f.main.note)), "")
        line.underline(marks_in(seen.facts, here))
        self.query_one(Understood).hear(words, seen.facts, seen.unsure)
