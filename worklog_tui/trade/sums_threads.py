"""Sums about threads: what a thread is, its tap drill, and how tight a bolt goes."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from worklog_tui.trade.amounts import amount, measure
from worklog_tui.trade.shop_sums import Amount, Sum
from worklog_tui.trade.threads import INCH, Thread, candidates, look_alikes, nearest_drill, thread
from worklog_tui.trade.torque import torque

STANDARDS = "ASME B1.1, ISO 261, BS 84, BS 93, ISO 228, ASME B1.20.1"
TRY = "Try a thread by hand with a part that is known: two turns that bind are another thread."


def thread_sum(given: Mapping[str, Any]) -> Sum:
    """A designation to its sizes, or a measured diameter (and pitch) to what it can be."""
    try:
        one = thread(str(given["given"]))
    except ValueError:
        return _measured(given)
    alike = tuple(Amount(f"beware of {other.designation}", why) for other, why in look_alikes(one)[:4])
    sizes = (
        Amount("thread", one.designation), amount("major diameter", one.major, "mm"), amount("pitch", one.pitch, "mm"),
        Amount("threads an inch", round(one.per_inch, 3)), Amount("angle of the thread", one.angle, "deg"),
    )  # fmt: skip
    shown = tuple(a for a in sizes if not (isinstance(a.value, float) and math.isnan(a.value)))
    return Sum("taken from the table; pitch = 25.4 / threads an inch", (*shown, *alike),
               "a worn or plated thread measures a little under", STANDARDS, TRY)  # fmt: skip


def _measured(given: Mapping[str, Any]) -> Sum:
    text = str(given["given"])
    if not text[:1].isdigit() and not text.startswith("."):
        raise ValueError(f"no thread is called {text!r}, and it is no diameter")
    diameter = measure(text, "mm")
    pitch = str(given.get("pitch") or "")
    per = pitch.lower().removesuffix("tpi")
    step = (INCH / measure(per, "mm") if pitch.lower().endswith("tpi") else measure(pitch, "mm")) if pitch else None
    found = candidates(diameter, step)
    if not found:
        raise ValueError(f"no standard thread measures {diameter:g} mm with that pitch")
    return Sum("outside diameter up to 0.25 mm under the major one; pitch within 3 %",
               tuple(amount(_can_be(one, diameter, step), one.major, "mm") for one in found[:6]),
               "an outside thread measured over its crests", STANDARDS, TRY)  # fmt: skip


def _can_be(one: Thread, diameter: float, step: float | None) -> str:
    """What a measured thread can be, and how far the measures are from it."""
    off = diameter - one.major
    size = "exactly on size" if abs(off) < 0.005 else f"measured {abs(off):.2f} mm {'over' if off > 0 else 'under'}"
    pitch = f", pitch {abs(step - one.pitch) / one.pitch:.1%} off" if step is not None else ""
    return f"can be {one.designation} ({size}{pitch}), major diameter"


def tap_drill(given: Mapping[str, Any]) -> Sum:
    """The drill for a tap."""
    one = thread(str(given["given"]))
    name, size = nearest_drill(one.tap_drill)
    formula = "D - P" if one.series == "M" else f"D - {_share(one)} P, about 75 % of the full thread"
    return Sum(formula, (
        amount("drill by the formula", one.tap_drill, "mm"), amount(f"nearest drill {name}", size, "mm"),
        amount("minor diameter of the nut", one.minor, "mm"),
    ), "about 75 % thread; go a size up in hard or deep holes", f"{STANDARDS}; drills after ASME B94.11M",
        "Cast iron dry, steel with cutting oil; back the tap off each half turn.")  # fmt: skip


def _share(one: Thread) -> float:
    return {60.0: 0.97428, 55.0: 0.96049, 47.5: 0.9}[one.angle]


def torque_sum(given: Mapping[str, Any]) -> Sum:
    """How tight a bolt of a grade goes."""
    state = str(given["threads"])
    if state not in ("dry", "oiled"):
        raise ValueError("threads are dry or oiled")
    one = thread(str(given["given"]))
    tight = torque(one, str(given["grade"]), state == "oiled")
    k = 0.15 if state == "oiled" else 0.20
    return Sum(f"T = K D 0.75 Sp At with K = {k:.2f} ({state}), Sp the proof stress, At the stress area", (
        amount(f"{one.designation}, grade {given['grade']}, {state}", tight, "N*m"),
        amount("a quarter less", tight * 0.75, "N*m"), amount("a quarter more", tight * 1.25, "N*m"),
    ), "25 to 30 % either way", "SAE J429 and ISO 898-1 proof stresses; K is common practice",
        "The maker's figure comes first. Never for cast iron or alloy threads, studs, brass, or old bolts of unknown "
        "make: there the handbook's value, or half of this.")  # fmt: skip
