"""The lines of a paste, each with what would be read from it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from worklog_tui.reports.sentence import sentence
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows

if TYPE_CHECKING:
    from worklog_tui.model import Fact

LONGEST = 400
"So many signs of a line are shown."


class PastedLines(Rows):
    """All lines, or only those that tell nothing."""

    margin = 11

    def __init__(self, lines: Sequence[tuple[str, str]]) -> None:
        """Lines, each with its time as written."""
        super().__init__("There is no line like that.")
        self._lines = lines
        self._done = 0
        self._said: dict[int, str] = {}
        self._silent_only = False
        self.out: set[int] = set()
        "The lines that are to be left out, by their position."

    def on_mount(self) -> None:
        self._draw()

    def tell(self, done: int, facts: Mapping[int, Sequence[Fact]], unsure: Mapping[int, Sequence[Fact]]) -> None:
        """What was read from the lines so far, by their position."""
        self._done = done
        self._said = {place: "; ".join(sentence(fact, brief=True) for fact in kept) for place, kept in facts.items()}
        for place, kept in unsure.items():
            asked = "not sure: " + "; ".join(sentence(fact, brief=True) for fact in kept)
            self._said[place] = "; ".join(filter(None, (self._said.get(place, ""), asked)))
        self._draw()

    def only_silent(self) -> None:
        """Show all lines, or only those that tell nothing."""
        self._silent_only = not self._silent_only
        self.here = 0
        self._draw()

    def leave_out(self) -> None:
        """The line pointed at is left out, or taken in again; then to the next one."""
        if self.row is not None:
            self.out ^= {int(self.row.key)}
            self.here = min(self.here + 1, len(self.rows) - 1)
            self._draw()

    def leave_silent(self) -> None:
        """Every line that tells nothing is left out; when they are so already they are taken in again."""
        silent = {place for place in range(self._done) if place not in self._said}
        self.out = self.out - silent if silent <= self.out else self.out | silent
        self._draw()

    def _draw(self) -> None:
        self.show(
            Row.of(
                words[:LONGEST], margin=at, key=str(place),
                below="left out" if place in self.out else self._said.get(place, ""),
            )
            for place, (at, words) in enumerate(self._lines)
            if not self._silent_only or (place < self._done and place not in self._said)
        )  # fmt: skip
