"""Rows under a heading."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from worklog_tui.widgets.row import Row

if TYPE_CHECKING:
    from worklog_tui.model import Place


def section(title: str, rows: Iterable[Row]) -> list[Row]:
    """The heading and its rows; nothing where there are no rows."""
    kept = list(rows)
    return [Row.of(title, heading=True), *kept] if kept else []


def said_at(words: str, place: Place | None, below: str = "") -> Row:
    """Something with where it was said; choosing it leads there."""
    from worklog_tui.reports.when import where

    at = where(place)
    told = f"{below} ({at})" if below and at else below or at
    return Row.of(words, below=told, key=place.note if place is not None else "")
