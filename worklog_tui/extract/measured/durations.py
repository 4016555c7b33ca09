"""What a time is of: a bath, a lamp or a charge, what ran, or what is under test."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.model import Reading, Work

WAITED_FOR = frozenset({"part", "control"})
RUN = frozenset("run ran running runs idled ticked ticking idling".split())
ENDED = frozenset("dies died dead gone dying stops stopped quit quits cut conked starts fired missed beat".split())


def of_time(made: Draft, scene: Scene) -> str:
    """The subject of a time; empty when the nearest thing is as good as any."""
    if _is_delivery(made, scene):
        return "parts"
    if _comes_first(made, scene):
        made.thing, made.thing_at = scene.engine(), None
        return made.thing.words
    if process := _process(made, scene):
        made.thing, made.thing_at = None, None
        made.filled.discard("subject")
        return process
    if bath := _bath(made, scene):
        return bath
    if runner := _runner(made, scene):
        return runner
    if made.thing_at is not None and made.thing is not None and made.thing.kind not in ("machine", "quality"):
        return ""
    if tested := _under_test(scene):
        return tested
    if made.thing_at is None and (old := _waited_for(scene)):
        return old
    if made.thing is not None and made.thing.kind in WAITED_FOR:
        return ""
    if made.thing_at is None and scene.machine.cylinders is not None:
        made.thing = scene.engine()
        return made.thing.words
    return ""


def _comes_first(made: Draft, scene: Scene) -> bool:
    """`After half an hour the water is at eighty`: the engine ran so long, not what stands behind."""
    if made.thing_at is None or made.thing_at < made.main or scene.machine.cylinders is None:
        return False
    return made.main > 0 and scene.tokens[made.main - 1].low == "after"


def _is_delivery(made: Draft, scene: Scene) -> bool:
    """`Ordered the lot. Ten days they say`: how long the parts take."""
    amount = scene.tokens[made.main].amount
    if amount is None or amount.unit not in ("day", "week"):
        return False
    span = scene.clause(made.main)
    words = {w for k in span for w in scene.tokens[k].low.split()}
    if words & DELIVERED:
        return True
    return any(isinstance(f, Work) and f.action == "order" for f in scene.context.recent[-LATELY:])


def _process(made: Draft, scene: Scene) -> str:
    """`Filling from 100 to 125 took 96 seconds`, `pump-up from empty: eight minutes`: what took the time, as it was
    called at the head of the sentence.
    """
    tokens, names = scene.tokens, scene.book.lists["processes"]
    first = next((k for k in range(made.main - 1, -1, -1) if tokens[k].kind == "stop"), -1) + 1
    while first < made.main and tokens[first].sense("filler", "article", "break"):
        first += 1
    head = tokens[first].low.partition(" ")[0]
    if not (tokens[first].low in names or head in names or (head.endswith("ing") and len(head) > LEAST_GERUND)):
        return ""
    took = next((k for k in range(first + 1, made.main) if tokens[k].low in TOOK), None)
    if took is None or took - first > LONGEST_PROCESS or any(t.low == "," for t in tokens[first:took]):
        return ""
    end = next((k for k in range(first + 1, took) if tokens[k].low in ("with", "without")), took)
    return scene.said(first, end - 1)


TOOK = frozenset({"took", "takes", "taking", ":", "is", "was"})
LEAST_GERUND = 5
"Letters of `being`."
LONGEST_PROCESS = 9
"Tokens of what took the time."
DELIVERED = frozenset("delivery lead-time backorder postage post arrive arrives coming shipping ship dispatch".split())
LATELY = 3
"Facts back in which something was ordered."


def _bath(made: Draft, scene: Scene) -> str:
    """What stands before the time in its clause and is a bath or a lamp: `jets in the dip, 30 min`."""
    span, baths = scene.clause(made.main), scene.book.lists["baths"]
    for k in range(min(made.main + 5, span.stop) - 1, max(span.start, made.main - 14) - 1, -1):
        token = scene.tokens[k]
        if token.thing is not None and baths & set(token.low.split()) and token.thing.kind != "machine":
            return token.thing.words
        if token.low in ("on charge", "on the charger", "on trickle charge"):
            return "charger"
        if token.low in ("soak", "soaking") and (soaked := _soaked(scene, k)):
            return soaked
        if token.low in ("dip", "soak", "lamp", "ultrasonic"):
            return token.low
        if token.thing is None and token.low in baths and _stands_in(scene, k):
            return token.low
    return ""


def _soaked(scene: Scene, k: int) -> str:
    """`Left the piston to soak`, `the felt can soak`: what soaks, not the soaking."""
    if scene.tokens[k - 1].sense("article") if k else True:
        return ""
    for n in range(k - 1, max(scene.clause(k).start, k - 6) - 1, -1):
        thing = scene.tokens[n].thing
        if thing is not None and thing.kind not in ("quality", "fluid", "tool", "machine"):
            return thing.words
    return ""


def _stands_in(scene: Scene, k: int) -> bool:
    """`In the rust bath`: whether a word of place stands before it."""
    return any(t.low.removeprefix("\u2026") in ("in", "under", "into", "on") for t in scene.tokens[max(0, k - 3) : k])


def _runner(made: Draft, scene: Scene) -> str:
    """What ran, or died, for that time: the thing before the verb, else the engine."""
    span = scene.clause(made.main)
    for k in span:
        token = scene.tokens[k]
        if token.low not in RUN and not (token.low in ENDED and k < made.main):
            continue
        before = scene.tokens[k - 1] if k > span.start else None
        if before is not None and before.thing is not None and before.thing.kind not in ("quality", "fluid", "unknown"):
            return before.thing.words
        made.thing = scene.engine()
        return made.thing.words
    return ""


def _under_test(scene: Scene) -> str:
    """`5 min later 12` under a pressure test: the time is of what holds the pressure."""
    topic = scene.context.topic
    if topic is None or topic.quantity not in ("pressure", "leakage") or topic.age > 2:
        return ""
    if topic.quality and scene.machine.cylinders is not None and not topic.name.endswith("test"):
        return ""  # `oil pressure`: told while the engine runs
    return topic.words or ("tank" if "compressor" in scene.machine.kind else f"{topic.quantity} test")


def _waited_for(scene: Scene) -> str:
    """`More like thirty-five` after `twenty minutes in the dip`: the same wait, told again."""
    for fact in reversed(scene.context.recent):
        if isinstance(fact, Reading) and fact.quantity == "duration":
            return fact.subject if fact.role == "planned" and fact.subject != "parts" else ""
    return ""
