"""Times and speeds: of the running engine, of the work, or of nothing that a log holds."""

from __future__ import annotations

from worklog_tui.extract.measured.quantity import suits, turns
from worklog_tui.extract.scene import Draft, Scene

RUNNING = frozenset(
    ("run ran running runs idle tickover going kick kicked dies died dead gone cranked fast warm-up warming").split()
)


def of_running(made: Draft, scene: Scene, quantity: str) -> bool:
    """A speed of nothing else, or a time that something ran: of the engine or the motor."""
    thing = made.thing
    if quantity == "speed":
        if thing is not None and made.thing_at is not None and turns(thing):
            return False
        if thing is not None and not thing.known and "subject" not in made.filled:
            return False  # a name that only this shop knows
        if made.thing_at is None and scene.machine.fuel not in ("none", ""):
            return True  # on an engine a speed is its own, whatever was talked of before
        bare = thing is not None and thing.words.lower() in ("rpm", "rpms", "revs", "speed", "speeds")
        return thing is None or bare or not suits(thing, quantity, scene.book.quantities.get(quantity))
    words = {scene.tokens[k].low for k in scene.clause(made.main)}
    return quantity == "duration" and made.thing_at is None and bool(words & RUNNING)


DAYS = {"week": 7}
LASTING = frozenset(
    (
        "leave left give gave let wait waited for took takes take after later run ran running runs soak cook every "
        "within another lasts lasted held in"
    ).split()
)


def of_work(made: Draft, scene: Scene) -> bool:
    """Whether a time is one of the work or the machine: with a verb of work, a word of waiting, or a thing in its
    clause.
    """
    amount = scene.tokens[made.main].amount
    after = scene.tokens[made.main + 1].low if made.main + 1 < len(scene.tokens) else ""
    if amount is not None and (amount.unit in ("month", "year") or after == "ago"):
        return False
    if amount is not None and amount.unit in ("day", "week") and after == "later":
        return False  # `Two weeks later.` says when this is
    span = scene.clause(made.main)
    if _is_when(made.main, scene):
        return False
    if amount is not None and amount.unit in ("day", "week") and (made.thing is None or amount.low == 1):
        return any(scene.tokens[k].low in LASTING for k in span)
    if any(scene.tokens[k].low in LASTING or scene.tokens[k].sense("did", "doing", "do", "does") for k in span):
        return True
    if _tells_how_long(made.main, scene) or _by_the_clock(made.main, scene):
        return True
    return "subject" not in made.filled or len(span) <= 3


def _is_when(i: int, scene: Scene) -> bool:
    """`Back in an hour`, `ask me in five minutes`: when something will be; `fell two bar in five minutes`, `done in an
    hour`: how long it took.
    """
    before = scene.tokens[max(0, i - 9) : i]
    if not before or before[-1].low not in ("in", "back in", "again in"):
        return False
    if any(t.kind in ("amount", "number") or t.sense("did", "copula") for t in before[:-1]):
        return False
    behind = scene.tokens[i + 1 : i + 4]
    return not any(t.kind in ("amount", "number") or t.thing is not None for t in behind)


def _by_the_clock(i: int, scene: Scene) -> bool:
    """`Forty-two seconds by the camera`, `the stopwatch said eleven minutes`: by what the time was taken."""
    near = (*scene.tokens[max(0, i - 3) : i], *scene.tokens[i + 1 : i + 4])
    return any(scene.book.lists["timekeepers"] & {t.low, *t.low.split()} for t in near)


TELLING = frozenset({"that's", "thats", "that was", "that's been", "been", "for", "lasted", "had"})


def _tells_how_long(i: int, scene: Scene) -> bool:
    """`that was eight minutes`, `Ten minutes, engine off.`: a time and what it was."""
    if any(t.low in TELLING for t in scene.tokens[max(0, i - 4) : i]) or (
        i > 1 and scene.tokens[i - 2].low == "that" and scene.tokens[i - 1].low in ("was", "is")
    ):
        return True
    opens = i == 0 or scene.tokens[i - 1].kind == "stop"
    return opens and i + 1 < len(scene.tokens) and scene.tokens[i + 1].kind in ("comma", "stop")
