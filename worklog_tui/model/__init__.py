"""The nouns of the program: frozen values without behaviour that needs another room."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from worklog_tui.model.acts import Act
    from worklog_tui.model.comments import Comment, CommentReading
    from worklog_tui.model.facts import (
        Fact,
        FactKey,
        Finding,
        FollowUp,
        Number,
        Reading,
        Span,
        Suspect,
        Trait,
        Value,
        Work,
    )
    from worklog_tui.model.found import Hit, ItemHit
    from worklog_tui.model.history import History, SessionRecord
    from worklog_tui.model.items import Again, Due, OpenItem, Place
    from worklog_tui.model.machine import Machine, SpecifiedValue
    from worklog_tui.model.moments import Instant, clock
    from worklog_tui.model.note import Note, Revision, Session
    from worklog_tui.model.steps import Advice, Cause, Evidence, Step, SystemStanding
else:
    _FILES = {
        "acts": "Act",
        "comments": "Comment CommentReading",
        "facts": "Fact FactKey Finding FollowUp Number Reading Span Suspect Trait Value Work",
        "found": "Hit ItemHit",
        "history": "History SessionRecord",
        "items": "Again Due OpenItem Place",
        "machine": "Machine SpecifiedValue",
        "moments": "Instant clock",
        "note": "Note Revision Session",
        "steps": "Advice Cause Evidence Step SystemStanding",
    }
    _FILE_OF = {name: file for file, names in _FILES.items() for name in names.split()}

    def __getattr__(name: str) -> object:
        """A noun is loaded when it is first asked for: the screen is painted before most of them are needed."""
        from importlib import import_module

        if name not in _FILE_OF:
            raise AttributeError(name)
        found = getattr(import_module(f"{__name__}.{_FILE_OF[name]}"), name)
        globals()[name] = found
        return found


__all__ = [
    "Act",
    "Advice",
    "Again",
    "Cause",
    "Comment",
    "CommentReading",
    "Due",
    "Evidence",
    "Fact",
    "FactKey",
    "Finding",
    "FollowUp",
    "History",
    "Hit",
    "Instant",
    "ItemHit",
    "Machine",
    "Note",
    "Number",
    "OpenItem",
    "Place",
    "Reading",
    "Revision",
    "Session",
    "SessionRecord",
    "Span",
    "SpecifiedValue",
    "Step",
    "Suspect",
    "SystemStanding",
    "Trait",
    "Value",
    "Work",
    "clock",
]
