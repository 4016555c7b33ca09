"""The colours of the pages: text stands out enough (Web Content Accessibility Guidelines 2.2, 1.4.3: 4.5 to 1)."""

from __future__ import annotations

import re

import pytest

from worklog_tui.reports.page import TEMPLATES

STYLE = (TEMPLATES / "style.css").read_text(encoding="utf-8")
TEXT = ("ink", "soft", "link", "warn")
GROUNDS = {"ink": ("paper", "sheet", "warn-sheet", "band"), "soft": ("paper", "sheet"), "link": ("paper", "sheet"),
           "warn": ("paper", "sheet")}  # fmt: skip


def schemes() -> dict[str, dict[str, str]]:
    """The variables of each block of colours: light, dark and paper."""
    blocks = re.findall(r":root \{([^}]*)\}", STYLE)
    return dict(
        zip(
            ("light", "dark", "paper"),
            (dict(re.findall(r"--([\w-]+): (#\w+)", block)) for block in blocks),
            strict=True,
        )
    )


def brightness(colour: str) -> float:
    """Relative luminance, by the guidelines' formula."""
    digits = colour.lstrip("#")
    digits = "".join(c * 2 for c in digits) if len(digits) == 3 else digits
    parts = (int(digits[n : n + 2], 16) / 255 for n in (0, 2, 4))
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """How much two colours differ, from 1 to 21."""
    dark, light = sorted((brightness(one), brightness(other)))
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("scheme", ["light", "dark", "paper"])
def test_text_stands_out_from_its_ground(scheme: str) -> None:
    colours = schemes()[scheme]
    found = {(text, ground): contrast(colours[text], colours[ground]) for text in TEXT for ground in GROUNDS[text]}
    assert {pair: ratio for pair, ratio in found.items() if ratio < 4.5} == {}


@pytest.mark.parametrize("scheme", ["light", "dark", "paper"])
def test_marks_stand_out_from_the_band(scheme: str) -> None:
    """Guideline 1.4.11: 3 to 1 for what must be seen to understand a chart."""
    colours = schemes()[scheme]
    assert contrast(colours["mark"], colours["band"]) >= 3
    assert contrast(colours["band-edge"], colours["paper"]) >= 3
    assert contrast(colours["old"], colours["paper"]) >= 3


def test_the_measure_is_right() -> None:
    assert contrast("#000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)
