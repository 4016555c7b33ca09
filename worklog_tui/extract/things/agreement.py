"""Number agreement: `it` is one thing, `they` are several; `all` and `both` too."""

from __future__ import annotations

from worklog_tui.extract.tokens import Thing, Token

ONE = frozenset("it its it'll itll hes shes he she this".split()) | {"this one", "that one", "here's"}
MANY = frozenset("they theyre theyve theyll these those them em both all each".split()) | {
    "both of them",
    "all of them",
}
PAIRS = ("points", "brakes", "tappets", "controls", "forks", "works", "gears", "electrics", "glass", "gas", "bus")
"Plural words that are also one thing: `the brakes, it pulls left`."


def is_many(thing: Thing) -> bool:
    """Whether the words name several things: `two nuts`, `rings and valves`."""
    if thing.also:
        return True
    last = (thing.own or thing.words).lower().rsplit(" ", 1)[-1]
    return len(last) > 3 and last.endswith("s") and not last.endswith(("ss", "us", "is", "'s"))


def agrees(thing: Thing, token: Token) -> bool | None:
    """Whether a thing can be what a pronoun means; None where the word does not tell."""
    if thing.which and " and " not in thing.which and not thing.also and is_many(thing):
        return None  # `the bottom one` of two pistons
    if token.low in ONE:
        return not is_many(thing)
    if token.low in MANY:
        return is_many(thing)
    return None
