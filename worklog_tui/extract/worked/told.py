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

READERS: tuple[tuple[str, Callable[[Scene, int], Iterator[Match]]], ...] = (
    ("gives", given),
    ("has_had", had),
    ("lays", laid),
    ("moves", moved),
)
"""Names of the lists of grammars/lists.toml whose words may begin such a clause, and what reads it from there."""
PAST, SHORTEST = "ed", 5
"How a verb ends that no vocabulary knows, and how many letters it has."


def told(scene: Scene, found: list[Draft]) -> list[Draft]:
    """The work that no draft of `found` says already."""
    made: list[Draft] = []
    lists = scene.book.lists
    for k, token in enumerate(scene.tokens):
        for name, reader in READERS:
            if token.low in lists[name] or (reader is moved and _unknown_past(token.low, token.kind)):
                for match in reader(scene, k):
                    draft = work.draft(match, scene)
                    if draft is not None and not _said(draft, match, [*found, *made]):
                        made.append(draft)
    return made


def _unknown_past(low: str, kind: str) -> bool:
    return kind == "word" and low.endswith(PAST) and len(low) >= SHORTEST


def _said(draft: Draft, match: Match, found: list[Draft]) -> bool:
    """Whether a pattern has read work from these words."""
    return any(
        d.kind == "work"
        and (match.first <= d.main < match.last or (d.thing_at is not None and d.thing_at == draft.thing_at))
        for d in found
    )
