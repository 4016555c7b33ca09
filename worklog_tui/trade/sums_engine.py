"""Sums about engines: dwell, timing marks, firing order, compression, leak-down."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from worklog_tui.trade.amounts import amount, measure, plain, positive
from worklog_tui.trade.compression import (
    SEA_LEVEL,
    compared,
    density_ratio,
    expected,
    leak_down,
    pressure_at,
    pressure_ratio,
)  # fmt: skip
from worklog_tui.trade.ignition import arc, dwell_percent, firing_interval, full_dwell, shares_stroke
from worklog_tui.trade.shop_sums import Amount, Sum


def dwell(given: Mapping[str, Any]) -> Sum:
    """Dwell as percent, and the open angle."""
    degrees, cylinders = plain(given, "degrees"), int(positive(plain(given, "cylinders"), "the number of cylinders"))
    whole = full_dwell(cylinders)
    if not 0 < degrees < whole:
        raise ValueError(f"dwell and open angle of {cylinders} cylinders add up to {whole:g} degrees")
    return Sum("dwell + open = 360 / N; percent = dwell N / 360 x 100", (
        Amount("dwell", degrees, "deg"), Amount("dwell", round(dwell_percent(degrees, cylinders), 2), "percent"),
        Amount("points open", whole - degrees, "deg"),
    ), "usual: four cylinders 52 to 60, six about 35, eight about 30 degrees",
        "common practice; a wider gap is less dwell",
        "Opening the gap brings the spark earlier: set the gap first and the timing after it.")  # fmt: skip


def timing_mark(given: Mapping[str, Any]) -> Sum:
    """Degrees as a length on the rim."""
    degrees, across = plain(given, "degrees"), positive(measure(given["across"], "mm"), "the diameter")
    return Sum("arc = pi D degrees / 360", (
        amount(f"{degrees:g} degrees on the rim", arc(across, degrees), "mm"),
        amount("one degree", arc(across), "mm"),
    ), "along the rim, with a bent rule or a strip of paper", "geometry",
        "Plug lead off and earthed before hands go near the flywheel.")  # fmt: skip


def firing_order(given: Mapping[str, Any]) -> Sum:
    """What an order means: the degrees between firings, and which pistons move together."""
    try:
        order = [int(n) for n in given["order"]]
        strokes = int(given["strokes"])
    except (TypeError, ValueError):
        raise ValueError("a firing order is numbers of cylinders, such as 1 3 4 2") from None
    if sorted(order) != list(range(1, len(order) + 1)) or strokes not in (2, 4):
        raise ValueError("each cylinder from 1 on stands in a firing order once, and an engine has 2 or 4 strokes")
    pairs = [(n, other) for n in order if strokes == 4 and (other := shares_stroke(order, n)) and n < other]
    formula = "interval = 180 strokes / N; the cylinder half the order away has its piston up at the same time"
    return Sum(formula, (
        Amount("degrees of the crank between firings", firing_interval(len(order), strokes), "deg"),
        *(Amount(f"pistons {a} and {b}", "rise together: one fires while the other's valves rock") for a, b in pairs),
    ), "engines that fire evenly", "geometry",
        "Set the valves of one while the other's rock; plug leads off.")  # fmt: skip


def compression_sum(given: Mapping[str, Any]) -> Sum:
    """A ratio to what a gauge should show, or readings beside one another."""
    row = [str(g) for g in given["given"]]
    height = measure(given["height"], "m")
    if len(row) == 1 and ":" in row[0]:
        return _by_ratio(row[0], height)
    readings = {f"cylinder {n}": positive(measure(r, "psi"), "a reading") for n, r in enumerate(row, 1)}
    verdicts = compared(readings)
    return Sum("share = reading / best reading; 75 % and more sound, 70 to 75 marginal, less bad", tuple(
        amount(f"{name}: {verdicts[name].grade}, {verdicts[name].share:.0%} of the best", psi, "psi")
        for name, psi in readings.items()
    ), "readings taken alike: all plugs out, throttle and choke open, battery up, warm, same strokes, no decompressor",
        "three makers' texts (75 %); the machine's own minimum comes first",
        "Fuel off, ignition earthed. The wet test (a spoonful of oil) is for petrol engines only, never for diesels.",
    )  # fmt: skip


def _by_ratio(text: str, height: float) -> Sum:
    try:
        ratio = float(text.split(":")[0])
    except ValueError:
        raise ValueError(f"{text!r} is no ratio: write it as 6:1") from None
    if not 2 <= ratio <= 30:
        raise ValueError("compression ratios lie between 2 and 30")
    air = pressure_at(height)
    return Sum("gauge = p (r^n - 1), with n = 1.2 to 1.3 at cranking speed", (
        amount("low (n = 1.2)", expected(ratio, 1.2, air) / 6894.757, "psi"),
        amount("high (n = 1.3)", expected(ratio, 1.3, air) / 6894.757, "psi"),
        Amount("of the reading at the sea (pressure ratio)", round(pressure_ratio(height), 4)),
        Amount("factor of the workshop tables (density ratio)", round(density_ratio(height), 4)),
    ), "theory: late valve closing and slow cranking lower it", f"ISO 2533 ({SEA_LEVEL:g} Pa at the sea); gas law",
        "Fuel off, ignition earthed, throttle and choke open.")  # fmt: skip


def leak_down_sum(given: Mapping[str, Any]) -> Sum:
    """The loss of a leak-down test."""
    held, fed = measure(given["held"], "psi"), positive(measure(given["fed"], "psi"), "the pressure fed")
    if not 0 <= held <= fed:
        raise ValueError("a cylinder holds between nothing and what it is fed with")
    loss = round(100 * (fed - held) / fed, 6)
    return Sum("loss = (fed - held) / fed x 100", (
        Amount("loss", round(loss, 1), "percent"), Amount("verdict", leak_down(loss, str(given.get("heard") or ""))),
    ), "more than 25 % at 80 psi is suspect; warm, at top dead centre of compression",
        "FAA AC 43.13-1B section 8-14; orifice 0.040 in for bores under 5 in, 0.060 in above",
        "The air can throw the crank round: spanner off, hands and clothes clear.")  # fmt: skip
