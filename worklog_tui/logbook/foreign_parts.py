"""Which lists of parts a machine has none of, by its card: of diesels, of a kind of ignition, of two-strokes."""

from __future__ import annotations

from worklog_tui.model import Machine

_TWO_STROKES = ("two stroke", "two-stroke", "two cycle", "two-cycle")
_AIR_COOLED = ("air cooled", "air-cooled")
_IGNITIONS = {"magneto": "magneto ignition", "battery": "battery ignition", "electronic": "electronic ignition"}


def kinds_of(machine: Machine) -> tuple[tuple[str, str], ...]:
    """(the list of the fault files, what the machine is called) for each list of parts that it has none of."""
    kind = machine.kind.casefold()
    found = []
    if machine.fuel == "diesel":
        found.append(("diesel", "a diesel"))
    elif machine.ignition in _IGNITIONS:
        found.append((machine.ignition, _IGNITIONS[machine.ignition]))
    if machine.fuel == "none" and "engine" not in kind:
        found.append(("no_engine", "a machine without an engine"))
    if any(word in kind for word in _TWO_STROKES):
        found.append(("two_stroke", "a two-stroke"))
    if any(word in kind for word in _AIR_COOLED):
        found.append(("air_cooled", "an air-cooled engine"))
    return tuple(found)
