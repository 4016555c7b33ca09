"""Work without looking for garbage in it, where almost all that is made is kept: the grammars, a long log."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def uncollected() -> Iterator[None]:
    """Nothing is collected meanwhile; what points to itself is cleared away afterwards."""
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()
