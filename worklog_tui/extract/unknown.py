"""Names that the vocabulary does not know: `the ratchet dog is cracked` still names a part."""

from __future__ import annotations

from worklog_tui.extract.named_as import spoken
from worklog_tui.extract.tokens import Thing, Token

LONGEST = 3
ONES = frozenset({"one", "ones", "other", "others"})
STATES = frozenset({"bad", "good", "noted"})
UNKNOWN = frozenset({"thing", "unknown"})
BEFORE = frozenset("the this that these those my his her its our their both all old new other two three four".split())
COPULA = frozenset(
    ("is was are were isnt wasnt arent werent has had have looks look feels seems s wont doesnt dont").split()
)


def guess_things(text: str, tokens: list[Token], typed: bool) -> list[Token]:
    """The tokens with likely names, unknown to the vocabulary, as things that are marked so."""
    out: list[Token] = []
    i = 0
    while i < len(tokens):
        end = _name(tokens, i, typed) if typed or (i and tokens[i - 1].low in BEFORE) else i
        if end > i:
            words = spoken(text[tokens[i].start : tokens[end - 1].end])
            which = " ".join(t.which or t.low for t in tokens[i:end] if t.kind == "which" or t.sense("side"))
            thing = Thing(words, "", "unknown", which, words, known=False)
            low = " ".join(t.low for t in tokens[i:end])
            out.append(Token("thing", low, tokens[i].start, tokens[end - 1].end, UNKNOWN, thing=thing))
            i = end
        else:
            out.append(tokens[i])
            i += 1
    return out


def _name(tokens: list[Token], i: int, typed: bool) -> int:
    """The end of a name of plain words that begins at token i; i when there is none."""
    before = tokens[i - 1] if i else None
    opens = before is None or before.kind in ("stop", "comma")
    if not ((before is not None and before.low in BEFORE) or (typed and opens)):
        return i
    j = i
    while j < len(tokens) and j - i < LONGEST and _plain(tokens[j]):
        j += 1
    if j == i or j == len(tokens) or not any(t.kind == "word" for t in tokens[i:j]):
        return i
    after = tokens[j]
    if after.low in COPULA or (typed and opens and after.low == ":"):
        return j
    states = [s for s in after.senses if s.cls in STATES]
    return j if any(s.cls == "bad" and not s.weak for s in states) else i


def _plain(token: Token) -> bool:
    return (
        (token.kind == "word" and len(token.low) > 2 and token.low.isalpha() and token.low not in ONES)
        or bool(token.sense("side"))
        or token.kind == "which"
    )
