"""A step as it is worded, with the thing that it works on and what it is for: a look, a mending, some care."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

_LEADS = frozenset({"the", "that", "those", "my", "a", "an", "out", "at", "over", "into", "all"})
_ENDS = frozenset({"with", "for", "if", "whether", "and", "before", "again", "until", "so"})


@dataclass(frozen=True, slots=True)
class Worded:
    """A step in words, and its thing as it stands in them; empty where it names none."""

    say: str
    thing: str = ""
    aimless: bool = False
    "It names what the thing does not do, and no job: `put the fan right (won't run)`."


def own(job: str) -> Worded:
    """A job in the person's own words: what stands behind its verb is its thing."""
    words = job.split()[1:]
    while words and words[0].lower() in _LEADS:
        words = words[1:]
    end = next((n for n, w in enumerate(words) if w.lower().strip(",") in _ENDS or w.endswith(",")), len(words))
    return Worded(job, " ".join(words[: end + (end < len(words) and words[end].endswith(","))]).strip(","))


def aim_of(step: str, aims: Mapping[str, Sequence[str]]) -> str:
    """What a step is for, by its verb: look, mend or tend (`aims` of grammars/diagnosis/steps.toml); else nothing."""
    first = step.split(maxsplit=1)[:1]
    return next((aim for aim, verbs in aims.items() if first and first[0].lower() in verbs), "")
