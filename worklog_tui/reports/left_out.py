"""The one gate before everything that is published: private notes, sums of money and never-publish words stay behind.

Whatever is published is worked out from the history that comes through here, never from the one that goes in; so what
was left out can come back neither as a fact nor as an open item.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass, replace
from functools import cache, cached_property
from typing import Any, TypeVar

from worklog_tui.model import Fact, History, Note, SessionRecord, Span
from worklog_tui.model.facts import KINDS
from worklog_tui.model.note import ERASED
from worklog_tui.notes.cleaning import sanitise
from worklog_tui.reports.publishing_words import PublishingWords, alternatives

GONE = "…"
"What stands where something was left out."
_DIGITS = r"(?<![\d,.])\d++(?:[,.]\d++)*+"
_NUMBER = (
    rf"(?:{_DIGITS}(?:\s?k\b)?|(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen"
    r"|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand|million"
    r"|half|couple|few|dozen)\b)"
)
_SUM = rf"(?:(?:a|an|about|around)\s+)?{_NUMBER}(?:(?:\s+|-)(?:and\s+|of\s+|odd\s+|or\s+|to\s+)?{_NUMBER}){{0,5}}"
_ENDS = r"(?=\s*(?:[.,;:!?)]|$)|\s+(?:for|and|each|apiece|plus|but|so|then|because|which|at|in\s+the\s+end)\b)"
_SIGN = re.compile("[£$€¥]")
_WORD = re.compile(r"[^\W_]+")
_KEPT = frozenset({
    "uid", "note", "target", "device", "seen", "rule", "utc", "zone", "known", "track", "verb", "said_at", "role",
    "action", "verdict", "standing", "reason", "state", "quantity", "limit", "main", "evidence", "filled",
    "measures", "anchor",
})  # fmt: skip
"Fields that hold no words of people."
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class LeftOut:
    """How much stayed behind."""

    notes: int = 0
    "Private notes."
    sums: int = 0
    "Sums of money."
    words: int = 0
    "Never-publish words, wherever they stood in notes."


@dataclass(frozen=True)
class Gate:
    """What may go out, by the words of the files."""

    words: PublishingWords
    private: frozenset[str] = frozenset()
    "Uids of notes that the person made private."

    @cached_property
    def _never(self) -> re.Pattern[str]:
        return re.compile(alternatives(self.words.never), re.IGNORECASE)

    @cached_property
    def _money(self) -> re.Pattern[str]:
        named, paid, sold = (alternatives(row) for row in (self.words.money, self.words.paid, self.words.sold))
        return re.compile(
            rf"[£$€¥]\s?{_DIGITS}(?:\s?k\b)?|{_DIGITS}\s?[£$€¥]"
            rf"|\b{_SUM}[\s-]+(?:{named})"
            rf"|(?<![\w])a\s+(?:{named})"
            rf"|\b{_SUM}[\s-]+pounds?[\s-]+(?:{sold})"
            rf"|(?:{paid}|ga?ve\s+(?!it\b|her\b|that\b))\s*(?:(?!\d)[\w']+\s+){{0,3}}?"
            rf"(?P<bare>{_SUM}(?:[\s-]+pounds?\b(?!\s+(?:of|foot|feet|force|per)\b)|{_ENDS}))",
            re.IGNORECASE,
        )

    @cached_property
    def _private(self) -> re.Pattern[str]:
        return re.compile(rf"\A\W*private\b\s*[:;,.–-]|{alternatives(self.words.private)}", re.IGNORECASE)

    @cached_property
    def _hints(self) -> tuple[frozenset[str], frozenset[str], frozenset[str]]:
        """One word of each phrase, for private notes, for money and for what is never published: a quick first look."""
        named = (*self.words.money, *self.words.paid, "pound", "pounds", "gave", "give")
        return _hints(("private", *self.words.private)), _hints(named), _hints(self.words.never)

    @cached_property
    def _signs_only(self) -> bool:
        """Whether something that is never published has no letter or digit in it, so that no word hints at it."""
        return not all(_words(phrase) for phrase in self.words.never)

    @cached_property
    def _known(self) -> dict[str, str]:
        """Texts that were cleaned before: facts repeat the words of their notes."""
        return {}

    def is_private(self, note: Note) -> bool:
        """Whether a note is left out whole."""
        if note.uid in self.private or note.words == ERASED:
            return True
        words = note.words.replace("'", "").replace("’", "")
        return not self._hints[0].isdisjoint(_words(words)) and bool(self._private.search(words))

    def gaps(self, text: str) -> list[tuple[int, int, str]]:
        """Where something is left out: start, end, and `sum` or `word`."""
        words, found = _words(text), []
        if not self._hints[1].isdisjoint(words) or _SIGN.search(text):
            found += [(*_span(one), "sum") for one in self._money.finditer(text)]
        if not self._hints[2].isdisjoint(words) or self._signs_only:
            found += [(one.start(), one.end(), "word") for one in self._never.finditer(text)]
        return sorted(found)

    def clean(self, text: str) -> str:
        """The text with what is left out replaced by one sign, and without control characters."""
        if text not in self._known:
            cleaned = sanitise(text)
            for start, end in reversed(_joined(self.gaps(cleaned))):
                cleaned = cleaned[:start] + GONE + cleaned[end:]
            self._known[text] = cleaned
        return self._known[text]

    def history(self, whole: History) -> tuple[History, LeftOut]:
        """The history that may be published, and how much stayed behind."""
        hidden = {n.uid for record in whole.sessions for n in record.notes if self.is_private(n)}
        gaps = {n.uid: self.gaps(n.words) for record in whole.sessions for n in record.notes if n.uid not in hidden}
        records = tuple(self._record(record, hidden, gaps) for record in whole.sessions)
        told = [kind for row in gaps.values() for _, _, kind in row]
        acts = tuple(act for act in whole.acts if act.target.split("/", 1)[0] not in hidden)
        known = History(self.all(whole.machine), records, self.all(acts), self.all(whole.comments))
        return known, LeftOut(len(hidden), told.count("sum"), told.count("word"))

    def all(self, thing: T) -> T:
        """The same thing with every text of people in it cleaned; what needs no cleaning is the very same."""
        return self._walk(thing)  # type: ignore[no-any-return]

    def words_only(self, made: T) -> T:
        """What was made from the history, with the never-publish words taken out of our own sentences too."""
        return Gate(PublishingWords(never=self.words.never)).all(made) if self.words.never else made

    def _record(
        self, record: SessionRecord, hidden: set[str], gaps: Mapping[str, list[tuple[int, int, str]]]
    ) -> SessionRecord:
        def stays(fact: Fact) -> bool:
            spans = (fact.main, *fact.evidence)
            return not any(s.note in hidden for s in spans) and not _cut(fact.main, gaps.get(fact.main.note, ()))

        kept = [n for n in record.notes if n.uid in gaps]
        notes = tuple(n if (words := self.clean(n.words)) == n.words else replace(n, words=words) for n in kept)
        return SessionRecord(
            record.session, notes, tuple(self.all(f) for f in record.facts if stays(f)),
            tuple(self.all(f) for f in record.questions if stays(f)),
        )  # fmt: skip

    def _walk(self, thing: Any) -> Any:
        if isinstance(thing, str):
            return self.clean(thing)
        if isinstance(thing, tuple | list):
            made = [self._walk(one) for one in thing]
            same = all(a is b for a, b in zip(made, thing, strict=True))
            return thing if same else getattr(thing, "_make", type(thing))(made)  # a named tuple is made of its fields
        if isinstance(thing, dict):
            return {key: self._walk(one) for key, one in thing.items()}
        if is_dataclass(thing) and not isinstance(thing, type):
            if isinstance(thing, Fact) and self._is_clean(thing):
                return thing
            changed = dict(self._changed(thing))
            return replace(thing, **changed) if changed else thing
        return thing

    def _is_clean(self, fact: Fact) -> bool:
        """A quick look at all texts of a fact at once: most have nothing that is left out."""
        said = "\n".join(text for name in _texts(fact.kind) if isinstance(text := getattr(fact, name), str) and text)
        return self.clean(said) == said

    def _changed(self, thing: Any) -> Iterator[tuple[str, Any]]:
        for field in fields(thing):
            if field.init and field.name not in _KEPT and not field.name.startswith("_"):
                before = getattr(thing, field.name)
                after = self._walk(before)
                if after is not before and after != before:
                    yield field.name, after


@cache
def _texts(kind: str) -> tuple[str, ...]:
    """The fields of a kind of fact that may hold words of people."""
    return tuple(f.name for f in fields(KINDS[kind]) if f.name not in _KEPT)


def _words(text: str) -> list[str]:
    return _WORD.findall(text.lower())


def _hints(phrases: Iterable[str]) -> frozenset[str]:
    """The longest word of each phrase."""
    return frozenset(max(_words(phrase), key=len) for phrase in phrases if _words(phrase))


def _span(found: re.Match[str]) -> tuple[int, int]:
    return found.span("bare") if found["bare"] else found.span()


def _joined(gaps: list[tuple[int, int, str]]) -> list[tuple[int, int]]:
    rows: list[tuple[int, int]] = []
    for start, end, _ in gaps:
        if rows and start <= rows[-1][1]:
            rows[-1] = rows[-1][0], max(end, rows[-1][1])
        else:
            rows.append((start, end))
    return rows


def _cut(main: Span, gaps: Any) -> bool:
    return any(start < main.end and main.start < end for start, end, kind in gaps if kind == "sum")
