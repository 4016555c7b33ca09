"""Short forms of typed lines: abbreviations whose full stop ends no sentence, and `w/` for `with`."""

from __future__ import annotations

from worklog_tui.extract.heard.figures import VULGAR

_ABBREVIATIONS = """
approx cyl cyls in ins ft lb lbs hr hrs min mins sec secs dia qty temp max oz pt pts qt qts gal deg comp exh inl adj
no nos fig vs ca assy
"""
ABBREVIATED = frozenset(_ABBREVIATIONS.split())
"A full stop after these ends no sentence unless a capital follows."
FIGURE = "0123456789./,-" + "".join(VULGAR)
"The characters of a plain figure: of `10w40` some are left when they are taken off."


def with_end(text: str, start: int, end: int, before: str) -> int:
    """The end of a typed `w/` or `w` at text[start:end] that stands for `with`; 0 where it is a unit, a winding or half
    of a word. `before`: the word before it.
    """
    if text[start] != "W" and text.startswith("/ ", end):
        return end + 1  # `4.8 w/ the fan on` too
    if text[start] == "W" or before[-1:].isdigit() or before[-1:] in VULGAR:
        return 0
    after = text[end : end + 3]
    return end if after[:1] == " " and after[1:].isalpha() and len(before) > 1 and before != "to" else 0


def is_and(text: str, at: int, before: str) -> bool:
    """Whether a plus joins two words, `tap + strainer ok`; in `the + lead`, `+ve` it names a pole."""
    ahead = text[at + 1 : at + 4].lower() if text[at] == "+" else ""
    return ahead.lstrip(" ")[:1].isalpha() and not ahead.startswith("ve") and before not in POLES_AFTER


POLES_AFTER = frozenset("the a to on from at of and between both your my batt battery".split())
"Words before a plus that is the pole of a battery."
