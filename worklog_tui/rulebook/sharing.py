"""Equal parts of plain values made one object each: the vocabulary says the same words and sets many times over.

Marshal keeps that in the file, so it is paid for once, when the grammars are compiled.
"""

from __future__ import annotations

from sys import intern
from typing import Any


def shared(value: Any) -> Any:
    """The same value, made of as few objects as can be; strings, numbers, tuples, frozensets, lists, dicts and None."""
    return _share(value, {})


def _share(value: Any, known: dict[Any, Any]) -> Any:
    if isinstance(value, str):
        return intern(value) if type(value) is str else value
    if isinstance(value, dict):
        return {_share(key, known): _share(one, known) for key, one in value.items()}
    if isinstance(value, list):
        return [_share(one, known) for one in value]
    if isinstance(value, frozenset):
        return known.setdefault(value, frozenset(_share(one, known) for one in value)) if value else frozenset()
    if isinstance(value, tuple):
        parts = tuple(_share(one, known) for one in value)
        key = (tuple, *map(id, parts))  # by what they are made of: (1,) and (True,) are equal, but not the same
        return known.setdefault(key, parts)
    return known.setdefault((type(value), value), value)
