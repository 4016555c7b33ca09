"""Closing up: what was begun and not heard finished, one question at a time, one key each. Nothing must be answered."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.widgets import Static

from worklog_tui.reports.sentence import sentence
from worklog_tui.reports.when import where
from worklog_tui.screens import deeds
from worklog_tui.screens.background import Queue, reason
from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.literal import literal

if TYPE_CHECKING:
    from worklog_tui.bench.acting import Done
    from worklog_tui.logbook.outcomes import ClosingUp, Question
    from worklog_tui.screens.deeds import Deed
    from worklog_tui.screens.errands import Errands

BACK = "Esc goes back to the log."
NEVER = "let go"
"The answer after which it is not asked again."


class ClosingUpScreen(OneAnswer[bool]):
    """The answer tells whether anything was answered."""

    DEFAULT_CSS = """
    ClosingUpScreen {
        align: center bottom;
        & > VerticalScroll {
            width: 100%; height: auto; max-height: 100%; background: $surface; padding: 0 1;
            border-top: solid $foreground 30%;
        }
        Static { height: auto; }
        .asks { text-style: bold; }
        .count, .told { color: $text-muted; }
        .answers { margin: 1 0; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        *(
            Binding(str(n), f"answer({n - 1})", f"answer {n}", show=False, id=f"closing.{n}", tooltip=f"Answer {n}")
            for n in range(1, 6)
        ),
        Binding("y", "named('yes')", "yes", show=False, id="closing.yes", tooltip="Yes"),
        Binding("x", "named('no')", "no", show=False, id="closing.no", tooltip="No"),
        Binding("space,right,down", "later", "later", id="closing.later", tooltip="The next one; this is asked again"),
        Binding("left,up", "back", "back", id="closing.back", tooltip="The question before", show=False),
        Binding("0", "never", "do not ask again", id="closing.never", tooltip="Do not ask this again"),
        Binding("u", "undo", "take back", id="closing.undo", tooltip="Take back the last answer"),
        Binding("escape,q", "leave", "enough", id="closing.leave", tooltip="Enough for now; the rest stays"),
    ]

    def __init__(self, errands: Errands, machine: str, asked: ClosingUp, ends: str = BACK) -> None:
        """The questions of a machine; `ends` tells what comes when all were gone through."""
        super().__init__()
        self._ends = ends
        self._errands, self._machine, self._asked = errands, machine, asked
        self._at = 0
        self._answered: dict[int, str] = {}
        self._acts: Queue[Deed, Done] = Queue(self, errands.act, self._acted, self._refused)

    def compose(self) -> ComposeResult:
        with VerticalScroll():
            yield Static("", classes="count", markup=False)
            yield Static("", classes="asks", markup=False)
            yield Static("", classes="told", markup=False)
            yield Static("", classes="answers", markup=False)
            yield Static("", classes="done", markup=False)
            yield KeyLine(wraps=True)

    def on_mount(self) -> None:
        self._draw()

    @property
    def _question(self) -> Question | None:
        return self._asked.questions[self._at] if self._at < len(self._asked.questions) else None

    def action_answer(self, nth: int) -> None:
        """The answer of that number."""
        one = self._question
        if one is not None and nth < len(one.answers):
            self._give(one, one.answers[nth])

    def action_named(self, answer: str) -> None:
        """Yes and no have keys of their own."""
        one = self._question
        if one is not None and answer in one.answers:
            self._give(one, answer)

    def action_never(self) -> None:
        if self._question is not None:
            self._give(self._question, NEVER)

    def _give(self, one: Question, answer: str) -> None:
        self._answered[self._at] = answer
        self._acts.want(deeds.answer(self._machine, one, answer))
        self.action_later()

    def action_later(self) -> None:
        self._at = min(self._at + 1, len(self._asked.questions))
        self._draw()

    def action_back(self) -> None:
        self._at = max(self._at - 1, 0)
        self._draw()

    def action_undo(self) -> None:
        if self._answered:
            self._at, _ = self._answered.popitem()
            self._acts.want(deeds.undo)
            self._draw()

    def action_leave(self) -> None:
        self.dismiss(bool(self._answered))

    def _draw(self) -> None:
        one, count = self._question, len(self._asked.questions)
        if one is None:
            left = count - len(self._answered)
            said = f"That was all. {len(self._answered)} answered" + (f", {left} kept for later." if left else ".")
            self._put(count="Closing up", asks=said, told=self._ends, answers="")
            return
        read = f" {sentence(one.read)}" if one.read is not None else ""
        told = f"“{one.told}”, {where(one.place)}" if one.told else where(one.place)
        answers = "   ".join(f"{n} {answer}" for n, answer in enumerate(one.answers, 1))
        given = f"   (answered: {self._answered[self._at]})" if self._at in self._answered else ""
        self._put(
            count=f"Closing up: {self._at + 1} of {count}; none must be answered", asks=f"{one.asks}{read}", told=told,
            answers=f"{answers}   0 do not ask again{given}",
        )  # fmt: skip

    def _put(self, **texts: str) -> None:
        for place, text in texts.items():
            self.query_one(f".{place}", Static).update(literal(text))

    def _acted(self, _: Deed, done: Done) -> None:
        self._put(done=done.says)

    def _refused(self, _: Deed, error: Exception) -> None:
        self._put(done=f"{reason(error)}.")
