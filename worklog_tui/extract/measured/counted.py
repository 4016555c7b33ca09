"""Numbers that count (`two bolts`, `three of them`, `seven, eight, nine`), and small ones read all the same."""

from __future__ import annotations

import itertools

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.carry import amount_ahead, carried, said_just_before, stands_free
from worklog_tui.extract.things.subjects import which_at
from worklog_tui.extract.tokens import Token


def only_a_count(token: Token, name: str, made: Draft, scene: Scene) -> bool:
    """A small whole number counts things, unless the quantity has such values and, spelled out, its thing was said and
    it is the one that is being measured.
    """
    assert token.value is not None
    if token.value != int(token.value) or token.value > 12 or which_at(scene, made.main)[1] == made.main + 1:
        return False
    if (ahead := amount_ahead(scene, made.main)) is not None and name in ahead.quantities:
        return False
    if _told_against(token, name, made, scene):
        return False
    topic = scene.topic_before(made.main) or (scene.context.topic.quantity if scene.context.topic else "")
    read = not made.rule.gives.get("bare") and topic == name != "turns" and stands_free(scene.tokens, made.main)
    if token.value == 0 and read:
        return False
    if read and name == "gap" and _marked(made.main, scene):
        return False
    if name not in SMALL or _of_some(made.main, scene):
        return True
    if read and scene.topic_before(made.main) == name and scene.tokens[made.main - 1].sense("reads", "book"):
        return False  # `the timing light says four before`
    if not token.low.isalpha():
        return token.value <= 3 and name in ("pressure", "voltage") and "subject" in made.filled
    told = not made.rule.gives.get("bare") and stands_free(scene.tokens, made.main)
    if (read or told) and carried(scene, made.main, name) is not None:
        return False
    return "subject" in made.filled or (topic != name and carried(scene, made.main, name) is None)


def _of_some(i: int, scene: Scene) -> bool:
    """`Repacked, 4 rings`, `so rings on 4`: how many there are, or which of the cylinders."""
    token, before, after = scene.tokens[i], scene.tokens[i - 1 : i], scene.tokens[i + 1 : i + 2]
    if after and after[0].thing is not None and after[0].low.endswith("s") and not after[0].sense("side"):
        return True
    ends = not after or after[0].kind in ("stop", "comma", "number", "amount")
    return ends and bool(before) and before[0].low == "on" and 1 <= (token.value or 0) <= (scene.machine.cylinders or 0)


def _marked(i: int, scene: Scene) -> bool:
    """`One, ten. Two, twelve.`: the number of one of several stands right before it and opens the sentence."""
    k = i - 2 if i > 1 and scene.tokens[i - 1].kind == "comma" else i - 1
    if k < 0 or (k and scene.tokens[k - 1].kind not in ("stop", "comma")):
        return False
    before = scene.tokens[k]
    return before.kind == "which" or before.low in ("one", "two", "three", "four", "five", "six")


def _told_against(token: Token, name: str, made: Draft, scene: Scene) -> bool:
    """`Six thou. Should be one to two`, `nine seconds, and the book gives four`, `left should be thirty, it's eleven`:
    a small number that is set beside one that was told, or to which something was brought: `filed and set to twelve`.
    """
    if not stands_free(scene.tokens, made.main):
        return False
    if _brought(made.main, scene) and _told_just_now(name, scene):
        return True
    if carried(scene, made.main, name) is None:
        return False
    before = scene.tokens[max(0, made.main - 4) : made.main]
    behind = scene.tokens[made.main + 1 : made.main + 4]
    asked = any(t.sense("book") for t in before) or any(t.sense("proper") for t in behind)
    is_so = any(t.sense("copula") or t.low in IT_IS for t in before[-1:])
    booked = any("book" in t.classes for t in scene.tokens[: made.main])
    now = any(t.low in IT_IS for t in before[-1:]) and _told_just_now(name, scene)
    return asked or token.high is not None or (is_so and booked) or now


def _brought(i: int, scene: Scene) -> bool:
    """`Reset to twelve`: a word of setting right before the number."""
    return i > 0 and "setto" in scene.tokens[i - 1].classes and scene.tokens[i - 1].low.endswith("to")


def _told_just_now(name: str, scene: Scene) -> bool:
    """`Oil pressure is forty. Hot, it's twelve.`: whether the sentence before told the quantity."""
    last = said_just_before(scene)
    return last is not None and last.quantity == name


IT_IS = frozenset("its shes hes theyre thats".split())
"What a person says before what he reads himself."
SMALL = frozenset({"gap", "voltage", "turns", "angle", "pressure", "length"})


OF_THEM = frozenset({"them", "em", "those", "these", "us", "you"})


def counts_things(scene: Scene, i: int) -> bool:
    """`five hundred`, `eighteen of them`, `3 of 4`; an amount has its unit."""
    token, after = scene.tokens[i], scene.tokens[i + 1 : i + 3]
    if i > 1 and scene.tokens[i - 1].low == "all" and scene.tokens[i - 2].sense("bad", "good"):
        return True  # `level low all 6`
    if token.value is None or not after:
        return False
    if scene.book.lists["counted"] & set(after[0].low.split()[:1]) or after[0].low.endswith("'s"):
        return True
    if i > 1 and scene.tokens[i - 1].low == "of" and scene.tokens[i - 2].low in scene.book.lists["in_sets"]:
        return True
    there = i > 1 and scene.tokens[i - 1].low in ("are", "were") and scene.tokens[i - 2].low == "there"
    if (there or (i and scene.tokens[i - 1].low in THERE_ARE)) and token.value == int(token.value):
        return True
    return after[0].low == "of" and len(after) > 1 and after[1].low in OF_THEM and not _of_fluid(scene, i + 3)


THERE_ARE = frozenset({"there are", "there were", "therere"})


def _of_fluid(scene: Scene, k: int) -> bool:
    """`Two of those are antifreeze`: of the litres just told."""
    if not any(t.amount is not None and "volume" in t.amount.quantities for t in scene.tokens[:k]):
        last = said_just_before(scene)
        if last is None or last.quantity != "volume":
            return False  # `two of them eighth gas`
    return any(t.thing is not None and t.thing.kind == "fluid" for t in scene.tokens[k : k + 3])


def counted_aloud(scene: Scene, i: int) -> bool:
    """`Two, three`, `seven, eight, nine`: figures that follow each other are counted, not measured."""
    run = [scene.tokens[i].value]
    for step in (-1, 1):
        k = i + step
        while 0 <= k < len(scene.tokens) and scene.tokens[k].kind in ("comma", "number"):
            if scene.tokens[k].kind == "number":
                run.insert(0 if step < 0 else len(run), scene.tokens[k].value)
            k += step
    whole = [int(v) for v in run if v is not None and v == int(v)]
    in_a_row = len(whole) == len(run) >= COUNTED and all(b - a == 1 for a, b in itertools.pairwise(whole))
    return in_a_row and whole[-1] <= ALOUD


COUNTED, ALOUD = 3, 20
"Figures in a row from which on they are counted, and up to which anybody counts; three cylinders may read 88, 89, 90."
