"""How much a thing is what the talk is about: `it` means the subject of what was said, not what stood beside it."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

PREPOSITIONS = frozenset(
    (
        "on in of at by to from with under over behind between into onto off through round around along inside near "
        "across against up down out for as like w w/ wi between beside"
    ).split()
)
BESIDE = frozenset("uh um er erm ah oh well like little big small long short same next last good nice bad".split())
SMALL = frozenset("article all new objectword side degree".split())
"Words, and classes of them, between what leads to a thing and its name."
ASIDE = frozenset({"tool", "material", "unknown"})
PRESENTS = frozenset("heres theres see".split())
IS = frozenset("is was are were".split())
COMES = frozenset("thats its comes came coming running leaking dripping".split())
ITS = frozenset({"its", "it is", "it was", "theyre"})
"`It's a clock spring` names again what is talked of."
AT = frozenset("at to on in into inside behind under".split())
LOOKS = frozenset("look looking looked listen on get onto moving".split())
"`Look at that strap`, `here's the rotor`: what is shown is what comes next."


def salience(scene: Scene, k: int) -> int:
    """From -4 (beside the point) to 3 (the subject): by its place in the clause and its kind; worked out once."""
    if (score := scene.saliences.get(k)) is None:
        score = scene.saliences[k] = _salience(scene, k)
    return score


def _salience(scene: Scene, k: int) -> int:
    token = scene.tokens[k]
    assert token.thing is not None
    score = 0
    i = _before(scene, k)
    before = scene.tokens[i] if i is not None else None
    if i is None or before is None or before.sense("break", "person"):
        score += 3
    elif (
        before.low in PRESENTS
        or (before.low in IS and i and scene.tokens[i - 1].low == "there")
        or (before.low in AT and i and scene.tokens[i - 1].low in LOOKS)
    ):
        score += 2
    elif before.low == "from" and i and (scene.tokens[i - 1].low in COMES or scene.tokens[i - 1].sense("copula")):
        score += 2  # `oil on it, that's from the seal`
    elif before.low in PREPOSITIONS or (before.sense("bad", "good") and before.low.rpartition(" ")[2] in PREPOSITIONS):
        score -= 2  # `the belt is slipping on the wheel`
    elif before.kind == "number" and token.thing.kind != "fastener" and token.low.endswith("s"):
        score += 1  # `housing apart, two bearings`
    elif (
        before.low == "and" and k + 1 < len(scene.tokens) and scene.tokens[k + 1].kind in ("word", "term")
    ) or before.sense("did", "do", "doing", "does"):
        score += 1
    alone = k + 1 == len(scene.tokens) or scene.tokens[k + 1].kind == "stop"
    counted = alone and before is not None and before.kind == "number" and token.low.endswith("s")  # `Four flaps.`
    if _out_of_the_way(scene, k) or _put_by_it(scene, k):
        score -= 3
    if _named_again(scene, k):
        score -= 5
    mere_word = token.thing.loose and not counted
    if mere_word or token.thing.kind in ASIDE or token.thing.system == "instruments and gauges":
        score -= 3
    return score


AWAY = frozenset("off out up open shut apart away on".split())


def _named_again(scene: Scene, k: int) -> bool:
    """`It's a clock spring`: says what that is which is talked of."""
    i = k - 1
    while i > 0 and scene.tokens[i].low in ("a", "an"):
        i -= 1
    return 0 <= i < k - 1 and scene.tokens[i].low in ITS


def _out_of_the_way(scene: Scene, k: int) -> bool:
    """`Lower wheel by hand, blade off`: how the rest stood while the first thing was looked at."""
    after = scene.tokens[k + 1 : k + 3]
    if not after or after[0].low not in AWAY or (len(after) > 1 and after[1].kind not in ("stop", "comma")):
        return False
    return any(t.thing is not None and t.thing.kind not in ASIDE for t in scene.tokens[:k])


def _put_by_it(scene: Scene, k: int) -> bool:
    """`I put a washer behind it`: what was done to the thing that is talked of."""
    after = [t.low for t in scene.tokens[k + 1 : k + 3]]
    if len(after) < 2 or after[0] not in PREPOSITIONS or after[1] not in THAT:
        return False
    return any(t.sense("did", "do", "doing") or t.low in PUTS for t in scene.tokens[max(0, k - 4) : k])


PUTS, THAT = frozenset("put stuck got hung".split()), frozenset("it them that there".split())


def spoken_of(scene: Scene, k: int) -> bool:
    """Whether something is told of a thing behind `and`: `wheel off and the shoes have got oil on them`."""
    i = _before(scene, k)
    joined = i is not None and scene.tokens[i].low in JOINS
    return joined and k + 1 < len(scene.tokens) and scene.tokens[k + 1].low.partition(" ")[0] in VERBS


JOINS = frozenset("and but so then though".split())
VERBS = frozenset("is are was were has have had hasnt havent isnt arent".split())


def _before(scene: Scene, k: int) -> int | None:
    """The index of the token before a thing, articles and sides passed over; None at the head of a clause."""
    i = k - 1
    while i >= 0 and scene.tokens[i].clause == scene.tokens[k].clause and scene.tokens[i].kind not in ("stop", "comma"):
        token = scene.tokens[i]
        if not ((not SMALL.isdisjoint(token.classes) or token.low in BESIDE) and token.low not in PREPOSITIONS):
            return i
        i -= 1
    return None


def ranked(scene: Scene, upto: int, drafts: list[Draft]) -> list[tuple[int, int]]:
    """(index, score) of the things before token `upto`, the most salient first, of equal ones the last."""
    said_of = {
        d.thing_at
        for d in drafts
        if d.thing_at is not None and d.kind in ("finding", "work", "reading") and d.confidence >= 0.5
    }
    rows = [(k, salience(scene, k) + 2 * (k in said_of)) for k in scene.things(range(min(upto, len(scene.tokens))))]
    return sorted(rows, key=lambda row: (-row[1], -row[0]))
