"""What turning an adjuster brings about: `took a shim out and that gives me four thou`, `screwed it in till the gauge
showed thirty`: a person set it, however it was read.
"""

from __future__ import annotations

from worklog_tui.extract.refiners.brought import SETTABLE
from worklog_tui.extract.scene import Draft, Scene

FAR = 14
"Tokens from the deed to the figure that it came to."
NEAR = 4
"Tokens from the verb to what was turned."


def came_of_turning(draft: Draft, scene: Scene) -> bool:
    """Whether an adjuster was turned, in the same sentence, until the figure was this."""
    i = draft.main
    if draft.fields["quantity"] not in SETTABLE:
        return False
    for k in range(i - 1, max(-1, i - 1 - FAR), -1):
        token = scene.tokens[k]
        if token.kind == "stop" or token.low in scene.book.lists["otherwise"] or token.sense("break"):
            return False
        if token.kind == "amount" and token.amount is not None and token.amount.unit != "turn":
            return False
        if _turns(k, scene):
            between = {w for t in scene.tokens[k + 1 : i] for w in t.low.split()}
            return bool(between & scene.book.lists["came_so"]) and "plan" not in token.stances
    return False


def _turns(k: int, scene: Scene) -> bool:
    """Whether a person moves an adjuster at token k: `took a shim out`, `shortened the rod`."""
    book, token = scene.book, scene.tokens[k]
    words = token.low.split()
    if words[0] not in book.lists["adjusting"] and words[-1] not in book.lists["adjusting"]:
        return False
    if k and (scene.tokens[k - 1].thing is not None or scene.tokens[k - 1].sense("pronoun", "article")):
        return False  # `the rod moved`, `it opened`
    what = scene.tokens[k + 1 : k + 1 + NEAR]
    return any(t.low.rpartition(" ")[2] in book.lists["adjusters"] for t in what)
