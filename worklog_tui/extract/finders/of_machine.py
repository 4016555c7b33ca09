"""A state for which nothing was named: of the engine, of the whole machine in a complaint, or of nothing."""

from __future__ import annotations

from worklog_tui.extract.finders.senses import VERDICTS
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.talk.complaints import complains
from worklog_tui.extract.things.whole import whole
from worklog_tui.extract.tokens import Thing, Token

SHE = frozenset("she shes he hes".split())
BEGINNING = 3
"Notes with which a session begins, in which what ails the machine is told."
NEAR = 4
"Tokens back in which it was switched on."


def machine_with(scene: Scene, at: int) -> Thing | None:
    """What a state of machines is of: the engine; the whole where a complaint tells it. Of a machine that has no engine
    nothing is said else, but of its motor as it is switched on: what goes up and down there is a part that was named
    too long ago.
    """
    told = complained(scene, scene.tokens[at])
    if scene.machine.fuel == "none" and _switched_on(scene, at):
        return scene.engine()
    if scene.machine.fuel != "none":
        return scene.engine() if of_machine(scene.tokens[at]) or not told else whole(scene, at)
    she = any(scene.tokens[k].low in SHE for k in scene.clause(at) if k <= at)
    begins = len(scene.context.notes) < BEGINNING and not any(s.cls == "good" for s in scene.tokens[at].senses)
    return whole(scene, at) if told or she or begins else None


def _switched_on(scene: Scene, at: int) -> bool:
    """Whether the motor was switched on in the same breath: `isolator on, runs`."""
    tokens = scene.tokens
    near = range(max(0, at - NEAR), at)
    return any(f" {tokens[k].low}".endswith(" on") and tokens[k + 1].kind in ("comma", "stop") for k in near)


def complained(scene: Scene, token: Token) -> bool:
    """Whether a complaint tells a trouble: where nothing was named, it is of the machine."""
    return complains(scene) and {s.cls for s in token.senses if s.cls in VERDICTS} == {"bad"}


def of_machine(token: Token) -> bool:
    """Whether a state is said of machines."""
    return any("kind:machine" in s.of for s in token.senses if s.cls in VERDICTS)
