"""The complaints that stand at the end of a log, told in words or by a measurement."""

from __future__ import annotations

import re
from collections.abc import Iterator

from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import Signs

CHIEF = 0.5
"A cause that brings a complaint about at least so often is one of its chief ones (judgement)."
_SLIGHT = re.compile(r"\b(?:a (?:wee )?bit|slightly|a little|a touch|a fraction|very slight)\b", re.IGNORECASE)


def _measured(signs: Signs) -> Iterator[Sign]:
    """The complaints that nobody put in words, but the last measurement of what they are about is bad."""
    for check in signs.checks.values():
        sign, known = signs.check_signs.get(check.id), signs.symptom_signs.get(check.answers)
        bad = sign is not None and check.quantity and sign.shows == check.outcomes[-1]
        if sign and bad and check.answers in signs.symptoms and (known is None or known.event.when < sign.event.when):
            yield Sign("symptom", check.answers, "present", sign.event, sign.trust)


def _attended(signs: Signs, sign: Sign) -> float:
    """When a complaint was last told, or one of its chief causes looked at, suspected or worked on."""
    last = sign.event.when
    for fault, link in signs.symptoms[sign.of].causes.items():
        if link >= CHIEF:
            seen = (signs.look_signs.get(fault), signs.hint_signs.get(fault), signs.hunch_signs.get(fault))
            last = max(last, signs.mended.get(fault, -1.0), *(s.event.when for s in seen if s is not None))
    return last


def _is_put_right(signs: Signs, sign: Sign) -> bool:
    """Whether a cause of a complaint was seen or pointed at, and put right since the complaint was last heard."""
    for fault in signs.symptoms[sign.of].causes:
        mended = signs.mended.get(fault, -1.0)
        seen, told = signs.look_signs.get(fault), signs.hint_signs.get(fault)
        bad = (seen is not None and seen.shows == "bad" and seen.event.when < mended) or told is not None
        if mended > sign.event.when and bad:
            return True
    return False


def standing_signs(signs: Signs) -> list[Sign]:
    """The signs of complaints that are still there: the telling ones first, of these the latest, in so many words.

    One that is told to be slight comes after the others of its sort: a belt that slips a bit is not what stops a loom.
    So does one of which a cause was found and put right: it only waits for the next try.
    """
    there = [s for s in signs.symptom_signs.values() if s.shows == "present"] or list(_measured(signs))

    def rank(sign: Sign) -> tuple[int, bool, int, bool, float]:
        note, of = int(_attended(signs, sign)), signs.symptoms[sign.of]
        slight = _SLIGHT.search(sign.words) is not None or _is_put_right(signs, sign)
        return (
            of.vague + of.general,
            slight,
            -note,
            (sign.of, sign.event.place.order) not in signs.in_words,
            -sign.event.when,
        )

    return sorted(there, key=rank)
