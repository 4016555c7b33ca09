"""The try that is under way: of the engine on its handle, rope or button, or of the spark, the plug on the metal."""

from __future__ import annotations

from worklog_tui.extract.context import Context
from worklog_tui.extract.said import opening, says
from worklog_tui.extract.scene import Scene
from worklog_tui.model import Reading
from worklog_tui.rulebook import Sense

ENGINE, SPARK = "engine", "spark"
START = "start"
NTH = ("starts first time", "starts second pull")
"States that a try alone may tell."
DEEDS = ("do", "did", "doing")
SURE = 0.5
LIFE, SPARK_LIFE = 2, 24
"Notes after a try in which it is told how it went, and for which the spark is looked at again with the next one."
NOT_SO = frozenset({"not", "if", "would", "asked", "book", "memory", "reported", "wondered"})
"Stances of what is not tried now."
BESIDE = frozenset({"control", "fluid", "quality", "machine"})
"Kinds of things that are named with a try: `choke out`; with others the talk turns to something else."
FEW = 4
"Tokens of a sentence that only tells what comes next."
EARTHED = ("plug on the ", "plug against ", "plug to the ", "plug at the ")


def tried_here(scene: Scene) -> list[tuple[int, int, str]]:
    """The tries of a sentence: first and last token, and what is tried."""
    return scene.once(("tries",), lambda: _tried_here(scene))


def _tried_here(scene: Scene) -> list[tuple[int, int, str]]:
    spoken = opening(scene, "tries")
    known: list[int] = []
    if scene.holds(*DEEDS, "good"):
        known = [k for k, t in enumerate(scene.tokens) for s in t.senses if s.name[:5] == START and _is_start(s)]
    found = [(k, k + max(says(scene, "tries", k, 5), 1) - 1) for k in sorted({*spoken, *known})]
    what = SPARK if found and _of_spark(scene) else ENGINE
    return [(k, last, what) for k, last in found if not scene.tokens[k].stances & NOT_SO and not _takes(scene, last)]


def _takes(scene: Scene, last: int) -> bool:
    """Whether it is done to a thing that follows: `pull the bus bar`."""
    after = scene.tokens[last + 1] if last + 1 < len(scene.tokens) else None
    return after is not None and (after.thing is not None or bool(after.sense("article", "objectword")))


def _is_start(sense: Sense) -> bool:
    """Whether words are of starting: `crank it`, `first kick`."""
    return (sense.cls in DEEDS and sense.name == START) or sense.name.startswith(NTH)


def _of_spark(scene: Scene) -> bool:
    """Whether the spark is looked at, in this sentence or right before it, or was with the tries before."""
    if scene.context.tried == SPARK and scene.context.tried_age <= SPARK_LIFE:
        return True
    named = [(t.thing.name, t.thing.words) for t in scene.tokens if t.thing is not None]
    named += [(s.name, s.words) for s in scene.context.things if s.age <= 1]
    return any(name == SPARK or words.lower().startswith(EARTHED) for name, words in named)


def tried_after(scene: Scene, context: Context, upto: int) -> tuple[str, int]:
    """What is being tried after the tokens before `upto`, and for how many notes already."""
    here = [what for first, _, what in tried_here(scene) if first < upto]
    if here:
        return here[-1], 0
    named = [t.thing for t in scene.tokens if t.thing is not None] if len(scene.tokens) <= FEW else []
    if named and named[0].name == SPARK:
        return SPARK, 0  # `Spark?`
    turned = any(t.thing is not None and t.thing.kind not in BESIDE for t in scene.tokens[:upto])
    return context.tried, max(context.tried_age, LIFE + 1) if turned else context.tried_age


def under_way(context: Context) -> str:
    """What was tried just now; empty when that is some notes ago, or a figure was told since."""
    age, last = context.tried_age, context.recent[-1] if context.recent else None
    older = context.notes[: len(context.notes) - max(age - 1, 0)]
    measured = isinstance(last, Reading) and last.confidence >= SURE and last.main.note not in older
    return context.tried if age <= LIFE and not measured else ""
