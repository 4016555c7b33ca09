"""A control, gauge or part that is told to work, or to sit, the wrong way round, and is not told put right since."""

from __future__ import annotations

import re

from worklog_tui.model import History, Place

_WAY = r"(?:(?:the )?wrong way(?: (?:round|around|about))?|backwards?|back to front|upside down)"
_WRONG = re.compile(
    r"\b(?:the |that |this |my )?(?P<thing>[a-z][a-z-]*(?: [a-z][a-z-]*)?)(?:['’]s| is| are| was| has been)?"
    r"(?: (?:works?|working|goes|going|moves?|turns?|turning|runs?|running|opens?|reads?|reading|fitted|wired|plumbed"
    rf"|hung|connected|in|on)| (?<=is )| (?<=are )| (?<=['’]s )) ?{_WAY}\b",
    re.IGNORECASE,
)
_POINTS = frozenset("it its that this one they them which what who he she so and but all both everything".split())
"Words that name no thing: what `it` is, the talk may tell, this search does not."
_SUPPOSED = re.compile(
    r"\b(?:if|would|could|should|must|never|don['’]?t|not|can['’]?t|won['’]?t|make sure|unless)\b", re.IGNORECASE
)
_RIGHT = re.compile(
    r"\b(?:right way (?:round|around|about|up)|the other way (?:round|around)|(?:turned|swapped|put) (?:it|them|that)"
    r" (?:round|over|right))\b",
    re.IGNORECASE,
)


def wrong_way(history: History) -> list[tuple[str, str, tuple[Place, ...]]]:
    """What works the wrong way round: ("backwards", what to ask, where it was said), in the order of the log."""
    found: list[tuple[str, str, tuple[Place, ...]]] = []
    notes = [note for record in history.sessions for note in record.notes]
    for n, note in enumerate(notes):
        said = _WRONG.search(note.words)
        if said is None or _SUPPOSED.search(note.words[: said.end()]):
            continue
        if said["thing"].lower().split()[-1] in _POINTS:
            continue
        if any(_RIGHT.search(later.words) for later in notes[n:]):
            continue
        thing = re.sub(r" (?:is|are|was)$", "", said["thing"])
        says = f"{thing}: told to work or sit the wrong way round; made so, or put together wrong?"
        found.append(("backwards", says, (history.place(note.uid),)))
    return found
