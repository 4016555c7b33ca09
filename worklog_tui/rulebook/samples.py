"""Wordings that a pattern means, made up from the vocabulary: to see what a `says` says before relying on it."""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Mapping, Sequence

from worklog_tui.rulebook.book import Rulebook
from worklog_tui.rulebook.says import Choice, Edge, Element, Gap, One, parse

SPOKEN = {
    "amount": ("thirty thou", "12 volts", "40 psi", "two litres"),
    "number": ("four", "thirty"),
    "thread": ("M8x1.25", "1/4-20"),
    "which": ("number two", "number three"),
    "stop": (".",),
    "comma": (",",),
    "other": ("well",),
    "loose": ("that",),
}
"Classes whose words are not in the vocabulary, with examples."
MISSING = 0.5
"How often what may be missing is missing."


def samples(says: str, book: Rulebook, count: int, seed: int = 0) -> list[str]:
    """Up to `count` different wordings of a `says`, the same for the same seed; a SaysError when it cannot be
    understood.
    """
    elements, terms, dice = parse(says), _terms(book), random.Random(seed)
    made: dict[str, None] = {}
    for _ in range(count * 8):
        if len(made) == count:
            break
        made[_joined(_walk(elements, terms, dice))] = None
    return list(made)


def _terms(book: Rulebook) -> Mapping[str, Sequence[str]]:
    """The ways of saying each class, the plain ones of one to three words."""
    found: dict[str, list[str]] = defaultdict(list)
    for said, senses in book.table.items():
        if len(said.split()) > 3 or not said.replace(" ", "").isalpha():
            continue
        for cls, name, kind, *_ in senses:
            kinds = ("thing", f"thing={name}", kind) if cls == "part" else (cls, f"{cls}={name}")
            for one in (*kinds, *(("state",) if cls in ("bad", "good", "noted") else ())):
                found[one].append(said)
    return found


def _walk(elements: Sequence[Element], terms: Mapping[str, Sequence[str]], dice: random.Random) -> list[str]:
    words: list[str] = []
    for e in elements:
        match e:
            case Choice(ways, optional) if not (optional and dice.random() < MISSING):
                words += _walk(dice.choice(ways), terms, dice) if ways else []
            case One(cls, _, False):
                words.append(_word(cls, terms, dice))
            case Choice() | One() | Gap() | Edge():
                pass
    return words


def _word(cls: str, terms: Mapping[str, Sequence[str]], dice: random.Random) -> str:
    if cls.startswith("="):
        return cls[1:]
    known = terms.get(cls) or SPOKEN.get(cls) or SPOKEN.get(cls.split("=")[0])
    return dice.choice(known) if known else f"<{cls}>"


def _joined(words: Sequence[str]) -> str:
    return " ".join(words).replace(" ,", ",").replace(" .", ".")
