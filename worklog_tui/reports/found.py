"""What a search found, for a terminal and for programs."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from worklog_tui.logbook.words import one_form, raw_words
from worklog_tui.model import Hit, ItemHit, clock
from worklog_tui.reports.lines import heading, wrapped
from worklog_tui.reports.sentence import REASONS, sentence
from worklog_tui.reports.when import day, where

_STATES = {
    "open": "open",
    "awaited": "awaited",
    "left so": "left so on purpose",
    "noticed": "noticed",
    "done": "dealt with",
}


def found_text(notes: Sequence[Hit], items: Sequence[ItemHit], words: str, width: int) -> str:
    """Each note with its place and, where its own words do not hold all that was asked for, what was read from it."""
    rows: list[str] = []
    asked = {one_form(word) for word in raw_words(words)}
    for hit in notes:
        film = f"film {clock(hit.note.film)}" if hit.note.film is not None else ""
        rows.append(", ".join(filter(None, (hit.machine, day(hit.start), hit.note.said_at, film))))
        rows += wrapped(hit.note.words, width, "    ")
        if not asked <= {one_form(word) for word in raw_words(hit.note.words)}:
            rows += [line for fact in hit.facts for line in wrapped(f"- {sentence(fact)}", width, "      ", "        ")]
    if items:
        rows += ["", *heading("On the list")] if rows else heading("On the list")
    for one in items:
        why = "from viewers" if one.item.comment is not None else REASONS.get(one.item.reason, "")
        said = "; ".join(filter(None, (why, _STATES[one.item.state], where(one.item.raised))))
        rows += wrapped(f"{one.machine}: {one.item.about} ({said})", width, "", "    ")
    return "\n".join(rows) or "Nothing was found."


def found_json(notes: Sequence[Hit], items: Sequence[ItemHit]) -> dict[str, Any]:
    """Notes and items, each with its machine."""
    return {
        "notes": [
            {"machine": hit.machine, "session_start": hit.start.utc if hit.start else None, "at": hit.note.said_at,
             "film": hit.note.film, "words": hit.note.words, "note": hit.note.uid,
             "read": [sentence(fact) for fact in hit.facts]}
            for hit in notes
        ],
        "items": [
            {"machine": one.machine, "about": one.item.about, "reason": one.item.reason, "state": one.item.state,
             "raised": [one.item.raised.session, one.item.raised.at] if one.item.raised else None}
            for one in items
        ],
    }  # fmt: skip
