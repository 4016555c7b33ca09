"""`Gave the chain a good oiling`, `the belts have had the once-over`, `gave it a squirt of oil`: what a thing was
given, a noun tells.
"""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.worked.clause import IT, WORKED, by_me, describes, match, object_of
from worklog_tui.rulebook import Rulebook

NO_GIFT = frozenset({"start", "make", "order", "remove", "fit"})
"Actions of verbs that are no nouns of what a thing is given."
OF = frozenset({"of"})
SOME = frozenset("some the plenty another".split())
COUNTED = ("number", "loose")
DOSES = frozenset("pump squirt drop shot dab blob smear dose lick splash coat spray dribble dollop slap".split())
FAR = 5
"Tokens from the article to the noun."


def given(scene: Scene, k: int) -> Iterator[Match]:
    """The work of `gave … a …` at token k."""
    thing = object_of(scene, k)
    if thing is not None and by_me(scene, k):
        yield from _noun(scene, k, thing, thing + 1)


def had(scene: Scene, k: int) -> Iterator[Match]:
    """The work of `… has had a …` at token k."""
    at = k - 1
    while at >= 0 and scene.tokens[at].sense("copula", "degree", "all") and scene.tokens[at].low not in IT:
        at -= 1
    if at < 0 or scene.tokens[at].clause != scene.tokens[k].clause:
        return
    token = scene.tokens[at]
    if token.kind == "thing" or token.low in IT:
        yield from _noun(scene, at, at, k + 1, k)


def _noun(scene: Scene, first: int, thing: int, at: int, verb: int | None = None) -> Iterator[Match]:
    """The work that the noun behind the article at token `at` tells."""
    tokens, stop = scene.tokens, scene.clause(thing).stop
    owner = tokens[thing].thing
    if owner is not None and owner.kind not in WORKED and owner.kind != "quality":
        return
    if at >= stop or not (tokens[at].sense("article", "all") or tokens[at].kind in COUNTED or tokens[at].low in SOME):
        return
    for k in range(at + 1, min(at + 1 + FAR, stop)):
        action = _action(scene, k)
        if action and not (k + 1 < stop and tokens[k + 1].low in OF):
            fluid = tokens[k].thing
            onto = fluid is not None and fluid.of is not None
            yield match("given", scene, first, k, verb or k, k if onto else thing, action=action, onto=onto)
            return
        dose = tokens[k].low.removesuffix("s") in DOSES
        if not describes(tokens[k]) and not dose and tokens[k].low not in OF and not tokens[k].sense("does", "phrase"):
            return


def _action(scene: Scene, k: int) -> str:
    """What the noun at token k tells: a verb's own noun, one of the lists, or the fluid of which it was a dose."""
    token, book = scene.tokens[k], scene.book
    two = f"{token.low} {scene.tokens[k + 1].low}" if k + 1 < len(scene.tokens) else token.low
    for action, nouns in _nouns(book):
        if token.low in nouns or two in nouns:
            return action
    if token.thing is not None and token.thing.kind == "fluid":
        return next((action for action, fluids in _doses(book) if token.thing.name in fluids), "")
    sense = token.sense("do", "doing")
    return "" if sense is None or sense.name in NO_GIFT else sense.name


def _nouns(book: Rulebook) -> tuple[tuple[str, frozenset[str]], ...]:
    """What was done, and the nouns that tell of it."""
    return (
        ("check", book.lists["given_check"]),
        ("test", book.lists["given_test"]),
        ("clean", book.lists["given_clean"]),
        ("flush", book.lists["given_flush"]),
        ("lubricate", book.lists["given_lubricate"]),
        ("charge", book.lists["given_charge"]),
        ("soak", book.lists["given_soak"]),
        ("repair", book.lists["given_repair"]),
        ("tighten", book.lists["given_tighten"]),
        ("fill", book.lists["given_fill"]),
        ("bleed", book.lists["given_bleed"]),
        ("drain", book.lists["given_drain"]),
    )


def _doses(book: Rulebook) -> tuple[tuple[str, frozenset[str]], ...]:
    """What is done with a dose of a fluid, and the fluids with which it is done."""
    return (
        ("lubricate", book.lists["oils"]),
        ("soak", book.lists["penetrants"]),
        ("clean", book.lists["cleaners"]),
    )
