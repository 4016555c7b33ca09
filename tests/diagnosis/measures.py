"""All measures of the fault finding in one go, with fixed seeds:
`python -m tests.diagnosis.measures [--short] [folder of more labelled cases]`.

T3 policy against the optimum, T4 simulated repairs against simpler ways, T5 whether the chances come true, T7 rows of
the handbook tables, T8 the order of advice along each labelled case. Targets are those of the specification; what is
missed is said to be.
"""

from __future__ import annotations

import random
import sys
from collections.abc import Sequence
from pathlib import Path

from tests.diagnosis.measure_bounds import bounds
from tests.diagnosis.measure_cases import CASES, Counted, along
from tests.diagnosis.measure_repairs import KNOWING, MODELS, simulated
from tests.diagnosis.test_policy import random_model
from worklog_tui import places
from worklog_tui.rulebook.faults import FaultBook, load_faults

TARGETS = {"fixed checklist": 0.60, "most likely first": 0.75, "chance over cost, no checks": 0.85}


def told(name: str, figure: float, target: float, at_most: bool = True) -> str:
    """One figure beside its target."""
    kept = figure <= target if at_most else figure >= target
    return (
        f"  {name}: {figure:.1%} ({'at most' if at_most else 'at least'} {target:.0%}: {'kept' if kept else 'MISSED'})"
    )


def policy(models: int) -> None:
    """T3: the cost of following the advice over that of the optimal plan."""
    rng = random.Random(17)
    excess = sorted(m.followed() / m.best - 1 for m in (random_model(rng) for _ in range(models)))
    print(f"T3 policy over the optimum, {models} models")
    print(told("mean", sum(excess) / len(excess), 0.01))
    print(told("95th of a hundred", excess[int(0.95 * len(excess))], 0.03))
    print(told("worst", excess[-1], 0.10))


def repairs(book: FaultBook, count: int) -> None:
    """T4 and T5."""
    whole: dict[str, float] = {}
    least, sums = 0.0, [0.0] * len(KNOWING)
    chances: list[tuple[float, float, bool]] = []
    print(f"T4 minutes of a repair, {count} repairs a complaint")
    for complaint in MODELS:
        tally = simulated(book, complaint, count)
        chances += tally.chances
        least += tally.least / tally.minutes["chance over cost, no checks"]
        sums = [a + b for a, b in zip(sums, tally.knowing, strict=True)]
        mine = tally.minutes["advice"]
        shares = (f"{name} {mine / m:.0%}" for name, m in tally.minutes.items() if name != "advice")
        print(f"  {complaint}: {mine / count:.0f} by the advice; of", ", ".join(shares))
        for name, minutes in tally.minutes.items():
            whole[name] = whole.get(name, 0.0) + minutes / mine
    for name, share in whole.items():
        if name in TARGETS:
            print(told(f"all complaints, of {name}", len(MODELS) / share, TARGETS[name]))
    print(f"    the mending alone is {least / len(MODELS):.0%} of the order without checks: nobody can do with less")
    print("    what can be reached at all, beside what is reached:")
    bounds(book, max(4, count // 4))
    rough = [simulated(book, c, max(4, count // 2), 0.5).minutes for c in MODELS]
    share = sum(m["advice"] for m in rough) / sum(m["fixed checklist"] for m in rough)
    print(told("with priors off by a half (log sd 0.5), of the fixed checklist", share, 0.75))
    calibration(chances)
    print("    squared error of the chances by what is known of the machine, before anything is mended:")
    print("    " + ", ".join(f"{name} {s / sums[0]:.0%}" for name, s in zip(KNOWING, sums, strict=True)))


def calibration(chances: list[tuple[float, float, bool]]) -> None:
    """T5: of the faults given a chance of 0.6 to 0.8 so many were there; the Brier score beside the priors alone."""
    said = [there for _, given, there in chances if 0.6 <= given < 0.8]
    print(f"T5 chances against the truth, {len(chances)} chances given")
    for low in (0.0, 0.1, 0.2, 0.4, 0.6, 0.8):
        high = {0.0: 0.1, 0.1: 0.2, 0.2: 0.4, 0.4: 0.6, 0.6: 0.8, 0.8: 1.01}[low]
        there = [t for _, given, t in chances if low <= given < high]
        if there:
            print(f"  given {low:.1f} to {min(high, 1):.1f}: {sum(there) / len(there):.0%} there, of {len(there)}")
    if said:
        share = sum(said) / len(said)
        print(f"  given 0.6 to 0.8: {share:.1%} there (60 to 80 %, 5 more or less: "
              f"{'kept' if 0.55 <= share <= 0.85 else 'MISSED'})")  # fmt: skip
    mine = sum((given - there) ** 2 for _, given, there in chances) / len(chances)
    prior = sum((p - there) ** 2 for p, _, there in chances) / len(chances)
    print(told("Brier score, of that of the priors alone", mine / prior, 0.60))


def tables() -> None:
    """T7: the rows of the handbook tables."""
    from tests.outside.handbook_rows import NOT_HELD, ROWS
    from tests.outside.test_diagnosis_tables import shortfall

    falls = [f"row {row.number}: {short}" for n, row in enumerate(ROWS) if (short := shortfall(n))]
    falls += [f"row {number}: {why}" for number, why in NOT_HELD.items()]
    print("T7 handbook tables")
    print(told("rows as the tables have them", (len(ROWS) + len(NOT_HELD) - len(falls)) / 44, 0.9, at_most=False))
    own = sum(not shortfall(n, own_alone=True) for n in range(len(ROWS))) / 44
    print(f"    {own:.1%} by the rows' own checks alone; the others begin with a free look that the row does not name")
    print(*(f"    {f}" for f in falls), sep="\n")


def along_cases(faults: FaultBook, folders: Sequence[Path]) -> None:
    """T8: what would have been advised along the labelled cases."""
    count = Counted()
    for folder in folders:
        along(faults, folder, count)
    print(f"T8 order of the advice along {count.cases} labelled cases", *count.lines, sep="\n")
    print(told("the first step is among the labelled ones (all words of one)", count.good / count.cases, 0.75, False))
    print(f"    cases with a wrong step among the first three: {count.bad}")
    held = f"{count.held} of {count.causes} confirmed causes are held by the fault files"
    print(told(f"{held}; in the top 3 just before they were found", count.before / count.held, 0.80, at_most=False))
    print(told(f"of the {count.about_it} that can bring about the trouble which the advice is about then, in the top 3",
               count.about_it_before / count.about_it, 0.80, at_most=False))  # fmt: skip
    print(told(f"of the {count.late} found in the second half, in the top 3 at the middle of the log",
               count.middle / count.late, 0.80, at_most=False))  # fmt: skip


def main(short: bool, folders: Sequence[Path] = ()) -> None:
    """Prints them all."""
    faults = load_faults([places.grammars()])
    policy(60 if short else 150)
    repairs(faults, 6 if short else 40)
    tables()
    along_cases(faults, [CASES, *folders])


if __name__ == "__main__":
    main("--short" in sys.argv, [Path(a) for a in sys.argv[1:] if not a.startswith("--")])
