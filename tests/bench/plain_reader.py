"""A reader for the tests of keeping: it knows a few sayings, carries a part over, and takes facts back."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass

from worklog_tui.bench.reading import REACH
from worklog_tui.model import Fact, FactKey, Finding, Machine, Note, Span, Work

Seen = tuple[str, int, int, int]
"A finding: note, start, end, and how many notes ago it was said."


@dataclass(frozen=True)
class Minded:
    """The last part, and the last three findings as far back as a note may reach."""

    part: str = ""
    recent: tuple[Seen, ...] = ()

    def to_json(self) -> str:
        return json.dumps({"part": self.part, "recent": self.recent})


@dataclass(frozen=True)
class Changed:
    added: tuple[Fact, ...] = ()
    withdrawn: tuple[FactKey, ...] = ()


@dataclass(frozen=True)
class PlainReader:
    """`the X` names a part; `cracked` finds fault with it; `cleaned` is work; `scratch that` takes a finding back.

    `look again` makes the last finding doubtful. The word `stumble` makes the reader fail.
    """

    stamp: str = "plain"
    confidence_line: float = 0.5

    def start(self) -> Minded:
        return Minded()

    def resume(self, text: str) -> Minded:
        data = json.loads(text)
        return Minded(data["part"], tuple((note, start, end, age) for note, start, end, age in data["recent"]))

    def feed(self, machine: Machine, context: Minded, note: Note) -> tuple[Minded, Changed]:
        if "stumble" in note.words:
            raise RuntimeError("the reader stumbled")
        named = re.search(r"the (\w+)", note.words)
        part = named[1] if named else context.part
        added: list[Fact] = []
        withdrawn: list[FactKey] = []
        recent = [(uid, start, end, age + 1) for uid, start, end, age in context.recent if age < REACH]
        for found in re.finditer("cracked", note.words):
            span = Span(note.uid, *found.span())
            added.append(Finding(main=span, part=part, condition="cracked", verdict="bad", quote=note.words))
            recent.append((note.uid, *found.span(), 0))
        for found in re.finditer("cleaned", note.words):
            filled = () if named else ("part",)
            span = Span(note.uid, *found.span())
            added.append(Work(main=span, action="clean", part=part, quote=note.words, filled=filled))
        if "scratch that" in note.words and recent:
            uid, start, end, _ = recent.pop()
            withdrawn.append(FactKey(uid, "finding", start, end))
        if "look again" in note.words and recent:
            span = Span(*recent[-1][:3])
            added.append(Finding(main=span, part=part, condition="cracked", verdict="noted", confidence=0.3))
        return Minded(part, tuple(recent[-3:])), Changed(tuple(added), tuple(withdrawn))
