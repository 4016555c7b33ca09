"""Whether a word that is often no part (`head`, `ring`, `lead`) is one where it stands."""

from __future__ import annotations

from worklog_tui.extract.tokens import Token

ARTICLES = frozenset(
    (
        "the a an this that these those my his her its our their your another any each every both all either same one"
    ).split()
)
AGE = frozenset("new old other original proper real spare good second-hand secondhand".split())
SUPPORT = frozenset("off out on is was are were looks all both".split())
BACK = frozenset("on in off out together".split())
"After `back`: `head back on`, not `head back to the shop`."
NOT_HERE = frozenset("yet here left".split())
"After `no` and what is waited for: `no spring yet`."
REFERS = frozenset("it its thats them theyre".split()) | {"had it", "is it", "got it"}
SOON = 4
"Tokens behind a heading and its comma in which a small word stands for it."
PLACED = frozenset("in up down back home oot".split())
"`Shoes up till they lock`, `shaft back, wheel back`: between the word that opens a clause and its end."


def supported(tokens: list[Token], i: int, first: int, j: int, typed: bool) -> bool:
    """Whether a word that is often no part (`head`, `ring`, `lead`) is one here."""
    if first > i or j - first > 1:
        return True
    before = tokens[i - 1] if i else None
    after = tokens[j] if j < len(tokens) else None
    if before is not None and (
        before.low in ARTICLES
        or before.low in AGE
        or before.sense("did", "do", "doing", "bad", "good", "want", "get", "shopping", "jobs")
    ):
        return True
    if before is not None and after is not None and before.low == "no" and after.low in NOT_HERE:
        return True
    if after is not None and after.low == "back" and j + 1 < len(tokens) and tokens[j + 1].low in BACK:
        return True
    if before is not None and before.kind == "number" and tokens[j - 1].low.endswith("s"):
        return True
    counted = typed and before is not None and before.kind in ("number", "loose")
    if typed and (_measured(tokens, first, j) or (counted and after is not None and after.sense("bad", "good"))):
        return True  # `1 spring stretched`
    if after is not None and (
        after.kind == "which"
        or after.low in SUPPORT
        or any(s.cls in ("bad", "good") and not s.weak for s in after.senses)
    ):
        return True
    if not (before is None or before.kind in ("stop", "comma")):
        return False
    if after is not None and after.kind in ("amount", "number") and _is_quality(tokens[first]):
        return True  # `deflection's thirty mil`
    if after is None or _heads(tokens, j):
        return True
    if typed and after.kind == "comma" and j + 1 < len(tokens) and _tells_one(tokens[j + 1]):
        return True  # `springs - left broken`
    if after.low in PLACED and (j + 1 == len(tokens) or _ends_here(tokens[j + 1])):
        return True
    if typed:
        return bool(after.senses) or after.kind in ("amount", "number")
    return any(s.cls in ("did", "does", "bad", "good", "noted") for s in after.senses)


def _heads(tokens: list[Token], j: int) -> bool:
    """Whether what ends before token j is a heading: `lining, I've had it relined`, `spring back to six`."""
    after = tokens[j]
    if after.kind == "stop" or after.low in (":", "back to", "while", "whilst"):
        return True  # `timing, while the light's out` comes to the timing
    if after.kind == "comma" and j + 1 < len(tokens) and tokens[j + 1].low in ("while", "whilst"):
        return True
    return after.kind == "comma" and any(t.low in REFERS for t in tokens[j + 1 : j + 1 + SOON])


def _measured(tokens: list[Token], first: int, j: int) -> bool:
    """Shorthand, which leaves the article out: `7 psi on case`, `20" bar`, `str edge on head .006`, `screws M5`."""
    before, after = tokens[first - 1] if first else None, tokens[j] if j < len(tokens) else None
    if after is not None and after.kind == "thread":
        return True
    if before is None:
        return False
    if before.kind == "amount":
        return after is None or after.kind in ("stop", "comma")
    if before.low not in ("on", "of", "in", "at", "across"):
        return False
    told = after is not None and after.kind in ("amount", "number")
    return told or (first > 1 and tokens[first - 2].kind in ("amount", "number"))


def _tells_one(token: Token) -> bool:
    """Whether a token tells one of several, or how they are."""
    return token.kind in ("which", "number", "amount") or bool(token.sense("side", "bad", "good"))


def _ends_here(token: Token) -> bool:
    return token.kind in ("stop", "comma") or token.low in ("and", "till", "until", "then", "with")


def _is_quality(token: Token) -> bool:
    sense = token.sense("part")
    return sense is not None and sense.kind == "quality"
