"""The machine card as a TOML file."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from worklog_tui.model import Machine, SpecifiedValue


class BadCard(ValueError):
    """The card cannot be used; the message is a plain sentence with file and key."""


_TEXTS = ("name", "kind", "fuel", "ignition", "measures")
_KNOWN = (*_TEXTS, "cylinders", "firing_order", "specified")
_CHOICES = {
    "fuel": ("petrol", "diesel", "paraffin", "gas", "none"),
    "ignition": ("magneto", "battery", "electronic", "none"),
    "measures": ("british", "american"),
}
_ALSO = {
    "gasoline": "petrol", "kerosene": "paraffin", "tvo": "paraffin", "lpg": "gas", "propane": "gas", "coil": "battery",
}  # fmt: skip


def read_card(path: Path) -> tuple[Machine, list[str]]:
    """The machine of a card file, and warnings about what was not understood. Raises BadCard."""
    import tomllib

    try:
        data = tomllib.loads(path.read_text("utf-8-sig"))
    except OSError as fault:
        raise BadCard(f"{path}: cannot be read ({fault.strerror or fault}).") from fault
    except UnicodeDecodeError as fault:
        raise BadCard(f"{path}: is not UTF-8 text; save it as UTF-8.") from fault
    except tomllib.TOMLDecodeError as fault:
        raise BadCard(f"{path}: is not a card in TOML: {fault}.") from fault
    warnings = [f"{path}: the key “{key}” is not known and was passed over." for key in data if key not in _KNOWN]
    texts = {key: _text(path, data, key, warnings) for key in _TEXTS}
    if not texts["name"]:
        texts["name"] = path.resolve().parent.name
        warnings.append(f"{path}: name is missing; the machine is called “{texts['name']}” after its folder.")
    specified = _specified(path, data.get("specified", {}))
    return Machine(
        **texts, cylinders=_cylinders(path, data), firing_order=_firing_order(path, data), specified=specified
    ), warnings


def _text(path: Path, data: Mapping[str, Any], key: str, warnings: list[str]) -> str:
    value = data.get(key, "")
    if not isinstance(value, str):
        raise BadCard(f'{path}: {key} must be text in quotes, such as {key} = "…".')
    value = " ".join(value.split())
    choices = _CHOICES.get(key)
    if not choices or not value:
        return value
    word = _ALSO.get(value.casefold(), value.casefold())
    if word not in choices:
        warnings.append(f"{path}: {key} is “{value}”; known are {', '.join(choices)}.")
    return word


def _cylinders(path: Path, data: Mapping[str, Any]) -> int | None:
    value = data.get("cylinders")
    if value is None:
        return None
    if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value <= 64:
        raise BadCard(f"{path}: cylinders must be a whole number from 0 to 64, such as cylinders = 4.")
    return value or None


def _firing_order(path: Path, data: Mapping[str, Any]) -> tuple[int, ...]:
    value = data.get("firing_order", [])
    cylinders = data.get("cylinders")
    if isinstance(value, str):
        value = [int(part) if part.isdecimal() else part for part in value.replace("-", " ").replace(",", " ").split()]
    whole = isinstance(value, list) and all(isinstance(one, int) and not isinstance(one, bool) for one in value)
    if not whole or len(set(value)) != len(value) or any(one < 1 for one in value):
        raise BadCard(f"{path}: firing_order must be a list of cylinders, such as firing_order = [1, 3, 4, 2].")
    if value and isinstance(cylinders, int) and sorted(value) != list(range(1, cylinders + 1)):
        raise BadCard(f"{path}: firing_order must name each of the {cylinders} cylinders once.")
    return tuple(value)


def _specified(path: Path, values: object) -> tuple[SpecifiedValue, ...]:
    if not isinstance(values, dict):
        raise BadCard(f'{path}: specified must be a table: [specified], and below it lines such as plug_gap = "…".')
    kept = []
    for key, value in values.items():
        if isinstance(value, list):
            value = ", ".join(map(str, value))
        source = ""
        if isinstance(value, dict) and {"is"} <= set(value) <= {"is", "source"}:
            value, source = value["is"], str(value.get("source", ""))
        if isinstance(value, dict | bool | list):
            raise BadCard(
                f'{path}: specified.{key} must be text with its unit, such as "0.025 in", or, with who says so, '
                f'{{ is = "0.025 in", source = "handbook of a similar machine" }}.'
            )
        kept.append(SpecifiedValue("", key, " ".join(str(value).split()), source=" ".join(source.split())))
    return tuple(kept)
