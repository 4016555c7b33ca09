"""A reader for the tests of keeping: it knows three sayings, carries a part over, and takes facts back."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass, replace

from worklog_tui.model import Fact, FactKey, Finding, Machine, Note, Span, Work


@dataclass(frozen=True)
class Minded:
    """The last words and facts, as far back as a note may reach."""

    part: str = ""
    recent: tuple[tuple[str, int, int], ...] = ()

    def to_json(self) -> str:
        return json.dumps({"part": self.part, "recent": self.recent})


@dataclass(frozen=True)
class Changed:
    added: tuple[Fact, ...] = ()
    withdrawn: tuple[FactKey, ...] = ()


@dataclass(frozen=True)
class PlainReader:
    """`the X` names a part; `cracked` finds fault with it; `cleaned` is work; `scratch that` takes it back.

    `look again` adds a doubtful finding to the note before. The word `stumble` makes the reader fail.
    """

    stamp: str = "plain"
    confidence_line: float = 0.5

    def start(self) -> Minded:
        return Minded()

    def resume(self, text: str) -> Minded:
        data = json.loads(text)
        return Minded(data["part"], tuple((note, start, end) for note, start, end in data["recent"]))

    def feed(self, machine: Machine, context: Minded, note: Note) -> tuple[Minded, Changed]:
        if "stumble" in note.words:
            raise RuntimeError("the reader stumbled")
        named = re.search(r"the (\w+)", note.words)
        part = named[1] if named else context.part
        added: list[Fact] = []
        withdrawn: list[FactKey] = []
        recent = list(context.recent[-11:])
        for found in re.finditer(r"cracked", note.words):
            span = Span(note.uid, *found.span())
            added.append(Finding(main=span, part=part, condition="cracked", verdict="bad", quote=note.words))
            recent.append((note.uid, *found.span()))
        for found in re.finditer(r"cleaned", note.words):
            span = Span(note.uid, *found.span())
            filled = () if named else ("part",)
            added.append(Work(main=span, action="clean", part=part, quote=note.words, filled=filled))
        if "scratch that" in note.words and recent:
            span = Span(*recent.pop())
            withdrawn.append(FactKey(span.note, "finding", span.start, span.end))
        if "look again" in note.words and recent:
            span = Span(*recent[-1])
            added.append(Finding(main=span, part=part, condition="cracked", verdict="noted", confidence=0.3))
        return replace(context, part=part, recent=tuple(recent[-3:])), Changed(tuple(added), tuple(withdrawn))
