"""Acts: what a person did to the log. They are only ever added; the order is (counter, device), never the clock."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from worklog_tui.model.moments import Instant

NOTE_VERBS = ("edit note", "strike note", "strike lines", "mend word")
"What alters the words that are read; a run of lines is listed in the value, under notes."
FACT_VERBS = ("correct fact", "strike fact", "add fact", "set subject")
"What alters what was read from the words."
PLACE_VERBS = (
    "move session", "date session", "join sessions", "split session", "shift lines", "place in film", "same machine",
)  # fmt: skip
"What alters where and when notes stand."
ITEM_VERBS = ("close item", "reopen item", "merge items", "set item")
WORDED = (
    "edit note", "mend word", "correct fact", "strike fact", "add fact", "set subject", *ITEM_VERBS,
)  # fmt: skip
"Acts that repeat words of notes in their value; erasing a note takes the value away."
KEEP_PRIVATE = "keep private"
"What keeps notes, listed in the value, out of everything that is published."
MARK_FILM = "mark film"
"What marks a moment of a clip of the camera."
VERBS = (
    *NOTE_VERBS, *FACT_VERBS, *PLACE_VERBS, *ITEM_VERBS, "let go", KEEP_PRIVATE, MARK_FILM, "set card", "undo", "erase",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Act:
    """One act of a person on one target."""

    uid: str
    device: str
    counter: int
    instant: Instant
    verb: str
    "One of VERBS."
    target: str
    "The uid of a note, machine, session or act, or the anchor of a fact or item as text."
    seen: tuple[str, ...] = ()
    "Uids of the acts on that target that it saw; two that had not seen each other are a conflict."
    value: Any = None
    "The new value, as JSON data."

    @property
    def is_emptied(self) -> bool:
        """Whether the words that it needs were erased: it is kept, and alters nothing any more."""
        return self.verb in WORDED and self.verb not in ITEM_VERBS and self.value is None

    @property
    def order(self) -> tuple[int, str]:
        """Where the act stands among all acts: by counter, then device, never by the clock.

        Two computers that sign alike, since one's folder was copied from the other's, are told apart by the uid.
        """
        return self.counter, f"{self.device}/{self.uid}"
