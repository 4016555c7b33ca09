"""How an open item is worded as a step: short, as a mechanic would say it, with the words of the part in it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.words import holds, spoken, tokens
from worklog_tui.model import Finding, OpenItem

_JOIN = re.compile(r"\s+(on|in|for|round|around|over|under|across|at|made from|made of|made out of|out of|from)\s+")
_ARTICLES = frozenset({
    "the", "a", "an", "it", "all", "both", "up", "out", "off", "that", "this", "his", "my", "new", "for", "if",
    "whether", "how", "every",
})  # fmt: skip
_LEAD = re.compile(
    r"^(?:(?:and|then|a|an|the|some|my|our|his|real|proper|new|brand|fresh|decent|another|one|to|get|order|buy|need"
    r"|want)\s+)+",
    re.IGNORECASE,
)


class Wording:
    """Words steps from items, with the word lists of grammars/diagnosis/steps.toml."""

    def __init__(self, lists: Mapping[str, Any], log: Log) -> None:
        self.lists = lists
        self.log = log
        self.stopgap = frozenset(w for phrase in lists.get("stopgap", ()) for w in tokens(phrase))

    def step(self, item: OpenItem) -> str:
        """The step that deals with an item; empty for one that no step deals with."""
        about = " ".join(item.about.split()).strip(" .,;:")
        if item.reason == "question" or not self._names_something(about):
            return ""
        if item.reason == "part needed":
            return self._part(item, about)
        if item.reason == "temporary":
            return self._make_good(item, about)
        if item.reason == "fault":
            return self._put_right(item, about)
        return self._do(item, about)

    def _names_something(self, about: str) -> bool:
        """Whether the words name a thing at all: 'which' and 'the lot' do not."""
        return any(len(w) > 2 and w not in self.lists.get("no_things", ()) for w in tokens(about))

    def starts_with_verb(self, text: str, name: str = "") -> bool:
        """Whether a text begins with a job to do; 'drain cock', 'check valve' and 'oil filter' are things."""
        first, _, rest = spoken(text).partition(" ")
        if first not in self.lists.get("verbs", ()) or not rest or spoken(name).startswith(first + " "):
            return False
        second = rest.split()[0]
        if first in self.lists.get("verb_or_thing", ()):
            return second in _ARTICLES
        return second not in self.lists.get("thing_heads", ())

    def _part(self, item: OpenItem, about: str) -> str:
        bare = self._fuller(_LEAD.sub("", about) or about, item.name)
        first, _, rest = bare.partition(" ")
        if first.lower() in ("find", "make", "fit", "replace", "source") and rest:
            return bare
        ordered = self.is_ordered(item)
        if ordered:
            return f"fit the new {bare}"
        return f"order and fit {_one_of(bare)}new {bare}"

    def is_ordered(self, item: OpenItem) -> bool:
        """Whether the part was heard to be ordered or to have come."""
        quote = f" {spoken(item.quote)} {spoken(self.log.around(item.anchors, 50))} "
        if item.state == "awaited" or any(f" {w} " in quote for w in self.lists.get("ordered", ())):
            return True
        return self.log.work_on(item.name, item.about, -1.0, ("order",)) is not None

    def _make_good(self, item: OpenItem, about: str) -> str:
        raised = self.log.when(item.anchors[0]) if item.anchors else -1.0
        if self.log.work_on(item.name, about, raised - 3, ("disconnect",)) or self._is_undone(item):
            return f"reconnect the {_bare(about)}"
        known = bool(item.name) and set(tokens(about)) >= set(tokens(item.name))
        thing = _bare(about) if known else self.real_thing(about)
        if not thing and item.name and not self._only_stopgap(item.name):
            thing = item.name
        thing = self._fuller(thing, item.name) if thing else ""
        if thing:
            return f"fit {_one_of(thing)}proper new {thing}"
        return f"take off the {_bare(about)} and make it good"

    def _is_undone(self, item: OpenItem) -> bool:
        quote = f" {spoken(item.quote)} {spoken(self.log.around(item.anchors, 30))} "
        return any(f" {w} " in quote for w in self.lists.get("undone", ()))

    @staticmethod
    def _fuller(thing: str, name: str) -> str:
        """The vocabulary's name where one word alone was said: 'gasket' that is known to be the inlet gasket."""
        said, known = tokens(thing), tokens(name)
        return name if len(said) == 1 and len(known) > 1 and said[0] == known[-1] else thing

    def real_thing(self, about: str) -> str:
        """What a stop-gap stands for: 'tape on the top hose' gives top hose, 'home-cut bowl gasket' bowl gasket."""
        parts = _JOIN.split(about, maxsplit=1)
        if len(parts) > 1 and parts[1] == "under":
            return ""
        head = _bare(parts[0])
        kept = " ".join(w for w in re.split(r"[\s]+", head) if not (set(tokens(w)) <= self.stopgap and tokens(w)))
        if kept and tokens(kept):
            where = len(parts) > 2 and not parts[1].startswith(("made", "out", "from"))
            return f"{kept} {parts[1]} {parts[2]}" if where else kept
        covers = len(parts) > 2 and parts[1] not in ("under", "from", "at") and not self._only_stopgap(parts[2])
        return _bare(parts[2]) if covers else ""

    def _only_stopgap(self, text: str) -> bool:
        return set(tokens(text)) <= self.stopgap

    def _put_right(self, item: OpenItem, about: str) -> str:
        if item.state == "noticed" and item.name:
            about = item.name
        bare = self._fuller(_bare(about), item.name)
        said = tokens(bare)
        if said[-1:] and said[-1] in {t for w in self.lists.get("trouble", ()) for t in tokens(w)}:
            return f"find the cause of the {bare}"
        if self._is_consumable(said):
            return f"replace the {bare}"
        last = self.log.verdict(item.name, about)
        if last and isinstance(last.fact, Finding) and last.fact.verdict == "bad":
            return (
                f"put the {bare} right ({last.fact.condition})"
                if len(last.fact.condition) < 25
                else f"put the {bare} right"
            )
        return f"put the {bare} right"

    def _do(self, item: OpenItem, about: str) -> str:
        said = tokens(about)
        if self.starts_with_verb(about, item.name) or self._is_a_job(about):
            return about
        if re.match(r"(new|fresh)\b", about, re.I):
            return f"fit {about}"
        if said[-1:] and said[-1] in self.lists.get("process", ()):
            return f"do the {_bare(about)}"
        bare = self._fuller(_bare(about), item.name)
        if verb := self._verb_before(self.log.around(item.anchors, 40) or item.quote, about):
            return f"{verb} the {bare}"
        if self._is_consumable(tokens(bare)):
            return f"fit {_one_of(bare)}proper new {bare}"
        return f"see to the {bare}"

    def _is_consumable(self, said: tuple[str, ...]) -> bool:
        return any(holds(said, tokens(w)) for w in self.lists.get("consumable", ()))

    def _is_a_job(self, text: str) -> bool:
        """Whether a text without a leading verb asks for a job all the same: 'head off', 'plug out and clean it'."""
        said = spoken(text).split()
        verbs = self.lists.get("verbs", ())
        return said[-1] in ("off", "out", "apart", "again", "back", "up") or any(
            w in verbs and said[i - 1] in ("and", "then", "or") for i, w in enumerate(said) if i
        )

    def _verb_before(self, quote: str, about: str) -> str:
        """The verb that stands before the thing in the words that raised it, at most four words away."""
        words, first = spoken(quote).split(), spoken(about).split()[:1]
        if first and first[0] in words:
            at = words.index(first[0])
            for word in reversed(words[max(0, at - 4) : at]):
                if word in self.lists.get("verbs", ()) and word not in self.lists.get("faint_verbs", ()):
                    return word
        return ""

    def minutes(self, step: str) -> int | None:
        """What a step of this kind takes, by its verb."""
        table = self.lists.get("minutes", {})
        found = [table[w] for w in spoken(step).split() if w in table]
        return int(found[0]) if found else None


def _bare(text: str) -> str:
    return re.sub(r"^(?:the|a|an|my|our|that|this|some)\s+", "", text.strip(), flags=re.I)


def _one_of(thing: str) -> str:
    """The article that a thing takes: none for several."""
    head = re.split(r"\s(?:on|in|for|of|round|at)\s", thing)[0].split()
    last = head[-1].lower() if head else ""
    several = last.endswith("s") and not last.endswith(("ss", "us"))
    return "" if several or last in ("oil", "coolant", "antifreeze", "foam") else "a "
