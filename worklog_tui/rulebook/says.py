"""The language of `says`: one readable line that a rule matches over chunked words.

    word            that word
    "of the words"  those words as one term
    <class>         a token of that class: <thing>, <bad>, <did>, <amount>, a word list of words.toml …
    <class=name>    the same with that canonical name: <did=clean>, <thing=spark>
    slot:<class>    the same, kept under another name than its class
    (a|b c|<d>)     one of these
    [a b]           may be missing
    !<class>  !word the next token is not that
    ..3             up to 3 tokens, no thing and no end of a clause among them
    ~4              up to 4 tokens, things and commas too, no end of a sentence among them
    ^  $            here a clause begins, ends

There are no unbounded repeats, so that matching stays linear in the length of the text.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TypeAlias

GAP_LIMIT = 8
WRITTEN = 'write small words, "several words", <class>, (one|other), [may be missing], !<not this>, ..3 or ~4'
_PIECE = re.compile(
    r"\s*(?:(?P<gap>\.\.|~)(?P<most>\d+)|(?P<mark>[\^$()\[\]|])"
    r"|(?P<not>!)?(?:(?P<slot>[a-z_]+):)?(?:<(?P<cls>[^<>]+)>|\"(?P<phrase>[^\"]+)\"|(?P<word>[a-z0-9&/+=?'\-]+)))"
)


class SaysError(ValueError):
    """A `says` that cannot be understood: what is wrong with it, and what mends it."""

    def __init__(self, says: str, cure: str) -> None:
        super().__init__(f"{says}; {cure}")
        self.says, self.cure = says, cure


@dataclass(frozen=True, slots=True)
class Gap:
    """Up to `most` tokens; `wide` lets things and commas in."""

    most: int
    wide: bool


@dataclass(frozen=True, slots=True)
class One:
    """One token of a class; `=word` for a literal."""

    cls: str
    slot: str = ""
    denied: bool = False


@dataclass(frozen=True, slots=True)
class Edge:
    """The beginning or the end of a clause."""

    end: bool


@dataclass(frozen=True, slots=True)
class Choice:
    """One of several sequences; `optional` lets it be missing."""

    ways: tuple[tuple[Element, ...], ...]
    optional: bool


Element: TypeAlias = "Gap | One | Edge | Choice"


def parse(says: str) -> tuple[Element, ...]:
    """The elements of a `says`; a SaysError names what is wrong with it."""
    at, stack, closers = 0, [[[]]], [""]  # type: tuple[int, list[list[list[Element]]], list[str]]
    while says[at:].strip():
        m = _PIECE.match(says, at)
        if not m:
            raise SaysError(f"cannot understand {says[at:].strip()[:20]!r}", WRITTEN)
        at = m.end()
        mark, here = m["mark"], stack[-1][-1]
        if m["gap"]:
            if int(m["most"]) > GAP_LIMIT:
                raise SaysError(f"a gap may have at most {GAP_LIMIT} tokens", f"write {m['gap']}{GAP_LIMIT} or less")
            here.append(Gap(int(m["most"]), m["gap"] == "~"))
        elif mark in ("(", "["):
            stack.append([[]])
            closers.append(")" if mark == "(" else "]")
        elif mark == "|":
            if len(stack) == 1:
                raise SaysError("| stands only inside ( ) or [ ]", "put the choices in ( )")
            stack[-1].append([])
        elif mark in (")", "]"):
            if closers.pop() != mark:
                raise SaysError(f"{mark!r} closes nothing", "take it out, or open it before")
            ways = stack.pop()
            if mark == ")" and not all(ways):
                raise SaysError("there is an empty choice in ( )", "use [ ] for what may be missing")
            stack[-1][-1].append(Choice(tuple(tuple(w) for w in ways), mark == "]"))
        elif mark:
            here.append(Edge(mark == "$"))
        else:
            cls = m["cls"] or "=" + (m["phrase"] or m["word"]).replace("'", "")
            here.append(One(cls, m["slot"] or (m["cls"].split("=")[0] if m["cls"] else ""), bool(m["not"])))
    if len(stack) > 1:
        raise SaysError(f"{closers[-1]!r} is missing", "close what was opened")
    if not any(
        (isinstance(e, One) and not e.denied) or (isinstance(e, Choice) and not e.optional) for e in stack[0][0]
    ):
        raise SaysError("nothing in it must be there", "let one word or class stand outside of [ ], and without !")
    return tuple(stack[0][0])


def classes(elements: tuple[Element, ...]) -> set[str]:
    """Every class that a rule names."""
    found: set[str] = set()
    for e in elements:
        if isinstance(e, One):
            found.add(e.cls)
        elif isinstance(e, Choice):
            for way in e.ways:
                found |= classes(way)
    return found
