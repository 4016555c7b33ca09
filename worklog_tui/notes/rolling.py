"""Rolling captions: each repeats the end of the one before, as live captioning writes them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.notes.lines import Line

_FEWEST, _SHARE = 3, 0.3  # so many different ones, and so large a part, must repeat before any word is dropped
_LONGEST_OVERLAP = 60  # words


def unroll(cues: Sequence[Line]) -> list[Line]:
    """The captions, each of one line, with the words that a rolling display shows again left out.

    Something said twice stays: only a text in which repeating is the rule is taken for rolling.
    """
    overlaps: list[int] = []
    repeated: set[str] = set()
    before: list[str] = []
    for cue in cues:
        now = cue.words.split()
        overlaps.append(_overlap(before, now))
        if overlaps[-1] and len(repeated) < _FEWEST:
            repeated.add(" ".join(now[: overlaps[-1]]))
        before = now
    if len(repeated) < _FEWEST or sum(overlap > 0 for overlap in overlaps) < _SHARE * len(cues):
        return [replace(cue, words=" ".join(cue.words.split("\n"))) if "\n" in cue.words else cue for cue in cues]
    kept = (_without(cue, overlap) for cue, overlap in zip(cues, overlaps, strict=True))
    return [cue for cue in kept if cue.words]


def _without(cue: Line, overlap: int) -> Line:
    """The caption without its first words."""
    return replace(cue, words=" ".join(cue.words.split()[overlap:]))


def _overlap(before: list[str], now: list[str]) -> int:
    """How many words at the beginning of `now` are the last of `before`: at least two, or a whole caption."""
    if now == before:
        return len(now)
    for size in range(min(len(before), len(now), _LONGEST_OVERLAP), 0, -1):
        if now[:size] == before[-size:] and (size > 1 or size == len(before) or size == len(now)):
            return size
    return 0
