"""The work that the build of a clause tells: `pressed the bush in`, `gave the chain a good oiling`, `ran clean fluid
through the lines`, with verbs and nouns of which the vocabulary holds only some.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from worklog_tui.extract.finders import work
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.worked.brought import brought
from worklog_tui.extract.worked.given import given, had
from worklog_tui.extract.worked.laid import laid
from worklog_tui.extract.worked.moved import moved
from worklog_tui.extract.worked.taken import taken
from worklog_tui.rulebook import Rulebook

Reader = Callable[[Scene, int], Iterator[Match]]
PAST, SHORTEST = "ed", 5
"How a verb ends that no vocabulary knows, and how many letters it has."


def told(scene: Scene, found: list[Draft]) -> list[Draft]:
    """The work that no draft of `found` says already."""
    made: list[Draft] = []
    begins = scene.book.answers(_readers)
    for k, readers in [(k, readers) for k, token in enumerate(scene.tokens) if (readers := begins[token.low])]:
        for reader, known in readers:
            for match in reader(scene, k) if known or scene.tokens[k].kind == "word" else ():
                draft = work.draft(match, scene)
                if draft is not None and not _said(draft, match, [*found, *made]):
                    made.append(draft)
    return made


def _readers(book: Rulebook, low: str) -> tuple[tuple[Reader, bool], ...]:
    """What reads a clause from a word on, and whether the word is known to begin one, or only looks like a past."""
    past = low.endswith(PAST) and len(low) >= SHORTEST
    known = {
        given: low in book.lists["gives"],
        had: low in book.lists["has_had"],
        taken: low in book.lists["takes"],
        laid: low in book.lists["lays"],
        brought: low in book.lists["brings"],
        moved: low in book.lists["moves"],
    }
    return tuple((reader, sure) for reader, sure in known.items() if sure or (past and reader is moved))


def _said(draft: Draft, match: Match, found: list[Draft]) -> bool:
    """Whether a pattern has read work from these words."""
    return any(
        d.kind == "work"
        and (match.first <= d.main < match.last or (d.thing_at is not None and d.thing_at == draft.thing_at))
        for d in found
    )
