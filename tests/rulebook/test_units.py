"""Units: how they are said, what they can measure, and conversion by the own small table."""

from __future__ import annotations

import itertools
import subprocess
import sys

import pytest

from worklog_tui import places
from worklog_tui.extract.heard.glued import UNITS as GLUED
from worklog_tui.rulebook.registry import by_library, registry
from worklog_tui.rulebook.threads import standard_threads
from worklog_tui.rulebook.units import Unit, Units, load_numerals, load_units, units_from

UNITS = load_units(places.grammars() / "units.toml")
NUMERALS = load_numerals(places.grammars() / "numerals.toml")
PAIRS = [(a, b) for a, b in itertools.permutations(UNITS.by_short.values(), 2) if a.dimension == b.dimension]
GUIDE = """psi bar kPa in mm m um degC degF s min h day V mV A ohm kohm Mohm N*m ft_lb in_lb rpm deg turn L ml pint gal
qt kg lb percent drops/min Hz sg"""


def said(units: Units, words: str) -> tuple[str, float, tuple[str, ...]]:
    """Unit, scale and quantities of a said form."""
    form = tuple(words.split())
    found = next(s for s in units.by_head[form[0]] if s.words == form)
    return found.unit.short, found.scale, found.quantities


@pytest.mark.parametrize("short", GUIDE.split())
def test_every_unit_of_the_guide_is_known(short: str) -> None:
    assert short in UNITS.by_short


@pytest.mark.parametrize(("a", "b"), PAIRS, ids=lambda u: u.short)
def test_the_own_table_agrees_with_the_library(a: Unit, b: Unit) -> None:
    """Source: pint's definitions (CODATA, NIST SP 811)."""
    for value in (1.0, 37.5, -12.0):
        assert UNITS.convert(value, a.short, b.short) == pytest.approx(by_library(value, a, b), rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(
    ("value", "source", "target", "expected"),
    [  # hand-checkable: the boiling and freezing points of water; 1 lbf ft = 1.3558 N m (NIST SP 811, B.8)
        (1, "in", "mm", 25.4),
        (100, "degC", "degF", 212),
        (32, "degF", "degC", 0),
        (-40, "degC", "degF", -40),
        (1, "ft_lb", "N*m", 1.3558179483314),
        (12, "in_lb", "ft_lb", 1),
        (1, "bar", "psi", 14.503773773),
        (8, "pint", "gal", 1),
        (1, "gal", "us_gal", 1.2009499255),
        (1.5, "h", "min", 90),
        (1, "turn", "deg", 360),
        (50, "Hz", "rpm", 3000),
    ],
)
def test_conversions_that_a_hand_can_check(value: float, source: str, target: str, expected: float) -> None:
    assert UNITS.convert(value, source, target) == pytest.approx(expected, rel=1e-9)


def test_units_of_two_dimensions_do_not_convert() -> None:
    with pytest.raises(ValueError, match="psi measures pressure, mm measures length"):
        UNITS.convert(1, "psi", "mm")


def test_an_unknown_unit_is_named() -> None:
    with pytest.raises(ValueError, match="no unit is called 'furlong'"):
        UNITS.convert(1, "furlong", "mm")


def test_a_form_that_is_said_for_two_units_is_refused() -> None:
    row = {"short": "a", "dimension": "d", "factor": 1.0, "pint": "m", "quantities": ["length"], "said": ["ell"]}
    with pytest.raises(ValueError, match="'ell' is said both for 'a' and for 'b'"):
        units_from({"unit": [row, {**row, "short": "b"}]})


def test_a_multiple_of_no_unit_is_refused() -> None:
    with pytest.raises(ValueError, match="is no unit"):
        units_from({"unit": [], "scaled": [{"name": "ell", "short": "x", "scale": 2.0, "quantities": [], "said": []}]})


def test_british_and_american_measures_are_two_things() -> None:
    made = registry()
    assert made.Quantity(1, "british_pint").to("ml").magnitude == pytest.approx(568.26125)
    assert made.Quantity(1, "american_pint").to("ml").magnitude == pytest.approx(473.176473)


@pytest.mark.parametrize(
    ("words", "unit", "scale", "first"),
    [
        ("thou", "in", 0.001, "gap"),
        ("thousandths of an inch", "in", 0.001, "gap"),
        ("tenths", "in", 0.0001, "length"),
        ("mil", "mm", 1.0, "length"),
        ("foot pounds", "ft_lb", 1.0, "torque"),
        ("pounds", "psi", 1.0, "pressure"),
        ("megs", "Mohm", 1.0, "resistance"),
        ("revs", "rpm", 1.0, "speed"),
        ("drops a minute", "drops/min", 1.0, "leakage"),
        ("degrees", "deg", 1.0, "temperature"),
        ("hours", "h", 1.0, "duration"),
    ],
)
def test_what_is_said_for_a_unit(words: str, unit: str, scale: float, first: str) -> None:
    short, times, quantities = said(UNITS, words)
    assert (short, times, quantities[0]) == (unit, scale, first)


def test_pounds_can_be_three_things() -> None:
    assert said(UNITS, "pounds")[2] == ("pressure", "mass", "torque")


def test_letters_cut_from_digits_are_units_or_thread_series() -> None:
    series = {words[0] for forms in standard_threads().series.values() for words, _ in forms}
    assert not {u for u in GLUED if u not in UNITS.by_head and u not in series and u not in ("x", "tpi")}


def test_number_words_do_not_overlap() -> None:
    n = NUMERALS
    tables = [set(n.digit), set(n.teen), set(n.ten), set(n.nothing), set(n.scale), set(n.heard)]
    for a, b in itertools.combinations(tables, 2):
        assert not a & b


def test_units_are_read_without_the_library() -> None:
    """The hot path never waits for it."""
    code = (
        "import sys; from worklog_tui import places; from worklog_tui.rulebook.units import load_units;"
        "load_units(places.grammars() / 'units.toml').convert(1.0, 'in', 'mm'); sys.exit('pint' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False, cwd=places.grammars().parent).returncode == 0
