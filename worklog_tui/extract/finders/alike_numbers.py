"""Which of several bears a number, and the numbers of the others: `front bearing 6202, the back one's a 6303`."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

from worklog_tui.extract.scene import Draft, Scene

REACH = 48
"Characters before a number within which is told which one bears it."


def numbered(draft: Draft, scene: Scene) -> list[Draft]:
    """The draft with the end that bears it, and one for each of its kind behind it that is told by its end alone."""
    words = "|".join(sorted(scene.book.lists["which_end"], key=len, reverse=True)).replace(" ", "[ -]")
    number = _number_of(str(draft.rule.gives["shape"]))
    start, last = scene.tokens[draft.main].start, scene.tokens[draft.last].end
    begin = max(scene.tokens[0].start, start - REACH)
    led = [m for m in _which(words).finditer(scene.text, begin, start) if not _FIGURE.search(m.string, m.end(), start)]
    found = [_of_end(draft, led[-1][1])] if led else [draft]
    for which, first, end in _others(_other(words, number), scene.text, last, scene.tokens[-1].end):
        inside = [k for k, t in enumerate(scene.tokens) if t.start < end and t.end > first]
        if inside:
            made = replace(draft, main=inside[0], last=inside[-1], last_used=inside[-1], fields=dict(draft.fields))
            made.fields["number"] = " ".join(scene.text[first:end].split())
            found.append(_of_end(made, which))
    return found


SHORT = frozenset({"de", "nde", "lh", "rh"})
"Ends that are told by their letters."


def once(drafts: list[Draft]) -> list[Draft]:
    """The drafts without numbers that stand where one stands already: a pattern meets the second of two, too."""
    seen: set[tuple[int, int]] = set()
    found = []
    for draft in drafts:
        place = (draft.main, draft.last)
        if draft.kind != "number" or place not in seen:
            found.append(draft)
        if draft.kind == "number":
            seen.add(place)
    return found


_FIGURE = re.compile(r"\d{3}")


def _of_end(draft: Draft, which: str) -> Draft:
    which = " ".join(which.lower().replace("-", " ").split())
    which = which.upper() if which in SHORT else which
    fields = {**draft.fields, "of": f"{which} {draft.rule.gives['of']}"}
    return replace(draft, fields=fields)


def _others(other: re.Pattern[str], text: str, at: int, end: int) -> Iterator[tuple[str, int, int]]:
    while (found := other.match(text, at, end)) is not None:
        yield found[1], found.start(2), found.end(2)
        at = found.end(2)


@lru_cache
def _which(words: str) -> re.Pattern[str]:
    return re.compile(rf"\b({words})(?![\w-])", re.IGNORECASE)


@lru_cache
def _other(words: str, number: str) -> re.Pattern[str]:
    verb = r"(?:(?:['\u2019]s| is| was|,|:| =)*(?: an?| marked)*)"
    ahead = r"(?: at the| on the)?(?:,| and| but|;| &)+(?: on)?(?: the)?"
    return re.compile(rf"{ahead} ({words})(?:[ -](?:one|end|side|hand))*{verb} ({number})\b", re.IGNORECASE)


@lru_cache
def _number_of(shape: str) -> str:
    """The group `is` of a shape, as a group without a name."""
    begin = shape.index("(?P<is>") + len("(?P<is>")
    depth, at, escaped = 1, begin, False
    while depth:
        char = shape[at]
        depth += 0 if escaped else (char == "(") - (char == ")")
        escaped = char == "\\" and not escaped
        at += 1
    return f"(?:{shape[begin : at - 1]})"
