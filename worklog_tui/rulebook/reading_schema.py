"""What the files of the reader's grammars may hold: the keys of each table, and what stands behind them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

TEXT, TEXTS, SAID = "a text", "a list of texts", "a list of words"
NUMBER, YES, TABLE = "a number", "true or false", "a table"
PATTERN, PAIRS, LISTED = "a pattern of Python's re", "a list of pairs", "a table of lists of texts"
WRITTEN: Mapping[str, str] = {
    TEXT: '{} = "some words"', TEXTS: '{} = ["one", "two"]', SAID: '{} = ["one", "two words"]',
    NUMBER: "{} = 1.0", YES: "{} = true",
    PATTERN: "{} = 'colou?r'", PAIRS: '{} = [["hot", "cold"], ["left", "right"]]',
    TABLE: '{} = {{ kind = "finding" }}', LISTED: '{} = {{ one = ["some words"] }}',
}  # fmt: skip
"How each is written."


class Row(NamedTuple):
    """The keys of one table and what stands behind them."""

    needs: Mapping[str, str]
    may: Mapping[str, str] = {}


_UNIT = {"quantities": TEXTS, "said": TEXTS}
ROWS: Mapping[str, Mapping[str, Row]] = {
    "parts/": {"part": Row({"name": TEXT}, {
        "said": SAID, "kind": TEXT, "per": TEXT, "loose": YES, "quantities": TEXTS})},
    "conditions/": {"condition": Row({"name": TEXT}, {
        "said": SAID, "verdict": TEXT, "opposite": TEXT, "part": TEXT, "weak": YES, "verb": YES, "of": TEXTS})},
    "sayings/": {"rule": Row({"id": TEXT, "says": TEXT, "gives": TABLE},
                             {"examples": "a list of tables", "never": TEXTS, "confidence": NUMBER})},
    "quantities/": {"bare": Row({"unit": TEXT, "low": NUMBER, "high": NUMBER}, {"factor": NUMBER})},
    "actions.toml": {"action": Row({"name": TEXT}, {
        "verbs": SAID, "split": SAID, "short": SAID, "past": TABLE, "means": TABLE, "needs": TEXT})},
    "causes.toml": {"cause": Row({"name": TEXT}, {"said": SAID, "system": TEXT})},
    "bearers.toml": {"bears": Row({"states": TEXTS, "by": TEXTS})},
    "measured_on.toml": {"head": Row({"of": TEXTS, "quantities": TEXTS})},
    "misheard.toml": {"misheard": Row({"heard": SAID, "means": TEXT}, {"near": TEXTS})},
    "taken.toml": {"slot": Row({"name": TEXT}, {
        **dict.fromkeys(("beside", "holds", "brief"), TEXTS), "notes": NUMBER, "also": YES,
        **dict.fromkeys(("on", "off", "only", "says"), LISTED)})},
    "units.toml": {
        "unit": Row({"short": TEXT, "dimension": TEXT, "factor": NUMBER, "pint": TEXT, **_UNIT}, {"offset": NUMBER}),
        "scaled": Row({"name": TEXT, "short": TEXT, "scale": NUMBER, **_UNIT}),
        "doubtful": Row({"said": TEXTS}, {
            **dict.fromkeys(("digits", "lone", "glued", "article", "uncountable"), YES),
            "most": NUMBER, "least": NUMBER,
            **dict.fromkeys(("not_before", "not_after", "not_a_after", "then"), TEXTS)}),
    },
    "comments.toml": {
        "cue": Row({"kind": TEXT, "at": TEXT, "weight": NUMBER, "says": TEXTS}),
        "topic": Row({"about": TEXT, "says": TEXTS}, {
            "answer": TEXTS, "things": TEXTS, "of": TEXTS, "pattern": PATTERN, "tail": YES, "must": YES}),
        "want": Row({}, {
            **dict.fromkeys(("says", "holds", "actions", "quantities", "near"), TEXTS), "pattern": PATTERN,
            "asks": PATTERN, "number": YES, "must": YES, "latest": YES}),
        "akin": Row({"things": TEXTS}),
        "example": Row({"comments": TEXTS}, {"is": TEXT, "not": TEXT}),
    },
}  # fmt: skip
"File, or folder of files -> its lists of tables."
TOPS: Mapping[str, Row] = {
    "parts/": Row({}, {"system": TEXT}),
    "conditions/": Row({}, {"verdict": TEXT, "of": TEXTS}),
    "sayings/": Row({}, {"off": TEXTS}),
    "quantities/": Row({"quantity": TEXT}, {
        "units": TEXTS, "near": TEXTS, "topic": TEXTS, "card": TEXTS, "plausible": TABLE}),
    "units.toml": Row({}, {"systems": TABLE}),
    "taken.toml": Row({}, {"limits": LISTED, "lists": LISTED}),
    "shorthand.toml": Row({}, {"as_good": TEXTS, **dict.fromkeys(("alone", "before", "typed", "words"), TABLE)}),
    "numerals.toml": Row({}, dict.fromkeys((
        "digit", "teen", "ten", "nothing", "scale", "dozen", "heard", "part", "part_after_ten", "share", "ordinal",
        "words"), TABLE)),
    "comments.toml": Row({}, {
        **dict.fromkeys((
            "plans", "latest", "earliest", "appeals", "diagnosing", "renewing", "compared", "intended"), TEXTS),
        "opposites": PAIRS, "shorthand": TABLE, "small": TABLE}),
    "publishing.toml": Row({}, dict.fromkeys((
        "private", "never", "money", "paid", "sold", "starting", "stopping"), TEXTS)),
}  # fmt: skip
"What stands in such a file outside of its lists of tables."
WORDS = ("words.toml", "stance.toml", "owed.toml", "shown.toml", "lists.toml")
"Files of lists of words, each under a name of its own."
FIXED = ("owed.toml", "shown.toml", "lists.toml")
"Of these the code reads the lists by name: a new name is read by nothing."
OURS = ("threads.toml",)
"Read from the shipped folder only, as the folder trade/."
ELSEWHERE = ("cautions.toml", "replies.toml")
"Looked through by those who read them, as the folder diagnosis/."
PLACES = (*ROWS, *TOPS, *WORDS, *OURS, *ELSEWHERE)
CHOICES: Mapping[tuple[str, str], tuple[str, ...]] = {
    ("part", "kind"): ("part", "fluid", "joint", "fastener", "machine", "quality", "tool", "material", "control"),
    ("condition", "verdict"): ("bad", "good", "noted"),
    ("cue", "kind"): ("question", "suggestion", "chatter"),
    ("cue", "at"): ("start", "end", "anywhere"),
    ("gives", "kind"): ("finding", "follow_up", "number", "reading", "suspect", "trait", "work"),
}
"Keys behind which only some words may stand."
