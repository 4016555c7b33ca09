"""What does not go together, in the bare words: a part of the wrong kind for the ignition, a gauge that has nothing to
measure, a control that does the opposite (words in grammars/trade/odd.toml). All of it is asked about, never claimed.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from worklog_tui.logbook.trade_files import any_of, trade_file
from worklog_tui.model import History, Machine, Place

Row = tuple[str, str, tuple[Place, ...]]
_ODD = trade_file("odd")
APART = 9
"So many words may stand between the two sides of a control that works the wrong way round."


def odd_words(history: History) -> Iterator[Row]:
    """What each line says that cannot be right on such a machine, each thing once, in the order of the log."""
    seen: set[str] = set()
    for record in history.sessions:
        for note in record.notes:
            for kind, says in _of_line(note.words, history.machine):
                if says not in seen:
                    seen.add(says)
                    yield kind, says, (history.place(note.uid),)


def _of_line(words: str, machine: Machine) -> Iterator[tuple[str, str]]:
    for one in _ODD["wrong_kind"]:
        found = _phrase(tuple(one["says"])).search(words)
        if machine.ignition in one["ignition"] and found and not _phrase(tuple(one["never"])).search(words):
            yield "part", f"{found[0]} on {one['what']}: the wrong kind, or mis-heard?"
    if gauge := _idle_gauge(words, machine):
        yield "gauge", f"{gauge}: what has it to measure on this machine?"
    for sentence in re.split(r"(?<=[.!?;])\s", words):
        if control := _opposite(sentence):
            yield "backwards", f"{control}: told to do the opposite; made so, or put together wrong?"


def _idle_gauge(words: str, machine: Machine) -> str:
    """The gauge of a line that has nothing to measure, by the card or by the line itself; empty for none."""
    kind = machine.kind.casefold()
    for one in _ODD["gauge"]:
        found = _phrase(tuple(one["says"])).search(words)
        if found is None:
            continue
        parts, none, gone = (any_of(w) for w in (one["without"], _ODD["gauges"]["none"], _ODD["gauges"]["gone"]))
        lacking = rf"\b(?:{none}) (?:\w+ )?(?:{parts})\b|\b(?:{parts})(?: |(?=['’]))(?:{gone})\b"
        lacks = re.search(lacking, words, re.IGNORECASE)
        if lacks or _phrase(tuple(_ODD["gauges"]["idle"])).search(words):
            return found[0]
        if any(name in kind for name in one.get("kind", ())) and not re.search(
            rf"\b(?:no|without(?: an?)?|hasn['’]?t(?: got)? an?) {re.escape(found[0])}", words, re.IGNORECASE
        ):
            return found[0]
    return ""


def _opposite(sentence: str) -> str:
    """The control of a sentence that does the opposite of what is asked of it; empty for none."""
    controls = _ODD["controls"]
    if _phrase(tuple(controls["never"])).search(sentence):
        return ""
    thing = _phrase(tuple(controls["things"])).search(sentence)
    if thing is None or not _phrase((*controls["when"], *controls["across"])).search(sentence):
        return ""
    if _phrase(tuple(controls["across"])).search(sentence):
        return _named(sentence, thing.start(), thing.end())
    behind = sentence[thing.end() :]
    for pair in controls["pairs"]:
        one, other = pair.split("|")
        if any(_turns(behind, a, b) for a, b in ((one, other), (other, one))):
            return _named(sentence, thing.start(), thing.end())
    return ""


def _turns(text: str, one: str, other: str) -> bool:
    """Whether a text says one thing, then when it comes, then the opposite of it."""
    when = any_of(_ODD["controls"]["when"])
    forms = r"(?:s|es|ed|ing|d)?"
    near = rf"(?:\W+\w+){{0,{APART}}}?\W+"
    return re.search(rf"\b{one}{forms}\b{near}(?:{when})\b{near}{other}{forms}\b", text, re.IGNORECASE) is not None


def _named(sentence: str, start: int, end: int) -> str:
    """A control with the word before it."""
    before = re.findall(r"[\w-]+", sentence[:start])
    lead = (
        before[-1] if before and before[-1].casefold() not in ("the", "a", "this", "that", "my", "its", "and") else ""
    )
    return f"{lead} {sentence[start:end]}".strip().casefold()


@lru_cache(maxsize=64)
def _phrase(phrases: tuple[str, ...]) -> re.Pattern[str]:
    """A pattern for any of the phrases as whole words."""
    return re.compile(rf"(?<!\w)(?:{any_of(phrases)})(?!\w)", re.IGNORECASE)
