"""What is blamed in any words: `my money's on the pitman`, `so it's not the claw`, `cell it is`.

Words that accuse or clear say that a cause is named beside them, though the vocabulary may not know it.
"""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.things.named_as import spoken
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook import Rulebook

LONGEST = 6
"Tokens of a name."
TAIL = 4
"Tokens from a name to the state that is said of it."
WORD = 3
"Letters of the shortest word that names something by itself."
JOINS = frozenset("of in on at to behind under inside".split())
PASSED = frozenset("just only likely either some them in on mostly mainly simply old bit being with be".split())
ENDS = frozenset(
    (
        "and or nor but which who whose when while if unless because cause not then than though again anyway now here "
        "there that it its they he she i we you so until till after before since with from for like as is are was were "
        "somewhere right lets let once"
    ).split()
)
PLACES = frozenset({"side", "end", "half"})
"They say which one behind a name: `seal on the flywheel side`."
NO_PART = frozenset({"tool", "machine"})
STATES = ("bad", "cause")


@dataclass(frozen=True, slots=True)
class Named:
    """Tokens first to last (inclusive) that name a cause."""

    first: int
    last: int
    thing: Thing | None
    name: str
    "The name of the vocabulary; empty when it has none."
    known: bool
    words: str


def after(scene: Scene, i: int, any_words: bool = False) -> Named | None:
    """What is named from token i on; words that the vocabulary does not know need an article, unless `any_words`."""
    return scene.once(("named after", i, any_words), lambda: _after(scene, i, any_words))


def _after(scene: Scene, i: int, any_words: bool) -> Named | None:
    tokens, n = scene.tokens, len(scene.tokens)
    first, shown = i, any_words
    while first < n and not _names(scene, tokens[first]) and _is_passed(tokens[first]):
        shown = shown or (tokens[first].sense("article") is not None and tokens[first].low != "some")
        first += 1
    end = first + int(shown and first < n and _is_verb_too(scene, tokens[first]) and first > i)
    while end < n and end - first < LONGEST and (end == first or tokens[end].clause == tokens[first].clause):
        step = _step(scene, end, end > first)
        if not step:
            break
        end += step
    return _named(scene, first, _tail(tokens, end) if end > first else end, end, shown)


def before(scene: Scene, i: int) -> Named | None:
    """What is named right before token i: `the take-up spring` of `take-up spring it was`."""
    tokens, first = scene.tokens, i
    while first and i - first < LONGEST and tokens[first - 1].kind not in ("stop", "comma"):
        if not _step(scene, first - 1, True) or tokens[first - 1].low in JOINS:
            break
        first -= 1
    return _named(scene, first, i, i, True)


def _named(scene: Scene, first: int, end: int, head_end: int, shown: bool) -> Named | None:
    """The tokens first to end (exclusive) as a name, its head before head_end; None where they name no cause."""
    tokens = scene.tokens
    if first >= head_end or any(tokens[k].kind in ("number", "amount") for k in range(first, min(end, first + 1))):
        return None
    span = range(first, head_end)
    cause = next((k for k in span if tokens[k].sense("cause")), None)
    at = next((k for k in span if (t := tokens[k].thing) is not None and t.kind not in NO_PART), None)
    loose = next((name for k in span if (name := _loose(scene, tokens[k]))), "")
    thing = tokens[at].thing if at is not None else None
    sense = tokens[cause].sense("cause") if cause is not None else None
    name = sense.name if sense else (thing.name if thing else loose)
    known = cause is not None or thing is not None or bool(loose)
    plain = any(_is_plain(scene, tokens[k]) or (k == first and _is_verb_too(scene, tokens[k])) for k in span)
    if not known and not (shown and plain):
        return None
    words = spoken(scene.said(first, end - 1))
    return Named(first, end - 1, thing, name, known, words)


def _step(scene: Scene, k: int, inside: bool) -> int:
    """How many tokens from k on belong to a name: a noun, a state or a side one, `of the` before a noun two, else 0."""
    token = scene.tokens[k]
    if token.thing is not None:
        return 0 if token.thing.kind in NO_PART else 1
    if token.low in JOINS and inside:
        rest = scene.tokens[k + 1 : k + 3]
        lead = 1 + (len(rest) == 2 and rest[0].sense("article") is not None)
        head = rest[lead - 1] if len(rest) >= lead else None
        return lead if head is not None and _names(scene, head) and head.low not in no_causes(scene) else 0
    if inside and token.low in PLACES:
        return 1
    if token.low in ENDS or token.kind in ("stop", "comma", "amount", "number", "thread"):
        return 0
    if token.sense(*STATES, "side") or token.kind == "which" or _loose(scene, token):
        return 1
    return int(_is_plain(scene, token))


def _names(scene: Scene, token: Token) -> bool:
    """Whether a token can be the head of a name."""
    known = token.thing is not None or token.sense("cause") is not None
    return known or bool(_loose(scene, token)) or _is_plain(scene, token)


def no_causes(scene: Scene) -> frozenset[str]:
    """Words that name no cause."""
    return scene.book.lists["no_cause"]


def _is_plain(scene: Scene, token: Token) -> bool:
    """Whether it is a word that nobody foresaw, and may be a name."""
    return (
        token.kind == "word" and "other" in token.classes and len(token.low) >= WORD and token.low.isalpha()
        and token.low not in no_causes(scene) and token.low not in ENDS and token.low not in JOINS
        and not token.low.endswith(("ing", "nt", "ly"))
    )  # fmt: skip


def _is_verb_too(scene: Scene, token: Token) -> bool:
    """Whether a word that is mostly a verb may be a name behind an article: `a winding`, `the check`."""
    return bool(token.sense("do", "doing")) and " " not in token.low and token.low not in no_causes(scene)


def _loose(scene: Scene, token: Token) -> str:
    """The part that a word may name which is often none, `timing`, `screw`; else nothing."""
    if token.thing is not None or not (part := scene.book.answers(_part)[token.low]):
        return ""
    if token.sense("not", "copula", "person"):
        return ""
    if token.sense("did", "do", "doing", "does") and "other" not in token.classes:
        return ""
    return part


def _part(book: Rulebook, low: str) -> str:
    """The part that a word names, whatever else it says; empty for a word that names no cause."""
    if low in book.lists["no_cause"] or low in ENDS:
        return ""
    return next((str(s[1]) for s in book.table.get(low, ()) if s[0] == "part" and s[2] not in NO_PART), "")


def _is_passed(token: Token) -> bool:
    return bool(token.sense("article", "degree")) or token.low in PASSED


def _tail(tokens: list[Token], end: int) -> int:
    """The end of a name with the state that is said of it: `the seal has gone`, `the clutch ain't releasing`."""
    verb = False
    for k in range(end, min(len(tokens), end + TAIL)):
        token = tokens[k]
        if token.kind in ("stop", "comma") or token.clause != tokens[end - 1].clause:
            break
        if token.sense("bad") and (verb or k == end):
            return k + 1
        if not token.sense("copula", "not", "degree"):
            break
        verb = True
    return end
