"""What to go through before a start: every line is to be looked at, none is a claim."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from worklog_tui.reports.when import where
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows
from worklog_tui.widgets.sections import said_at, section

if TYPE_CHECKING:
    from worklog_tui.logbook.outcomes import BeforeStart


class BeforeRows(Rows):
    """The list before a start."""

    def __init__(self) -> None:
        super().__init__("Looking through the log …")

    def show_before(self, seen: BeforeStart, cautions: Sequence[str]) -> None:
        """Show the list, what forbids a start first."""
        self.show(before_rows(seen, cautions))


def before_rows(seen: BeforeStart, cautions: Sequence[str]) -> list[Row]:
    """The rows of the list."""
    rows = [*forbidden_rows(seen), *left_rows(seen)]
    rows += section("To be done before a start", (said_at(one.about, one.raised) for one in seen.due))
    rows += section("Fluids", (_fluid(one.name, where(one.place)) for one in seen.fluids))
    last = where(seen.stops_with[-1]) if seen.stops_with else ""
    known = f"Spoken of in {last}: try it first." if last else ""
    stop = known or "Nothing was heard of what stops it: have a sure way to stop it at hand."
    rows += section("How is it stopped?", [Row.of(stop)])
    rows += section(
        "Start attempts",
        (
            said_at(one.outcome.condition if one.outcome else "nothing heard of what came of it", one.place)
            for one in seen.attempts
        ),
    )
    return [*rows, *section("Mind", map(Row.of, cautions))]


def forbidden_rows(seen: BeforeStart) -> list[Row]:
    """What forbids a start, in the words that said so."""
    return section("DO NOT START", (said_at(one.told, one.place) for one in seen.forbidden))


def left_rows(seen: BeforeStart) -> list[Row]:
    """How it was left: states that outlive a session, what is off."""
    stops = [one for one in seen.left if one.stops]
    others = [one for one in seen.left if not one.stops]
    told = [said_at(": ".join(filter(None, (one.state, one.about))), one.place, one.asks) for one in [*stops, *others]]
    off = [
        said_at(f"{one.work.part}: {one.how}", one.place, "is it back? a start was tried since" if one.tried else "")
        for one in seen.off
    ]
    return [*section("How it was left", told), *section("Not heard refitted", off)]


def _fluid(name: str, last: str) -> Row:
    return Row.of(f"{name}: " + (f"last heard of in {last}" if last else "nothing heard; look at it"))
