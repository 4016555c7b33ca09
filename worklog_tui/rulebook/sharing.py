"""Equal parts of plain values made one object each: the grammars say the same words and sets many times over.

Marshal keeps that in the file, so it is paid for once, when the grammars are compiled. Nothing of it may be altered.
"""

from __future__ import annotations

from typing import Any


def shared(value: Any) -> Any:
    """The same value, made of as few objects as can be; strings, numbers, tuples, frozensets, lists, dicts and None."""
    return _share(value, {})


def _share(value: Any, known: dict[Any, Any]) -> Any:
    if isinstance(value, dict):
        made = {_share(key, known): _share(one, known) for key, one in value.items()}
        return known.setdefault((dict, *map(id, made), *map(id, made.values())), made)
    if isinstance(value, list):
        some = [_share(one, known) for one in value]
        return known.setdefault((list, *map(id, some)), some)
    if isinstance(value, frozenset):
        return known.setdefault(value, frozenset(_share(one, known) for one in value)) if value else frozenset()
    if isinstance(value, tuple):
        parts = tuple(_share(one, known) for one in value)
        key = (tuple, *map(id, parts))  # by what they are made of: (1,) and (True,) are equal, but not the same
        return known.setdefault(key, parts)
    return known.setdefault((type(value), value), value)
