"""Figures that are told as what should be by how the sentence is built: `the proper gap is fifteen thou`, `a good one
reads ninety`, `the sticker says thirty`, `it needs to come up to twelve`.

The nouns, adjectives and verbs are data (`grammars/lists.toml`); what makes them a figure of the book is their place.
"""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token

BACK = 8
"Tokens before a figure among which stands what makes it one that should be."
LEADS = frozenset("to at of as for on in = : , a an the".split())
"Small words between what tells and its figure."


def is_expected(i: int, scene: Scene) -> bool:
    """Whether the sentence is built so that the number at token i is one that should be."""
    first = max(scene.clause(i).start, i - BACK)
    end = _end(i, first, scene)
    if end > first and (_is_named_so(first, end, scene) or _is_told_so(first, end, scene)):
        return True
    return _has_to_come(i, first, scene) or _is_told_behind(i, scene)


def _end(i: int, first: int, scene: Scene) -> int:
    """Where what stands before the figure and the small words that lead to it ends."""
    k = i
    while k > first and (scene.tokens[k - 1].low in LEADS or scene.tokens[k - 1].sense("about")):
        k -= 1
    return k


def _base(token: Token) -> str:
    """A word without its `is`: `figure's`, which is heard as `figures`."""
    return token.low.rpartition(" ")[2].removesuffix("'s")


def _is_named_so(first: int, end: int, scene: Scene) -> bool:
    """`The proper gap is`, `factory figure`, `tolerance`, `a healthy one will show`: named as what should be."""
    tokens, book = scene.tokens[first:end], scene.book
    if any(t.sense("did", "person") or t.kind in ("number", "amount") for t in tokens):
        return False
    if _base(tokens[-1]) in book.lists["figures_alone"] or (
        tokens[-1].low in book.lists["written"] and scene.tokens[end].kind == "comma"
    ):  # fmt: skip
        return True
    verb = tokens[-1].sense("copula", "reads") or tokens[-1].low in book.lists["shows"]
    told = tokens[:-1] if verb else tokens
    if not told or not (verb or scene.typed or scene.text[: told[-1].end].endswith(("'s", "\u2019s"))):
        return False
    while told and (
        told[-1].low in book.lists["shows"] or told[-1].low in ("will", "would", "should", "ll", "would be")
    ):
        told = told[:-1]
    words = [w for t in told for w in t.low.split()]
    if words and words[-1].removesuffix("'s") in book.lists["figures_alone"]:
        return True
    if words[-1:] in (["one"], ["ones"]) and words[-2:-1] and words[-2] in book.lists["sound"]:
        return words[-1] == "ones" or words[-3:-2] == ["a"]  # `the good one` is there and was measured
    proper = next((k for k, t in enumerate(told) if t.low in book.lists["proper_figures"]), None)
    behind = told[proper + 1 : proper + 2] if proper is not None else []
    if proper is not None and not behind:
        return bool(verb)
    return any(
        t.low in book.lists["figures"] or (t.thing is not None and t.thing.kind == "quality") for t in behind
    ) or ([t.low for t in behind] == ["for"])


def _is_told_so(first: int, end: int, scene: Scene) -> bool:
    """`They quote`, `the sticker under the lid says`, `the old hands reckon`: told by who or what should know."""
    tokens, book = scene.tokens[first:end], scene.book
    while len(tokens) > 1 and tokens[-1].low in ("it", "that", "them", "down"):
        tokens = tokens[:-1]
    verb, before = tokens[-1].low, tokens[:-1]
    if before and before[-1].low == "they" and verb in book.lists["they_say"]:
        return True
    if verb not in book.lists["says_so"] or any(t.sense("person") for t in before):
        return False
    comma = max((k for k, t in enumerate(before) if t.kind == "comma"), default=-1)
    words = [w.removesuffix("'s") for t in before[comma + 1 :] for w in t.low.split()]
    return any(w in book.lists["written"] or w in book.lists["old_hands"] for w in words)


def _has_to_come(i: int, first: int, scene: Scene) -> bool:
    """`It needs to come up to twelve`, `has to sit at seven`: what it has to do by itself, not what is to be done."""
    k, book = i, scene.book
    if (amount := scene.tokens[i].amount) is not None and "duration" in amount.quantities:
        return False
    while k > first and (
        scene.tokens[k - 1].low in book.lists["comes_to"] or scene.tokens[k - 1].low in LEADS
        or scene.tokens[k - 1].sense("about")
    ):  # fmt: skip
        k -= 1
    words = [t.low for t in scene.tokens[k:i]]
    comes = any(w in book.lists["comes_to"] for w in words)
    return comes and k > first and bool(scene.tokens[k - 1].sense("must")) and not _by_a_person(k - 1, first, scene)


def _by_a_person(k: int, first: int, scene: Scene) -> bool:
    """Whether a person has to do it: `I have to be at`."""
    return k > first and bool(scene.tokens[k - 1].sense("person"))


def _is_told_behind(i: int, scene: Scene) -> bool:
    """`Seven bar it says here`, `ten thou they quote`, `25 required`."""
    after = [t.low for t in scene.tokens[i + 1 : i + 5]]
    if len(after) < 2 or (len(after) > 2 and after[0] == "it" and after[1] == "says" and after[2] not in PLACES):
        return False
    if after[:2] == ["it", "says"]:
        return len(after) > 2
    return after[0] == "they" and after[1] in scene.book.lists["they_say"]


PLACES = frozenset({"here", "there", "on the", "on", "in", "in the"})
