"""Comments that ask or suggest the same, found by their words: rare words and the part that is named count most.

Each comment is a vector of weighted words (Salton's tf-idf); it joins the group whose sum it points along most, when it
does so enough, else it begins a new one. Time grows with the number of comments times the words of each.
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.told_lines import stems

ENOUGH = 0.25
"Cosine from which a comment joins a group (judgement, tuned on invented comments)."
_MOST = 40
"Words of a comment that are weighed."


@dataclass(slots=True)
class _Group:
    kind: str
    wants: frozenset[int] = frozenset()
    "What its questions ask of the thing; empty when one of them does not say."
    sums: dict[str, float] = field(default_factory=dict)
    square: float = 0.0

    def take(self, vector: Mapping[str, float]) -> None:
        for word, weight in vector.items():
            before = self.sums.get(word, 0.0)
            self.sums[word] = before + weight
            self.square += 2 * before * weight + weight * weight


def grouped(
    kinds: Sequence[str], asked: Sequence[Asked], plain: Sequence[str], everywhere: frozenset[str] = frozenset(),
    wants: Sequence[frozenset[int]] = (),
) -> list[int]:  # fmt: skip
    """For each comment the number of its group, from 0 in the order of the first; only one kind is in a group.

    Of two questions about one thing that ask for different facts (its size, whether it helped) each has its own group.
    """
    counts = [_counted(a, p, everywhere) for a, p in zip(asked, plain, strict=True)]
    common = Counter(word for row in counts for word in row)
    groups: list[_Group] = []
    holders: dict[str, set[int]] = defaultdict(set)
    numbers = []
    for kind, row, want in zip(kinds, counts, wants or [frozenset[int]()] * len(counts), strict=True):
        vector = _unit({w: n * math.log(1 + len(counts) / common[w]) for w, n in row.items()})
        number = _best(groups, holders, kind, vector, want)
        if number is None:
            number = len(groups)
            groups.append(_Group(kind, want))
        groups[number].take(vector)
        for word in vector:
            holders[word].add(number)
        numbers.append(number)
    return numbers


def _counted(asked: Asked, plain: str, everywhere: frozenset[str]) -> Counter[str]:
    """The telling words of a comment, what it is about, and the part that counts in it."""
    words = sorted(stems(plain) - everywhere)[:_MOST]
    return Counter([*words, *(f"={key}" for key in asked.keys), *([f"#{asked.kin}"] if asked.kin else [])])


def _unit(vector: dict[str, float]) -> dict[str, float]:
    length = math.sqrt(sum(weight * weight for weight in vector.values()))
    return {word: weight / length for word, weight in vector.items()} if length else {}


def _best(
    groups: Sequence[_Group], holders: Mapping[str, set[int]], kind: str, vector: Mapping[str, float],
    want: frozenset[int] = frozenset(),
) -> int | None:  # fmt: skip
    along: dict[int, float] = defaultdict(float)
    for word, weight in vector.items():
        for number in holders.get(word, ()):
            along[number] += weight * groups[number].sums[word]
    best, most = None, ENOUGH
    for number in sorted(along):
        group = groups[number]
        apart = group.wants and want and group.wants.isdisjoint(want)
        if group.kind == kind and not apart and along[number] / math.sqrt(group.square) > most:
            best, most = number, along[number] / math.sqrt(group.square)
    return best
