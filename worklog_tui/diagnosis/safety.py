"""What can hurt: dangers that come before everything, what is never advised, and the usual cautions with a step."""

from __future__ import annotations

import re
from collections.abc import Iterable

from worklog_tui.diagnosis.makeup import Makeup
from worklog_tui.diagnosis.words import holds, tokens
from worklog_tui.model import OpenItem
from worklog_tui.rulebook.faults import FaultBook, WordSets

URGENT = ("temporary", "fault", "to do", "part needed")

_SLIGHT = re.compile(r"\b(?:grabby|stiffish|squeaky|noisy|dusty|rusty|scruffy|fierce|ugly|faded)\b", re.IGNORECASE)


class Safety:
    """The dangers and cautions of a fault book for a machine, looked up by the words of an item or a step."""

    def __init__(self, book: FaultBook, made: Makeup | None = None) -> None:
        self.book = book
        fits = made.fits if made else lambda _: True
        self.foreign = _foreign(book, made) if made else frozenset()
        "Parts that the machine has none of."
        cautions = [c for c in book.cautions.values() if fits(c.applies)]
        self.dangers = tuple(d for d in book.dangers if fits(d.applies))
        "The dangers that such a machine may have."
        self.names = tuple(n for d in self.dangers for n in d.phrases if len(n.split()) == 2)
        "Names of two words of the parts that dangers are about."
        self._dangers = [(d, [_set(s) for s in d.sets]) for d in book.dangers if fits(d.applies)]
        self._never = [(d, [_set(s) for s in d.sets]) for d in book.never if fits(d.applies)]
        self._cautions = [(c, _sets(c.words), _sets(c.unless)) for c in cautions]

    def danger(self, item: OpenItem, around: str = "") -> WordSets | None:
        """The danger that an open item stands for, if it does; a name counts only with words that were really said."""
        said = set(tokens(item.about)) | set(tokens(item.name)) & set(tokens(f"{item.quote} {around}"))
        for piece in re.split(r"[,;:.]", around):
            said |= _before(tokens(item.about), tokens(piece))
        reason = item.reason
        return next((d for d, sets in self._dangers if reason in URGENT and any(s <= said for s in sets)), None)

    def words_of(self, danger: WordSets) -> list[frozenset[str]]:
        """The sets of words that a danger is known by."""
        return [s for d, sets in self._dangers if d is danger for s in sets]

    def does_its_work(self, item: OpenItem) -> bool:
        """Whether what was noticed is a safeguard at work: a relief valve that lifts tells of something else."""
        said = tokens(f"{item.about} {item.quote}")
        here = (d for d, sets in self._dangers if any(s <= set(said) for s in sets))
        return any(holds(said, tokens(w)) for d in here for w in d.works)

    def never(self, step: str) -> WordSets | None:
        """The rule that forbids a step, if one does."""
        said = set(tokens(step)) | set(step.lower().split())
        return next((d for d, sets in self._never if any(s <= said for s in sets)), None)

    def cautions(self, words: str, tags: tuple[str, ...] = ()) -> tuple[str, ...]:
        """The cautions of the tags, and those that the words of a step call for; each with its source."""
        said = set(tokens(words))
        called = [
            c for c, sets, unless in self._cautions
            if c.tag in tags or (any(s <= said for s in sets) and not any(s <= said for s in unless))
        ]  # fmt: skip
        return tuple(f"{c.says} (Source: {c.source}.)" for c in called)


def is_slight(item: OpenItem) -> bool:
    """Whether what was merely noticed does its work and is only a nuisance: a brake that is a bit grabby."""
    return item.state == "noticed" and _SLIGHT.search(f"{item.about} {item.quote}") is not None


def _foreign(book: FaultBook, made: Makeup) -> frozenset[str]:
    lists = book.words.get("foreign", {})
    kinds = ["diesel"] if made.machine.fuel == "diesel" else []
    kinds += [] if "engine" in made.has else ["no_engine"]
    return frozenset(part for kind in kinds for part in lists.get(kind, ()))


def _before(thing: tuple[str, ...], around: tuple[str, ...]) -> set[str]:
    """The two telling words that were said just before a thing: 'handbrake' in 'the handbrake cable'."""
    n = len(thing)
    at = next((i for i in range(len(around)) if n and around[i : i + n] == thing), 0)
    return set(around[max(0, at - 2) : at])


def _sets(entries: Iterable[str]) -> list[frozenset[str]]:
    return [_set(frozenset(entry.split())) for entry in entries]


def _set(words: frozenset[str]) -> frozenset[str]:
    """A set of words in the form that tokens are compared in; small words that matter are kept."""
    found: set[str] = set()
    for word in words:
        found.update(tokens(word) or (word,))
    return frozenset(found)
