"""A state whose words wait for more is told with what it waits for: `packed solid with chaff`, `full of water`."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

WAIT = frozenset("with of as at by into like than".split())
"Words that wait for more."
ARTICLES = frozenset("a an the or in on".split())
AND = frozenset("and + &".split())
MOST = 4
"Tokens that are added at most."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts, the words of a finding whole."""
    for draft in drafts:
        if draft.kind == "finding" and scene.tokens[draft.last].low.rpartition(" ")[2] in WAIT:
            draft.last = _end(draft.last, scene)
    return drafts


def _end(last: int, scene: Scene) -> int:
    """The index of the last token of what the words at token `last` wait for; the same where nothing comes."""
    tokens, at = scene.tokens, last
    while at + 1 < len(tokens) and at - last < MOST:
        after = tokens[at + 1]
        told = after.kind in ("stop", "comma") or after.low in AND or after.sense("copula", "break") is not None
        if told or after.clause != tokens[last].clause:
            break
        at += 1
    while at > last and tokens[at].low in WAIT | ARTICLES:
        at -= 1
    return at
