"""Stance: how a stretch of words is meant: denied, supposed, planned, from the book, asked, told by others.

The words are in grammars/stance.toml. Each class has a reach: how far from its words it holds.
"""

from __future__ import annotations

from worklog_tui.extract.run_together import has_verb, thing_begins
from worklog_tui.extract.tokens import Token

CLAUSE, SENTENCE, NEAR, PHRASE = "clause", "sentence", "near", "phrase"
REACH = {
    "not": NEAR, "if": SENTENCE, "would": CLAUSE, "maybe": CLAUSE, "book": CLAUSE, "plan": CLAUSE, "reported": SENTENCE,
    "asked": SENTENCE, "memory": SENTENCE, "doubt": SENTENCE, "disown": SENTENCE, "joke": SENTENCE, "rule": SENTENCE,
    "meanwhile": PHRASE, "wondered": CLAUSE,
}  # fmt: skip
REACHING = frozenset(REACH)
NEAR_TOKENS = 5
NONE_OF = frozenset({"no", "without", "nowt", "none"})
PHRASE_TOKENS = 7
SUBJECTS = frozenset(
    (
        "its thats theres shes hes heres theyre i ive im ill we weve you youre youve id he she they okay ok alright "
        "anyway"
    ).split()
) | {"we will", "we are", "he will", "she will"}
"Words with which a new clause begins when no punctuation tells."
INVERTED = frozenset("should shall could can would must might may will".split())
"Before a subject they ask: `should I replace the chain`."
KEEPS_GOING = frozenset(
    (
        "if when till until where how what that which before after like think reckon said says because as while "
        "whether than and guess bet hope know or until whenever once"
    ).split()
)


def number_clauses(tokens: list[Token], boundary: int = 0) -> None:
    """Numbers the clauses, in place: a new one after a stop, at a breaking word, where a new subject begins, and with
    the note that begins at the boundary, unless the last words of the note before wait for more.
    """
    clause, before = 0, None
    for i, token in enumerate(tokens):
        if before is not None and (
            before.kind == "stop"
            or "break" in token.classes
            or ((before.kind == "comma" or token.low in SUBJECTS) and _begins_anew(tokens, i))
            or thing_begins(tokens, i)
            or (before.start < boundary <= token.start and _new_thought(tokens, i))
        ):
            clause += 1
        token.clause = clause
        before = token


def _new_thought(tokens: list[Token], i: int) -> bool:
    """Whether a note that goes on without a stop begins with a thought of its own."""
    token, before = tokens[i], tokens[i - 1]
    if before.kind == "comma" or before.low in KEEPS_GOING | WAITING or token.low in WAITING:
        return False
    if before.sense("article", "objectword", "copula", "side", "degree", "did", "do", "doing", "setto", "about"):
        return False
    goes_on = token.sense("copula", "reads", "bad", "good", "noted", "side")
    return token.kind in ("thing", "word", "term") and not goes_on


WAITING = frozenset("on in of at by to from with under over into onto off through round for like and or not".split())
"Words that wait for more."


def _begins_anew(tokens: list[Token], i: int) -> bool:
    """Whether token i begins a clause of its own: a subject pronoun, or a thing after a comma that has its own verb."""
    token, before = tokens[i], tokens[i - 1]
    if token.low in SUBJECTS:
        if token.low == "its" and token.end - token.start == len("its") and before.low.rpartition(" ")[2] in WAITING:
            return False  # `on its key`
        return before.low not in KEEPS_GOING and before.low not in INVERTED and not before.sense("break")
    if before.kind != "comma":
        return False
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    return (
        token.kind in ("thing", "which")
        and after is not None
        and (bool(after.sense("copula", "bad", "good", "noted")) or after.kind in ("amount", "number"))
    )


def mark_stances(tokens: list[Token]) -> None:
    """Puts on every token the stances that hold for it, in place; a sentence that ends in a question mark is asked."""
    if tokens and tokens[-1].low == "?" and tokens[-1].kind == "stop" and not _is_tag(tokens, len(tokens) - 2):
        for token in tokens:
            token.stances |= {"asked"}
    _mark_jobs(tokens)
    _mark_none(tokens)
    for i, token in enumerate(tokens):
        if REACHING.isdisjoint(token.classes):
            continue
        for sense in token.senses:
            reach = REACH.get(sense.cls)
            if reach is not None and not _is_none(sense.cls, tokens, i):
                for other in _held(tokens, i, reach, sense.cls):
                    other.stances |= {sense.cls}


def _is_none(cls: str, tokens: list[Token], i: int) -> bool:
    """Whether the words of a stance are none here: what got to fifty degrees is there, and `you can feel it if you rock
    the shaft` tells how it is felt.
    """
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    if cls == "plan":
        return tokens[i].low == "got to" and after is not None and after.kind in ("amount", "number")
    if cls == "if":
        return after is not None and after.low == "you" and any(t.sense("sensed") for t in tokens[max(0, i - 3) : i])
    return cls == "asked" and not _asks(tokens, i)


def _mark_none(tokens: list[Token]) -> None:
    """`No oil running down it`, `no water dripping off`: none does what is told next, which is denied."""
    for k in [k for k, token in enumerate(tokens[:-1]) if token.low[:3] == "no "]:
        before, token = tokens[k], tokens[k + 1]
        none = before.sense("bad", "good", "noted") and before.clause == token.clause
        if none and token.sense("bad") and token.low.partition(" ")[0].endswith("ing"):
            token.stances |= {"not"}


def _mark_jobs(tokens: list[Token]) -> None:
    """`Left to do: set the points, clean the tank`: the deeds that head the members of a list of jobs are planned."""
    if not [token for token in tokens if "colon" in token.classes]:
        return
    listed = False
    for head, colon, token in zip(tokens, tokens[1:], tokens[2:], strict=False):
        heads = head.low == "next" or not head.classes.isdisjoint(("jobs", "later"))
        listed = listed or (heads and "colon" in colon.classes)
        if listed and colon.kind == "comma" and token.sense("do"):
            token.stances |= {"plan"}


TAGS = frozenset(
    [
        "is it",
        "isnt it",
        "hasnt it",
        "has it",
        "wasnt it",
        "was it",
        "aint it",
        "doesnt it",
        "does it",
        "are they",
        "arent they",
        "dont they",
        "didnt it",
        "did it",
        "cant it",
        "eh",
        "huh",
        "right",
        "innit",
        "see",
    ]
)


def _is_tag(tokens: list[Token], i: int) -> bool:
    """Whether the sentence ends in `isn't it` or the like, which asks nothing."""
    if i < 1:
        return False
    return tokens[i].low in TAGS or f"{tokens[i - 1].low} {tokens[i].low}" in TAGS


def _asks(tokens: list[Token], i: int) -> bool:
    """Whether words of asking stand at the head of their clause and are no tag at its end."""
    before = tokens[i - 1] if i else None
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    if after is None or after.kind == "stop" or _says_what(tokens, i):
        return False
    return before is None or before.kind in ("stop", "comma") or bool(before.sense("break", "filler", "person"))


def _says_what(tokens: list[Token], i: int) -> bool:
    """`What's in the tank is thick as treacle`: what is told of, no question."""
    if tokens[i].low not in ("whats", "what is") or tokens[-1].low == "?":
        return False
    rest = (t for t in tokens[i + 2 :] if t.clause == tokens[i].clause)
    return any(t.low in ("is", "was", "are", "were", "looks", "smells") for t in rest)


def _held(tokens: list[Token], i: int, reach: str, cls: str) -> list[Token]:
    here = tokens[i]
    if reach == PHRASE:
        rest = tokens[i : i + PHRASE_TOKENS]
        ends = (
            n for n, t in enumerate(rest) if t.kind in ("stop", "comma") or t.clause != here.clause or t.low == "and"
        )
        return rest[: next(ends, len(rest))]
    if reach == NEAR:
        held: list[Token] = []
        for k, other in enumerate(tokens[i + 1 : i + 1 + NEAR_TOKENS], i + 1):
            if (
                other.kind in ("stop", "comma")
                or other.clause != here.clause
                or other.low in ("and", "but", "just", "only")
            ):
                break
            if here.low in NONE_OF and other.sense("did") and tokens[k - 1].low in ("it", "there", "them", "that"):
                break  # `no bits in it, filled it up`, run together
            held.append(other)
        return held
    if reach == CLAUSE:
        first, last = i, i
        while first and tokens[first - 1].clause == here.clause:
            first -= 1
        while last + 1 < len(tokens) and tokens[last + 1].clause == here.clause and not _tells_on(tokens, last + 1):
            last += 1
        return tokens[first : last + 1] if cls in ("would", "book") else tokens[i : last + 1]
    first, last = i, i
    while first and tokens[first - 1].kind != "stop" and cls in ("asked", "doubt", "disown", "memory", "joke"):
        if cls == "asked" and tokens[first - 1].clause != here.clause:
            break
        first -= 1
    while (
        last + 1 < len(tokens)
        and tokens[last + 1].kind != "stop"
        and not (cls == "if" and _ends_if(tokens, i, last + 1))
    ):
        last += 1
    return tokens[first : last + 1]


def _tells_on(tokens: list[Token], i: int) -> bool:
    """Whether talk goes on with what there is: `before I do anything the cap comes off and it's over the line`."""
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    return tokens[i].low == "and" and after is not None and (after.low in TELLS_ON or has_verb(tokens, i + 1))


TELLS_ON = frozenset("its thats theyre shes hes theres ive weve".split())


def _ends_if(tokens: list[Token], i: int, k: int) -> bool:
    """Whether token k tells on behind the `if` at token i and what then: talk without stops does so at once."""
    if tokens[k].low in ("but", "so", "anyway", "cause", "because"):
        return True
    return tokens[k].clause > tokens[i].clause + THEN and tokens[k].low in TELLS_ON


THEN = 2
"Clauses of what is supposed and of what would come of it."
