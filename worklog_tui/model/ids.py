"""Names that never change: global uids, made once for live things and derived for imported ones.

UUIDv7 follows RFC 9562 section 5.7; uuid5 is the standard library's.
"""

from __future__ import annotations

import uuid
from collections.abc import Iterable

_SPACE = uuid.UUID("6f0b8a52-3a0c-5d3e-9d0e-2f6c5b1f7a10")


def uuid7(milliseconds: int, chance: int) -> str:
    """A time-ordered uid from milliseconds since 1970 and 74 bits of chance."""
    value = (milliseconds & (1 << 48) - 1) << 80 | 0x7 << 76 | (chance >> 62 & 0xFFF) << 64
    value |= 0b10 << 62 | chance & (1 << 62) - 1
    return str(uuid.UUID(int=value))


def derived(*parts: object) -> str:
    """The uid that the same parts always give, on any computer."""
    return str(uuid.uuid5(_SPACE, "\x1f".join(str(p) for p in parts)))


def session_uid(machine: str, header: str, words: Iterable[str]) -> str:
    """An imported session: its machine and header time, or its words where there is no header."""
    return derived("session", machine, header or "\n".join(words))


def note_uid(session: str, said_at: str, words: str, nth: int) -> str:
    """An imported note: its session, its time as written, its words, and which one of equals it is."""
    return derived("note", session, said_at, words, nth)
