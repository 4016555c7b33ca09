"""The words that tell one of several like parts from another of them: left, rear, inlet, primary."""

from __future__ import annotations

SIDES = frozenset(
    (
        "lefts rights fronts rears tops bottoms uppers lowers left right lh rh l/h r/h left-hand right-hand front "
        "rear inlet intake exhaust inlets intakes exhausts in ex top bottom upper lower inner outer port starboard "
        "nearside offside primary secondary frnt inboard outboard lf rf lr l/f r/f l/r nsf osf nsr osr n/s o/s"
    ).split()
) | {"left hand", "right hand"}

PLURALS = frozenset(
    ("lefts rights firsts seconds thirds fourths tops bottoms fronts rears uppers lowers inners outers").split()
)
"Sides as they are written without an apostrophe: `second's forty`."


ENDS = SIDES | {"back"}

AXES = tuple(
    frozenset(row.split())
    for row in (
        "left right lh rh l/h r/h left-hand right-hand nearside offside port starboard n/s o/s l r",
        "top bottom upper lower middle",
        "front rear back",
        "inner outer inboard outboard",
        "inlet exhaust intake",
        "primary secondary",
        "leading trailing",
        "first second third fourth fifth sixth last top bottom",
    )
)
"Words that tell one of several from another of them."
