"""How an open item is worded as a step: short, as a mechanic would say it, with the words of the part in it."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from worklog_tui.diagnosis.fitting import fit_proper, order_and_fit
from worklog_tui.diagnosis.kin import by_card
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.phrases import asked_for, bare, fuller, is_clause, job_in, place_of, taken_off
from worklog_tui.diagnosis.put_right import cure_of, put_right
from worklog_tui.diagnosis.sayings import Sayings
from worklog_tui.diagnosis.stands_for import JOIN, held_together, stands_for
from worklog_tui.diagnosis.worded import Worded, aim_of, own
from worklog_tui.diagnosis.words import holds, spoken, tokens
from worklog_tui.model import Finding, OpenItem

_UNPROVED = re.compile(
    r"\b(?:not|nt|never|havent|haven['’]t) (?:yet )?(?:been )?(?:proved|proven|tested|tried|re-?run|run it|ridden)\b",
    re.IGNORECASE,
)
_SOURCE = re.compile(r"\s(?:from|out of|made of|made from)\s")
_ARTICLES = frozenset({
    "the", "a", "an", "it", "all", "both", "up", "out", "off", "that", "this", "his", "my", "new", "for", "if",
    "whether", "how", "every",
})  # fmt: skip
_LEAD = re.compile(
    r"^(?:(?:and|then|a|an|the|some|my|our|his|real|proper|new|brand|fresh|decent|another|one|to|get|order|buy|need"
    r"|want)\s+)+",
    re.IGNORECASE,
)
_DOING = re.compile(r"\s(?:ordering|buying|getting|replacing|renewing|fitting|changing|making)$", re.IGNORECASE)
_DOES_NOT = re.compile(
    r"(?:it |just |still )*(?:won['’]?t|will not|doesn['’]?t|does not|didn['’]?t|can['’]?t|not (?!tight|right|straight)"
    r"|refus|dead\b|nothing)", re.IGNORECASE
)  # fmt: skip
_PIECES = re.compile(r"\s(?:and|or|with) (?:the |a )?")
_WHERE = frozenset({"left", "right", "upper", "lower", "near", "far"})
_GETS = ("find", "make", "fit", "replace", "source")
_ENDS = ("off", "out", "apart", "again", "back", "up")


class Wording:
    """Words steps from items, with the word lists of grammars/diagnosis/steps.toml."""

    def __init__(self, lists: Mapping[str, Any], log: Log, names: Sequence[str] = ()) -> None:
        self.names = names
        "Names of two words that the fault files have for parts that keep people safe."
        self.lists = lists
        self.log = log
        self.verbs = frozenset(lists.get("verbs", ())) - frozenset(lists.get("faint_verbs", ())) | {
            "have",
            "get",
            "look",
        }
        self.stopgap = frozenset(w for phrase in lists.get("stopgap", ()) for w in tokens(phrase) if " " not in phrase)
        self.talk = Sayings(lists.get("talk", {}))
        self.trouble = frozenset(w for phrase in lists.get("trouble", ()) for w in tokens(phrase))

    def step(self, item: OpenItem) -> str:
        """The words of the step that deals with an item; empty for one that no step deals with."""
        return self.worded(item).say

    def aim(self, step: str) -> str:
        """What a step is for."""
        return aim_of(step, self.lists.get("aims", {}))

    def worded(self, item: OpenItem) -> Worded:
        """The step that deals with an item, with its thing; no words for one that no step deals with."""
        about = " ".join(item.about.split()).strip(" .,;:")
        about = about[:1].lower() + about[1:] if about[1:2].islower() else about
        if item.reason == "question" or not self._names_something(about):
            return Worded("")
        if item.reason == "temporary":
            return self._make_good(item, about)
        if item.name and (item.state == "noticed" or (is_clause(about) and item.reason != "fallback")):
            about = self._said_name(item)
            if not self._names_something(about):
                return Worded("")
        said = tokens(about)
        if item.reason in ("fault", "part needed") and said[-1] in self.trouble:
            return Worded(f"find the cause of the {bare(about)}")
        if item.reason == "part needed" and said[-1] not in self.lists.get("process", ()):
            return self._part(item, about)
        return self._put_right(item, about) if item.reason == "fault" else self._do(item, about)

    def _said_name(self, item: OpenItem) -> str:
        """The vocabulary's name where it was said so, else the part in the person's own words."""
        if self.log.has_said(item.name):
            return item.name
        facts = (e.fact for key in reversed(item.anchors) if (e := self.log.at(key)))
        part = next((f.part for f in facts if isinstance(f, Finding) and self._names_something(f.part)), "")
        part = bare(part)[:1].lower() + bare(part)[1:] if bare(part)[1:2].islower() else bare(part)
        if part and not is_clause(part) and self.log.has_said(part):
            return part
        if all(self.log.has_said(w) for w in item.name.split()):
            return item.name
        return next((p for p in reversed(_PIECES.split(part)) if self.log.has_said(p)), item.name)  # no name made up

    def _names_something(self, about: str) -> bool:
        """Whether the words name a thing at all: 'which', 'the lot' and 'the left end' do not."""
        return any(len(w) > 2 and w not in self.lists.get("no_things", ()) and w not in _WHERE for w in tokens(about))

    def starts_with_verb(self, text: str, name: str = "") -> bool:
        """Whether a text begins with a job to do; 'drain cock', 'check valve' and 'oil filter' are things."""
        first, _, rest = spoken(text).partition(" ")
        if first not in self.lists.get("verbs", ()) or not rest or spoken(name).startswith(first + " "):
            return False
        second = rest.split()[0]
        if first in self.lists.get("verb_or_thing", ()):
            return second in _ARTICLES
        return second not in self.lists.get("thing_heads", ())

    def _thing(self, item: OpenItem, about: str) -> str:
        """The thing as fully as it is known: the vocabulary's name for a short form, the place beside a bare word."""
        about = self.log.as_said(about, item.anchors)
        thing = fuller(bare(about), item.name, self.log.around(item.anchors, 200))
        thing = by_card(self.log, thing, self.names)
        place = place_of(thing, self.log.around(item.anchors, 80)) if thing == bare(about) else ""
        return f"{thing} {place}".rstrip()

    def _part(self, item: OpenItem, about: str) -> Worded:
        thing = self._thing(item, _DOING.sub("", _LEAD.sub("", about)) or about)
        head = tokens(re.split(r"\s(?:on|in|for|of)\s", thing)[0])
        if head and head[-1] in self.lists.get("no_parts", ()):
            return Worded("")
        first, _, rest = thing.partition(" ")
        if first.lower() in _GETS and rest:
            return own(thing)
        say = f"fit the new {thing}" if self.is_ordered(item) else order_and_fit(thing)
        return Worded(say, thing)

    def is_ordered(self, item: OpenItem) -> bool:
        """Whether the part was heard to be ordered or to have come."""
        text = f" {spoken(item.quote)} {spoken(self.log.around(item.anchors, 50))} "
        if item.state == "awaited" or any(f" {w} " in text for w in self.lists.get("ordered", ())):
            return True
        return self.log.work_on(item.name, item.about, -1.0, ("order",)) is not None

    def _make_good(self, item: OpenItem, about: str) -> Worded:
        raised = self.log.when(item.anchors[0]) if item.anchors else -1.0
        if self.log.work_on(item.name, about, raised - 3, ("disconnect",)) or self._is_undone(item):
            return Worded(f"reconnect the {bare(about)}", bare(about))
        if thing := stands_for(self.log, item, about):
            return Worded(fit_proper(thing), thing)
        if cure_of(item.quote, self.lists.get("cures", {})).startswith("tighten"):
            thing = self._thing(item, about)
            return Worded(f"tighten the {thing}", thing)  # finger tight is no stop-gap of another part
        if job := held_together(self.log, self.stopgap, item, about):
            return job if self._names_something(job.thing) else Worded("")
        known = bool(item.name) and set(tokens(about)) >= set(tokens(item.name))
        thing = JOIN.split(about, maxsplit=1)[0] if known and _SOURCE.search(about) else about
        thing = thing if known else self.real_thing(about)
        if not thing and item.name and not self._only_stopgap(item.name):
            thing = item.name
        if thing := self._thing(item, thing) if thing else "":
            return Worded(fit_proper(thing), thing)
        return Worded(f"take off the {bare(about)} and make it good", bare(about))

    def _is_undone(self, item: OpenItem) -> bool:
        text = f" {spoken(item.quote)} {spoken(self.log.around(item.anchors, 30))} "
        return any(f" {w} " in text for w in self.lists.get("undone", ()))

    def real_thing(self, about: str) -> str:
        """What a stop-gap stands for: 'tape on the top hose' gives top hose, 'home-cut bowl gasket' bowl gasket."""
        parts = JOIN.split(about, maxsplit=1)
        if len(parts) > 1 and parts[1] == "under":
            return ""
        words = bare(parts[0]).split()
        kept = " ".join(w for w in words if not (tokens(w) and self._only_stopgap(w)))
        if kept and tokens(kept):
            where = len(parts) > 2 and not parts[1].startswith(("made", "out", "from"))
            return f"{kept} {parts[1]} {parts[2]}" if where else kept
        covers = len(parts) > 2 and parts[1] not in ("from", "at") and not self._only_stopgap(parts[2])
        return bare(parts[2]) if covers else ""

    def _only_stopgap(self, text: str) -> bool:
        return set(tokens(text)) <= self.stopgap

    def _put_right(self, item: OpenItem, about: str) -> Worded:
        thing = self._thing(item, about)
        last = self.log.verdict(item.name, about)
        bad = last is not None and isinstance(last.fact, Finding) and last.fact.verdict == "bad"
        condition = last.fact.condition if last is not None and bad and isinstance(last.fact, Finding) else ""
        say = put_right(thing, condition, self.is_consumable(thing), self.lists.get("cures", {}))
        return Worded(say, thing, say.startswith("put ") and _DOES_NOT.match(condition) is not None)

    def _do(self, item: OpenItem, about: str) -> Worded:
        if is_clause(about):
            return own(job_in(about, self.verbs))
        if _UNPROVED.search(item.quote):
            return Worded(f"run it again and check the {self._thing(item, about)}")
        if self.starts_with_verb(about, item.name):
            return own(about)
        if tokens(about)[-1] in self.lists.get("process", ()):
            return Worded(f"do the {bare(about)}")
        if job := asked_for(about, self.lists.get("verbs", ())):
            return own(job)
        if self._is_a_job(about):
            return own(taken_off(about))
        if re.match(r"(new|fresh)\b", about, re.IGNORECASE):
            return Worded(f"fit {about}", about)
        thing = self._thing(item, about)
        said = self.log.around(item.anchors, 40) or item.quote
        if re.search(rf"\b(?:proper|new|real)\s+{re.escape(about)}\b", said, re.IGNORECASE):
            return Worded(fit_proper(thing), thing)
        if verb := self._verb_before(self.log.around(item.anchors, 40) or item.quote, about):
            return Worded(f"{verb} the {thing}", thing)
        if self.is_consumable(thing):
            return Worded(fit_proper(thing), thing)
        return Worded("") if item.reason == "fallback" and not item.name else Worded(f"see to the {thing}", thing)

    def is_consumable(self, thing: str) -> bool:
        """Whether a thing is one of those that wear out and are replaced: gasket, hose, belt, filter, lead."""
        said = tokens(re.split(r"\s(?:on|in|for|behind|under|round)\s", thing)[0])
        return any(holds(said, tokens(w)) for w in self.lists.get("consumable", ()))

    def _is_a_job(self, text: str) -> bool:
        """Whether a text without a leading verb asks for a job all the same: 'head off', 'plug out and clean it'."""
        said = spoken(text.replace("&", " and ")).split()
        verbs = self.lists.get("verbs", ())
        later = any(w in verbs and said[i - 1] in ("and", "then", "or") for i, w in enumerate(said) if i)
        return later or said[-1] in _ENDS

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
