"""Who did it, and whether anybody did: what others did, what a machine is built like and what waits is no work."""

from __future__ import annotations

from worklog_tui.extract.finders.standing import to_a_mark
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token


def by_others(scene: Scene, at: int) -> bool:
    """Whether somebody or something else did it: `he rebuilt it`, `it's polished it`; not `it has been rebuilt`."""
    if not scene.tokens[at].sense("did"):
        return False
    k = at - 1
    if scene.tokens[at].sense("do") and k >= 0 and scene.tokens[k].low in BARE_AFTER:
        return True  # "you put it back": put is not the past here
    while k > 0 and at - k < 4 and _between(scene.tokens[k]):
        if scene.tokens[k].low in PASSIVE:
            return _by_somebody(scene, at)
        k -= 1
    if k >= 0 and scene.tokens[k].sense("outsider") and scene.tokens[k].clause == scene.tokens[at].clause:
        return True  # `my uncle put it in`
    if k < 0 or scene.tokens[k].low not in OTHERS:
        return _by_somebody(scene, at)
    before = scene.tokens[k - 1] if k > scene.clause(at).start else None
    return scene.tokens[k].low not in THINGS_TOO or before is None or before.kind == "comma" or before.low == "and"


def _between(token: Token) -> bool:
    return token.sense("copula", "degree") is not None and token.low not in OTHERS


def _by_somebody(scene: Scene, at: int) -> bool:
    """Whether it is told behind the verb who did it: `disconnected by somebody`, `painted by the last owner`."""
    for k in range(at + 1, min(at + NEAR, scene.clause(at).stop - 1)):
        if scene.tokens[k].low == "by":
            after = scene.tokens[k + 1 : k + 4]
            return any(t.low in OTHERS or t.low in HIM or t.sense("outsider") for t in after)
    return False


NEAR = 5
OTHERS = frozenset(
    (
        "it its that thats which he hes she shes they theyve theyd somebody someone somebodys someones nobody "
        "previous factory"
    ).split()
) | {"previous owner", "the factory", "last owner", "the seller"}
HIM = frozenset("him her them whoever people".split())
THINGS_TOO = frozenset("it its that thats which".split())
"Others only at the head of a clause; elsewhere rather what something was done to."
BARE_AFTER = frozenset(
    "you to youd id ill well gotta gonna wanna lets dont cant never please they could would should".split()
)
PASSIVE = frozenset("was were is are be been being got gets".split()) | {"has been", "have been", "had been"}


def listed(match: Match, scene: Scene) -> bool:
    """Whether a thing only stands on a list: `still to do: new lacing`."""
    if not scene.holds("jobs", "shopping"):
        return False
    said = scene.tokens[match.first : match.last]
    return not any(t.sense("did", "doing") for t in said) and any(
        t.sense("jobs", "shopping") for t in scene.tokens[: match.first]
    )


def to_come(match: Match, scene: Scene) -> bool:
    """Whether what is told in the present waits for something: `square it up once the bearing is in`, `manifold off
    when it's cool`.
    """
    said = scene.tokens[match.first : match.last]
    bare = not any(t.sense("did", "doing") for t in said)
    told = match.rule.gives.get("spoken") or any(_no_past(t) for t in said)
    if not (told or bare):
        return False
    until = UNTIL if told else WAITS_FOR
    end = min(scene.clause(match.last - 1).stop + bare, match.last + WAITS, len(scene.tokens))
    if until.isdisjoint(scene.lows()):
        return False
    waits = (k for k in range(match.last, end) if scene.tokens[k].low in until)
    return any(not to_a_mark(scene, k) for k in waits) or any(
        t.low in until and t.low != "next" for t in scene.tokens[scene.clause(match.first).start : match.first]
    )


def _no_past(token: Token) -> bool:
    """Whether a word says nothing of the past: `goes`, or `put`, which may be the past or not."""
    return token.low.partition(" ")[0] in NOT_PAST or {"did", "do"} <= token.classes


NOT_PAST = frozenset("goes go comes come gets get".split())
WAITS_FOR = frozenset(("when", "once", "when i", "once i", "next weekend", "next week", "come the winter", "tomorrow"))
"What a thing and its particle wait for: `fuel off when she stops`, but `head off before dinner`."
UNTIL = (
    WAITS_FOR
    | frozenset(("before", "until", "till", "later", "next", "after", "before i"))
    | frozenset(("another day", "next time"))
)
WAITS = 6


def only_built(made: Draft, action: str, scene: Scene) -> bool:
    """Whether it is told how a machine is built: `the cover is bolted to the block`, `a pump bolted on the skid`."""
    k, at = made.thing_at, made.main
    verb = scene.tokens[at].low.partition(" ")[0]
    if action not in ("fit", "connect") or k is None or verb not in scene.book.lists["built_so"]:
        return False
    if k > at:
        return at > scene.clause(at).start and scene.tokens[at - 1].low in ("is", "are")
    first = max(scene.clause(at).start, k - 2)
    if any(t.low.removeprefix("\u2026").split()[0] in ANEW or t.sense("new") for t in scene.tokens[first : at + NEAR]):
        return False
    stands = any(t.low in ("is", "are") for t in scene.tokens[k + 1 : at])
    indefinite = k > 0 and scene.tokens[k - 1].low in ("a", "an", "two", "theres a")
    place = any(t.low.split()[0] in PLACES for t in scene.tokens[at + 1 : at + 3])
    return (stands or (indefinite and k + 1 == at)) and place


ANEW = frozenset("now back again all".split())
PLACES = frozenset("to on onto in into by with under between behind through at across round down straight".split())


def bought_once(scene: Scene, at: int, action: str) -> bool:
    """`Since I bought it`, `when we got it`: tells since when, and orders nothing."""
    if action != "order":
        return False
    return any(t.low in SINCE for t in scene.tokens[max(at - 2, 0) : at])


SINCE = frozenset("since when before after until".split()) | {"when i", "before i", "until i", "ever since"}


def put_away(scene: Scene, at: int, action: str) -> bool:
    """`The old gauge goes on the shelf`: where it lies now; it was fitted nowhere."""
    after = scene.tokens[at + 1 : at + 3]
    return (
        action == "fit"
        and len(after) == len(("the", "shelf"))
        and scene.tokens[at].low.split()[-1] in ("on", "in", "onto", "into")
        and bool(after[0].sense("article", "objectword"))
        and after[1].low in scene.book.lists["laid_by"]
    )
