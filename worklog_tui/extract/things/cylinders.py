"""In a test of all cylinders a number says which: `three is way down`, `the third's low`, `the other two are fine`."""

from __future__ import annotations

from itertools import pairwise

from worklog_tui.extract.context import Context
from worklog_tui.extract.things.markers import MOST, value_follows
from worklog_tui.extract.tokens import Thing, Token

OF_CYLINDERS = frozenset({"compression", "leakage"})
"Tests that are taken cylinder by cylinder."
NUMBERS = {word: str(n) for n, word in enumerate("first second third fourth fifth sixth".split(), 1)}
NEAR = 4
"Tokens behind the number within which its state stands."
VERDICTS = ("bad", "good")


def counted(context: Context) -> bool:
    """Whether such a test was taken in this note or the last one, with figures far above the number of a cylinder."""
    topic = context.topic
    return topic is not None and topic.age <= 1 and topic.quantity in OF_CYLINDERS and topic.value > 2 * MOST


def cylinder(which: str) -> Thing:
    """The cylinder, or those: by number, `third`, `other three`."""
    which = NUMBERS.get(which, which)
    words = f"cylinder{'s' if ' and ' in which else ''} {which}" if which[:1].isdigit() else f"{which} cylinders"
    return Thing(words, "cylinder", "part", which, words, "cylinder")


def is_judged(tokens: list[Token], end: int, verdicts: tuple[str, ...] = VERDICTS) -> bool:
    """Whether what follows from token `end` on judges a figure: `is way down`; not `is sooty`, which a plug is."""
    state = next((t for t in tokens[end : end + NEAR] if t.sense("bad", "good", "noted", "off_mark")), None)
    if state is None:
        return False
    return state.sense("off_mark") is not None or bool(state.sense("judged") and state.sense(*verdicts))


def judges_a_number(tokens: list[Token]) -> bool:
    """Whether a bare number is the subject of words that judge it: `so four and five are way down`."""
    return any(
        token.kind == "number" and after.sense("copula") is not None and is_judged(tokens, k)
        for k, (token, after) in enumerate(pairwise(tokens), 1)
    )


def is_off(tokens: list[Token], end: int) -> bool:
    """Whether the figure is told to be off right behind the marker, and no value: `'s down`, `is well under`."""
    for token in tokens[end : end + NEAR]:
        if token.sense("off_mark"):
            return not value_follows(tokens, end)
        if not token.sense("copula", "degree"):
            return False
    return False
