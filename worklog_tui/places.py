"""Where the grammars, the demo sessions and the person's own files lie."""

from __future__ import annotations

import os
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def _shipped(name: str) -> Path:
    """A folder that a wheel carries inside the package and a checkout keeps beside it."""
    inside = _PACKAGE / name
    return inside if inside.is_dir() else _PACKAGE.parent / name


def grammars() -> Path:
    """The folder of the shipped vocabulary, patterns and fault files."""
    return _shipped("grammars")


def demo_sessions() -> Path:
    """The folder of the invented machines."""
    return _shipped("demo_sessions")


def own_grammars() -> Path:
    """The person's own vocabulary and patterns, read after ours; it need not exist."""
    return _data_folder() / "grammars"


def own_keys() -> Path:
    """The file with keys of the person's own; it need not exist."""
    return _data_folder() / "keys.toml"


def settings() -> Path:
    """The file with what the person chose once, such as units; it need not exist."""
    return _data_folder() / "settings.toml"


def logbook() -> Path:
    """The logbook file: the variable WORKLOG_TUI_LOGBOOK, else one in the platform's data folder."""
    told = os.environ.get("WORKLOG_TUI_LOGBOOK")
    return Path(told).expanduser() if told else _data_folder() / "logbook.db"


def cache() -> Path:
    """A folder for what can be made again at any time."""
    import platformdirs

    return Path(platformdirs.user_cache_dir("worklog-tui", appauthor=False))


def _data_folder() -> Path:
    import platformdirs

    return Path(platformdirs.user_data_dir("worklog-tui", appauthor=False))
