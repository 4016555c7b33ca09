"""The findings that the build of a clause tells, where no pattern of words has read one."""

from __future__ import annotations

from collections.abc import Callable

from worklog_tui.extract.owed.clause import Clause, clauses
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.acts import acts, may_act
from worklog_tui.extract.shown.amounts import amounts, may_hold_some
from worklog_tui.extract.shown.matter import matter, may_lie
from worklog_tui.extract.shown.misplaced import may_be_misplaced, misplaced
from worklog_tui.extract.shown.others import may_tell, others
from worklog_tui.extract.shown.states import may_be, states
from worklog_tui.extract.shown.tries import may_tell as may_tell_of_a_try
from worklog_tui.extract.shown.tries import outcomes

READERS: tuple[tuple[Callable[[Clause, list[int]], list[Draft]], Callable[[Scene], list[int]]], ...] = (
    (others, may_tell),
    (matter, may_lie),
    (misplaced, may_be_misplaced),
    (amounts, may_hold_some),
    (acts, may_act),
    (states, may_be),
    (outcomes, may_tell_of_a_try),
)
"What is read clause by clause, in this order, and the tokens of which a clause must hold one; the reader gets them."


def told(scene: Scene, found: list[Draft]) -> list[Draft]:
    """What a scene shows and no draft of `found` says already; work of others is taken out of `found`, in place."""
    opens = [(reader, ks) for reader, may in READERS if (ks := may(scene))]
    made: list[Draft] = []
    for clause in clauses(scene) if opens else ():
        if old := [d for d in found if d.kind == "finding" and d.confidence >= 0.5 and d.main in clause.span]:
            made += _turned(clause, old, found)
            continue
        for reader, ks in opens:
            if (here := [k for k in ks if k in clause.span]) and (drafts := reader(clause, here)):
                if reader is others:
                    found[:] = [d for d in found if d.kind != "work" or d.main not in clause.span]
                made += drafts
                break
    return made


def _turned(clause: Clause, old: list[Draft], found: list[Draft]) -> list[Draft]:
    """How a part does its work, where the words of its work alone were read as a trouble or as a praise:
    `chatters nicely`, `puts out precisely nothing`. It takes the place of that in `found`.
    """
    told = acts(clause, [k for k in may_act(clause.scene) if k in clause.span]) if len(old) == 1 else []
    if not told or not told[0].main <= old[0].main <= old[0].last < told[0].last:
        return []
    if told[0].fields["verdict"] == old[0].fields["verdict"]:
        return []
    found[:] = [d for d in found if d is not old[0]]
    return told
