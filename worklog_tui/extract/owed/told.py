"""The follow-ups that the build of a clause tells, where no pattern of words has read one."""

from __future__ import annotations

from worklog_tui.extract.owed.asked import asked
from worklog_tui.extract.owed.clause import clauses
from worklog_tui.extract.owed.deeds import deeds
from worklog_tui.extract.owed.failing import failing
from worklog_tui.extract.owed.lacking import lacking
from worklog_tui.extract.owed.wanted import wanted
from worklog_tui.extract.scene import Draft, Scene

READERS = (lacking, wanted, deeds)
"What is read clause by clause."


def told(scene: Scene, found: list[Draft]) -> list[Draft]:
    """What a scene says is owed and no draft of `found` says already."""
    made: list[Draft] = []
    parts = [d for clause in clauses(scene) for reader in READERS for d in reader(clause)]
    for draft in (*asked(scene), *failing(scene), *parts):
        if not _said(draft, scene, [*found, *made]):
            made.append(draft)
    return made


def _said(draft: Draft, scene: Scene, found: list[Draft]) -> bool:
    """Whether a pattern has read what these words say, or the same of its thing."""
    said = [d for d in found if d.kind == "follow_up"]
    apart = draft.fields["reason"] in ("question", "fallback")
    if apart:
        return any(d.fields["reason"] == draft.fields["reason"] for d in said)
    here = scene.clause(draft.main)
    return any(d.main in here or (draft.thing and d.fields["name"] == draft.thing.name) for d in said)
