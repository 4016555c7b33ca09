"""What is heard and says nothing: `[Music]`, the mark of a new speaker, `uh` and `er`."""

from __future__ import annotations

import re

_NOISE = re.compile(r"\[[A-Za-z ]{1,24}\]|>>")
_HESITATION = re.compile(r"[uUeE](?<![\w'\u2019-].)(?<!\d .)(?i:(?<=u)(?:h+|hm|m+)|(?<=e)rm?)(?![\w'\u2019-])")
"""What is spoken before a word is found; it stands between a verb and its figure and says nothing. Its first letter
stands first, so that all others are passed over."""


def without_noises(words: str, spoken: bool) -> str:
    """The words with blanks for what says nothing, so that every place stays; hesitation only where it was spoken."""
    words = _NOISE.sub(_blank, words)
    return _HESITATION.sub(_blank, words) if spoken else words


def _blank(found: re.Match[str]) -> str:
    """Noises and speaker marks become blanks; a new speaker begins a new sentence."""
    return (". " if found[0] == ">>" and found.start() else " ").ljust(len(found[0]))
