"""Rolling captions: each repeats the end of the one before, as live captioning writes them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from worklog_tui.notes.lines import Line

_FEWEST, _SHARE = 3, 0.3  # so many, and so large a part, of the captions must repeat before any word is dropped
_LONGEST_OVERLAP = 60  # words


def unroll(cues: Sequence[Line]) -> list[Line]:
    """The captions, each of one line, with the words that a rolling display shows again left out.

    Something said twice stays: only a text in which repeating is the rule is taken for rolling.
    """
    rows = [[row.split() for row in cue.words.split("\n")] for cue in cues]
    words = [[word for row in cue for word in row] for cue in rows]
    overlaps = [0, *(_overlap(before, now) for before, now in pairwise(words))]
    rolling = sum(overlap > 0 for overlap in overlaps)
    if rolling < _FEWEST or rolling < _SHARE * len(cues):
        overlaps = [0] * len(cues)
    kept = (
        replace(cue, words=" ".join(said[overlap:]))
        for cue, said, overlap in zip(cues, words, overlaps, strict=True)
    )
    return [cue for cue in kept if cue.words]


def _overlap(before: list[str], now: list[str]) -> int:
    """How many words at the beginning of `now` are the last of `before`: at least two, or a whole caption."""
    if now == before:
        return len(now)
    for size in range(min(len(before), len(now), _LONGEST_OVERLAP), 0, -1):
        if now[:size] == before[-size:] and (size > 1 or size == len(before) or size == len(now)):
            return size
    return 0
