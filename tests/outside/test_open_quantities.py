"""Quantities in text that nobody here wrote. Run with -s to see the shares and what was missed.

Sources: microsoft/Recognizers-Text, Specs (MIT), folder recognizers-text-en; facebook/duckling, English corpus
(3-clause BSD), folder duckling-en; nlp-tlp/maintnorm (MIT), folder maintnorm; the tests of the
quantulum3 package (MIT).

The scope was chosen by unit before a case was looked at: the units that our unit file knows, of length, area, volume,
mass, temperature, pressure, turns, and time spans below a year. A case counts as right when value and unit are right.
"""

from __future__ import annotations

import importlib.util
import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest

from worklog_tui import places
from worklog_tui.extract.heard.words import split
from worklog_tui.extract.numbers.amounts import Amount, amount_at
from worklog_tui.extract.numbers.numerals import numeral_at
from worklog_tui.rulebook.units import load_numerals, load_units

NUMERALS = load_numerals(places.grammars() / "numerals.toml")
UNITS = load_units(places.grammars() / "units.toml")
YEAR = 365 * 86400

RECOGNIZERS = {
    "Meter": "m", "Mile": "mile", "Foot": "ft", "Kilogram": "kg", "Metric ton": "t", "Gallon": "us_gal", "Pound": "lb",
    "Ton": "ton",
    "Square meter": "m2", "Kilometer": "km", "Milliliter": "ml", "Cubic foot": "ft3", "Millimeter": "mm", "Inch": "in",
    "Gram": "g", "Degree": "deg", "Turn": "turn", "C": "degC", "F": "degF", "second": "s", "Centimeter": "cm",
}  # fmt: skip
DUCKLING = {
    "Inch": "in", "Kilometre": "km", "Centimetre": "cm", "Foot": "ft", "Mile": "mile", "M": "m", "Metre": "m",
    "Millimetre": "mm",
    "Litre": "L", "Millilitre": "ml", "Gallon": "us_gal", "Hectolitre": "hL", "Degree": "deg", "Celsius": "degC",
    "Fahrenheit": "degF",
    "Gram": "g", "Pound": "lb", "Ounce": "oz", "Second": "s", "Minute": "min", "Hour": "h", "Day": "day",
    "Week": "week",
    "Month": "month",
}  # fmt: skip
QUANTULUM = {
    "inch": "in", "centimetre": "cm", "millimetre": "mm", "metre": "m", "kilometre": "km", "foot": "ft",
    "mile": "mile", "yard": "yd",
    "litre": "L", "millilitre": "ml", "gram": "g", "kilogram": "kg", "milligram": "mg", "pound-mass": "lb",
    "ounce": "oz",
    "volt": "V", "millivolt": "mV", "ampere": "A", "milliampere": "mA", "ohm": "ohm", "watt": "W", "kilowatt": "kW",
    "hertz": "Hz",
    "degree celsius": "degC", "degree fahrenheit": "degF", "second": "s", "minute": "min", "hour": "h", "day": "day",
    "week": "week", "month": "month", "percentage": "percent", "pound-force per square inch": "psi", "bar": "bar",
    "kilopascal": "kPa", "micrometre": "um", "square metre": "m2", "square foot": "ft2", "cubic metre": "m3",
    "cubic foot": "ft3",
    "cubic inch": "in3", "pound foot": "ft_lb", "newton metre": "N*m", "microfarad": "uF", "horsepower": "hp",
    "revolution per minute": "rpm", "mile per hour": "mph", "kilometre per hour": "km/h",
}  # fmt: skip
OTHER_SIGNS = ('"', "'", "2m")
"A second and a minute in duckling; inch, foot and metre in a workshop: left out of its durations."
MEANING = {
    "h": "hour hourly hr hrs", "week": "week weekly", "day": "day", "month": "month monthly", "min": "minute",
    "m": "metre m",
    "V": "v volt voltage", "A": "a amp", "W": "w watt", "mm": "mm", "degF": "fahrenheit f", "degC": "celsius c",
    "deg": "degree",
    "percent": "%", "kV": "kv", "kW": "kw", "psi": "psi", "bar": "bar", "rpm": "rpm", "kPa": "kpa", "L": "litre",
    "kg": "kg", "in": "inch",
    "t": "tonne",
}  # fmt: skip
"What the normal form of the shorthand calls the unit."
TIMES = frozenset({"s", "min", "h", "day", "week", "month", "year"})


@dataclass
class Share:
    """How many of a set's expectations were read right."""

    name: str
    right: int = 0
    missed: list[str] = field(default_factory=list)

    def count(self, ok: bool, told: str) -> None:
        self.right += ok
        if not ok:
            self.missed.append(told)

    @property
    def share(self) -> float:
        return self.right / (self.right + len(self.missed))

    def tell(self) -> None:
        print(f"\n{self.name}: {self.right} of {self.right + len(self.missed)} ({self.share:.1%})")
        for line in self.missed:
            print(f"    missed: {line}")


def amounts(text: str) -> list[Amount]:
    words, found, i = split(text), [], 0
    while i < len(words):
        amount = amount_at(words, i, NUMERALS, UNITS)
        if amount:
            found.append(amount)
        taken = amount or numeral_at(words, i, NUMERALS)
        i = taken.end if taken else i + 1
    return found


def is_right(amount: Amount, value: float | list[float], unit: str) -> bool:
    """The same size in the expected unit. Pounds are a mass here; the plain gallon of these sets is American."""
    own = {"psi": "lb"}.get(amount.unit, amount.unit) if amount.said == "pounds" else amount.unit
    own = f"us_{own}" if unit == f"us_{own}" else own
    low, high = value if isinstance(value, list) else (value, value)
    if UNITS.by_short[own].dimension != UNITS.by_short[unit].dimension:
        return False
    got = [UNITS.convert(v, own, unit) for v in (amount.low, amount.high)]
    if own == "month" != unit:  # 30 days in these sets
        got = [UNITS.convert(v * 30, "day", unit) for v in (amount.low, amount.high)]
    return got == [pytest.approx(low, rel=1e-6), pytest.approx(high, rel=1e-6)]


def ends_at(amount: Amount, value: float | list[float], unit: str) -> bool:
    """Recognizers gives the last end of "eight to 10 feet" only."""
    return amount.unit == unit and amount.low < amount.high == value


def told(text: str, expected: object, found: Iterable[Amount]) -> str:
    return f"{text!r} expected {expected}, read {[(a.low, a.high, a.unit) for a in found]}"


def measure(name: str, cases: Iterable[tuple[str, float | list[float], str]]) -> Share:
    share = Share(name)
    for text, value, unit in cases:
        found = amounts(text)
        share.count(
            any(is_right(a, value, unit) or ends_at(a, value, unit) for a in found), told(text, (value, unit), found)
        )
    share.tell()
    return share


def load(path: Path) -> Any:
    if not path.exists():
        pytest.skip(f"no {path.name} below WORKLOG_OPEN_DATA")
    return json.loads(path.read_text(encoding="utf-8-sig"))


# ---- Recognizers


def recognizers(open_data: Path, kind: str) -> list[dict[str, Any]]:
    """Cases of a kind without those that its own Python port does not support."""
    cases = load(open_data / "recognizers-text-en" / "flat_en.json")
    return [c for c in cases if c["kind"] == kind and not c["python_not_supported"]]


def expected_by_recognizers(cases: list[dict[str, Any]]) -> Iterator[tuple[str, float, str]]:
    for case in cases:
        for e in case["expect"]:
            unit = RECOGNIZERS.get(e.get("unit") or "")
            try:
                value = float(e["value"])
            except (TypeError, ValueError):
                continue
            if unit and not (unit == "s" and value >= YEAR):
                yield case["text"], value, unit


@pytest.mark.parametrize(("kind", "floor"), [("dimension", 0.95), ("temperature", 0.9), ("duration", 0.95)])
def test_recognizers(open_data: Path, kind: str, floor: float) -> None:
    share = measure(f"recognizers {kind}", expected_by_recognizers(recognizers(open_data, kind)))
    assert share.share >= floor


def test_recognizers_negatives(open_data: Path) -> None:
    """Texts without any measure; only an amount of the kind that the case is about is an invention."""
    fired = []
    for kind in ("dimension", "temperature"):
        for case in recognizers(open_data, kind):
            found = [a for a in amounts(case["text"]) if kind == "dimension" or a.unit in ("degC", "degF", "deg")]
            if not case["expect"] and found:
                fired.append(told(case["text"], None, found))
    print("\nrecognizers negatives fired:", len(fired), *fired, sep="\n    ")
    assert len(fired) <= 1


# ---- duckling


def expected_by_duckling(open_data: Path, name: str) -> Iterator[tuple[str, float | list[float], str]]:
    for case in load(open_data / "duckling-en" / f"{name}.json"):
        unit = DUCKLING.get(case["unit"])
        if unit is None or (name == "duration" and case["text"].endswith(OTHER_SIGNS)):
            continue
        value = case["value"]
        if unit == "s" and not isinstance(value, list) and value >= YEAR:
            continue
        yield case["text"], value, unit


@pytest.mark.parametrize(
    ("name", "floor"),
    [("distance", 0.85), ("volume", 0.95), ("temperature", 0.9), ("quantity", 0.85), ("duration", 0.95)],
)
def test_duckling(open_data: Path, name: str, floor: float) -> None:
    share = measure(f"duckling {name}", expected_by_duckling(open_data, name))
    assert share.share >= floor


def test_duckling_duration_negatives(open_data: Path) -> None:
    fired = [c["text"] for c in load(open_data / "duckling-en" / "duration_negative.json") if amounts(c["text"])]
    assert fired == []


def test_duckling_numerals(open_data: Path) -> None:
    """Indian scales (lakh, crore) and "a few" are out of scope."""
    share = Share("duckling numeral")
    for case in load(open_data / "duckling-en" / "numeral.json"):
        text = case["text"]
        if any(w in text for w in ("lakh", "lkh", "lac", "crore", "krore", " cr", "Kr", "few")):
            continue
        words = split(text)
        found = [n.value for i in range(len(words)) if (n := numeral_at(words, i, NUMERALS))]
        share.count(
            case["value"] in [pytest.approx(v) for v in found], f"{text!r} expected {case['value']}, read {found}"
        )
    share.tell()
    assert share.share >= 0.9


def test_all_open_sets_together(open_data: Path) -> None:
    """The figure to reach: at least 95 % of all expectations in scope."""
    shares = [
        measure(f"recognizers {kind}", expected_by_recognizers(recognizers(open_data, kind)))
        for kind in ("dimension", "temperature", "duration")
    ]
    shares += [
        measure(f"duckling {name}", expected_by_duckling(open_data, name))
        for name in ("distance", "volume", "temperature", "quantity", "duration")
    ]
    right, missed = sum(s.right for s in shares), sum(len(s.missed) for s in shares)
    print(f"\nall together: {right} of {right + missed} ({right / (right + missed):.1%})")
    assert right / (right + missed) >= 0.95


# ---- maintenance shorthand: what must not be invented


def shorthand(path: Path) -> Iterator[list[tuple[str, str]]]:
    """Short texts as (token, normal form)."""
    row: list[tuple[str, str]] = []
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.strip():
            token, _, normal = line.partition("\t")
            row.append((token, normal))
        elif row:
            yield row
            row = []
    if row:
        yield row


def test_maintenance_shorthand(open_data: Path) -> None:
    """An amount is false when the hand-made normal form of its words does not hold its unit.

    Time spans (service intervals, hours of labour written "5H") are counted apart: they are no measured amounts.
    """
    path = open_data / "maintnorm" / "data" / "combined" / "train.norm"
    if not path.exists():
        pytest.skip("no maintnorm below WORKLOG_OPEN_DATA")
    rows, right, false, spans = 0, 0, [], 0
    for row in shorthand(path):
        rows += 1
        text, places_ = _joined(row)
        words = split(text)
        for amount in amounts(text):
            start, end = words[amount.start].start, words[amount.end - 1].end
            normal = " ".join(n for s, e, n in places_ if s < end and e > start).lower().replace("<num>", " ")
            meant = {w.rstrip("s") for w in normal.replace("-", " ").split()}
            if meant & set(MEANING.get(amount.unit, amount.unit.lower()).split()):
                right += 1
            elif amount.unit in TIMES:
                spans += 1
            else:
                false.append(f"{text} -> {amount.low:g} {amount.unit} (normal form: {normal.strip()})")
    print(f"\nmaintenance shorthand: {rows} texts, {right} amounts confirmed, {spans} spans of time and", len(false))
    print("others not confirmed by the normal form:", *false, sep="\n    ")
    assert len(false) / rows <= 0.001


def _joined(row: list[tuple[str, str]]) -> tuple[str, list[tuple[int, int, str]]]:
    """The text of a row, and where each token stands in it with its normal form."""
    at, found = 0, []
    for token, normal in row:
        found.append((at, at + len(token), normal))
        at += len(token) + 1
    return " ".join(token for token, _ in row), found


# ---- quantulum3's own tests


def test_cases_of_quantulum3() -> None:
    """Its ranges are a value with an uncertainty; they count when its value lies between our ends."""
    package = importlib.util.find_spec("quantulum3")
    if package is None or package.origin is None:
        pytest.skip("quantulum3 is not installed: pip install worklog-tui[outside]")
    folder = Path(package.origin).parent / "_lang" / "en_US" / "tests"
    share = Share("quantulum3's tests")
    for case in load(folder / "quantities.json"):
        found = amounts(case["req"])
        for e in case["res"]:
            unit = QUANTULUM.get(e["unit"])
            if unit:
                ok = any(is_right(a, e["value"], unit) or _inside(a, e["value"], unit) for a in found)
                share.count(ok, told(case["req"], (e["value"], unit), found))
    share.tell()
    assert share.share >= 0.88


def _inside(amount: Amount, value: float, unit: str) -> bool:
    return amount.unit == unit and amount.low < value < amount.high
