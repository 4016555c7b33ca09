"""Contractions that would be another word without their apostrophe: we'll is not well, she'll no shell."""

from __future__ import annotations

SPELT_OUT = {
    "we'll": "we will",
    "she'll": "she will",
    "he'll": "he will",
    "we're": "we are",
    "we'd": "we would",
    "she'd": "she would",
    "he'd": "he would",
}


def spelt_out(words: str) -> str:
    """The words with such contractions spelt out; other apostrophes are left."""
    flat = words.replace("\u2019", "'")
    if "'" not in flat:
        return flat
    return " ".join(SPELT_OUT.get(word, word) for word in flat.split(" "))
