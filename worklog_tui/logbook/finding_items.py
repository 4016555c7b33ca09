"""Finds items by the words of their name and their quote."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from worklog_tui.logbook.words import one_form, raw_words
from worklog_tui.model import OpenItem


def holding(items: Iterable[OpenItem], text: str) -> Iterator[OpenItem]:
    """The items that hold all the words, in any spelling of the trade and with any ending; none for no words."""
    wanted = {one_form(word) for word in raw_words(text)}
    for one in items:
        if wanted and wanted <= {one_form(word) for word in raw_words(f"{one.about} {one.name} {one.quote}")}:
            yield one
