"""What is said beside an amount about how exact it is: under, over, about."""

from __future__ import annotations

from worklog_tui.extract.heard.words import Word

_BEFORE = {
    "under": "under", "below": "under", "over": "over", "above": "over", "about": "about", "around": "about",
    "roughly": "about", "approx": "about", "approximately": "about", "circa": "about", "nearly": "about",
    "almost": "about",
    "near": "about", "barely": "about", "say": "about", "maybe": "about", "exceeding": "over", "within": "under",
    "ca": "about", "beyond": "over", "inside": "under", "like": "about", "perhaps": "about", "probably": "about",
    "less than": "under", "at most": "under", "more than": "over", "at least": "over", "up to": "under",
    "max of": "under",
    "just under": "under", "just over": "over", "bit under": "under", "bit over": "over", "hair over": "over",
    "hair under": "under", "shade over": "over", "shade under": "under", "touch over": "over", "touch under": "under",
    "shy of": "under", "short of": "under", "north of": "over", "south of": "under", "close to": "about",
    "call it": "about",
    "next to": "", "part of": "about", "greater than": "over", "fewer than": "under", "better than": "over",
    "upwards of": "over", "maximum of": "under", "minimum of": "over", "something like": "about", "higher than": "over",
    "lower than": "under", "no more than": "under", "not more than": "under", "no less than": "over",
    "not less than": "over",
    "no over": "under", "not over": "under", "not under": "over", "no under": "over", "not above": "under",
    "not below": "over",
    "never over": "under", "never under": "over", "nothing over": "under", "nothing under": "over",
    "not exceeding": "under",
    "much over": "over", "anything over": "over", "anything under": "under", "much under": "under",
}  # fmt: skip
_AFTER = {
    "or so": "about", "or thereabouts": "about", "ish": "about", "odd": "about", "give or take": "about",
    "or more": "over", "plus": "over", "or over": "over", "or better": "over", "or above": "over", "minimum": "over",
    "or less": "under", "tops": "under", "max": "under", "maximum": "under", "at most": "under", "at the most": "under",
    "or under": "under", "or below": "under", "or thereabout": "about", "min": "over", "at least": "over",
    "at the least": "over", "near enough": "about", "roughly": "about", "approx": "about", "about": "",
}  # fmt: skip
_FILLING = frozenset({"a", "an", "the", "only", "just", "some"})
_SLIGHT = frozenset({"hair", "shade", "touch", "bit", "shy", "just", "best"})
_LAST_BEFORE = frozenset(phrase.rsplit(" ", 1)[-1] for phrase in _BEFORE)
_FIRST_AFTER = frozenset(phrase.split(" ", 1)[0] for phrase in _AFTER)


def bound_of(words: list[Word], begin: int, end: int) -> tuple[str, bool]:
    """The bound of the amount in words begin to end ("", under, over, about), and whether it is a rough one."""
    before = _before(words, begin)
    after = "" if before else _after(words, end)
    return before or after, "about" in (before, after) or (bool(before) and _slight(words, begin))


def _before(words: list[Word], begin: int) -> str:
    at = begin
    while at and begin - at < 2 and not words[at].gap and words[at - 1].low in _FILLING:
        at -= 1
    if not at or words[at].gap or words[at - 1].low not in _LAST_BEFORE:
        return ""
    for size in (3, 2, 1):
        if at >= size and not any(words[k].gap for k in range(at - size + 1, at)):
            found = _BEFORE.get(" ".join(w.low for w in words[at - size : at]))
            if found is not None:
                return found
    return ""


def _slight(words: list[Word], begin: int) -> bool:
    return any(words[k].low in _SLIGHT for k in range(max(begin - 3, 0), begin))


def _after(words: list[Word], end: int) -> str:
    if end >= len(words) or words[end].gap or words[end].low not in _FIRST_AFTER:
        return ""
    for size in (3, 2, 1):
        if end + size <= len(words) and not any(words[k].gap for k in range(end + 1, end + size)):
            found = _AFTER.get(" ".join(w.low for w in words[end : end + size]))
            if found is not None:
                return found
    return ""
