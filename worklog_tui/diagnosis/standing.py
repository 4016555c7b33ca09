"""The complaints that stand at the end of a log, told in words or by a measurement."""

from __future__ import annotations

import re
from collections.abc import Iterator

from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import Signs

_SLIGHT = re.compile(r"\b(?:a (?:wee )?bit|slightly|a little|a touch|a fraction|very slight)\b", re.IGNORECASE)


def _measured(signs: Signs) -> Iterator[Sign]:
    """The complaints that nobody put in words, but the last measurement of what they are about is bad."""
    for check in signs.checks.values():
        sign, known = signs.check_signs.get(check.id), signs.symptom_signs.get(check.answers)
        bad = sign is not None and check.quantity and sign.shows == check.outcomes[-1]
        if sign and bad and check.answers in signs.symptoms and (known is None or known.event.when < sign.event.when):
            yield Sign("symptom", check.answers, "present", sign.event, sign.trust)


def standing_signs(signs: Signs) -> list[Sign]:
    """The signs of complaints that are still there: the telling ones first, of these the latest, in so many words.

    One that is told to be slight comes after the others of its sort: a belt that slips a bit is not what stops a loom.
    """
    there = [s for s in signs.symptom_signs.values() if s.shows == "present"] or list(_measured(signs))

    def rank(sign: Sign) -> tuple[int, bool, int, bool, float]:
        note, of = sign.event.place.order, signs.symptoms[sign.of]
        slight = _SLIGHT.search(sign.words) is not None
        return of.vague + of.general, slight, -note, (sign.of, note) not in signs.in_words, -sign.event.when

    return sorted(there, key=rank)
