"""What is published of a history that a test tells, without a logbook."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from worklog_tui import places
from worklog_tui.bench.publishing import Published
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Advice, History, Step
from worklog_tui.reports.left_out import Gate
from worklog_tui.reports.material import Material
from worklog_tui.reports.publishing_words import PublishingWords, load_publishing_words
from worklog_tui.rulebook.faults import FaultBook, load_faults


@lru_cache(maxsize=1)
def words() -> PublishingWords:
    """The shipped words."""
    return load_publishing_words([places.grammars()])


@lru_cache(maxsize=1)
def faults() -> FaultBook:
    """The shipped fault files."""
    return load_faults([places.grammars()])


def gate(never: Sequence[str] = ()) -> Gate:
    """The gate with some words that are never published."""
    return Gate(replace(words(), never=tuple(never)))


def published(
    history: History, never: Sequence[str] = (), steps: Sequence[Step] = (), first: int = 1, whole: bool = True
) -> Published:
    """The history through the gate, with its items."""
    through = gate(never)
    known, left_out = through.history(history)
    advice = through.all(Advice("", steps=tuple(steps)))
    material = Material(known, open_items(known), advice, faults(), first, (), whole, "1 May 2031")
    return Published(material, through, left_out)
