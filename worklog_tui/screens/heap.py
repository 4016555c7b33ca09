"""The memory that the C library holds for the program: one heap for all threads, and what is free given back."""

from __future__ import annotations

from contextlib import suppress

ARENA_MAX = -8
"M_ARENA_MAX of glibc's mallopt."


def one_heap() -> None:
    """All threads share one heap where the C library can do that (glibc): each would keep its own, a tenth of all."""
    import ctypes

    with suppress(AttributeError, OSError, TypeError):
        ctypes.CDLL(None).mallopt(ARENA_MAX, 1)


def give_back() -> None:
    """What loading and looking back left free goes back to the system, where the C library can do that (glibc)."""
    import ctypes

    with suppress(AttributeError, OSError, TypeError):
        ctypes.CDLL(None).malloc_trim(0)
