"""Where a figure ends in the text: with the unit cut off ("12V"), with the rest of a code kept on ("15W/40", "3M")."""

from __future__ import annotations

import re

_UNITS = """
v vac vdc volt volts mv kv a amp amps ma ua µa μa ah w kw hp ohm ohms ω kω mω kohm mohm uf µf μf nf hz khz
mm mms cm cms dm m km kms um µm μm in ins inch ft foot yd yds mi thou mil metre metres meter meters
g gm gms kg kgs mg oz lb lbs t l ml mls cl cc ccs ltr litre litres liter liters pt pts pint pints qt qts quart quarts
gal gals gallon gallons cfm gpm psi bar mbar kpa mpa nm
c f °c °f ° deg degc degf s sec secs ms second seconds min mins minute minutes h hr hrs hour hours day days wk wks weeks
month months rpm rpms mph x ba bsf bsw bsp unc unf npt tpi
"""
UNITS = frozenset(_UNITS.split())
"Letters that are cut from the digits before them: units and thread series."

_LOWER_ONLY = frozenset("MSGT")
'Capitals that are no sign of a unit: "3M" and "4S" are codes.'
_LETTERS = re.compile(r"[^\W\d_]++")
_CODE = re.compile(r"\w++(?:[./]\w++)*+")
_RAISED = re.compile(r"(?:mm|cm|in|ft|m)[23](?!\w)", re.IGNORECASE)
_PITCH = re.compile(r"\d{1,2}(?![\d./])")


def figure_end(text: str, start: int, end: int) -> int:
    """The end of the word whose figures are text[start:end]: there, or behind what makes it a code or a thread."""
    if text[end : end + 2] in ("'s", "’s") and not text[end + 2 : end + 3].isalpha():
        return end + 2
    if letters := _LETTERS.match(text, end):
        if _RAISED.match(text, end) or _is_unit(text, letters, text[start:end]):
            return end
        code = _CODE.match(text, end)
        return code.end() if code else letters.end()
    if text.startswith("-", end) and text.count("/", start, end) == 1:
        pitch = _PITCH.match(text, end + 1)  # "1/4-20"
        return pitch.end() if pitch and int(pitch[0]) >= 4 else end
    return end


def _is_unit(text: str, tail: re.Match[str], figures: str) -> bool:
    """The letters behind figures are a unit, not the rest of a code such as "2721B", "2F/drive" or "step 2a"."""
    letters, after = tail[0], text[tail.end() : tail.end() + 2]
    if letters.lower() not in UNITS or letters in _LOWER_ONLY or after[:1].isdigit() or after[:1] == "_":
        return False
    if len(letters) == 1 and after[:1] == "/":
        return after[1:].isdigit() and letters not in "Ww"
    if letters in "Ww" and after[:1] == "-" and after[1:].isdigit():
        return False
    if letters.lower() == "day" and figures == "2":  # today, as it is typed
        return False
    return letters != "a" or figures not in "1234"
