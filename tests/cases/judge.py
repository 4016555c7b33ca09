"""A small judge of the reader: which labelled facts of a case were read, and which facts were made up.

Two facts are the same when they are of one kind, said at most two lines apart in one session, and agree in the core:

- reading: the quantity, and the value within 1 % (units of one size are converted; of a thread, the size);
- finding: the verdict, and the head word of the part (the last word of a name: the hose of `fuel hose`);
- work: the action, and the head word of the part;
- suspect, follow-up: at least half of the words of one wording of the cause or of the topic.

Pairs are taken greedily, the nearest lines first, one to one. A labelled fact marked `optional` may be read or left
out: it counts neither way. Everything else that was read and not labelled is wrong, a second telling too. Roles,
subjects, conditions, standings and reasons are not judged here.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

KINDS = ("reading", "finding", "work", "suspect", "follow_up")
NEAR = 2  # a thought may break across lines
WITHIN = 0.01  # of the larger value
SIZES = {
    "s": ("time", 1.0), "min": ("time", 60.0), "h": ("time", 3600.0), "day": ("time", 86400.0),
    "um": ("length", 1e-6), "mm": ("length", 1e-3), "m": ("length", 1.0), "in": ("length", 0.0254),
    "mV": ("voltage", 1e-3), "V": ("voltage", 1.0), "ohm": ("resistance", 1.0), "kohm": ("resistance", 1e3),
    "Mohm": ("resistance", 1e6), "ml": ("volume", 1e-3), "L": ("volume", 1.0),
    "mbar": ("pressure", 1e2), "kPa": ("pressure", 1e3), "bar": ("pressure", 1e5), "psi": ("pressure", 6894.757),
}  # fmt: skip
EMPTY = set("a an the of on in at to and or it its is was be with for from by one some".split())
ENDS_A_NAME = re.compile(r"\b(?:of|on|in|for|at|from|to|with|by)\b|[,;(]")

Fact = Mapping[str, Any]
Lines = Mapping[tuple[int, str], int]


@dataclass(frozen=True, slots=True)
class Score:
    """Counts of one kind of fact; they add up over cases."""

    right: int = 0
    "Facts read that match a labelled one which is not optional."
    said: int = 0
    "Facts read, without those that match an optional one."
    wanted: int = 0
    "Labelled facts that are not optional."

    def __add__(self, other: Score) -> Score:
        return Score(self.right + other.right, self.said + other.said, self.wanted + other.wanted)

    @property
    def precision(self) -> float:
        """The share of what was read that is right; 0 when nothing was read."""
        return self.right / self.said if self.said else 0.0

    @property
    def recall(self) -> float:
        """The share of what is labelled that was read; 0 when nothing is labelled."""
        return self.right / self.wanted if self.wanted else 0.0

    @property
    def f1(self) -> float:
        """The harmonic mean of precision and recall; 0 when nothing is right."""
        return 2 * self.right / (self.said + self.wanted) if self.right else 0.0


def judge(kind: str, read: Sequence[Fact], gold: Sequence[Fact], lines: Lines) -> Score:
    """The score of one kind in one case; `lines` numbers the notes by session and time as written."""
    mine = [f for f in read if f["kind"] == kind]
    theirs = [g for g in gold if g["kind"] == kind]
    pairs = sorted(
        (lines_apart, bool(g.get("optional")), i, j)
        for i, f in enumerate(mine)
        for j, g in enumerate(theirs)
        if (lines_apart := apart(f, g, lines)) <= NEAR and same(f, g)
    )
    owner: dict[int, int] = {}
    for _, _, i, j in pairs:
        if i not in owner and j not in owner.values():
            owner[i] = j
    optional = sum(bool(theirs[j].get("optional")) for j in owner.values())
    wanted = sum(not g.get("optional") for g in theirs)
    return Score(len(owner) - optional, len(mine) - optional, wanted)


def apart(read: Fact, gold: Fact, lines: Lines) -> int:
    """How many lines lie between two facts; beyond NEAR for another session."""
    if read["session"] != gold["session"]:
        return NEAR + 1
    return abs(lines[(read["session"], read["at"])] - lines[(gold["session"], gold["at"])])


def same(read: Fact, gold: Fact) -> bool:
    """Whether a fact that was read agrees with a labelled one of its kind in the core."""
    match gold["kind"]:
        case "reading":
            return bool(read["quantity"] in _wordings(gold["quantity"])) and _same_value(read, gold)
        case "finding":
            return read["verdict"] in _wordings(gold["verdict"]) and _same_head(read["part"], gold["part"])
        case "work":
            return read["action"] in _wordings(gold["action"]) and _same_head(read["part"], gold["part"])
        case "suspect":
            return _same_words(read["cause"], gold["cause"])
        case _:
            return _same_words(read["about"], gold["about"])


def _wordings(text: Any) -> list[str]:
    return list(text) if isinstance(text, list) else [str(text)]


def _words(text: str) -> list[str]:
    """The telling words in lower case, plurals as singulars."""
    said = re.findall(r"[a-z0-9/.]+", text.lower().replace("'", ""))
    return [w[:-1] if len(w) > 3 and w.endswith("s") and not w.endswith("ss") else w for w in said if w not in EMPTY]


def _head(name: str) -> str:
    """The word that says what a named thing is; numbers only tell it from its like."""
    words = _words(ENDS_A_NAME.split(name.lower())[0]) or _words(name)
    return next((w for w in reversed(words) if not w.isdigit()), words[-1] if words else "")


def _same_head(read: str, gold: Any) -> bool:
    return _head(read) in {_head(w) for w in _wordings(gold)}


def _same_words(read: str, gold: Any) -> bool:
    mine = set(_words(read))
    return any(2 * len(mine & theirs) >= len(theirs) > 0 for theirs in (set(_words(w)) for w in _wordings(gold)))


def _same_value(read: Fact, gold: Fact) -> bool:
    if isinstance(gold["value"], str):
        return _thread_size(str(read["value"])) == _thread_size(gold["value"])
    mine, theirs = _bounds(read), _bounds(gold)
    return mine[0] == theirs[0] and all(
        abs(m - t) <= WITHIN * max(abs(m), abs(t)) for m, t in zip(mine[1], theirs[1], strict=True)
    )


def _bounds(reading: Fact) -> tuple[str, tuple[float, float]]:
    """What the unit measures, and the low and high value in the first unit of that."""
    value = reading["value"]
    low, high = value if isinstance(value, list | tuple) else (value, value)
    measures, size = SIZES.get(reading["unit"], (reading["unit"], 1.0))
    return measures, (float(low) * size, float(high) * size)


def _thread_size(designation: str) -> str:
    return re.split(r"[-x ]", designation.lower())[0]
