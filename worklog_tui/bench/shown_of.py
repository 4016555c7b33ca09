"""Where a machine stands, as far as any place of the screen shows it: a screen keeps it for hours."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, TypeVar

from worklog_tui.reports.sentence import briefly

if TYPE_CHECKING:
    from worklog_tui.bench.outlook import Outlook
    from worklog_tui.model import Finding, Suspect, Work

    Told = TypeVar("Told", Work, Finding | Suspect)


def shown_of(known: Outlook) -> Outlook:
    """The same with what is told alike once, and of an item's anchors only the first, by which it is named."""
    recap = known.recap
    lists = (known.items, recap.open, recap.awaited, recap.closed, recap.planned)
    short = {id(item): replace(item, anchors=item.anchors[:1]) for items in lists for item in items}
    items, still, awaited, closed, planned = (tuple(short[id(item)] for item in items) for items in lists)
    told = replace(
        recap, done=_once(recap.done), found=_once(recap.found), open=still, awaited=awaited, closed=closed,
        planned=planned,
    )  # fmt: skip
    return replace(known, items=items, recap=told)


def _once(facts: Sequence[Told]) -> tuple[Told, ...]:
    """Of those that are told in the same words the last, in the place of the first."""
    return tuple({briefly(fact): fact for fact in facts}.values())
