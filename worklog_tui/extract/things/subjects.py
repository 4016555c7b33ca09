"""Which thing is meant: the nearest one said, or what was talked of before."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

from worklog_tui.extract.context import SUBJECT_LIFE, Subject
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.things.salience import ranked
from worklog_tui.extract.things.side_words import AXES, ENDS, PLURALS, SIDES
from worklog_tui.extract.things.sides import FIRM, side_behind_at
from worklog_tui.extract.things.told_beside import side_told_behind
from worklog_tui.extract.tokens import Thing
from worklog_tui.extract.which import NAMES

Fits = Callable[[Thing], bool]


def always(_: Thing) -> bool:
    """Any thing fits."""
    return True


def nearest(scene: Scene, i: int, fits: Fits = always, before_first: bool = True) -> int | None:
    """The index of the thing of the clause that token i is about: the last one before it, else the first after it."""
    span = scene.clause(i)
    before = [k for k in scene.things(span) if k < i and fits(_thing(scene, k))]
    after = [k for k in scene.things(span) if k > i and fits(_thing(scene, k))]
    order = (before[-1:], after[:1]) if before_first else (after[:1], before[-1:])
    return next((k for ks in order for k in ks), None)


def earlier(scene: Scene, i: int, fits: Fits = always) -> int | None:
    """The fitting thing of the sentence before the clause of token i that the talk is most about."""
    found = [
        (k, score) for k, score in ranked(scene, scene.clause(i).start, []) if fits(_thing(scene, k)) and score > -3
    ]
    return found[0][0] if found else None


def remembered(scene: Scene, fits: Fits = always, fresh: int = SUBJECT_LIFE) -> Thing | None:
    """The newest fitting thing that was talked of before this sentence, the heading last."""
    things = [as_thing(s) for s in scene.context.things if s.age <= fresh]
    if scene.context.heading is not None:
        things.append(as_thing(scene.context.heading))
    return next((t for t in things if fits(t)), None)


@lru_cache(maxsize=256)
def as_thing(subject: Subject) -> Thing:
    """A remembered subject as a thing; asked for by every rule that looks back."""
    return Thing(
        subject.words,
        subject.name,
        subject.kind,
        subject.which,
        subject.words,
        subject.per,
        subject.quantities,
        subject.system,
    )


def _thing(scene: Scene, k: int) -> Thing:
    thing = scene.tokens[k].thing
    assert thing is not None
    return thing


def which_at(scene: Scene, i: int) -> tuple[str, int]:
    """The marker of which one (`number three`, `left inlet`) nearest before token i in its clause, else right after,
    and its index.
    """
    span = scene.clause(i)
    if side_behind(scene, i):
        return scene.tokens[i + 1].low, i + 1
    if (behind := side_told_behind(scene, i)) is not None:
        return behind
    for k in range(i - 1, span.start - 1, -1):
        token = scene.tokens[k]
        if token.kind == "which":
            return token.which, k
        if scene.typed and token.low in LETTERS and _tells_side(scene, k) and not _turned(scene, i):
            return LETTERS[token.low], k
        if (token.low == "back" and _back_one(scene, k)) or (token.low == "backs" and k == i - 1):
            return "back", k  # `back's eighty-four`
        if token.low in SIDES and token.sense("side"):
            words, first = sides_from(scene, k)
            if token.low == "rr" and any(t.low in CORNERS for t in scene.tokens):
                return "right rear", k
            if first < k or stands_alone(scene, k):
                return words, k
        if token.kind in ("amount", "number") and k < i - 1 and token.low not in ("one", "ones"):
            break
    if i + 1 < len(scene.tokens) and scene.tokens[i + 1].kind == "which" and not _heads_next(scene, i + 2):
        return scene.tokens[i + 1].which, i + 1
    return "", -1


def _turned(scene: Scene, i: int) -> bool:
    """Whether the number is of turns: `L 1 1/8 out` is said of a screw that is stamped so."""
    amount = scene.tokens[i].amount
    return amount is not None and amount.unit == "turn"


CORNERS = frozenset({"lf", "rf", "lr"})
"Beside one of these `rr` is a corner too."
LETTERS = {"l": "left", "r": "right"}


def _tells_side(scene: Scene, k: int) -> bool:
    """Shorthand: `tyres L 0.8 R 2.0`, `R side .018`: a letter in front of a number."""
    after = scene.tokens[k + 1 : k + 3]
    if after and after[0].low in ("side", "hand", ":", "="):
        after = after[1:]
    return bool(after) and after[0].kind in ("number", "amount")


def side_behind(scene: Scene, i: int) -> bool:
    """`twelve inlet, fifteen exhaust`: a side right behind the number, with nothing of its own behind it."""
    return side_behind_at(scene.tokens, i)


def _heads_next(scene: Scene, k: int) -> bool:
    """Whether a value follows: in `1:111 2:109` the two belongs to what comes."""
    while k < len(scene.tokens) and (scene.tokens[k].kind == "comma" or scene.tokens[k].sense("copula")):
        k += 1
    return k < len(scene.tokens) and scene.tokens[k].kind in ("number", "amount")


def sides_from(scene: Scene, k: int) -> tuple[str, int]:
    """The sides that stand together up to token k, `left inlet`, and the index of the first."""
    first = k
    while first and scene.tokens[first - 1].low in SIDES - {"in"} and scene.tokens[first - 1].sense("side"):
        first -= 1
    if first and scene.tokens[first - 1].low == "back" and scene.tokens[first].low in ("left", "right"):
        first -= 1  # `back left, twenty`
    return " ".join(t.low for t in scene.tokens[first : k + 1]), first


def which_near(scene: Scene, i: int) -> str:
    """Only the marker of `which_at`; empty when there is none."""
    return which_at(scene, i)[0]


PLACES_TOO = frozenset({"top", "bottom", "back", "front", "middle", "in"})
"Sides that mostly say where something is: `at the top`."
VALUES = frozenset({"amount", "number", "comma"})


def stands_alone(scene: Scene, k: int) -> bool:
    """`Left, thirty` and `the right one`, not `right, next`."""
    token = scene.tokens[k]
    after = scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    before = scene.tokens[k - 1] if k else None
    told = after is not None and (after.kind in VALUES or after.low == "one" or after.sense("copula", "reads"))
    if token.low in PLACES_TOO and not told:
        return False
    if before is not None and before.low in ("the", "and", "on", "both"):
        return True
    if after is None:
        return False
    if after.low in ("hand", "side", "one", "is", "was", "s") or (
        after.low == "at" and token.low not in ("right", "in")
    ):
        return True
    if token.low in FIRM and (before is None or before.kind in ("stop", "comma")) and after.sense("copula", "reads"):
        return True
    return token.low not in ("right", "in", "top") and after.kind in ("amount", "number", "comma")


def _back_one(scene: Scene, k: int) -> bool:
    """`The back's twenty-eight`, `back one, 385`; not `back at thirty`, `came back, twelve`."""
    before = scene.tokens[k - 1].low if k else ""
    after = scene.tokens[k + 1].low if k + 1 < len(scene.tokens) else ""
    if after in ("one", "ones"):
        return True
    return before in ("the", "and the") and after not in ("at", "to", "on", "up to", "down to")


def _other_end(word: str, which: str) -> bool:
    """Whether a word tells another one of several than the marker does: of `front hose`, `left` is no other end."""
    axes = [axis for axis in AXES if not axis.isdisjoint(which.lower().split())]
    return word in ENDS and (not axes or any(word in axis for axis in axes))


def name_with(name: str, which: str) -> str:
    """The name of another one of several: of a `top bearing`, the bottom one is no top bearing."""
    sided = which and not which.isdigit() and any(w in ENDS for w in name.split())
    return with_which(name, which) if sided else name


def with_which(thing_words: str, which: str) -> str:
    """`cylinder` and `3` give `cylinder 3`; `points` and `left` give `left points`; another side in the words gives
    way.
    """
    if not which or which.lower() in thing_words.lower().split():
        return thing_words
    which = which.removesuffix("s") if which.lower() in PLURALS else which
    words_of = thing_words.split()
    numbered = [w for w in words_of if w.replace(",", "").isdigit() or (which.isdigit() and w.lower() in NAMES)]
    kept = [w for w in words_of if not (w in numbered or _other_end(w.lower(), which))] or words_of
    words = " ".join(kept).removesuffix(" and")  # `plugs 1, 2 and 3`
    if not which.isdigit() and words[1:2].islower():
        words = words[0].lower() + words[1:]  # `Tyres. Left, twenty.`
    return f"{words} {which}" if which.isdigit() else f"{which} {words}"
