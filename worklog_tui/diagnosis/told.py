"""What the bare words of the notes say of complaints, checks and faults, where no fact was read from them.

The fault files give families of wordings: every slot of one must be met within a few words, in any order. A slot is
words with `|` between them, each in any form; `_` joins words that stand side by side; `!` asks for a denial
(`not`, `won't`, `refuses`) just before the slot after it, or anywhere when it stands last; a slot that begins with `-`
must not be met. What is asked, supposed, planned or told of the past is passed over; what is denied, or is said to be
no longer so, is proved absent.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.model import Finding, Place, Span

REACH = 9
"So many words apart the slots of a wording may stand."
BEFORE = 4
"So many words before a slot its denial may stand."
ACROSS = 4
"So many where they stand in two notes."
LAST = 400
"So many of the last notes are read so; what is older is no complaint of today."
TRUST = 0.7
"How far bare words can be believed (judgement)."
DENIALS = frozenset({
    "no", "not", "never", "nothing", "none", "without", "wont", "doesnt", "isnt", "dont", "cant", "couldnt", "didnt",
    "wasnt", "wouldnt", "aint", "hardly", "barely", "nor", "neither", "refuse", "fail", "hasnt", "arent", "cannot",
    "noth", "hardl", "barel",  # as they stand without their endings
})  # fmt: skip
_SUPPOSED = frozenset({
    "if", "unless", "would", "could", "might", "may", "should", "whether", "ill", "lest", "maybe",
    "perhaps", "anybody", "either", "anyone", "suppose", "instead", "gonna", "prevent", "avoid", "mustnt",
})  # fmt: skip
_ORDER = re.compile(
    r"((?:^|[,;:]\s*|\b(?:so|and|but|please|or|then|said|to|just)\s+)(?:do )?)(?:not|don't|dont|never)\s+"
    r"(?=(?:ever |you |go |try to |be )?(?:touch|turn|run|start|use|switch|put|drive|move|lift|open|leave|let)\b)"
    r"|(\b(?:do )?)(?:not|don't|dont|never)\s+(?=let \w+ )"
)
"""An order not to do a thing, which tells of no trouble: `so don't run that motor`, `don't let anybody run it`."""
_FORBIDDEN = "forbidden"
UNDER_ORDER = 5
"So many words behind an order are what it forbids."
_PAST = ("used to", "is gone", "went away", "gone away", "cured", "sorted")
_ENDED = ("no longer", "any more", "anymore", "has stopped")
_IRREGULAR = {
    "dying": "die", "died": "die", "ran": "run", "blew": "blow", "blown": "blow", "fell": "fall", "fallen": "fall",
    "kept": "keep", "lost": "lose", "stuck": "stick", "sank": "sink", "sunk": "sink", "crept": "creep", "hot": "hot",
    "shook": "shake", "spun": "spin", "held": "hold", "broke": "break", "broken": "break", "slid": "slide",
    "leaves": "leave", "left": "left", "lit": "light", "burnt": "burn", "tore": "tear", "torn": "tear", "got": "get",
    "refuses": "refuse", "refused": "refuse", "fails": "fail", "failed": "fail", "goes": "go", "went": "go",
    "going": "go", "does": "do", "stays": "stay", "built": "build", "came": "come", "threw": "throw", "gas": "gas",
}  # fmt: skip
_SENTENCE = re.compile(r"(?:[^.!?;]|\.(?=\d))+[.!?;]?")  # the point of a number ends none
_WORD = re.compile(r"[a-z0-9]+(?:'[a-z]+)?")


@lru_cache(maxsize=20_000)
def stem(word: str) -> str:
    """A word without its ending: squeals, squealed and squealing are one."""
    plain = word.lower().replace("'", "").replace("’", "")
    if plain in _IRREGULAR:
        return _IRREGULAR[plain]
    for end in ("ing", "ied", "ies", "ed", "es", "s", "e", "y"):
        if plain.endswith(end) and len(plain) > len(end) + 2 and not plain.endswith("ss"):
            root = plain[: -len(end)]
            return root[:-1] if len(root) > 3 and root[-1] == root[-2] and end in ("ing", "ed") else root
    return plain


_MOVES = frozenset(
    map(stem, ("drops", "sinks", "creeps", "moves", "leaks", "weeps", "drips", "drifts", "slips", "loses", "falls"))
)
_NOUGHT = frozenset({"noth", "none", "nowt", "nil", "zero", "nought"})
"Verbs that a word behind them denies: it dropped nothing."


@dataclass(frozen=True, slots=True)
class Slot:
    """One slot of a wording: forms that meet it, each a run of stems; `bars` for one that must not be met."""

    forms: tuple[tuple[str, ...], ...]
    denial: bool = False
    bars: bool = False
    denied: bool = False
    "A denial must stand just before it."


@lru_cache(maxsize=4_000)
def slots_of(wording: str) -> tuple[Slot, ...]:
    """The slots of a wording as it stands in a fault file."""
    found, parts = [], wording.split()
    for n, part in enumerate(parts):
        if part == "!":
            if n + 1 == len(parts) or parts[n + 1].startswith("-"):
                found.append(Slot((), denial=True))
            continue
        bars = part.startswith("-")
        forms = tuple(tuple(stem(w) for w in form.split("_")) for form in part.lstrip("-").split("|"))
        found.append(Slot(forms, bars=bars, denied=n > 0 and parts[n - 1] == "!"))
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Sentence:
    """One sentence of a note: its stems, and its words as they were said."""

    stems: tuple[str, ...]
    event: Event
    asks: bool
    past: bool
    ended: bool
    fresh: int
    "From which stem on the words are the note's own; those before it end the note before."
    joined: Event
    "The same with the words that end the note before."


def sentences(log: Log) -> list[Sentence]:
    """The sentences of the last notes, in order; one that runs over two notes is read with both of them too."""
    notes = [n for r in log.history.sessions for n in r.notes][-LAST:]
    found, before = [], ""
    for note in notes:
        place = log.history.place(note.uid)
        for match in _SENTENCE.finditer(note.words):
            joined = f"{before} " if match.start() == 0 and before else ""
            said = f"{joined}{match[0]}".strip()
            plain = said.lower().replace("’", "'")
            meant = _ORDER.sub(lambda said: f"{said[1] or said[2] or ''}{_FORBIDDEN} ", plain)
            stems = tuple(stem(w) for w in _WORD.findall(meant))
            past, ended = (any(w in plain for w in words) for words in (_PAST, _ENDED))
            event = _event(match[0].strip(), place, match)
            both = _event(f"{before} / {match[0].strip()}", place, match) if joined else event
            fresh = len(_WORD.findall(joined.lower()))
            found.append(Sentence(stems, event, said.endswith("?"), past, ended, fresh, both))
        tail = re.split(r"[!?;]|\.(?!\d)", note.words)[-1].strip()
        before = tail if tail and len(tail.split()) < 3 * REACH else ""
    return found


def _event(said: str, place: Place, at: re.Match[str]) -> Event:
    """The words of a sentence as what was found at its place."""
    span = Span(place.note, at.start(), at.end())
    fact = Finding(main=span, part="", condition=said.strip(" .,"), verdict="bad", quote=said)
    return Event(place.order + min(at.start(), 99_999) / 100_000, fact, place)


def heard_in(wordings: Iterable[str], lines: Sequence[Sentence], across: bool = False) -> Iterator[tuple[Event, bool]]:
    """Each sentence that has one of the wordings, with whether it says so (True) or denies it (False).

    `across`: the words may begin in the note before.
    """
    plans = [slots_of(w) for w in wordings]
    firsts = [{form[0] for s in plan if not s.denial and not s.bars for form in s.forms} for plan in plans]
    for line in lines:
        said = set(line.stems)
        for plan, first in zip(plans, firsts, strict=True):
            if line.asks or said.isdisjoint(first):
                continue
            met = _met(plan, line.stems, line.fresh, ACROSS if across else 0)
            if met is not None:
                denied = line.past or ((met or line.ended) and not any(_denies(s) for s in plan))
                alone = not across or _met(plan, line.stems[line.fresh :], 0, 0) is not None
                yield line.event if alone else line.joined, not denied
                break


def _denies(slot: Slot) -> bool:
    """Whether a slot itself asks for a denial, or may be met by one."""
    return slot.denial or slot.denied or any(form[0] in DENIALS for form in slot.forms if not slot.bars)


def _met(plan: Sequence[Slot], stems: tuple[str, ...], fresh: int, across: int) -> bool | None:
    """None where the slots are not met; else whether the words are denied just before they are said."""
    lead = next((s for s in plan if not s.denial and not s.bars), None)
    if lead is None:
        return None
    firsts = {form[0] for form in lead.forms}
    for at in [at for at, stem in enumerate(stems) if stem in firsts]:
        if not _stands(lead, stems, at):
            continue
        if lead.denied and DENIALS.isdisjoint(stems[max(0, at - BEFORE) : at]):
            continue
        low, high = max(0, at - REACH), min(len(stems), at + REACH + 1)
        where, spots = [] if lead.denied else [at], [at]
        for slot in plan:
            if slot is lead:
                continue
            own = fresh if slot.bars and at >= fresh else low  # what the note before ends with bars nothing
            here = _where(slot, stems, max(low, own), high, at)
            if slot.bars:
                if here is not None:
                    break
            elif here is None:
                break
            else:
                spots.append(here)
                where += [] if slot.denial or slot.denied else [here]
        else:
            start = max(0, min(spots) - 8)
            crosses = min(spots) < fresh
            if crosses and (max(spots) < fresh or max(spots) - min(spots) > across):
                continue  # read with the note before already, or no one thought
            if any(stem(_FORBIDDEN) in stems[max(0, at - UNDER_ORDER) : at] for at in spots):
                continue
            if _SUPPOSED.isdisjoint(stems[start : max(spots) + 3]):
                if any(_at_nought(stems[w : w + 2]) for w in where):
                    continue  # with the cock shut it dropped nothing: that cures nothing
                return any(DENIALS.intersection(stems[max(0 if w < fresh else fresh, w - 2) : w]) for w in where)
    return None


def _at_nought(stems: tuple[str, ...]) -> bool:
    """Whether a verb is denied by what stands behind it: dropped nothing, leaks none."""
    return len(stems) == 2 and stems[0] in _MOVES and stems[1] in _NOUGHT


def _stands(slot: Slot, stems: tuple[str, ...], at: int) -> bool:
    return any(stems[at : at + len(form)] == form for form in slot.forms)


def _where(slot: Slot, stems: tuple[str, ...], low: int, high: int, near: int) -> int | None:
    """Where a slot is met, nearest to the lead; None for nowhere."""
    for at in sorted(range(low, high), key=lambda k: abs(k - near)):
        if slot.denial:
            if stems[at] in DENIALS:
                return at
        elif _stands(slot, stems, at) and not (slot.denied and DENIALS.isdisjoint(stems[max(0, at - BEFORE) : at])):
            return at
    return None
