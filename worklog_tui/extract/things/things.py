"""Things: the words that name a part are folded into one token, with which one it is and what it belongs to."""

from __future__ import annotations

from functools import lru_cache

from worklog_tui.extract.things.named_as import meant_words
from worklog_tui.extract.things.spelt_out import spelt_out
from worklog_tui.extract.things.supported import ARTICLES, supported
from worklog_tui.extract.tokens import ARROW, Thing, Token
from worklog_tui.rulebook import Rulebook, Sense
from worklog_tui.rulebook.classes import thing_classes, token_classes

OWNED = frozenset("my his her your our their".split())
BEHIND = frozenset(
    ("lh rh l/h r/h left-hand right-hand front rear inlet exhaust nearside offside upper lower inner outer").split()
)
"Sides that may stand behind the name: `seal lh`, `hose front`."
PUMPING = frozenset({"pump", "jack", "hammer"})
"Names that are verbs before a pronoun."
IT = frozenset({"it", "them", "em", "her", "up"})
DOING = frozenset("im were ive weve been".split())
_classes = lru_cache(maxsize=2000)(thing_classes)
"The same things are named again and again."
CANS = frozenset("oil fuel petrol gas water jerry diesel paint spray".split())
"What a can is for; else `can` behind a part says what may be done with it."


def fold_things(text: str, tokens: list[Token], book: Rulebook, typed: bool, boundary: int = 0) -> list[Token]:
    """The tokens with every mention of a thing as one token; where a note begins at the boundary, a new name does."""
    folded: list[Token] = []
    i = 0
    while i < len(tokens):
        token = tokens[i]
        begins = not BEGINS.isdisjoint(token.classes) or token.low in ("hand", "side") or token.kind == "which"
        end = _mention(tokens, i, typed, book, boundary) if begins else i
        if end == i:
            folded.append(_no_part(token, book) if "part" in token.classes else token)
            i += 1
            continue
        folded.append(_thing_token(text, tokens[i:end], book, typed))
        i = end
    return folded


BEGINS = frozenset({"part", "side", "which"})
"Classes of tokens with which a mention may begin; so may `hand` and `side`."


def _mention(tokens: list[Token], i: int, typed: bool, book: Rulebook, boundary: int = 0) -> int:
    """The end of the mention that begins at token i; i when none does."""
    if i and tokens[i].low.endswith("ing") and tokens[i - 1].low in DOING:
        return i  # `I'm winding some tape round it`
    if "temporary" in tokens[i].classes and _is_for_now(tokens, i):
        return i
    j, parts = i, 0
    if tokens[i].low == "can" and i and tokens[i - 1].sense("person"):
        return i  # `I can slide a blade under it`
    if tokens[i].low == "well" and not (i and (tokens[i - 1].low in ARTICLES or tokens[i - 1].sense("part"))):
        return i  # `well, forty-four`
    if tokens[i].low == "end" and _in_the_end(tokens, i):
        return i
    if tokens[i].low == "plate" and i + 1 < len(tokens) and tokens[i + 1].sense("part") and _opens(tokens, i):
        return i  # `plate spindle motor 1.5 kW`
    if tokens[i].low in PUMPING and i + 1 < len(tokens) and tokens[i + 1].low in IT:
        return i  # `pump it up`
    while j < len(tokens) and _is_side(tokens, j):
        j += 1
    first = j
    while j < len(tokens) and tokens[j].kind == "term" and "part" in tokens[j].classes:
        if parts and (_goes_on_otherwise(tokens, j) or tokens[j - 1].start < boundary <= tokens[j].start):
            break
        parts += 1
        j += 1
    if not parts or _is_verb(tokens, first, j, book):
        return i
    loose = all(sense.weak for t in tokens[first:j] if (sense := t.sense("part")))
    if loose and not supported(tokens, i, first, j, typed):
        return i
    if (
        (j < len(tokens) and _is_number_of(tokens, first, j))
        or (j < len(tokens) and tokens[j].kind == "which")
        or (j < len(tokens) and "side" in tokens[j].classes and tokens[j].low in BEHIND)
    ):
        j += 1
    return j


def _goes_on_otherwise(tokens: list[Token], j: int) -> bool:
    """Whether a word that may name a part tells more of the one before: `the belt can stay`, `gasket cut from card`."""
    if tokens[j].sense("reads", "function") and j + 1 < len(tokens) and tokens[j + 1].kind in ("number", "amount"):
        return True  # `safety valve lifts 105`
    if tokens[j].sense("did", "does") and j + 1 < len(tokens) and not tokens[j + 1].sense("part"):
        return True
    return tokens[j].low == "cut" or (tokens[j].low == "can" and tokens[j - 1].low not in CANS)


def _in_the_end(tokens: list[Token], i: int) -> bool:
    """`Three hours in the end`: no end of anything."""
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    closes = after is None or after.kind in ("stop", "comma") or after.low in ("and", "but", "so")
    return closes and [t.low for t in tokens[max(0, i - 2) : i]] == ["in", "the"]


def _opens(tokens: list[Token], i: int) -> bool:
    return i == 0 or tokens[i - 1].kind == "stop"


def _is_for_now(tokens: list[Token], i: int) -> bool:
    """Whether `temp` says temporary, not temperature: `temp gasket`, not `temp gauge`, `temp 80`."""
    part = tokens[i + 1].sense("part") if i + 1 < len(tokens) else None
    return part is not None and part.kind not in ("tool", "quality", "control", "electric", "fluid")


def _is_verb(tokens: list[Token], first: int, j: int, book: Rulebook) -> bool:
    """`Pump it`, `oil them`, `my knee`: a word for a part that is a verb here, or a part of a person."""
    before = tokens[first - 1] if first else None
    if before is not None and before.low in OWNED and tokens[first].low in book.lists["body"]:
        return True
    if j == first + 1 and j < len(tokens) and tokens[j].kind in ("amount", "number") and tokens[first].sense("reads"):
        return True  # `draws 3.4 A`
    opens = before is None or before.kind in ("stop", "comma") or before.low in ("and", "then", "to")
    it = j == first + 1 and j < len(tokens) and tokens[j].low in ("it", "them", "em")
    if it and (" " in tokens[first].low or (j + 1 < len(tokens) and tokens[j + 1].sense("copula", "book", "reads"))):
        return False  # `float height it should be seven eighths`
    return opens and it


def _is_side(tokens: list[Token], j: int) -> bool:
    """A side or a number that stands before the name: `left exhaust valve`, `number two plug`."""
    token = tokens[j]
    if token.low in ("in", "ex", "first", "sec", "pri"):
        return False
    if token.kind == "which":
        k = j + 1
    elif "side" in token.classes:
        k = j + 1
        if k < len(tokens) and tokens[k].low in ("hand", "side"):
            k += 1
    elif token.low in ("hand", "side") and j and tokens[j - 1].sense("side"):
        k = j + 1
    else:
        return False
    while k < len(tokens) and ("side" in tokens[k].classes or tokens[k].kind == "which"):
        k += 1
    return k < len(tokens) and tokens[k].kind == "term" and "part" in tokens[k].classes


ONE_OF = frozenset("of side end way more thing that which or time day".split())
"Before these `one` is no number: `a plug one of them broke`, `the cylinder one side`."


def _is_number_of(tokens: list[Token], first: int, j: int) -> bool:
    """`cylinder 2`, `plug four`: a small whole number right after what there are several of."""
    token, part = tokens[j], tokens[j - 1].sense("part")
    if j + 1 < len(tokens) and tokens[j + 1].low in (":", ARROW):
        return False
    single = token.low == "one" and (token.value is None or token.value == 1)
    if single and part is not None and part.per in ("cylinder", part.name):
        before, after = tokens[first - 1] if first else None, tokens[j + 1] if j + 1 < len(tokens) else None
        return not (before and before.low in ARTICLES) and (after is None or after.low not in ONE_OF)
    return (
        part is not None and bool(part.per) and token.kind == "number" and token.value is not None
        and token.value == int(token.value) and 1 <= token.value <= 12 and not token.pairs
    )  # fmt: skip


def _no_part(token: Token, book: Rulebook) -> Token:
    """A term that names no thing here keeps its other senses."""
    if token.sense("part") is None:
        return token
    token.senses = tuple(s for s in token.senses if s.cls != "part")
    token.classes = token_classes(token.senses, token.low, book.named)
    return token


def _thing_token(text: str, tokens: list[Token], book: Rulebook, typed: bool) -> Token:
    parts = [t for t in tokens if "part" in t.classes]
    head: Sense = parts[-1].sense("part")  # type: ignore[assignment]
    if len(parts) > 1:
        whole = book.table.get(" ".join(t.low for t in parts), ())
        head = next((Sense(*s) for s in whole if s[0] == "part"), head)
    which = " ".join([_which_of(t) for t in tokens if "part" not in t.classes and t.low not in ("hand", "side")])
    start, end = tokens[0].start, tokens[-1].end
    words, loose = meant_words(text, tokens), len(parts) == 1 and head.weak
    words = spelt_out(words, head.name, begun=False) if typed else words
    thing = Thing(words, head.name, head.kind, which.strip(), words, head.per, head.of, head.system, loose=loose)
    low = " ".join([t.low for t in tokens])
    return Token("thing", low, start, end, _classes(head.name, head.kind, book.named, low), thing=thing)


def _which_of(token: Token) -> str:
    return token.which or (f"{token.value:g}" if token.value is not None else "1" if token.low == "one" else token.low)
