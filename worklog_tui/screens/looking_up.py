"""What the screens look up in the logbook. Every call may take long: make it in a worker thread."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.bench.finding_lines import FoundLine
    from worklog_tui.bench.note_facts import NoteFacts
    from worklog_tui.bench.outlook import Outlook
    from worklog_tui.bench.pages import Page, Wanted
    from worklog_tui.model import Fact


class Preview(NamedTuple):
    """What would be read from words if they were kept now."""

    facts: tuple[Fact, ...] = ()
    unsure: tuple[Fact, ...] = ()


class LookingUp:
    """The part of the bench that reads and leaves all as it is."""

    def __init__(self, desk: Desk) -> None:
        self.desk = desk

    def _reads(self) -> Desk:
        """The desk, for what reads: the grammars are made ready apart when they are new."""
        from worklog_tui.bench.grammars_ready import make_ready

        make_ready(self.desk)
        return self.desk

    def preview(self, name: str, words: str) -> Preview:
        """What would be read from words; nothing is written."""
        from worklog_tui.bench.record import preview

        facts = preview(self._reads(), name, words)
        line = self.desk.confidence_line()
        sure = tuple(fact for fact in facts if fact.confidence >= line)
        return Preview(sure, tuple(fact for fact in facts if fact.confidence < line))

    def page(self, name: str, wanted: Wanted) -> Page:
        """A page of the timeline."""
        from worklog_tui.bench.pages import page

        return page(self.desk, name, wanted)

    def news(self, name: str, known: tuple[tuple[str, int], ...], wanted: Wanted) -> Page | None:
        """The page when other windows or programs added to it; None when all of it is known."""
        from worklog_tui.bench.pages import news

        return news(self.desk, name, known, wanted)

    def outlooks(self, name: str) -> Iterator[Outlook]:
        """Open items and since last time, as soon as they are known; then the same with the next step."""
        from worklog_tui.bench.outlook import worked_out_apart

        return worked_out_apart(self.desk, name)

    def note_facts(self, note: str) -> NoteFacts:
        """A note with what was read from it."""
        from worklog_tui.bench.note_facts import note_facts

        return note_facts(self.desk, note)

    def heard(self, note: str, words: str) -> Preview:
        """What words that were not said would add to a note."""
        from worklog_tui.bench.said_by_hand import heard

        self._reads()
        return Preview(*heard(self.desk, note, words))

    def find(self, name: str, words: str, kind: str) -> Sequence[FoundLine]:
        """Lines by their words and by what was read from them."""
        from worklog_tui.bench.finding_lines import find_lines

        return find_lines(self.desk, name, words, kind)

    def no_day(self, said: str) -> str:
        """Why words are no day; empty when they are one, or say nothing."""
        from worklog_tui.bench.acting import CannotAct
        from worklog_tui.bench.lines import moment

        try:
            moment(self.desk, said or "unknown")
        except CannotAct as fault:
            return str(fault)
        return ""

    def chosen(self, name: str) -> str:
        """What the person chose once; empty when nothing."""
        from worklog_tui.bench.settings import setting

        return setting(self.desk, name)

    def units(self) -> str:
        """How the person has readings told."""
        from worklog_tui.bench.settings import units

        return units(self.desk)

    def not_told(self, kind: str, told: Mapping[str, str]) -> str:
        """Why what was told of a fact does not do; empty when it does."""
        from worklog_tui.bench.acting import CannotAct
        from worklog_tui.bench.said_by_hand import as_told

        try:
            as_told(self.desk, kind, told)
        except CannotAct as fault:
            return f"{str(fault).rstrip('.')}."
        return ""
