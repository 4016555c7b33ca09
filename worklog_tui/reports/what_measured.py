"""What a reading is of, in a few words: the subject, and what was measured where the subject does not say so."""

from __future__ import annotations

from worklog_tui.logbook.words import raw_words

_PLAIN = frozenset({"length", "amount"})
"Quantities that the unit tells."
_GAPS = frozenset("gap clearance clearances lash play float backlash setting".split())
"Words that say by themselves that a gap was measured."


def what_measured(subject: str, quantity: str, unit: str = "") -> str:
    """`points, gap`; but `exhaust valve clearance`, `belt` of a length; `oiler, drip` of what is counted in drops."""
    said = raw_words(subject)
    what = "drip" if unit.startswith("drops") else quantity
    named = (bool(subject) and what in _PLAIN) or what in subject.lower() or (what == "gap" and _GAPS & {*said[-1:]})
    return ", ".join(filter(None, (subject or "machine", "" if named else what)))
