"""Looks through a fault book for what cannot be right, with the file and the cure."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import accumulate

from worklog_tui.rulebook.fault_nouns import Check, Fault, FaultBook, Job
from worklog_tui.rulebook.mistakes import Mistake

COMBINES = ("worst", "masks")
"How several faults make one outcome of a check."
NEEDS = {"spark": "hv", "mains": "mains", "injector": "injector", "radiator": "cooling", "flywheel": "rotating"}
"A word in what is to be done: the caution that must stand beside it."


def lint(book: FaultBook) -> list[Mistake]:
    """Every mistake that one file alone cannot show: unknown ids, wrong sums, faults that nothing reaches."""
    found = [m for check in book.checks.values() for m in _check(check, book)]
    for fault in book.faults.values():
        found += _fault(fault, book)
    for symptom in book.symptoms.values():
        ids = [*symptom.causes, *(f for f in symptom.first if f not in book.checks)]
        found += [_unknown(symptom.file, symptom.id, "fault or check", i) for i in ids if i not in book.faults]
        chances = {**symptom.causes, "leak": symptom.leak}
        if bad := [f"{i} = {q}" for i, q in chances.items() if not 0 < q <= 1 and (i, q) != ("leak", 0)]:
            says = f"symptom {symptom.id} has a chance outside 0 to 1 ({', '.join(bad)})"
            found.append(Mistake(symptom.file, 0, says, "write how often of all times, such as 0.3"))
    found += [m for a in book.access.values() for m in _access(a.id, book)]
    for sets in (*book.dangers, *book.never):
        found += [_unknown("diagnosis", sets.id, "caution", c) for c in sets.cautions if c not in book.cautions]
    return [*found, *_machines(book), *_discoveries(book), *_kinds(book)]


def _machines(book: FaultBook) -> Iterator[Mistake]:
    """Names of what a machine may have that no [[has]] knows; a book without any is a person's own, read alone."""
    tables = [
        *((f.id, f.file, f.applies) for f in book.faults.values()),
        *((c.id, c.file, c.applies) for c in book.checks.values()),
        *((s.id, s.file, s.applies) for s in book.symptoms.values()),
        *((c.tag, "cautions.toml", c.applies) for c in book.cautions.values()),
        *((d.id, "diagnosis/steps.toml", d.applies) for d in (*book.dangers, *book.never)),
    ]
    for of, file, applies in tables:
        for name in (*applies.get("has", ()), *applies.get("lacks", ())):
            if name not in book.has:
                yield _unknown(file, of, "trait of a machine", name)


def _kinds(book: FaultBook) -> Iterator[Mistake]:
    """Kinds of parts whose check cannot be, and words that two kinds claim."""
    claimed: dict[str, str] = {}
    for kind in book.kinds.values():
        yield from _job(kind.check, "diagnosis/kinds.toml", f"kind {kind.id}", book)
        for word in kind.words:
            other = claimed.setdefault(word, kind.id)
            if other != kind.id:
                says = f'kind {kind.id} and kind {other} both claim the word "{word}"'
                yield Mistake("diagnosis/kinds.toml", 0, says, "leave it to one of them")


def _discoveries(book: FaultBook) -> Iterator[Mistake]:
    known = {*book.faults, *book.checks, *book.symptoms}
    for one in book.discoveries:
        yield from (_unknown(one.file, one.id, "sign", v) for v in one.voids if v not in known)


def _fault(fault: Fault, book: FaultBook) -> Iterator[Mistake]:
    if not 0 < fault.prior <= 0.5:
        yield Mistake(fault.file, 0, f"the prior of {fault.id} is {fault.prior}", "keep it above 0 and at most 0.5")
    reached = any(fault.id in s.causes for s in book.symptoms.values()) or any(
        fault.id in c.likelihood for c in book.checks.values()
    )
    if not reached:
        yield Mistake(fault.file, 0, f"no symptom and no check reaches {fault.id}", "link it to one, or take it out")
    if not fault.look and not any(fault.id in c.likelihood for c in book.checks.values()):
        yield Mistake(fault.file, 0, f"nothing can show {fault.id}", "give it a look, or name it in a check")
    for job in filter(None, (fault.look, fault.repair)):
        yield from _job(job, fault.file, fault.id, book)


def _check(check: Check, book: FaultBook) -> Iterator[Mistake]:
    if check.combine not in COMBINES:
        yield Mistake(check.file, 0, f"check {check.id} combines by {check.combine}", f"write {' or '.join(COMBINES)}")
    for name, row in [("base", check.base), *check.likelihood.items()]:
        if len(row) != len(check.outcomes) or abs(sum(row) - 1) > 1e-6 or min(row) < 0:
            says = f"check {check.id}: {name} does not add up to 1 over its outcomes ({', '.join(check.outcomes)})"
            now = f"now {len(row)}, together {sum(row):g}"
            cure = f"mend the numbers: one for each outcome, none below 0, together 1 ({now})"
            yield Mistake(check.file, 0, says, cure)
        elif any(c > b + 1e-9 for c, b in zip(accumulate(row), accumulate(check.base), strict=True)):
            says = f"check {check.id}: {name} makes a good outcome likelier than it is without any fault"
            yield Mistake(check.file, 0, says, "lower its first numbers to those of base, or below")
    yield from (_unknown(check.file, check.id, "fault", i) for i in check.likelihood if i not in book.faults)
    said = [*check.heard, *check.means, *(b[2] for b in check.bands)]
    yield from (_unknown(check.file, check.id, "outcome", o) for o in said if o not in check.outcomes)
    yield from _job(check.job, check.file, check.id, book)


def _job(job: Job, file: str, of: str, book: FaultBook) -> Iterable[Mistake]:
    yield from (_unknown(file, of, "access", a) for a in job.access if a not in book.access)
    yield from (_unknown(file, of, "caution", c) for c in job.cautions if c not in book.cautions)
    said = set(job.say.lower().split())
    for word, tag in NEEDS.items():
        if word in said and tag in book.cautions and tag not in job.cautions and not _called(book, tag, job.say):
            yield Mistake(file, 0, f"{of} has no caution {tag} though it says {word}", f'write cautions = ["{tag}"]')
    if job.minutes <= 0:
        yield Mistake(file, 0, f"{of} takes no time", "give it minutes above 0")


def _called(book: FaultBook, tag: str, say: str) -> bool:
    """Whether the caution's own words call it for what is said."""
    said = set(say.lower().replace(",", " ").split())
    return any(set(words.split()) <= said for words in book.cautions[tag].words)


def _access(start: str, book: FaultBook) -> Iterator[Mistake]:
    seen: set[str] = set()
    waiting = [start]
    while waiting:
        for need in book.access[waiting.pop()].needs:
            if need == start:
                cure = "take a name out of its needs, or out of the needs of what it needs"
                yield Mistake("diagnosis", 0, f"access {start} needs itself", cure)
                return
            if need not in book.access:
                yield _unknown("diagnosis", start, "access", need)
            elif need not in seen:
                seen.add(need)
                waiting.append(need)


def _unknown(file: str, of: str, kind: str, name: str) -> Mistake:
    return Mistake(file, 0, f"{of} names the {kind} {name}, which is nowhere", f"mend the name, or add that {kind}")
