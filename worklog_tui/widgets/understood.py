"""What was understood, in one plain sentence, and what became of the note."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from textual.widgets import Static

from worklog_tui.widgets.literal import literal

if TYPE_CHECKING:
    from worklog_tui.model import Fact

MOST = 4
"So many facts are said; the rest are counted."
NOTHING = "Nothing for the log in it yet; the words are kept all the same."


class Understood(Static):
    """A calm line below the note line."""

    DEFAULT_CSS = """
    Understood { height: auto; min-height: 1; max-height: 4; color: $text-muted; }
    """

    def __init__(self) -> None:
        super().__init__("", markup=False)
        self.said = ""
        "What stands there now, as plain text."
        self._of_typing = False

    def say(self, text: str, of_typing: bool = False) -> None:
        """Show any text, literally; `of_typing`: it goes when the note line is empty again."""
        self.said = text
        self._of_typing = of_typing
        self.update(literal(text))

    def hear(self, words: str, facts: Sequence[Fact], unsure: Sequence[Fact] = (), nothing: str = NOTHING) -> None:
        """Say what is understood of words that are being typed; `nothing`: what is said when it is nothing."""
        doubt = [f"Not sure of: {told(unsure)}."] if unsure else []
        if facts or unsure:
            self.say(" ".join(([f"Understood: {told(facts)}."] if facts else []) + doubt), of_typing=True)
        elif words.strip():
            self.say(nothing, of_typing=True)
        elif self._of_typing:
            self.say("")

    def kept(
        self, when: str, facts: Sequence[Fact], unsure: Sequence[Fact] = (), spooled: bool = False, unread: str = ""
    ) -> None:
        """Say that a note is kept (the words are safe), and what was taken from it."""
        how = "Kept beside the logbook, taken in soon" if spooled else f"Kept {when}"
        parts = [f"{how}: {told(facts)}." if facts else f"{how}."]
        if unsure:
            parts.append(f"Not sure of: {told(unsure)}.")
        if unread:
            parts.append(f"It could not be read yet: {unread}.")
        self.say(" ".join(parts))


def told(facts: Sequence[Fact]) -> str:
    """Facts in one sentence: `gap of the points set to 0.018 in; tank drained; and 2 more`."""
    from worklog_tui.reports.sentence import sentence

    said = list(dict.fromkeys(sentence(fact, brief=True) for fact in facts))
    more = [f"and {len(said) - MOST} more"] if len(said) > MOST else []
    return "; ".join(said[:MOST] + more)
