"""Names that the vocabulary does not know: `the ratchet dog is cracked` still names a part."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.things.named_as import spoken
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook import Rulebook

LONGEST = 3
ONES = frozenset({"one", "ones", "other", "others"})
STATES = frozenset({"bad", "good", "noted"})
UNKNOWN = frozenset({"thing", "unknown"})
BEFORE = frozenset("the this that these those my his her its our their both all old new other two three four".split())
COPULA = frozenset(
    ("is was are were isnt wasnt arent werent has had have looks look feels seems s wont doesnt dont").split()
)


def guess_things(text: str, tokens: list[Token], typed: bool, book: Rulebook) -> list[Token]:
    """The tokens with likely names, unknown to the vocabulary, as things that are marked so."""
    no_name = (book.lists["no_name"], book.lists["small_words"])
    tokens = _with_first_words(text, tokens, typed, no_name)
    begins = [i for i in range(len(tokens)) if typed or (i and tokens[i - 1].low in BEFORE)]
    ends = {i: end for i in begins if (end := _name(tokens, i, typed, no_name)) > i}
    if not ends:
        return tokens
    out: list[Token] = []
    i = 0
    while i < len(tokens):
        end = ends.get(i, i)
        if end > i:
            words = spoken(text[tokens[i].start : tokens[end - 1].end])
            which = " ".join(t.which or t.low for t in tokens[i:end] if t.kind == "which" or t.sense("side"))
            kind = "part" if end < len(tokens) and tokens[end].low in AGAIN else "unknown"
            thing = Thing(words, "", kind, which, words, known=False)
            low = " ".join(t.low for t in tokens[i:end])
            out.append(Token("thing", low, tokens[i].start, tokens[end - 1].end, UNKNOWN, thing=thing))
            i = end
        else:
            out.append(tokens[i])
            i += 1
    return out


def _with_first_words(text: str, tokens: list[Token], typed: bool, no_name: Lists) -> list[Token]:
    """The tokens with names that only end in a part that is known in all their words: `the tumbler dog`."""
    if not any([t.thing is not None and k and _noun(tokens[k - 1], no_name) for k, t in enumerate(tokens)]):  # noqa: C419
        return tokens
    out: list[Token] = []
    for k, token in enumerate(tokens):
        n = _first_words(tokens, out, k, typed, no_name) if token.thing is not None else 0
        if n and token.thing is not None:
            words = spoken(f"{text[out[-n].start : token.start]}{token.thing.words}")
            own = spoken(f"{text[out[-n].start : token.start]}{token.thing.own}")
            low, start = " ".join(t.low for t in (*out[-n:], token)), out[-n].start
            del out[-n:]
            token = Token(
                "thing", low, start, token.end, token.classes, thing=replace(token.thing, words=words, own=own)
            )
        out.append(token)
    return out


def _first_words(tokens: list[Token], out: list[Token], k: int, typed: bool, no_name: Lists) -> int:
    """How many plain words right before the thing at token k belong to its name."""
    thing = tokens[k].thing
    if thing is None or thing.kind not in NAMED_BY or thing.which:
        return 0
    n = 0
    while n < LONGEST - 1 and n < len(out) and _noun(out[-1 - n], no_name):
        n += 1
    before = out[-1 - n] if n < len(out) else None
    if n == 0 or (before is not None and before.low in BEFORE):
        return n
    after = tokens[k + 1] if k + 1 < len(tokens) else None
    told = after is None or after.low in COPULA or bool(after.sense(*STATES)) or after.kind in ("stop", "comma")
    opens = before is None or before.kind in ("stop", "comma")
    return n if opens and told and (typed or n == 1) else 0


NAMED_BY = frozenset({"part", "joint", "fastener", "control"})
"Kinds of things whose names are made longer by words in front."
NO_NOUN = ("ed", "ly", "est", "ing", "ous", "able", "ible", "ful", "less")
"Ends of words that are rather no nouns."
Lists = tuple[frozenset[str], frozenset[str]]
"Words that are no names: two lists, because joining them for every sentence takes longer than asking both."


def _noun(token: Token, no_name: Lists) -> bool:
    """Whether a word that the vocabulary does not know may stand in a name."""
    low = token.low
    plain = token.kind == "word" and not token.senses and len(low) > 2 and low.isalpha()
    return plain and low not in no_name[0] and low not in no_name[1] and not low.endswith(NO_NOUN)


def _name(tokens: list[Token], i: int, typed: bool, no_name: Lists) -> int:
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
    if after.low in AGAIN and all(_noun(t, no_name) for t in tokens[i:j]) and _told(tokens, j + 1):
        return j
    states = [s for s in after.senses if s.cls in STATES]
    return j if any(s.cls == "bad" and not s.weak for s in states) else i


def _told(tokens: list[Token], k: int) -> bool:
    """Whether a state of its own is told right at token k: `the spout, that has split`."""
    while k < len(tokens) and (tokens[k].low in COPULA or tokens[k].sense("degree")):
        k += 1
    return k < len(tokens) and any(s.cls in STATES and not s.weak for s in tokens[k].senses)


AGAIN = frozenset("that thats it its theyre".split())
"What a name is taken up with: `the spout, it's split`."


def _plain(token: Token) -> bool:
    return (
        (token.kind == "word" and len(token.low) > 2 and token.low.isalpha() and token.low not in ONES)
        or bool(token.sense("side"))
        or token.kind == "which"
    )
