"""The files of grammars/trade that hold words, and how their phrases are looked for."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable
from functools import cache
from typing import Any

from worklog_tui import places


@cache
def trade_file(name: str) -> dict[str, Any]:
    """What a file says, read once."""
    with (places.grammars() / "trade" / f"{name}.toml").open("rb") as file:
        return tomllib.load(file)


def any_of(phrases: Iterable[str]) -> str:
    """The text of a pattern for any of the phrases, the longest first; an apostrophe may be typed or curly, or left
    out.
    """
    longest_first = sorted(phrases, key=len, reverse=True)
    return "|".join(re.escape(one).replace("'", "['\u2019]?") for one in longest_first)
