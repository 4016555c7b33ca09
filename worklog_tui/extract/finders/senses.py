"""Which sense of a state is meant of a thing: `dry` is well of a joint, ill of a bearing, and nothing of a switch."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook import Sense

VERDICTS = ("bad", "good", "noted")
OUTRIGHT = frozenset(
    {"finding.thing-is-state", "finding.state-in-thing", "finding.state-of-thing", "finding.it-is-state"}
)
REAL = frozenset({"part", "joint", "fastener", "control"})
IS = ("'s", "\u2019s")


def senses_for(token: Token, thing: Thing | None) -> list[Sense]:
    """The senses of a state that suit a thing, those meant of it first."""
    states = [s for s in token.senses if s.cls in VERDICTS]
    meant = [s for s in states if s.of and thing is not None and suits(s, thing)]
    if thing is not None and len(meant) > 1:
        kind = f"kind:{thing.kind}"
        meant.sort(key=lambda s: kind in s.of)
    return meant + [s for s in states if not s.of]


def said_of_any(made: Draft, scene: Scene, token: Token) -> list[Sense]:
    """What is said outright of a part that its states do not name, if all mean the same and the word is of no deed."""
    states = [s for s in token.senses if s.cls in VERDICTS and "kind:machine" not in s.of]
    outright = made.rule.id in OUTRIGHT and made.thing is not None and made.thing.kind in REAL
    if token.sense("position", "did", "doing"):
        return []
    if made.thing is not None and made.thing.loose and not _joined(made, scene):
        return []
    return states[:1] if outright and len({s.cls for s in states}) == 1 else []


def _joined(made: Draft, scene: Scene) -> bool:
    """Whether a verb joins thing and state: `the idler's hard`."""
    k = made.thing_at
    if k is None:
        return True
    said = scene.text[scene.tokens[k].start : scene.tokens[k].end].lower().endswith(IS)
    return said or any(t.sense("copula") for t in scene.tokens[k + 1 : made.main])


def said_of(thing: Thing, token: Token) -> bool:
    """Whether `it is` may be said of a part that the states of a word do not name."""
    if token.sense("position", "how") or thing.loose:
        return False
    return thing.kind in REAL and not any("kind:machine" in s.of for s in token.senses if s.cls in VERDICTS)


def suits(sense: Sense, thing: Thing) -> bool:
    """Whether a condition may be said of a thing: of bearings is of the front bearing too."""
    if not sense.of or f"kind:{thing.kind}" in sense.of or sense.per == thing.name != "" or thing.name in sense.of:
        return True
    words = thing.name.split()
    return len(words) > 1 and any(" ".join(words[n:]) in sense.of for n in range(1, len(words)))


def bidden(scene: Scene, at: int) -> bool:
    """Whether a word is what is to be done: `snug it down`, not `dry it is`."""
    after = [t.low for t in scene.tokens[at + 1 : at + 3]]
    state_or_deed = scene.tokens[at].low in scene.book.lists["states_to_bid"]
    return state_or_deed and after[:1] in (["it"], ["them"], ["em"]) and after[1:] not in (["is"], ["was"])
