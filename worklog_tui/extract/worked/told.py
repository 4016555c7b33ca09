"""The work that the build of a clause tells: `pressed the bush in`, `gave the chain a good oiling`, `ran clean fluid
through the lines`, with verbs and nouns of which the vocabulary holds only some.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from worklog_tui.extract.finders import work
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
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
    readers = _readers(scene.book)
    lows = scene.lows()
    begins = frozenset().union(*[words & lows for words, _ in readers])
    for k in [k for k, t in enumerate(scene.tokens) if t.low in begins or (t.kind == "word" and t.low.endswith(PAST))]:
        token = scene.tokens[k]
        past = _unknown_past(token.low, token.kind)
        for words, reader in readers:
            if token.low in words or (past and reader is moved):
                for match in reader(scene, k):
                    draft = work.draft(match, scene)
                    if draft is not None and not _said(draft, match, [*found, *made]):
                        made.append(draft)
    return made


def _readers(book: Rulebook) -> tuple[tuple[frozenset[str], Reader], ...]:
    """The words that may begin such a clause, and what reads it from there."""
    return (
        (book.lists["gives"], given),
        (book.lists["has_had"], had),
        (book.lists["takes"], taken),
        (book.lists["lays"], laid),
        (book.lists["moves"], moved),
    )


def _unknown_past(low: str, kind: str) -> bool:
    return kind == "word" and low.endswith(PAST) and len(low) >= SHORTEST


def _said(draft: Draft, match: Match, found: list[Draft]) -> bool:
    """Whether a pattern has read work from these words."""
    return any(
        d.kind == "work"
        and (match.first <= d.main < match.last or (d.thing_at is not None and d.thing_at == draft.thing_at))
        for d in found
    )
