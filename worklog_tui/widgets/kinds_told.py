"""The kinds of facts that can be added by hand, each with its key, and what is asked of each, in plain words."""

from __future__ import annotations

from typing import NamedTuple


class Kind(NamedTuple):
    """What one key adds."""

    kind: str
    does: str
    "In a word or two, for the line of keys."
    asks: str
    fields: tuple[tuple[str, str], ...]
    "What is asked, each with the words before it; what was typed so far stands in the one named `takes`."
    takes: str
    fixed: tuple[tuple[str, str], ...] = ()
    "What the key itself tells."


_FOUND = (("part", "which part"), ("condition", "how it is"))
_MEASURED = (("quantity", "what"), ("value", "how much"), ("subject", "of which part"), ("condition", "dry, hot …"))

KINDS_TOLD = {
    "b": Kind("finding", "a fault", "What is wrong with what?", _FOUND, "condition", (("verdict", "bad"),)),
    "g": Kind("finding", "good", "What was found good?", _FOUND, "condition", (("verdict", "good"),)),
    "o": Kind("finding", "only noted", "What was noted of what?", _FOUND, "condition", (("verdict", "noted"),)),
    "d": Kind("work", "done", "What was done?", (("action", "what was done"), ("part", "to which part"),
              ("used", "with")), "action"),
    "m": Kind("reading", "measured", "What was measured? Such as gap, 0.018 in, of the points.", _MEASURED, "value"),
    "s": Kind("reading", "set", "What was it set to? Such as gap, 0.018 in, of the points.", _MEASURED, "value",
              (("role", "set"),)),
    "c": Kind("suspect", "a cause", "What may be the cause?", (("cause", "cause"),), "cause"),
    "l": Kind("follow_up", "for later", "What is to be come back to?", (("topic", "what"),), "topic",
              (("reason", "to do"),)),
    "p": Kind("follow_up", "part needed", "Which part is needed?", (("topic", "which part"),), "topic",
              (("reason", "part needed"),)),
}  # fmt: skip
"By the key."
