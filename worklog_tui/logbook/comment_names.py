"""How a thing that viewers ask about is called: their own words round it, few enough to be read at a glance."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.logbook.comment_small import Small
from worklog_tui.logbook.named_things import STATES, Named

MOST = 5
"Telling words of a name."
_NOUNS = frozenset({"part", "joint", "fastener", "control", "fluid", "quality"})


def runs(things: list[Named]) -> list[Named]:
    """Things with neighbours joined: carburettor flange, of a carburettor and a flange."""
    joined: list[Named] = []
    for one in things:
        last = joined[-1] if joined else None
        if last is not None and last.end == one.start and {last.kind, one.kind} <= _NOUNS:
            both = f"{last.said} {one.said}", f"{last.name} {one.said}"
            joined[-1] = replace(one, said=both[0], name=both[1], start=last.start)
        else:
            joined.append(one)
    return joined


def clause(small: Small, said: list[str], start: int, end: int) -> tuple[int, int]:
    """The clause round some words: its first, and the one after its last."""
    low = next((n + 1 for n in range(start - 1, -1, -1) if said[n] in small.borders), 0)
    high = next((n for n in range(end, len(said)) if said[n] in small.borders), len(said))
    return low, high


def called(small: Small, said: list[str], start: int, end: int) -> str:
    """The thing at these words with what stands round it: gap on the points; drum shaft, bent."""
    low, high = clause(small, said, start, end)
    around = [n for n in range(low, high) if not start <= n < end and _tells(small, said[n])]
    nearest = sorted(around, key=lambda n: start - n if n < start else n - end + 1)
    kept = set(nearest[: max(0, MOST - (end - start))]) | set(range(start, end))
    first, last = start, end
    while first > low and (first - 1 in kept or said[first - 1] in small.links):
        first -= 1
    while last < high and (last in kept or said[last] in small.links):
        last += 1
    while said[first] in small.links and first < start:
        first += 1
    while said[last - 1] in small.links and last > end:
        last -= 1
    name = " ".join(said[first:last])
    apart = [said[n] for n in sorted(kept) if not first <= n < last]
    return f"{name}, {' '.join(apart)}" if apart else name


def telling(small: Small, said: list[str]) -> str:
    """The first telling words of a sentence that names no thing."""
    places = [n for n, word in enumerate(said) if _tells(small, word)]
    return called(small, said, places[0], places[0] + 1) if places else ""


def _tells(small: Small, word: str) -> bool:
    return word not in small.silent and word not in small.borders and any(c.isalnum() for c in word)


def parts_of(things: list[Named]) -> list[Named]:
    """The things without the states."""
    return [one for one in runs(things) if one.kind not in STATES]
