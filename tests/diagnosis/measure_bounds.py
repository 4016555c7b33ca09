"""What nobody can do without in the simulated repairs: every check free and right, and the best of all plans.

The reference figures behind the targets were measured on another sort of machine: every fault that is there acts, and
there is none but the causes of the complaint (14 faults, 1.83 there on average). On the shipped files a machine that
has stood for years has about ten more faults, which answer to checks and looks and play no part in the complaint.
"""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import replace

from tests.diagnosis.measure_optimum import beside_the_best
from tests.diagnosis.measure_repairs import MODELS, Repair, all_checks, by_advice, drawn, fresh_signs, ways_of
from worklog_tui.rulebook.faults import FaultBook

SMALL = ("no_spark", "lacks_power", "overheats", "hyd_weak")
"Complaints whose likeliest causes are solved completely."


def bystanders_gone(book: FaultBook, complaint: str) -> FaultBook:
    """The book with the causes of one complaint alone, each of which brings it about whenever it is there."""
    symptom = book.symptoms[complaint]
    faults = {f: replace(book.faults[f], prior=book.faults[f].prior * q) for f, q in symptom.causes.items()}
    alone = replace(symptom, causes=dict.fromkeys(symptom.causes, 1.0))
    return replace(book, faults=faults, symptoms={**book.symptoms, complaint: alone})


def minutes(book: FaultBook, complaint: str, repairs: int) -> Mapping[str, float]:
    """The minutes of each way, of the advice, and of the advice that knows what every check would show."""
    rng, spent = random.Random(f"{complaint} 41"), dict[str, float]()
    for number in range(repairs):
        signs = fresh_signs(book, complaint)
        faults = drawn(signs, complaint, rng)
        for name, way in ways_of(book, signs, complaint, rng).items():
            repair = Repair(book, signs, complaint, faults, random.Random(number))
            way(repair)
            spent[name] = spent.get(name, 0.0) + repair.minutes
        for name in ("advice", "every check free and right"):
            known = fresh_signs(book, complaint)
            if name != "advice":
                all_checks(known, complaint, faults.there, random.Random(number))
            repair = Repair(book, known, complaint, faults, random.Random(number))
            by_advice(repair, book, [])
            spent[name] = spent.get(name, 0.0) + repair.minutes
    return spent


def bounds(book: FaultBook, repairs: int) -> None:
    """Prints the bounds beside what the advice reaches, on both sorts of machine."""
    for sort in ("machines that have stood for years", "machines with the causes of the complaint alone"):
        own = sort.endswith("alone")
        found = [minutes(bystanders_gone(book, c) if own else book, c, repairs) for c in MODELS]
        print(f"    {sort}, {repairs} repairs a complaint:")
        for name in ("fixed checklist", "most likely first", "chance over cost, no checks"):
            told = (f"{way} {len(found) / sum(m[name] / m[way] for m in found):.0%}"
                    for way in ("advice", "every check free and right"))  # fmt: skip
            print(f"      of {name}:", ", ".join(told))
    print(f"    the {len(SMALL)} small networks, where every plan can be tried; the best plan is 100 %:")
    for complaint in SMALL:
        spent = beside_the_best(book, complaint, 4 * repairs)
        best = spent["the best plan"]
        print(f"      {complaint}:", ", ".join(f"{way} {m / best:.0%}" for way, m in spent.items()))
