"""Words that tell which one of several: `left one`, `right-hand ones`, `number two`, `the rear`, `the other`."""

from __future__ import annotations

from worklog_tui.extract.things.side_words import AXES, PLURALS, SIDES
from worklog_tui.extract.things.spelt_out import SIDES as SHORT_SIDES
from worklog_tui.extract.things.subjects import LETTERS
from worklog_tui.extract.tokens import Token
from worklog_tui.extract.which import NAMES

STATES = ("bad", "good", "noted")
ONES = frozenset({"one", "ones"})
ORDINALS = frozenset("first second third fourth fifth sixth last".split())
OPENS = frozenset("and but so the only just while".split())
"Words after which a bare number or an ordinal may be the subject."
SAME = frozenset("same ditto likewise".split())
"What is said of another one: `the right one's the same`."
MOST = 12
NUMBERED = {f"{name}s": number for name, number in NAMES.items() if number != "1"}
"`Three's fine`, as it is written without its apostrophe."


def markers(tokens: list[Token], i: int) -> tuple[str, int]:
    """The markers that begin at token i, joined: `one, two and four`, and where they end."""
    which, end = marker(tokens, i)
    numbers = which.isdigit()
    while numbers and end + 1 < len(tokens) and (tokens[end].low == "and" or tokens[end].kind == "comma"):
        k = end + 1 + (tokens[end + 1].low == "and")
        more, after = marker(tokens, k) if k < len(tokens) else ("", k)
        if not more.isdigit():
            break
        which, end = f"{which} and {more}", after
    return which, end


def marker(tokens: list[Token], i: int) -> tuple[str, int]:
    """The marker at token i and where it ends: `left one`, `right-hand ones`, `number two`, `the rear`, `the other`."""
    token = tokens[i]
    if token.kind == "which":
        return token.which, i + 1 + (i + 1 < len(tokens) and tokens[i + 1].low in ONES)
    ordinal = token.low.removesuffix("s") in ORDINALS or token.low in ("other", "others")
    if not (ordinal or token.kind == "number" or token.low in NUMBERED):
        return _side(tokens, i)
    before = tokens[i - 1] if i else None
    opens = before is None or before.kind in ("stop", "comma") or before.low in OPENS or bool(before.sense("break"))
    opens = opens or (token.kind == "number" and before is not None and bool(before.sense("good", "bad")))
    if opens and ordinal:
        end = i + 1 + (i + 1 < len(tokens) and (tokens[i + 1].low in ONES or tokens[i + 1].kind == "number"))
        return token.low.removesuffix("s"), end
    if opens and token.low in NUMBERED:
        return NUMBERED[token.low], i + 1
    if token.kind == "number" and opens:
        whole = token.value is not None and token.value == int(token.value) and not token.pairs
        return (f"{token.value:g}", i + 1) if whole and 1 <= (token.value or 0) <= MOST else ("", i)
    return _side(tokens, i)


def letter(tokens: list[Token], i: int) -> tuple[str, int]:
    """`Shoes: l oily, r ok`: a letter for a side, with a state right behind it."""
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    told = after is not None and bool(after.sense(*STATES))
    return (LETTERS[tokens[i].low], i + 1) if told else ("", i)


def _side(tokens: list[Token], i: int) -> tuple[str, int]:
    """The sides at token i, `left`, `right-hand one`, `back one`, and where they end."""
    token = tokens[i]
    if token.low not in SIDES and token.low != "back":
        return "", i
    one = i + 1 < len(tokens) and tokens[i + 1].low in ONES
    if not ((token.sense("side") and token.low in SIDES) or (token.low == "back" and one)) or token.low in ("in", "ex"):
        return "", i
    end, words = i + 1, [_plain(token.low)]
    while end < len(tokens) and (
        tokens[end].low in ("one", "ones", "hand", "side") or (tokens[end].sense("side") and tokens[end].low in SIDES)
    ):
        if tokens[end].low not in ("one", "ones", "side"):
            words.append(_plain(tokens[end].low))
        end += 1
    before = tokens[i - 1].low if i else ""
    told = end > i + 1 or before in ("the", "and") or token.low not in ("right", "top", "back") or _listed(tokens, i)
    return (" ".join(words), end) if told else ("", i)


def _plain(side: str) -> str:
    """A side in all its words, one of several: `rh` and `rights` are right."""
    side = side.removesuffix(" hand")
    return SHORT_SIDES.get(side) or (side.removesuffix("s") if side in PLURALS else side)


def _listed(tokens: list[Token], i: int) -> bool:
    """`Left broken, right ok`: another side was told of before."""
    axis = next((axis for axis in AXES if tokens[i].low in axis), frozenset())
    before = tokens[i - 1] if i else None
    return before is not None and before.kind == "comma" and any(t.low in axis or _of(t, axis) for t in tokens[:i])


def _of(token: Token, axis: frozenset[str]) -> bool:
    return token.thing is not None and token.thing.which in axis


def state_follows(tokens: list[Token], end: int, running: bool) -> bool:
    """Whether a state is said right after: `is burnt`; under a running test `wet` only says how it was taken."""
    for token in tokens[end : end + 4]:
        if token.low in SAME:
            return True
        if any(token.sense(s) for s in STATES):
            return not (running and token.sense("how") and value_follows(tokens, tokens.index(token, end)))
        if not (token.sense("copula", "degree", "not", "all", "pronoun", "article") or token.kind == "comma"):
            return False
    return False


def value_follows(tokens: list[Token], end: int) -> bool:
    """Whether a number is told of it, which finds its own part."""
    return any(t.kind in ("number", "amount") for t in tokens[end : end + 3])
