"""`The left one`, `number three`, `the other`: a marker of which one stands for a thing that was named before."""

from __future__ import annotations

from worklog_tui.extract.context import Context
from worklog_tui.extract.things.cylinders import OF_CYLINDERS, counted, cylinder, is_judged, is_off, judges_a_number
from worklog_tui.extract.things.markers import NUMBERED, ONES, ORDINALS, letter, markers, state_follows, value_follows
from worklog_tui.extract.things.side_words import AXES, SIDES
from worklog_tui.extract.things.subjects import LETTERS, as_thing, name_with, with_which
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.classes import thing_classes

NONE_OF = frozenset({"machine", "tool", "fluid", "unknown"})
"Kinds of things that a number does not tell one of."
MANY = frozenset("are were have arent werent havent".split())
"Verbs with which a number says how many: `four of them are fine, two are oily`."
RIGHT_ONES = frozenset({"the right one", "the right ones", "right one", "right ones"})
"As often the proper one as the one on the right: that is meant where the left one was told of."
MARKS, MARKING = frozenset({"which", "number"}), ONES | RIGHT_ONES | {"other", "others"}
"What a marker has in it."
BEGINS = frozenset(
    (*SIDES, *ORDINALS, *(f"{word}s" for word in ORDINALS), *NUMBERED, *RIGHT_ONES, "other", "others", "back")
)
"What a marker begins with, but for numbers, letters and `the motor one`."
VERBS = frozenset("does doesnt wont will has hasnt isnt wasnt cant is was comes goes leaks".split())
"What a state begins with that says of itself that a subject stands before it: `four does not want to come out`."


def name_ones(tokens: list[Token], context: Context, book: Rulebook, typed: bool = False) -> list[Token]:
    """The tokens with such markers as things, where a state follows and something that there are several of was
    named.
    """
    judged = counted(context) and judges_a_number(tokens)
    marks = MARKS if context.topic is None or judged else MARKS - {"number"}  # in a test a number is what was read
    if not any([t.kind in marks or "side" in t.classes or t.low in MARKING for t in tokens]) and not (  # noqa: C419
        typed and any(t.low in LETTERS for t in tokens)
    ):
        return tokens
    behind = [t.low in ONES for t in tokens[1:]] + [False]
    begins = [
        t.kind in MARKS or t.low in BEGINS or (typed and t.low in LETTERS) or (one and t.thing is not None)
        for t, one in zip(tokens, behind, strict=True)
    ]
    out: list[Token] = []
    i = 0
    while i < len(tokens):
        thing, end = _one(tokens, i, out, context, typed) if begins[i] else (None, i)
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
    which, end = letter(tokens, i) if typed and tokens[i].low in LETTERS else markers(tokens, i)
    right = tokens[i].low in RIGHT_ONES and _beside_left(out, context)
    if right:
        which, end = "right", i + 1
    if tokens[i].kind == "number" and not _counts_which(tokens, which, end, typed):
        return None, i
    outright = right or (bool(which) and tokens[end - 1].low in ONES)
    if not which:
        which, end = _kind_of(tokens, i)
        outright = bool(which)
    told = outright or state_follows(tokens, end, context.topic is not None)
    if not which or not (told or (counted(context) and is_off(tokens, end))):
        return None, i
    many = tokens[end - 1].kind == "number" and (tokens[end - 1].value or 0) > 1
    said = [t.thing for t in out if t.thing is not None]
    meant = outright and (which != "right" or _beside_left(out, context))
    named = _just_named(said, context, which, many) if meant else None
    named = named or _several(said, context, which, many)
    verdicts = ("bad", "good") if named is None or named.kind == "quality" else ("bad",)
    if counted(context) and is_judged(tokens, end, verdicts):
        return cylinder(" ".join(t.low for t in tokens[i:end]) if which.startswith("other") else which), end
    if named is None:
        if tokens[i].kind == "which" and not outright and context.topic is None:
            return Thing(f"number {which}", "cylinder", "part", which, f"number {which}", "cylinder"), end
        return None, i
    if tokens[i].kind == "number" and not named.per and not tokens[end].sense("copula") and not _says(tokens[end]):
        return None, i  # `feet: three perished` counts them
    told_by = tokens[i].thing
    words = with_which(_without(named), which) if told_by is None else _one_of(told_by, named)
    name = name_with(named.name, which)
    return Thing(words, name, named.kind, which, words, named.per, named.quantities, named.system), end


def _beside_left(out: list[Token], context: Context) -> bool:
    """Whether the left one of several was told of in the sentence, in this note or the one before."""
    said = [t.thing.words for t in out if t.thing is not None] + [s.words for s in context.things if s.age <= 1]
    return any("left" in words.lower().replace("-", " ").split() for words in said)


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
    return (tokens[i].low, i + 2) if named and not value_follows(tokens, i + 2) else ("", i)


def _one_of(thing: Thing, named: Thing) -> str:
    """`Motor pulley`: one of several by what it belongs to."""
    many = (named.own or named.words).split()[-1]
    return f"{thing.words} {many.removesuffix('s') if not many.endswith('ss') else many}"


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


def _just_named(said: list[Thing], context: Context, which: str, many: bool) -> Thing | None:
    """The part that this note named last: there are others like it where one speaks of `the left-hand one`."""
    fresh = tuple(s for s in context.things if s.age == 0)
    if (several := _several(said, context._replace(things=fresh), which, many)) is not None:
        return several
    things = [*reversed(said), *map(as_thing, fresh)]
    part = next((t for t in things if t.kind in ("part", "joint", "control") and not t.loose), None)
    return part if part is not None and part.which != which else None


def _many(thing: Thing) -> bool:
    words = (thing.words if thing.also else thing.own or thing.words).lower()
    return words.endswith("s") and not words.endswith(("ss", "us", "'s"))


def _another(thing: Thing, which: str) -> bool:
    """Whether the thing was itself one of several: of `top bearing`, the bottom one is another."""
    told = thing.which.lower().split() or (thing.own or thing.words).lower().split()[:-1]
    mine = which.split()[-1:]
    return bool(mine) and mine[0] not in told and any(mine[0] in axis and not axis.isdisjoint(told) for axis in AXES)


def the_one(which: str, said: list[Thing], context: Context) -> Thing | None:
    """What a marker stands for where nothing is said of it at once: `Bottom one. Oh yes.`, `number two, hm`."""
    topic = context.topic
    if topic is not None and topic.quantity in OF_CYLINDERS and which.isdigit():
        return cylinder(which)
    named = _several(said, context, which)
    if named is None:
        return None
    words, name = with_which(_without(named), which), name_with(named.name, which)
    return Thing(words, name, named.kind, which, words, named.per, named.quantities, named.system)
