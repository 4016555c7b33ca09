"""The follow-ups that the build of a clause tells, where no pattern of words has read one."""

from __future__ import annotations

from collections.abc import Callable

from worklog_tui.extract.owed.asked import asked
from worklog_tui.extract.owed.clause import Clause, clauses
from worklog_tui.extract.owed.deeds import deeds, may_owe
from worklog_tui.extract.owed.failing import failing
from worklog_tui.extract.owed.lacking import lacking, may_lack
from worklog_tui.extract.owed.summed import summed
from worklog_tui.extract.owed.wanted import may_want, wanted
from worklog_tui.extract.scene import Draft, Scene

READERS: tuple[tuple[Callable[[Clause, list[int]], list[Draft]], Callable[[Scene], list[int]]], ...] = (
    (lacking, may_lack),
    (wanted, may_want),
    (deeds, may_owe),
)
"What is read clause by clause, and the tokens of which a clause must hold one; the reader gets them."


def told(scene: Scene, found: list[Draft]) -> list[Draft]:
    """What a scene says is owed and no draft of `found` says already."""
    made: list[Draft] = [] if any(d.kind == "follow_up" for d in found) else summed(scene)
    parts = _parts(scene)
    for draft in (*asked(scene), *failing(scene), *parts):
        if not _said(draft, scene, [*found, *made]):
            made.append(draft)
    return made


def _parts(scene: Scene) -> list[Draft]:
    """What is read clause by clause; most sentences hold no word with which anything is owed."""
    opens = [(reader, ks) for reader, may in READERS if (ks := may(scene))]
    if not opens:
        return []
    return [
        draft
        for clause in clauses(scene)
        for reader, ks in opens
        if (here := [k for k in ks if k in clause.span])
        for draft in reader(clause, here)
    ]


def _said(draft: Draft, scene: Scene, found: list[Draft]) -> bool:
    """Whether a pattern has read what these words say, or the same of its thing."""
    said = [d for d in found if d.kind == "follow_up"]
    apart = draft.fields["reason"] in ("question", "fallback")
    if apart:
        return any(d.fields["reason"] == draft.fields["reason"] for d in said)
    here = scene.clause(draft.main)
    return any(d.main in here or (draft.thing and d.fields["name"] == draft.thing.name) for d in said)
