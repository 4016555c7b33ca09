"""Captions of a film matched to the notes of the same work by wording and order, which gives notes their film place."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Mapping, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING

from worklog_tui.logbook.words import FILLER, one_form, raw_words

if TYPE_CHECKING:
    from worklog_tui.logbook.told_signs import Sign

ALIKE = 78.0
"Likeness, of 100, from which a caption tells what a note tells (rapidfuzz token set ratio)."
SHARED = 2
"Words that tell something which both must have."
SLACK, SHARE = 15, 0.25
"""Seconds, and share of the work between two notes, by which the film may run shorter or longer without being cut
there: a note is typed a moment after the deed (judgement)."""
LONGEST = 200
"Letters of a line that are compared."


def film_places(
    notes: Sequence[tuple[str, str]],
    captions: Sequence[tuple[int, str]],
    read: Mapping[str, frozenset[Sign]] | None = None,
    told: Mapping[int, frozenset[Sign]] | None = None,
) -> dict[str, int]:
    """For each note (uid, words; in the order of the work) that a caption (second, words) tells too: its second.

    A caption tells what a note tells when their words are alike, or what was read from them: `read` holds that for
    notes, `told` for captions by their position. The film may show the work in another order here and there: of
    matches that cross, the row that keeps most stands.
    """
    lines = [(second, _told(words)) for second, words in captions]
    pairs = [(lines[n][0], f"{lines[n][1]} {lines[n + 1][1]}") for n in range(len(lines) - 1)]
    by_signs = _by_signs(captions, told or {})
    best = [(uid, _best(_told(words), lines, pairs)) for uid, words in notes]
    best = [(uid, s if s is not None else _most_shared((read or {}).get(uid), by_signs)) for uid, s in best]
    found = [(uid, second) for uid, second in best if second is not None]
    kept = _rising([second for _, second in found])
    return {found[n][0]: found[n][1] for n in kept}


def between(anchors: Mapping[str, int], notes: Sequence[tuple[str, int | None]]) -> dict[str, int]:
    """The film places of notes (uid, second of the work; in order) that lie between two which have one, in proportion.

    Only where the film runs as long as the work did: across a cut nothing tells where a note would stand.
    """
    found: dict[str, int] = {}
    timed = [(uid, at) for uid, at in notes if at is not None]
    fixed = [place for place, (uid, _) in enumerate(timed) if uid in anchors]
    for first, last in pairwise(fixed):
        (one, begin), (other, end) = timed[first], timed[last]
        shown, worked = anchors[other] - anchors[one], end - begin
        if worked <= 0 or abs(shown - worked) > max(SLACK, SHARE * worked):
            continue
        for uid, at in timed[first + 1 : last]:
            found[uid] = anchors[one] + round((at - begin) * shown / worked)
    return found


def _best(note: str, lines: Sequence[tuple[int, str]], pairs: Sequence[tuple[int, str]]) -> int | None:
    from rapidfuzz import fuzz, process

    words = set(note.split())
    if len(words) < SHARED:
        return None
    for rows in (lines, pairs):
        near = [(second, told) for second, told in rows if len(words & set(told.split())) >= SHARED]
        hit = process.extractOne(note, [told for _, told in near], scorer=fuzz.token_set_ratio, score_cutoff=ALIKE)
        if hit is not None:
            return near[hit[2]][0]
    return None


def _by_signs(
    captions: Sequence[tuple[int, str]], told: Mapping[int, frozenset[Sign]]
) -> dict[Sign, list[int]]:  # fmt: skip
    found: dict[Sign, list[int]] = {}
    for place, signs in told.items():
        for sign in signs:
            found.setdefault(sign, []).append(captions[place][0])
    return found


def _most_shared(signs: frozenset[Sign] | None, by_signs: Mapping[Sign, Sequence[int]]) -> int | None:
    """The second that shares most with what was read from a note; of several the first."""
    shared = Counter(second for sign in signs or () for second in by_signs.get(sign, ()))
    return min(shared, key=lambda second: (-shared[second], second)) if shared else None


@lru_cache(maxsize=20_000)
def _told(words: str) -> str:
    """The words that tell something, each in one form."""
    return " ".join(one_form(word) for word in raw_words(words[:LONGEST]) if word not in FILLER)


def _rising(seconds: Sequence[int]) -> list[int]:
    """The positions of the longest row that never falls."""
    tails: list[int] = []
    ends: list[int] = []
    before = [-1] * len(seconds)
    for place, second in enumerate(seconds):
        at = bisect_left(tails, second + 1)
        before[place] = ends[at - 1] if at else -1
        tails[at : at + 1] = [second]
        ends[at : at + 1] = [place]
    row: list[int] = []
    place = ends[-1] if ends else -1
    while place >= 0:
        row.append(place)
        place = before[place]
    return row[::-1]
