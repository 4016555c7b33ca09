"""The shop sums that can be asked for: what each takes, and which function works it out. Nothing heavy is loaded."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from importlib import import_module
from typing import Any


@dataclass(frozen=True, slots=True)
class Takes:
    """One thing that a sum is given: a word of its call, or an option."""

    name: str
    help: str
    metavar: str = ""
    default: str = ""
    many: bool = False


@dataclass(frozen=True, slots=True)
class Amount:
    """One result: what it is, its value in one unit, and the same in the other system of units."""

    says: str
    value: float | str
    unit: str = ""
    also: float | None = None
    also_unit: str = ""


@dataclass(frozen=True, slots=True)
class Sum:
    """A sum worked out: formula, results, within what it holds, where it comes from and what to beware of."""

    formula: str
    amounts: tuple[Amount, ...]
    range: str
    source: str
    caution: str


@dataclass(frozen=True, slots=True)
class ShopSum:
    """A sum that can be asked for."""

    what: str
    of: str
    "module:function of this room."
    takes: tuple[Takes, ...]


LENGTH = "with its unit, such as 6.3mm or 0.25in; a bare number is mm"
SUMS: Mapping[str, ShopSum] = {
    "thread": ShopSum("say what a thread is, or what a measured one can be", "sums_threads:thread_sum", (
        Takes("given", "a designation such as 1/4-20, M8 or 2BA, or a diameter such as 6.3mm", "THREAD"),
        Takes("--pitch", "the pitch in mm, or threads an inch such as 20tpi", "PITCH"),
    )),
    "tap-drill": ShopSum("say which drill a tap wants", "sums_threads:tap_drill", (
        Takes("given", "a designation such as 1/4-20 or M8", "THREAD"),
    )),
    "torque": ShopSum("say how tight a steel bolt of a grade goes", "sums_threads:torque_sum", (
        Takes("given", "a designation such as 3/8-16 or M10", "THREAD"),
        Takes("--grade", "SAE 2, 5, 8 or ISO 4.6, 8.8, 10.9", "GRADE", "8.8"),
        Takes("--threads", "dry or oiled", "STATE", "dry"),
    )),
    "dwell": ShopSum("turn dwell into percent and open angle", "sums_engine:dwell", (
        Takes("degrees", "dwell in degrees of the distributor", "DEGREES"),
        Takes("--cylinders", "how many", "N", "4"),
    )),
    "timing-mark": ShopSum("say how far from the mark some degrees lie on a rim", "sums_engine:timing_mark", (
        Takes("degrees", "degrees of the crank", "DEGREES"),
        Takes("--across", f"the flywheel's diameter, {LENGTH}", "DIAMETER", "300mm"),
    )),
    "firing-order": ShopSum("say what a firing order means", "sums_engine:firing_order", (
        Takes("order", "the cylinders in their order", "N", many=True),
        Takes("--strokes", "4 or 2", "N", "4"),
    )),
    "compression": ShopSum("say what a gauge should show, or judge readings", "sums_engine:compression_sum", (
        Takes("given", "readings of the cylinders in psi, or one compression ratio such as 6:1", "READING", many=True),
        Takes("--height", "height above the sea, such as 5000ft", "HEIGHT", "0m"),
    )),
    "leak-down": ShopSum("turn the two gauges of a leak-down test into percent", "sums_engine:leak_down_sum", (
        Takes("held", "psi that the cylinder holds", "PSI"),
        Takes("--fed", "psi that it is fed with", "PSI", "80"),
        Takes("--heard", "where the air is heard: exhaust, inlet, breather or radiator", "PLACE"),
    )),
    "charge": ShopSum("say how full a rested battery is", "sums_electric:charge", (
        Takes("reading", "rested volts such as 12.45, or the density such as 1.225", "READING"),
        Takes("--nominal", "6 or 12 volts", "VOLTS", "12"),
        Takes("--celsius", "temperature of the acid", "DEGREES", "26.7"),
    )),
    "volt-drop": ShopSum("say what a path of a starter may lose, and what it is in ohms", "sums_electric:volt_drop", (
        Takes("volts", "the volts lost", "VOLTS"),
        Takes("--amps", "the current meanwhile", "AMPERES", "150"),
        Takes("--nominal", "6, 12 or 24 volts", "VOLTS", "12"),
    )),
    "insulation": ShopSum("bring an insulation reading to 40 degrees and judge it", "sums_electric:insulation", (
        Takes("megohms", "the reading", "MEGOHMS"),
        Takes("--celsius", "temperature of the winding", "DEGREES", "20"),
        Takes("--volts", "what the winding is made for", "VOLTS", "230"),
        Takes("--winding", "old, random or form", "KIND", "random"),
    )),
    "belt": ShopSum("say how far a V-belt may be pressed in", "sums_shop:belt", (
        Takes("span", f"between the pulleys, {LENGTH}", "SPAN"),
        Takes("--driver", "the driving pulley, for the speed", "DIAMETER"),
        Takes("--driven", "the driven pulley", "DIAMETER"),
        Takes("--rpm", "speed of the driver", "RPM", "1425"),
    )),
    "altitude": ShopSum("say how height lowers a compression reading and a boiling point", "sums_shop:altitude", (
        Takes("height", "such as 5000ft or 1500m; a bare number is m", "HEIGHT"),
    )),
    "convert": ShopSum("turn an amount into another unit", "sums_shop:convert_sum", (
        Takes("amount", "such as 30psi or 82degC", "AMOUNT"),
        Takes("unit", "the unit wanted, such as bar or degF", "UNIT"),
    )),
    "feeler": ShopSum("say which feeler blades make up a gap", "sums_shop:feeler", (
        Takes("gap", "with its unit, such as 0.38mm, 15thou or 0.015in", "GAP"),
    )),
}  # fmt: skip


def work_out(name: str, given: Mapping[str, Any]) -> Sum:
    """A sum by its name; a ValueError says what is wrong with what it was given."""
    module, function = SUMS[name].of.split(":")
    worked: Callable[[Mapping[str, Any]], Sum] = getattr(import_module(f"worklog_tui.trade.{module}"), function)
    return worked(given)
