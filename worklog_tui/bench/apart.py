"""What a process of our own needs to find the program as this one did."""

from __future__ import annotations

import os
from pathlib import Path


def environment() -> dict[str, str]:
    """The environment of this process, with the place of the program first on Python's path."""
    root = str(Path(__file__).resolve().parents[2])
    path = os.pathsep.join(filter(None, (root, os.environ.get("PYTHONPATH", ""))))
    return {**os.environ, "PYTHONPATH": path}
