"""What is known of a word or a term, worked out when it is first met: most of a talk is said again and again."""

from __future__ import annotations

from worklog_tui.extract.numbers.amounts import LEADS
from worklog_tui.extract.which import COUNTED
from worklog_tui.rulebook import Met, Rulebook, Sense
from worklog_tui.rulebook.classes import token_classes
from worklog_tui.rulebook.threads import standard_threads

UNKNOWN = frozenset({"other"})
"The classes of a word that neither the vocabulary nor a rule knows."
MOST = 4000
"So many are kept; more are not said again and again."


def meet(low: str, book: Rulebook) -> Met:
    """What is known of a word or a term, kept for the next time that it is said."""
    if len(book.met) >= MOST:
        book.met.clear()
    term = book.table.get(low, ())
    classes = token_classes(term, low, book.named) if term or f"={low}" in book.named else UNKNOWN
    counts = low in counting(book) or not low.isalpha()
    met = book.met[low] = Met(
        "term" if term else "word", low, tuple(Sense(*s) for s in term), classes, book.table.goes_on(low), counts
    )
    return met


def counting(book: Rulebook) -> frozenset[str]:
    """The words that a number, an amount, a thread or a marker of which one can begin with; other words begin none."""
    if (found := _counting.get(book.stamp)) is None:
        threads = standard_threads().words
        found = book.numerals.starts.union(
            book.units.by_head, LEADS, COUNTED, threads["inch"], threads["number"], threads["metric"]
        )
        _counting.clear()
        _counting[book.stamp] = found
    return found


_counting: dict[str, frozenset[str]] = {}
