"""The name of this computer's copy of the logbook, which tells whose acts are whose."""

from __future__ import annotations

from pathlib import Path


def device_of(logbook: Path, fresh: str) -> str:
    """The device id kept beside the logbook; where there is none yet, `fresh` is kept there and given back."""
    place = logbook.with_name(logbook.name + ".device")
    try:
        with place.open("x", encoding="ascii") as file:
            file.write(fresh + "\n")
    except FileExistsError:
        return place.read_text("ascii").strip() or fresh
    except OSError:
        return fresh  # nothing can be kept there now, so nothing will be signed with it either
    return fresh
