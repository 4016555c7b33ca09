"""Acts on the log from the keys: each is said in one sentence, and `u` takes it back."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from worklog_tui.screens import deeds
from worklog_tui.screens.background import Queue, reason
from worklog_tui.screens.note_taking import NoteTaking
from worklog_tui.screens.offering import Offering
from worklog_tui.widgets.timeline import Timeline
from worklog_tui.widgets.understood import Understood

if TYPE_CHECKING:
    from worklog_tui.bench.acting import Done
    from worklog_tui.bench.record import Kept
    from worklog_tui.model import Instant, OpenItem
    from worklog_tui.screens.deeds import Deed
    from worklog_tui.screens.errands import Errands


class Wish(NamedTuple):
    """Something to do, and the note that is to be in sight afterwards."""

    deed: Deed
    note: str = ""
    wordings: tuple[str, str] = ("", "")
    "Of a note that was edited: what it said, and what it says."


class Acting(NoteTaking):
    """A screen whose keys correct notes, facts and open items."""

    def __init__(self, errands: Errands, machine: str) -> None:
        super().__init__(errands, machine)
        self._acts: Queue[Wish, Done] = Queue(self, lambda wish: errands.act(wish.deed), self._acted, self._refused)
        self._same: OpenItem | None = None
        self._offering = Offering(self, errands, self.say)

    def act(self, deed: Deed, note: str = "") -> None:
        """Have something done; what became of it is said below the note line."""
        self._acts.want(Wish(deed, note))

    def log_changed(self, note: str) -> None:
        """The log is other than before; this note is to be in sight."""

    def _acted(self, wish: Wish, done: Done) -> None:
        back = "" if done.act.verb == "undo" else " u takes it back."
        self.say(f"{done.says}{back}")
        self.log_changed(wish.note)
        self._offering.put_right(wish.wordings, self.query_one(Understood).said)

    def action_hear_as(self) -> None:
        """Have the word that was put right last heard right from now on."""
        self._offering.take()

    def _refused(self, _: object, error: Exception) -> None:
        self.say(f"{reason(error)}.")

    def film_pasted(self, session: str, text: str) -> None:
        """Its notes get their places in the film."""
        self.act(deeds.places_in_film(session, text))

    def undated_pasted(self, first: Kept, shot: Instant | None) -> None:
        """A film of a session that is known was shot then; else it is asked, once."""
        session, film = first.session.uid, first.note.track == "captions"
        if shot is not None:
            self.act(deeds.filmed_on(session, shot))
            return
        from worklog_tui.screens.asking import Asking

        def answer(given: dict[str, str] | None) -> None:
            if given is not None and given["day"]:
                self.act(deeds.filmed_on(session, given["day"]))
            else:
                self.say("The day is not known: these notes count for no hours.")

        asks = "When was this filmed?" if film else "On which day was this?"
        kept = self.query_one(Understood).said
        how = f"{kept}\n{asks} Such as yesterday, 12 April or 2031-04-12; empty when it is not known."
        self.app.push_screen(
            Asking(how, {"day": ""}, wrong=lambda given: self.errands.no_day(given["day"])), answer
        )  # fmt: skip

    def action_undo(self) -> None:
        self.act(deeds.undo)

    def action_redo(self) -> None:
        self.act(deeds.redo)

    def action_edit(self) -> None:
        """Other words for the note pointed at."""
        timeline = self.query_one(Timeline)
        note = timeline.log_rows.note(timeline.row.key) if timeline.row is not None else None
        if note is None:
            self.say("Point at a note first.")
            return
        self.edit_words(note.uid, note.words)

    def edit_words(self, uid: str, words: str) -> None:
        """Ask for other words for a note."""
        from worklog_tui.screens.asking import Asking

        def answer(given: dict[str, str] | None) -> None:
            if given is not None and given["words"] != words:
                self._acts.want(Wish(deeds.edit(uid, given["words"]), uid, (words, given["words"])))

        self.app.push_screen(Asking("What the note should say", {"words": words}), answer)

    def action_add_fact(self) -> None:
        """Add what was not read from the note pointed at."""
        from worklog_tui.screens.adding import Adding

        row = self.query_one(Timeline).row
        if row is None or not row.key:
            self.say("Point at a note first.")
            return
        note = row.key
        self.app.push_screen(Adding(self.errands, note), lambda deed: self.act(deed, note) if deed else None)

    def action_mark_lines(self) -> None:
        """The first press marks where a run of lines begins, the second where it ends, and asks what to do."""
        from worklog_tui.screens.over_lines import OverLines

        timeline = self.query_one(Timeline)
        notes = timeline.run_to_here()
        if not notes:
            timeline.first_marked = timeline.row.key if timeline.row is not None else ""
            self.say("From this line on: go to the last one and press the space bar again.")
            return
        timeline.first_marked = ""
        words = [one.words if (one := timeline.log_rows.note(uid)) else "" for uid in (notes[0], notes[-1])]
        self.say("")

        def chosen(deed: Deed | None) -> None:
            if deed is not None:
                self.act(deed, notes[0])

        self.app.push_screen(OverLines(notes, *words), chosen)

    def action_strike(self) -> None:
        row = self.query_one(Timeline).row
        if row is not None and row.key:
            self.act(deeds.strike(row.key), row.key)

    def _item(self) -> OpenItem | None:
        """The open item pointed at."""
        from worklog_tui.widgets.items import OpenItems

        return self.query_one(OpenItems).item

    def action_item(self, what: str) -> None:
        """Something with the open item pointed at."""
        one = self._item()
        if one is None:
            self.say("Point at an item first.")
        else:
            self.act(deeds.item(what, self.machine, one))

    def action_same_item(self) -> None:
        """The first press remembers an item, the second makes the two one."""
        one = self._item()
        if one is None:
            return
        if self._same is None or self._same == one:
            self._same = one
            self.say(f"Now point at what is the same as “{one.about}”, and press j again.")
            return
        first, self._same = self._same, None
        self.act(deeds.same_item(self.machine, first, one))

    def action_new_item(self) -> None:
        from worklog_tui.screens.asking import Asking

        def answer(given: dict[str, str] | None) -> None:
            if given and given["about"]:
                self.act(deeds.new_item(self.machine, given["about"]))

        self.app.push_screen(Asking("What is to be come back to?", {"about": ""}), answer)
