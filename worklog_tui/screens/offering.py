"""A word that was put right by hand is offered to be heard right from now on: one key takes the offer."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from textual.screen import Screen

from worklog_tui.screens.background import Latest, Queue, reason
from worklog_tui.screens.errands import Errands

Wordings = tuple[str, str]
"What was said before, and what it says now."


class Offering:
    """Looks whether one word was put right, says so, and has it learnt when the key comes."""

    def __init__(self, screen: Screen[Any], errands: Errands, say: Callable[[str], None]) -> None:
        self._say = say
        self._after = ""
        "What was said of the correction; the offer stands behind it."
        self._word: Wordings | None = None
        "What was heard and what was meant, of the last word put right."
        self._looks = Latest[Wordings, "Wordings | None"](
            screen, lambda wordings: errands.offered(*wordings), self._offer, self._refused
        )
        self._learns = Queue[Wordings, str](
            screen, lambda pair: errands.hear_as(*pair), lambda _, said: say(said), self._refused
        )

    def put_right(self, wordings: Wordings, said: str) -> None:
        """Something was corrected, and `said` tells it; wordings are empty where no word was put right."""
        self._word, self._after = None, said
        if all(wordings):
            self._looks.want(wordings)

    def take(self) -> None:
        """Have the word that was put right last heard right from now on."""
        if self._word is None:
            self._say("Put a word of a note right first; then it can always be heard so.")
        else:
            self._learns.want(self._word)
            self._word = None

    def _offer(self, _: Wordings, word: Wordings | None) -> None:
        self._word = word
        if word is not None:
            self._say(f"{self._after} h: always hear “{word[0]}” as “{word[1]}”.")

    def _refused(self, _: object, error: Exception) -> None:
        self._say(f"{reason(error)}.")
