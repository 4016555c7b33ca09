"""A number is of what its clause begins with: `delivery's at seven bar`, `run-out in taper .004`, `oil level
down 10 mm`.

Asked only where no part that the number suits stands by it, and only of names that the vocabulary does not know or
knows as what is measured, not as a part: the parts are weighed in `whose.py`.
"""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.measured.never import never
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.things.named_here import NO_NAME, OPENERS, TOLD_BY, named_before
from worklog_tui.extract.things.side_words import SIDES
from worklog_tui.extract.tokens import Thing, Token

LONGEST = 4
"Words of a name."
REACH = 5
"Tokens between a name and its number."
TELLS = ("copula", "reads", "book", "must", "want")
"Classes of the words with which something is told of a name."
PASSED_OVER = ("article", "break", "filler", "degree")
FIGURES = frozenset({"amount", "number"})
GENERAL = frozenset("temperature temp pressure speed voltage volts current amps clearance gap timing".split())
"Words for a quantity alone that the vocabulary knows as one of some part."
NUMBERED = frozenset("number serial model type plate engine frame size leave left".split())
"Words with which no such name is told: what is a number by itself, what is left for a time."
PLACES = frozenset("in of at to on across between".split())
"What leads from a quantity to what it is of: `run-out in taper`, `clearance to the plate`."


def headed_by(scene: Scene, i: int, wanted: tuple[str, ...]) -> Thing | None:
    """The name right before the number at token i, else what its clause begins with; None where it is no such name."""
    if name := named_before(scene, i):
        return Thing(name, "", "unknown", own=name, known=False)
    return scene.once(("headed", i, wanted), lambda: _opening(scene, i, wanted))


def _opening(scene: Scene, i: int, wanted: tuple[str, ...]) -> Thing | None:
    """What the clause of the number at token i begins with, by its name; None where it is no such name."""
    tokens, k = scene.tokens, scene.clause(i).start
    while k < i and tokens[k].thing is None and (tokens[k].low in OPENERS or tokens[k].sense(*PASSED_OVER)):
        k += 1
    first, small_words = k, scene.book.lists["small_words"]
    k = _end(tokens, k, i, small_words)
    names = [t for t in tokens[first:k] if not t.sense("side") and t.kind != "which"]
    said_by = first > scene.clause(i).start and tokens[first - 1].sense("person", "pronoun")  # `the kit they sent is`
    if not names or said_by or any(t.low in TOLD_BY or not NUMBERED.isdisjoint(t.low.split()) for t in names):
        return None
    if len(names) == 1 and names[0].thing is None and k == i and tokens[i].amount is None:
        return None  # a word and a bare number are too little
    if any(t.thing is not None and never(t.thing, wanted, scene.book) for t in names):
        return None
    if all(_only_quantity(t, scene) for t in names):
        end = _led_to(tokens, k, i, small_words)
        if end == k:
            return None
        k = end
    if not _told_of(scene, k, i):
        return None
    words, last = _words(scene, first, k), names[-1].thing
    if last is None or last.kind == "unknown":
        return Thing(words, "", "unknown", own=words, known=False)
    return replace(last, words=words, own=words, which="")


def _words(scene: Scene, first: int, end: int) -> str:
    """The name in words, without the verb or the side that stands at its end."""
    while end - 1 > first and (scene.tokens[end - 1].sense("side") or scene.tokens[end - 1].kind == "which"):
        end -= 1
    last = scene.tokens[end - 1].thing
    words = scene.said(first, end - 1).removesuffix("'s").removesuffix("\u2019s")
    if last is None or not last.which or not last.own:
        return words
    return " ".join((scene.said(first, end - 2), last.own)) if end - 1 > first else last.own


def _end(tokens: list[Token], k: int, i: int, small_words: frozenset[str]) -> int:
    """The end of a name that begins at token k."""
    first = k
    while k < i and k - first < LONGEST and _of_name(tokens, k, first, small_words):
        k += 1
    return k


def _led_to(tokens: list[Token], k: int, i: int, small_words: frozenset[str]) -> int:
    """The end of what a quantity that ends at token k is of; k where no word leads to it."""
    if k >= i or tokens[k].low not in PLACES:
        return k
    n = k + 1
    while n < i and tokens[n].sense("article"):
        n += 1
    end = n
    while end < i and end - n < LONGEST - 1 and (
        tokens[end].thing is not None or tokens[end].sense("side") or _of_name(tokens, end, n, small_words)
    ):  # fmt: skip
        end += 1
    return end if end > n and end < i else k


def _only_quantity(token: Token, scene: Scene) -> bool:
    """Whether a word names a quantity alone, `gap`, which is of something else."""
    if token.thing is None:
        return token.low in scene.book.topics
    thing = token.thing
    words = [w for w in thing.words.lower().split() if w not in SIDES]
    return len(words) == 1 and (thing.name in scene.book.topics or words[0].removesuffix("'s") in GENERAL)


def _told_of(scene: Scene, k: int, i: int) -> bool:
    """Whether the number is told of the name that ends before token k: nothing else is named between them."""
    between, token = scene.tokens[k:i], scene.tokens[k]
    figures = sum(t.kind in FIGURES for t in between)
    if i - k > REACH + 4 * min(figures, 2) or any(_names_other(t) for t in between):
        return False
    owns = scene.text[: scene.tokens[k - 1].end].endswith(("'s", "\u2019s"))
    if token.kind in FIGURES or owns or token.sense(*TELLS) or token.low in VERBS or token.low == ":":
        return True
    return scene.typed or (token.kind == "comma" and k + 1 == i)


VERBS = frozenset(
    "sat stood reached hit stays stayed "
    "sits stands holds runs lifts opens shuts closes blows trips drops dips rises climbs settles measures shows pulls "
    "draws weighs makes gives needs went came started stopped held read lifted opened dropped fell rose".split()
)


def _names_other(token: Token) -> bool:
    """Whether a token is another thing or a new subject."""
    named = token.thing is not None and token.thing.kind != "unknown"
    return named or token.kind == "stop" or bool(token.sense("person"))


def _of_name(tokens: list[Token], k: int, first: int, small_words: frozenset[str]) -> bool:
    """Whether token k can be of such a name, which begins at token first."""
    token = tokens[k]
    if token.thing is not None:
        return token.thing.kind in ("unknown", "quality", "material")
    if token.sense("side"):
        return token.low not in PLACES
    if token.low in small_words or token.low in VERBS or token.sense(*TELLS) or token.kind not in ("word", "term"):
        return False
    noun = token.sense("part", "do") and k > first and tokens[k - 1].kind == "word"  # `steel shim`, which is a deed too
    if token.sense(*NO_NAME) and not (noun and tokens[k + 1].kind in FIGURES):
        return False
    return token.low.replace("-", "").isalpha() and len(token.low) > 2
