"""Text on its way in: no control characters, one form of each letter, one kind of line end.

Canonical composition only (Unicode Standard Annex 15, NFC): the compatibility form would turn a half into 1/2 and an
inch mark into two primes. Terminal sequences after ECMA-48; bidirectional controls after Unicode Standard Annex 9.
"""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

_MARKS_KEPT = 30  # the longest run of combining marks in the Stream-Safe Text Format of Unicode Standard Annex 15

_LINE_ENDS = re.compile("\r\n?|[\x0b\x0c\x85\u2028\u2029]")
_SEQUENCES = re.compile(
    "(?:\x1b\\[|\x9b)[0-?]*+[ -/]*+[@-~]"  # control sequences: colours, cursor
    "|(?:\x1b\\]|\x9d)[^\x07\x1b\x9c\n]*+(?:\x07|\x1b\\\\|\x9c)"  # titles, links
    "|(?:\x1b[PX^_]|[\x90\x98\x9e\x9f])[^\x1b\x9c\n]*+(?:\x1b\\\\|\x9c)"  # device and private strings
    "|\x1b[ -/]*+[0-~]"  # two-character escapes
)
_UNSEEN = re.compile(
    "[\x00-\x08\x0e-\x1f\x7f-\x9f"
    "\xad\u034f\u061c\u180e\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\U000e0000-\U000e007f]+"
)
_MAY_HOLD_RUNS = re.compile(f"[\u0300-\U0001efff]{{{_MARKS_KEPT + 1}}}")  # far quicker than the marks themselves
_LONE_SURROGATES = re.compile("[\ud800-\udfff]")


def sanitise(text: str) -> str:
    """The text without control characters, in NFC, with \\n as the only line end; twice is the same as once."""
    text = _LINE_ENDS.sub("\n", text)
    text = _SEQUENCES.sub("", text)
    text = _UNSEEN.sub("", text)
    if text.isascii():
        return text
    text = _LONE_SURROGATES.sub("\ufffd", text)
    return _trimmed(unicodedata.normalize("NFC", _trimmed(text)))


def _trimmed(text: str) -> str:
    """The text with no run of combining marks over the limit: putting such a run in order takes quadratic time."""
    return _long_mark_runs().sub(r"\1", text) if _MAY_HOLD_RUNS.search(text) else text


@lru_cache(maxsize=1)
def _long_mark_runs() -> re.Pattern[str]:
    marks = "".join(chr(code) for code in range(0x300, 0x1F000) if unicodedata.combining(chr(code)))
    return re.compile(f"([{marks}]{{{_MARKS_KEPT}}})[{marks}]+")
