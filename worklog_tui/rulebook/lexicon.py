"""The lexicon: every way of saying a thing, a state, an action, a cause or a word of stance, in one table.

Keys are words in lower case without apostrophes, joined by single spaces. A value is a tuple of senses, plain tuples
that `Sense` names; plain, so that the whole table can be kept as a cache.
"""

from __future__ import annotations

import re
from typing import Any

from worklog_tui.rulebook.contractions import spelt_out
from worklog_tui.rulebook.inflect import plural, verb_forms
from worklog_tui.rulebook.senses import Sense, Table

STATES = ("bad", "good", "noted")
_COPULA = re.compile(
    r"^(?:(?:its|thats|theyre|shes|hes|it|that|they|she|still|just|now|all|is|are|was|were|looks?|looking|looked|seems?|feels?|sounds?|"
    r"reads?|tests?|tested|checks|checked|pretty|very|quite|really|a bit|completely|totally|badly) )+(?=[a-z])"
)


class Builder:
    """Collects senses; the first of equal ones stays."""

    def __init__(self) -> None:
        self._senses: dict[str, dict[Sense, None]] = {}
        self._heads: dict[str, tuple[str, ...]] = {}

    def add(self, words: str, sense: Sense) -> None:
        """Adds one way of saying, with its hyphens, without, and written together."""
        said = " ".join(spelt_out(words.lower()).replace("'", "").split())
        for form in {said, said.replace("-", " "), said.replace("-", "")}:
            if form:
                self._senses.setdefault(form, {})[sense] = None

    def measured_on(self, data: dict[str, Any]) -> None:
        """The [[head]] tables of grammars/measured_on.toml: what is measured on a part by the last word of its name."""
        for head in data.get("head", []):
            self._heads |= dict.fromkeys(head["of"], tuple(head["quantities"]))

    def parts(self, data: dict[str, Any]) -> None:
        """The [[part]] tables of one file of grammars/parts."""
        system = str(data.get("system", ""))
        for part in data.get("part", []):
            name = str(part["name"])
            sense = Sense(
                "part",
                name,
                part.get("kind", "part"),
                part.get("per", ""),
                bool(part.get("loose")),
                tuple(part.get("quantities", ())) or self._by_head(part),
                system,
            )
            firm = sense._replace(weak=False)
            for said in (name, *part.get("said", ())):
                mine = sense if " " not in said else firm
                self.add(said, mine)
                self.add(plural(said), mine)
                self.add(said + "s", mine)  # the battery's flat

    def _by_head(self, part: dict[str, Any]) -> tuple[str, ...]:
        """What is measured on a part whose line does not tell; on no tool, joint, fluid or quality."""
        known = part.get("kind", "part") in ("part", "control")
        return self._heads.get(str(part["name"]).rpartition(" ")[2], ()) if known else ()

    def conditions(self, data: dict[str, Any]) -> None:
        """The [[condition]] tables of one file of grammars/conditions; `of` of the file holds where one has none."""
        for condition in data.get("condition", []):
            sense = Sense(
                str(condition.get("verdict", data.get("verdict", "noted"))),
                str(condition["name"]),
                condition.get("opposite", ""),
                str(condition.get("part", "")),
                bool(condition.get("weak")),
                tuple(condition.get("of", data.get("of", ()))),
            )
            for said in (condition["name"], *condition.get("said", ())):
                self.add(said, sense)
                if condition.get("verb"):
                    for _, form in verb_forms(said):
                        self.add(form, sense)

    def drop_redundant_states(self) -> None:
        """Takes out `is fine` and `that's fine` where `fine` stands too: what joins is for the rules."""
        for said in [s for s in self._senses if " " in s]:
            bare = _COPULA.sub("", said)
            if bare != said and self._is(bare, STATES) and all(sense.cls in STATES for sense in self._senses[said]):
                del self._senses[said]

    def drop_redundant_causes(self) -> None:
        """Takes out causes that are a state and a part, `worn rings`: the reader sees both, and what was found is not
        lost.
        """
        for said in [s for s in self._senses if " " in s and all(sense.cls == "cause" for sense in self._senses[s])]:
            words = said.split()
            cuts = [(" ".join(words[:n]), " ".join(words[n:])) for n in range(1, len(words))]
            if any(
                (self._is(a, STATES) and self._is(b, ("part",))) or (self._is(a, ("part",)) and self._is(b, STATES))
                for a, b in cuts
            ):
                del self._senses[said]

    def drop_verbs(self) -> None:
        """Takes out plurals that are a part and what it does: `motor hums`, `pedal feels` say how it is."""
        for said in [s for s in self._senses if " " in s]:
            part, _, verb = said.rpartition(" ")
            if (
                verb.endswith("s")
                and all(sense.cls == "part" for sense in self._senses[said])
                and self._is(part, ("part",))
                and (
                    self._is(verb, ("does", "copula"))
                    or (self._is(verb, ("bad",)) and self._senses_are(said, "quality"))
                )
                and not any(sense.cls == "part" and not sense.weak for sense in self._senses[verb])
            ):
                del self._senses[said]

    def _senses_are(self, said: str, kind: str) -> bool:
        return all(sense.kind == kind for sense in self._senses[said])

    def _is(self, said: str, classes: tuple[str, ...]) -> bool:
        return any(sense.cls in classes for sense in self._senses.get(said, ()))

    def actions(self, data: dict[str, Any]) -> None:
        """The [[action]] tables of grammars/actions.toml."""
        for action in data.get("action", []):
            name, of = str(action["name"]), (str(action["needs"]),) if action.get("needs") else ()
            pasts: dict[str, Any] = action.get("past", {})
            means: dict[str, str] = action.get("means", {})
            for verb in action.get("verbs", ()):
                for form, said in verb_forms(verb, tuple(pasts.get(verb, ()))):
                    self.add(said, Sense(form, name, of=of, system=_means(said, means)))
            for verb in action.get("split", ()):
                for form, said in verb_forms(verb, tuple(pasts.get(verb, ()))):
                    sense = Sense(form, name, of=of, system=_means(said, means))
                    self.add(said, sense)
                    head, _, particle = said.partition(" ")
                    if particle:
                        self.add(head, sense._replace(cls="split", kind=particle, per=form))
            for said in action.get("short", ()):
                self.add(said, Sense("did", name, of=of, system=_means(said, means)))

    def causes(self, data: dict[str, Any]) -> None:
        """The [[cause]] tables of grammars/causes.toml."""
        for cause in data.get("cause", []):
            sense = Sense("cause", str(cause["name"]), system=str(cause.get("system", "")))
            for said in (cause["name"], *cause.get("said", ())):
                self.add(said, sense)

    def words(self, data: dict[str, Any]) -> None:
        """The word lists of grammars/words.toml and grammars/stance.toml: class name -> words."""
        for cls, entries in data.items():
            for said in entries:
                self.add(said, Sense(cls, said))
                if cls == "side":
                    self.add(said + "s", Sense(cls, said))  # the left's worn

    def table(self) -> Table:
        """The finished table; a meaning that several words have stands in it once, so that it is kept small."""
        once: dict[Any, Any] = {}
        for senses in self._senses.values():
            for sense in senses:
                once.setdefault(sense, tuple(sense))
        meanings = {said: tuple(once[sense] for sense in senses) for said, senses in self._senses.items()}
        return {said: once.setdefault(meaning, meaning) for said, meaning in meanings.items()}


def _means(said: str, means: dict[str, str]) -> str:
    """What a verb itself says that it was done with: `greased` says grease."""
    return next((used for part, used in means.items() if part in said), "")
