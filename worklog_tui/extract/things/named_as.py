"""The words of a name: as they were said, mis-heard and shortened ones as they are meant."""

from __future__ import annotations

from worklog_tui.extract.tokens import Token


def meant_words(text: str, tokens: list[Token]) -> str:
    """The speaker's words for a thing; a mis-heard or shortened word as it is meant."""
    pieces, at = [], tokens[0].start
    for token in tokens:
        said = text[token.start : token.end]
        low = token.low[:-1] if said.endswith(("'s", "\u2019s")) and token.low.endswith("s") else token.low
        pieces += [text[at : token.start], said if _as_meant(said, token) else low]
        at = token.end
    return spoken("".join(pieces))


def _as_meant(said: str, token: Token) -> bool:
    """Whether the words stand there as they are meant, but for case, hyphens and a possessive."""
    low = said.lower()
    if token.kind != "term" or low == token.low or not token.low:
        return True
    letters = "".join(filter(str.isalnum, low))
    meant = "".join(filter(str.isalnum, token.low))
    return letters in (meant, f"{meant}s")


def spoken(words: str) -> str:
    """The speaker's words for a thing on one line, without a possessive or a joining verb at the end."""
    flat = " ".join(words.split())
    for tail in ("'s", "\u2019s"):
        flat = flat.removesuffix(tail)
    return flat
