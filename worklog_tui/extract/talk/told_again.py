"""Readings of one note that a later one takes the place of: read wrong, still climbing, or the same told again."""

from __future__ import annotations

import itertools
import re

from worklog_tui.model import Fact, Note, Reading

NEAR = 110
"Characters between the two at most."
_SMALL = re.compile(
    r"(?:[\s,.;:-]|\b(?:so|that's|that is|call it|yes|yeah|yep|right|okay|then|there|it's|about|or|say)\b)*", re.I
)
"What stands between the same told twice in one breath."
_BACK = re.compile(
    r"\b(?:no,? wait|no,? hang on|hang on|hold on|no,? sorry|tell a lie|scratch that|not yet|"
    r"wrong (?:blade|scale|feeler|one|line)|read(?:ing)? (?:it|that) wrong|bit more|going up|coming up|"
    r"(?:still|keeps?) (?:going|climbing|creeping|rising|coming))\b",
    re.IGNORECASE,
)


def without_told_again(facts: list[Fact], note: Note) -> list[Fact]:
    """The facts without such readings; only those whose words stand in this very note are looked at."""
    readings = [f for f in facts if isinstance(f, Reading) and f.main.note == note.uid]
    gone: set[int] = set()
    for first, second in itertools.pairwise(readings):
        between = note.words[first.main.end : second.main.start]
        if first.quantity != second.quantity or len(between) > NEAR or not _of_one(first, second):
            continue
        if _BACK.search(between) and first.role == second.role:
            gone.add(id(first))
        elif _SMALL.fullmatch(between) and (first.value, first.unit, first.role) == (
            second.value,
            second.unit,
            second.role,
        ):
            gone.add(id(second))
    return [f for f in facts if id(f) not in gone]


def _of_one(first: Reading, second: Reading) -> bool:
    """Whether the second is of the same thing, or says nothing else."""
    return first.subject.lower() == second.subject.lower()
