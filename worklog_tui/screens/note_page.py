"""One note and what was read from it: each line can be put right with one key."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Static

from worklog_tui.screens import deeds
from worklog_tui.screens.background import Latest, Queue, reason
from worklog_tui.screens.offering import Offering
from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.literal import literal
from worklog_tui.widgets.note_rows import ASKED, LABELS, NoteRows, fields_of, judged

if TYPE_CHECKING:
    from worklog_tui.bench.acting import Done
    from worklog_tui.bench.note_facts import NoteFacts
    from worklog_tui.screens.deeds import Deed
    from worklog_tui.screens.errands import Errands
    from worklog_tui.widgets.rows import Rows


class NotePage(OneAnswer[bool]):
    """The answer tells whether anything was changed."""

    DEFAULT_CSS = """
    NotePage {
        align: center bottom;
        & > Vertical {
            width: 100%; height: auto; max-height: 100%; background: $surface; padding: 0 1;
            border-top: solid $foreground 30%;
        }
        .asks { text-style: bold; height: auto; }
        .told { height: auto; color: $text-muted; }
        & NoteRows { height: auto; max-height: 60vh; min-height: 2; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("e", "change", "change", id="page.change", tooltip="Change what is pointed at"),
        Binding("y", "right", "it is right", id="page.right", tooltip="What was doubtful was meant so"),
        Binding("a", "add", "add", id="page.add", tooltip="Add what was not read"),
        Binding("x", "strike", "strike out", id="page.strike", tooltip="Strike out what is pointed at"),
        Binding("b", "judge('bad')", "a fault", id="page.bad", tooltip="It is a fault, or the cause of the trouble"),
        Binding("g", "judge('good')", "good", id="page.good", tooltip="It is good, or not the cause"),
        Binding("o", "judge('noted')", "only noted", id="page.noted", tooltip="Neither good nor bad; suspected"),
        Binding(
            "h",
            "hear_as",
            "always hear it so",
            id="page.hear",
            show=False,
            tooltip="The word put right last is always heard so",
        ),
        Binding("u", "undo", "take back", id="page.undo", tooltip="Take back what was done last"),
        Binding("escape,q", "leave", "close", id="page.leave", tooltip="Back to the timeline"),
    ]

    def __init__(self, errands: Errands, note: str) -> None:
        super().__init__()
        self._errands, self._note = errands, note
        self._changed = False
        self._looks = Latest[None, "NoteFacts"](self, lambda _: errands.note_facts(note), self._show, self._refused)
        self._acts: Queue[Deed, Done] = Queue(self, errands.act, self._acted, self._refused)
        self._offering = Offering(self, errands, self._say)
        self._wordings = ("", "")
        "Of what is being corrected: what it said, and what it is to say."

    def compose(self) -> ComposeResult:
        with Vertical():
            yield Static("What was read from this note", classes="asks", markup=False)
            yield NoteRows()
            yield Static("", classes="told", markup=False)
            yield KeyLine(wraps=True)

    def on_mount(self) -> None:
        self.query_one(NoteRows).focus()
        self._looks.want(None)

    def on_rows_chosen(self, message: Rows.Chosen) -> None:
        message.stop()
        self.action_change()

    def action_leave(self) -> None:
        self.dismiss(self._changed)

    def action_undo(self) -> None:
        self._acts.want(deeds.undo)

    def action_hear_as(self) -> None:
        """Have the word that was put right last heard right from now on."""
        self._offering.take()

    def action_right(self) -> None:
        fact = self.query_one(NoteRows).fact
        if fact is not None:
            self._acts.want(deeds.confirm(fact.key))

    def action_strike(self) -> None:
        rows = self.query_one(NoteRows)
        if rows.fact is not None:
            self._acts.want(deeds.strike_fact(rows.fact.key))
        elif rows.on_words:
            self._acts.want(deeds.strike(self._note))

    def action_judge(self, verdict: str) -> None:
        """Good, bad or neither, for what can be so."""
        fact = self.query_one(NoteRows).fact
        wanted = judged(fact, verdict) if fact is not None else None
        if fact is None or wanted is None:
            self._say("Only what was found, and causes, are good or bad.")
        else:
            self._acts.want(deeds.correct(fact, wanted))

    def action_add(self) -> None:
        """Add what was not read, in the person's own words."""
        from worklog_tui.screens.adding import Adding

        self.app.push_screen(Adding(self._errands, self._note), lambda deed: self._acts.want(deed) if deed else None)

    def action_change(self) -> None:
        from worklog_tui.screens.asking import Asking

        rows = self.query_one(NoteRows)
        fact = rows.fact
        if fact is not None:
            self.app.push_screen(Asking(ASKED, fields_of(fact), LABELS), self._change)
        elif rows.on_words:
            self.app.push_screen(Asking("What the note should say", {"words": rows.words}), self._reword)

    def _reword(self, given: dict[str, str] | None) -> None:
        if given is not None and given["words"] != self.query_one(NoteRows).words:
            self._wordings = (self.query_one(NoteRows).words, given["words"])
            self._acts.want(deeds.edit(self._note, given["words"]))

    def _change(self, given: dict[str, str] | None) -> None:
        fact = self.query_one(NoteRows).fact
        if given is None or fact is None:
            return
        before = fields_of(fact)
        changes: dict[str, Any] = {name: text for name, text in given.items() if text != before[name]}
        if changes:
            first = next(iter(changes))
            self._wordings = (before[first], str(changes[first]))
            self._acts.want(deeds.correct(fact, changes))

    def _acted(self, _: Deed, done: Done) -> None:
        self._changed = True
        self._say(done.says)
        wordings, self._wordings = self._wordings, ("", "")
        self._offering.put_right(wordings, done.says)
        if done.act.verb in ("strike note", "strike lines"):
            self.dismiss(True)
        else:
            self._looks.want(None)

    def _refused(self, _: object, error: Exception) -> None:
        self._say(f"{reason(error)}.")

    def _say(self, text: str) -> None:
        self.query_one(".told", Static).update(literal(text))

    def _show(self, _: None, found: NoteFacts) -> None:
        self.query_one(NoteRows).show_note(found)
