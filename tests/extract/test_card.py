"""Specified values of a machine card are read from their free text."""

from __future__ import annotations

import pytest

from worklog_tui.extract import read_specified
from worklog_tui.rulebook import Rulebook


@pytest.mark.parametrize(
    ("key", "text", "quantity", "unit", "low", "high", "nominal"),
    [
        ("plug_gap", "0.025 in", "gap", "in", None, None, 0.025),
        ("compression", "120 psi", "compression", "psi", None, None, 120.0),
        ("head_bolts", "60-84 in-lb", "torque", "in_lb", 60.0, 84.0, None),
        ("idle_speed", "700 to 750 rpm", "speed", "rpm", 700.0, 750.0, None),
        ("run_out", "0.002 in max", "length", "in", None, 0.002, 0.002),
    ],
)
def test_a_value_of_the_card(
    book: Rulebook,
    key: str,
    text: str,
    quantity: str,
    unit: str,
    low: float | None,
    high: float | None,
    nominal: float | None,
) -> None:
    value = read_specified(book, key, text)
    assert (value.quantity, value.unit, value.low, value.high, value.nominal) == (quantity, unit, low, high, nominal)
    assert value.text == text


def test_a_text_without_a_number_is_kept_as_text(book: Rulebook) -> None:
    value = read_specified(book, "belt", "A41")
    assert (value.quantity, value.text) == ("", "A41")
