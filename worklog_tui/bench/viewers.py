"""Viewers' comments from a paste or a file: kept without names, and looked at in groups."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.reports.viewers import Viewers


@dataclass(frozen=True, slots=True)
class Taken:
    """What came in, and how it looks beside the log."""

    viewers: Viewers
    fresh: int
    "Comments that were not in the logbook before."
    read: int
    "Comments of the paste."


def take_comments(
    desk: Desk, machine: str, text: str | None, keep_names: bool = False, only_look: bool = False
) -> Taken:
    """Keeps the comments of a text and shows all of the machine in groups; `only_look` keeps nothing.

    Without a text the comments that were kept before are shown.
    """
    from worklog_tui.bench.history import history, keep_comments
    from worklog_tui.bench.publishing import from_history
    from worklog_tui.notes.comments import read_comments
    from worklog_tui.reports.replies import load_replies
    from worklog_tui.reports.viewers import viewers

    said = read_comments(text, keep_names) if text is not None else ()
    fresh = 0 if only_look or not said else keep_comments(desk, machine, [one.words for one in said])
    known = history(desk, machine)
    if only_look and text is not None:
        known = replace(known, comments=said, _places={})
    published = from_history(desk, known, None)
    found = viewers(published.material, load_replies(desk.grammars))
    return Taken(published.gate.words_only(found), fresh, len(said))
