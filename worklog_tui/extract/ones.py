"""`The left one`, `number three`, `the other`: a marker of which one stands for a thing that was named before."""

from __future__ import annotations

from worklog_tui.extract.context import Context
from worklog_tui.extract.finders.spelt_out import SIDES as SHORT_SIDES
from worklog_tui.extract.subjects import LETTERS, PLURALS, SIDES, as_thing, with_which
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.extract.which import NAMES
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.classes import thing_classes

STATES = ("bad", "good", "noted")
ONES = frozenset({"one", "ones"})
ORDINALS = frozenset("first second third fourth fifth sixth last".split())
OPENS = frozenset("and but so the only just while".split())
"Words after which a bare number or an ordinal may be the subject."
NONE_OF = frozenset({"machine", "tool", "fluid", "unknown"})
"Kinds of things that a number does not tell one of."
SAME = frozenset("same ditto likewise".split())
"What is said of another one: `the right one's the same`."
MOST = 12
MANY = frozenset("are were have arent werent havent".split())
"Verbs with which a number says how many: `four of them are fine, two are oily`."
MARKS, MARKING = frozenset({"which", "number"}), ONES | {"other", "others"}
"What a marker has in it."
VERBS = frozenset("does doesnt wont will has hasnt isnt wasnt cant is was comes goes leaks".split())
"What a state begins with that says of itself that a subject stands before it: `four does not want to come out`."
NUMBERED = {f"{name}s": number for name, number in NAMES.items() if number != "1"}
"`Three's fine`, as it is written without its apostrophe."
AXES = tuple(
    frozenset(row.split())
    for row in (
        "left right lh rh l/h r/h left-hand right-hand nearside offside port starboard n/s o/s l r",
        "top bottom upper lower middle",
        "front rear back",
        "inner outer inboard outboard",
        "inlet exhaust intake",
        "primary secondary",
        "leading trailing",
        "first second third fourth fifth sixth last top bottom",
    )
)
"Words that tell one of several from another of them."


def name_ones(tokens: list[Token], context: Context, book: Rulebook, typed: bool = False) -> list[Token]:
    """The tokens with such markers as things, where a state follows and something that there are several of was
    named.
    """
    marks = MARKS if context.topic is None else MARKS - {"number"}  # in a test a number is what was read
    if not any([t.kind in marks or "side" in t.classes or t.low in MARKING for t in tokens]) and not (  # noqa: C419
        typed and any(t.low in LETTERS for t in tokens)
    ):
        return tokens
    out: list[Token] = []
    i = 0
    while i < len(tokens):
        thing, end = _one(tokens, i, out, context, typed)
        if thing is None:
            out.append(tokens[i])
            i += 1
            continue
        low = " ".join(t.low for t in tokens[i:end])
        classes = thing_classes(thing.name, thing.kind, book.named)
        out.append(Token("thing", low, tokens[i].start, tokens[end - 1].end, classes, thing=thing))
        i = end
    return out


def _one(tokens: list[Token], i: int, out: list[Token], context: Context, typed: bool) -> tuple[Thing | None, int]:
    """The thing that a marker at token i stands for, and where its words end."""
    which, end = _letter(tokens, i) if typed and tokens[i].low in LETTERS else _markers(tokens, i)
    if tokens[i].kind == "number" and not _counts_which(tokens, which, end, typed):
        return None, i
    outright = bool(which) and tokens[end - 1].low in ONES
    if not which:
        which, end = _kind_of(tokens, i)
        outright = bool(which)
    if not which or not (outright or _state_follows(tokens, end, context.topic is not None)):
        return None, i
    many = tokens[end - 1].kind == "number" and (tokens[end - 1].value or 0) > 1
    named = _several([t.thing for t in out if t.thing is not None], context, which, many)
    if named is None:
        if tokens[i].kind == "which" and not outright and context.topic is None:
            return Thing(f"number {which}", "cylinder", "part", which, f"number {which}", "cylinder"), end
        return None, i
    if tokens[i].kind == "number" and not named.per and not tokens[end].sense("copula") and not _says(tokens[end]):
        return None, i  # `feet: three perished` counts them
    told_by = tokens[i].thing
    words = with_which(_without(named), which) if told_by is None else _one_of(told_by, named)
    return Thing(words, named.name, named.kind, which, words, named.per, named.quantities, named.system), end


def _counts_which(tokens: list[Token], which: str, end: int, typed: bool) -> bool:
    """Whether a bare number tells which one: `two is bent`, typed `2 wet`; not `two are oily`, `twelve wide`."""
    after = tokens[end] if end < len(tokens) else None
    if after is None or (after.low in MANY and " and " not in which):
        return False
    return bool(after.sense("copula")) or ((typed or _says(after)) and bool(after.sense("bad", "good")))


def _says(state: Token) -> bool:
    """Whether a state begins with a verb: `does not turn`."""
    return state.low.partition(" ")[0] in VERBS and " " in state.low


def _without(named: Thing) -> str:
    """The words of a thing without what told which one it was."""
    words, which = named.own or named.words, named.which
    if which and words.startswith(f"{which} "):
        return words.removeprefix(f"{which} ")
    if which and words.lower().startswith(("number ", "no ", "no. ")):
        return words.split(" ", 2)[2] if words.count(" ") > 1 else words
    return words.removesuffix(f" {which}") if which else words


def _kind_of(tokens: list[Token], i: int) -> tuple[str, int]:
    """`The motor one`: a thing that tells which of several is meant, and where its words end."""
    thing = tokens[i].thing
    named = thing is not None and thing.kind != "material" and i + 1 < len(tokens) and tokens[i + 1].low in ONES
    return (tokens[i].low, i + 2) if named and not _value_follows(tokens, i + 2) else ("", i)


def _one_of(thing: Thing, named: Thing) -> str:
    """`Motor pulley`: one of several by what it belongs to."""
    many = (named.own or named.words).split()[-1]
    return f"{thing.words} {many.removesuffix('s') if not many.endswith('ss') else many}"


def _value_follows(tokens: list[Token], end: int) -> bool:
    """Whether a number is told of it, which finds its own part."""
    return any(t.kind in ("number", "amount") for t in tokens[end : end + 3])


def _markers(tokens: list[Token], i: int) -> tuple[str, int]:
    """The markers that begin at token i, joined: `one, two and four`, and where they end."""
    which, end = _marker(tokens, i)
    numbers = which.isdigit()
    while numbers and end + 1 < len(tokens) and (tokens[end].low == "and" or tokens[end].kind == "comma"):
        k = end + 1 + (tokens[end + 1].low == "and")
        more, after = _marker(tokens, k) if k < len(tokens) else ("", k)
        if not more.isdigit():
            break
        which, end = f"{which} and {more}", after
    return which, end


def _marker(tokens: list[Token], i: int) -> tuple[str, int]:
    """The marker at token i and where it ends: `left one`, `right-hand ones`, `number two`, `the rear`, `the other`."""
    token = tokens[i]
    if token.kind == "which":
        return token.which, i + 1 + (i + 1 < len(tokens) and tokens[i + 1].low in ONES)
    before = tokens[i - 1] if i else None
    opens = before is None or before.kind in ("stop", "comma") or before.low in OPENS or bool(before.sense("break"))
    opens = opens or (token.kind == "number" and before is not None and bool(before.sense("good", "bad")))
    if opens and (token.low in ORDINALS or token.low.removesuffix("s") in ORDINALS or token.low in ("other", "others")):
        end = i + 1 + (i + 1 < len(tokens) and (tokens[i + 1].low in ONES or tokens[i + 1].kind == "number"))
        return token.low.removesuffix("s"), end
    if opens and token.low in NUMBERED:
        return NUMBERED[token.low], i + 1
    if token.kind == "number" and opens:
        whole = token.value is not None and token.value == int(token.value) and not token.pairs
        return (f"{token.value:g}", i + 1) if whole and 1 <= (token.value or 0) <= MOST else ("", i)
    return _side(tokens, i)


def _letter(tokens: list[Token], i: int) -> tuple[str, int]:
    """`Shoes: l oily, r ok`: a letter for a side, with a state right behind it."""
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    told = after is not None and bool(after.sense(*STATES))
    return (LETTERS[tokens[i].low], i + 1) if told else ("", i)


def _side(tokens: list[Token], i: int) -> tuple[str, int]:
    """The sides at token i, `left`, `right-hand one`, `back one`, and where they end."""
    token = tokens[i]
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
    return SHORT_SIDES.get(side) or (side.removesuffix("s") if side in PLURALS else side)


def _listed(tokens: list[Token], i: int) -> bool:
    """`Left broken, right ok`: another side was told of before."""
    axis = next((axis for axis in AXES if tokens[i].low in axis), frozenset())
    before = tokens[i - 1] if i else None
    return before is not None and before.kind == "comma" and any(t.low in axis or _of(t, axis) for t in tokens[:i])


def _of(token: Token, axis: frozenset[str]) -> bool:
    return token.thing is not None and token.thing.which in axis


def _state_follows(tokens: list[Token], end: int, running: bool) -> bool:
    """Whether a state is said right after: `is burnt`; under a running test `wet` only says how it was taken."""
    for token in tokens[end : end + 4]:
        if token.low in SAME:
            return True
        if any(token.sense(s) for s in STATES):
            return not (running and token.sense("how") and _value_follows(tokens, tokens.index(token, end)))
        if not (token.sense("copula", "degree", "not", "all", "pronoun", "article") or token.kind == "comma"):
            return False
    return False


def _several(said: list[Thing], context: Context, which: str, many: bool = False) -> Thing | None:
    """The last named thing that there are several of; a number looks for what is numbered first; with `many`, `the
    other five`, for what was named as several.
    """
    here = [t for t in reversed(said) if t.kind not in NONE_OF]
    before = [t for t in (as_thing(s) for s in context.things) if t.kind not in NONE_OF]
    if which.startswith("other"):
        found = next((t for t in [*here, *before] if many and _many(t) and t.kind != "quality"), None)
        return found or next((t for t in [*here, *before] if t.kind != "quality"), None)
    found = next((t for t in here if t.per or _many(t) or _another(t, which)), None)
    if found is None and which[:1].isdigit():
        now = [as_thing(s) for s in context.things if s.age == 0 and s.kind not in NONE_OF | {"quality"}]
        found = next((t for t in now if t.per or _many(t)), None) or next((t for t in before if t.per), None)
    return found or next((t for t in before if t.per or _many(t) or _another(t, which)), None)


def _many(thing: Thing) -> bool:
    words = (thing.words if thing.also else thing.own or thing.words).lower()
    return words.endswith("s") and not words.endswith(("ss", "us", "'s"))


def _another(thing: Thing, which: str) -> bool:
    """Whether the thing was itself one of several: of `top bearing`, the bottom one is another."""
    if not thing.which or thing.which == which:
        return False
    mine, theirs = which.split()[-1], thing.which.lower().split()[-1]
    return any(mine in axis and theirs in axis for axis in AXES)
