"""How a thing that viewers ask about is called: their own words round it, few enough to be read at a glance."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.logbook.named_things import STATES, Named
from worklog_tui.logbook.words import FILLER, word_set

MOST = 5
"Telling words of a name."
SILENT = FILLER | word_set(
    "you your mine my me us how what why where when which who whats ever even well much many long think "
    "know use used using put try check look make sure see say said tell show pull take clean spray swap "
    "turn run runs running not no dont cant anyone anybody because than like very too also if then . ? ! "
    ", ; : been still though people guys always never them they anything something someone somebody come came "
    "bit lot way please maybe let lets give gave given goes went such own only it's thats theres did been "
    "end can may id youll youd youre ive im hes shes theyre wont isnt wasnt havent thing things kind sort mate bro "
    "chance any idea wonder wondering curious am sounds looks bet reckon guess"
)
"Words that name nothing."
_LINKS = word_set(
    "of on in for at from to with around round through out into under by off onto between inside behind over the a an"
)
"Words that may stand within a name."
_BORDERS = word_set(
    ". , ; : ! ? and but because cos so if when while once that which who then since before after rather instead unless"
)
"Words at which a clause ends."
_NOUNS = frozenset({"part", "joint", "fastener", "control", "fluid", "quality"})


def runs(things: list[Named]) -> list[Named]:
    """Things with neighbours joined: carburettor flange, of a carburettor and a flange."""
    joined: list[Named] = []
    for one in things:
        last = joined[-1] if joined else None
        if last is not None and last.end == one.start and {last.kind, one.kind} <= _NOUNS:
            both = f"{last.said} {one.said}", f"{last.name} {one.said}"
            joined[-1] = replace(one, said=both[0], name=both[1], start=last.start)
        else:
            joined.append(one)
    return joined


def clause(said: list[str], start: int, end: int) -> tuple[int, int]:
    """The clause round some words: its first, and the one after its last."""
    low = next((n + 1 for n in range(start - 1, -1, -1) if said[n] in _BORDERS), 0)
    high = next((n for n in range(end, len(said)) if said[n] in _BORDERS), len(said))
    return low, high


def called(said: list[str], start: int, end: int) -> str:
    """The thing at these words with what stands round it: gap on the points; drum shaft, bent."""
    low, high = clause(said, start, end)
    around = [n for n in range(low, high) if not start <= n < end and _tells(said[n])]
    nearest = sorted(around, key=lambda n: start - n if n < start else n - end + 1)
    kept = set(nearest[: max(0, MOST - (end - start))]) | set(range(start, end))
    first, last = start, end
    while first > low and (first - 1 in kept or said[first - 1] in _LINKS):
        first -= 1
    while last < high and (last in kept or said[last] in _LINKS):
        last += 1
    while said[first] in _LINKS and first < start:
        first += 1
    while said[last - 1] in _LINKS and last > end:
        last -= 1
    name = " ".join(said[first:last])
    apart = [said[n] for n in sorted(kept) if not first <= n < last]
    return f"{name}, {' '.join(apart)}" if apart else name


def telling(said: list[str]) -> str:
    """The first telling words of a sentence that names no thing."""
    places = [n for n, word in enumerate(said) if _tells(word)]
    return called(said, places[0], places[0] + 1) if places else ""


def _tells(word: str) -> bool:
    return word not in SILENT and word not in _BORDERS and any(c.isalnum() for c in word)


def parts_of(things: list[Named]) -> list[Named]:
    """The things without the states."""
    return [one for one in runs(things) if one.kind not in STATES]
