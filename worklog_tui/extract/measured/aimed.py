"""What a number is taken on: `clamp meter on each leg`, `across the switch`, `from the post to the stud`.

An instrument and the word behind it, or such a word alone at the head of a sentence, point at what is measured; the
number may stand in the next sentence.
"""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Thing, Token

INSTRUMENTS = "instruments and gauges"
POINTS_AT = frozenset("on across to in at over between from against into up".split())
SCREWED_IN = frozenset({"compression", "pressure"})
"Of what such an instrument is screwed into nothing is measured."
HEADS = frozenset("across between from over".split())
"Words that point at what is measured where they open a sentence."
LINKS = frozenset("the a an my each every all both one this that its his her bare whole".split())
TOLD = ("copula", "did", "do", "doing", "does", "must", "want", "bad", "plan", "if", "asked", "number", "amount")
MOST = 14
"Tokens of a sentence that only says what is measured next."


def is_instrument(thing: Thing) -> bool:
    """Whether a thing is read, not measured."""
    return thing.system == INSTRUMENTS or thing.own.lower().endswith((" gauge", " meter"))


def pointed(thing: Thing) -> Thing:
    """What is measured, where the words join it to the instrument: of `tacho on the motor shaft` the shaft."""
    return thing.of if thing.of is not None and is_instrument(thing) else thing


def aimed_at(scene: Scene, i: int) -> int | None:
    """The thing that an instrument before token i in its sentence was put on, if no other part is named behind it."""
    for k in range(i - 1, -1, -1):
        token = scene.tokens[k]
        if token.kind == "stop":
            return None
        if token.thing is None or token.thing.kind in ("tool", "quality", "unknown"):
            continue
        if is_instrument(token.thing):
            return k if token.thing.of is not None else None
        return k if _put_on(scene.tokens, k) else None
    return None


def _put_on(tokens: list[Token], k: int) -> bool:
    """Whether an instrument and a word that points stand right before token k."""
    i = k - 1
    while i > 0 and (tokens[i].low in LINKS or tokens[i].sense("article", "side", "all")):
        i -= 1
    if i < 1 or tokens[i].low not in POINTS_AT:
        return False
    before = tokens[i - 1].thing
    if before is None or not is_instrument(before):
        return False
    return tokens[i].low not in ("in", "into") or not SCREWED_IN & set(before.name.split())


def aim_of(scene: Scene) -> Thing | None:
    """What a sentence without a number says is measured next: `clamp meter on each leg`, `across the fuse`, `battery
    plus to the starter`.
    """
    tokens = [t for t in scene.tokens if t.kind not in ("stop", "mark")]
    comma = next((k for k, t in enumerate(tokens) if t.kind == "comma"), 0)
    if comma and _two_ends(tokens, comma) is not None:
        tokens = tokens[:comma]  # `battery positive to the frame, still switched on`
    if not tokens or len(tokens) > MOST or any(t.sense(*TOLD) or t.kind in ("number", "amount") for t in tokens):
        return None
    if (ends := _two_ends(tokens, len(tokens))) is not None:
        words = " ".join(scene.text[tokens[ends[0]].start : tokens[ends[1]].end].split())
        return Thing(words, "", "part", own=words)
    for k, token in enumerate(tokens):
        if token.thing is None or token.thing.kind in ("tool", "quality"):
            continue
        if is_instrument(token.thing):
            if token.thing.of is not None:
                return token.thing.of
            continue
        return token.thing if _put_on(tokens, k) or _heads(tokens, k) else None
    return None


def still_aimed(scene: Scene, i: int, wanted: tuple[str, ...]) -> bool:
    """Whether the number at token i is of what the meter was put on in the sentence before: none of another instrument,
    no time, and nothing else is named before it.
    """
    if scene.context.aim is None or wanted[:1] == ("duration",):
        return False
    return not any(t.thing is not None and t.thing.kind != "quality" for t in scene.tokens[:i])


def _heads(tokens: list[Token], k: int) -> bool:
    """Whether the words before token k are one that points, and small ones."""
    before = [t for t in tokens[:k] if not t.sense("article", "side", "filler", "all", "degree") or t.low in HEADS]
    return len(before) == 1 and before[0].low in HEADS


def _two_ends(tokens: list[Token], i: int) -> tuple[int, int] | None:
    """`Earth pin to the bed`: the first and the last token of two ends, in a fragment before token i."""
    for k in range(i - 2, 0, -1):
        if tokens[k].kind == "stop":
            return None
        if tokens[k].low not in LEADS:
            continue
        first = k
        while first and k - first < LONGEST and _names(tokens[first - 1]):
            first -= 1
        opens = first == 0 or tokens[first - 1].kind in ("stop", "comma") or tokens[first - 1].low in OPENS
        end = k + 1
        while end < i and tokens[end].sense("article"):
            end += 1
        if first < k and opens and end < i and _names(tokens[end]) and tokens[end].low != tokens[k - 1].low:
            return first, end + (end + 1 < i and tokens[end].thing is None and _names(tokens[end + 1]))
    return None


LEADS = frozenset({"to", "down to", "across to", "through to"})
LONGEST = 3
"Words of a name."
OPENS = frozenset("from between the a and now so right okay first next then side".split())


def _names(token: Token) -> bool:
    """Whether a token can be of the name of an end."""
    if token.thing is not None:
        return not is_instrument(token.thing) and token.thing.kind not in ("tool", "quality")
    plain = token.kind in ("word", "term") and len(token.low) > 2 and token.low.isalpha()
    return plain and not token.sense(*TOLD, "reads", "article", "person", "pronoun", "setto", "book", "break", "how")


def span_of(scene: Scene, i: int) -> str:
    """`Earth pin to the bed, point eight of an ohm`: the two ends between which it was measured, in words."""
    ends = _two_ends(scene.tokens, i)
    return scene.said(*ends) if ends is not None else ""
