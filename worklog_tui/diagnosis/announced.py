"""What the person announced near the end: the next job in his own words, and the test that tells two causes apart."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.job_words import JobWords, object_of, with_thing
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.tail_talk import Sentence, end_of
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Finding, Step, Work

LAST = 4
"A bare promise (I'll ...) counts within so many last notes; before that it is mostly done at once (judgement)."
SHARE = 2
"The last half of the session is listened to: a plan with a time to it stands until it is carried out."
OFTEN = 2
"A word said in so many notes is one of the machine's, known or not (judgement)."
TRIES = ("run", "try", "test", "prove", "retest", "rerun")
"Jobs that need name no part."
LIKE = 0.5
"The place of a promise without a time among what was announced with one: behind it."

_WHEN = (
    r"(?:next(?: time| session| weekend| week| job| up| step| thing)?|tomorrow|first thing|first job|first off"
    r"|in the morning|(?:on |by |come )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|(?:this|tomorrow) (?:afternoon|arvo)"
    r"|after (?:dinner|lunch|tea|that)|when (?:i|we) (?:come|get) back|later on|the plan)"
)
_WILL = (
    r"(?:i['’]?ll|we['’]?ll|i will|we will|i shall|we shall|(?:i['’]?m|i am|we['’]?re|we are) (?:going to|gonna)|gonna"
    r"|gotta|(?:i|we)(?:['’]?ve| have|['’]?d)? (?:got to|gotta|need to|want to|have to|mean to|must|ought to|plan to)"
    r"|i['’]?ve to|(?:it|that)['’]?s to|i['’]?d (?:like to|better))"
)
_TELLS = (
    r"(?:the (?:way|thing|test) to (?:tell|do|know|find out|be sure)(?: (?:them apart|for sure|which))?"
    r"|to (?:tell|distinguish|separate|find out|know|settle|prove|be sure)(?: (?:them apart|which(?: one)? it is"
    r"|for sure|the two|between them|it|this|that|which|them))?|what i (?:want|need|have|ought) to do|what i['’]?ll do"
    r"|what i['’]?d do|the (?:next )?(?:test|step|thing|job)(?: (?:i|we)(?:['’]ll| will| have to| want to)? do)?"
    r"|the plan)"
)
_ANNOUNCES = re.compile(
    rf"\b{_WHEN}\b[^.!?]{{0,30}}?\b(?:{_WILL}|(?:is|it['’]?s) to|to)\s+"
    r"|\b(?:(?:mon|tues|wednes|thurs|fri|satur|sun)day|tomorrow),? (?:i|we)\s+(?=[a-z]+ (?:the|it|those)\b)",
    re.IGNORECASE,
)
_TEST = re.compile(
    rf"\b{_TELLS}(?:\s*[,:]|\s+(?:next|is|to|was|would be|will be|i['’]?ll|i|we['’]?ll|we|you|then)\b)*\s+",
    re.IGNORECASE,
)
_PROMISES = re.compile(rf"\b{_WILL}\s+(?!not\b|never\b|n['’]t\b)", re.IGNORECASE)
_TIME = re.compile(rf"\b{_WHEN}\b", re.IGNORECASE)
_NOUN = re.compile(rf"^(?:so |and |right |then )*{_WHEN}\s*(?:,|:|then|is|it['’]?s)+\s*(?:the |a )", re.IGNORECASE)
_AFTER = re.compile(
    r"\b(?:waiting (?:on|for)|wait for|once|when|as soon as|after) (?:the|that|it|my|this|his)\b", re.IGNORECASE
)
"What comes only after something else, that stands before it."
_OFF = re.compile(
    r"\b(?:if|unless|whether|wouldn['’]?t|won['’]?t|can['’]?t|couldn['’]?t|some ?day|one day|winter|eventually"
    r"|i['’]?ll not|not today|no (?:hurry|rush)|never|might|could|instead of|used to|last time)\b",
    re.IGNORECASE,
)


def announced(log: Log, wording: Wording, safety: Safety, named: frozenset[str]) -> list[Candidate]:
    """A step for each job that was announced and not heard done since, in the order in which they would be done.

    `named`: words of the parts that the fault files know.
    """
    cut, known, found = JobWords(wording.lists), known_words(log) | named, []
    gets = frozenset(wording.lists.get("gets", ()))
    for sentence in end_of(log, SHARE):
        for n, (job, tier) in enumerate(_jobs_of(sentence, cut, gets)):
            step = _named(job, sentence, log)
            if not step or not _is_ours(step, known, wording) or safety.never(step) or _done(log, step, sentence):
                continue
            place = log.history.place(sentence.note.uid)
            why = f"You said yourself that this comes next ({log.said(place)})."
            made = Step(step, why, wording.minutes(step), safety.cautions(step), (), (), "own plan")
            order = sentence.order + n / 1000 + (LIKE if tier is Tier.LISTED else 0)
            found.append(Candidate(tier, order, made, "", " ".join(object_of(step))))
    return found


def _jobs_of(sentence: Sentence, cut: JobWords, gets: frozenset[str]) -> Iterator[tuple[str, Tier]]:
    text = sentence.words
    if sentence.asks:
        return
    tests = _TEST.search(text)
    if tests and not _OFF.search(text[: tests.start()]):
        jobs = list(cut.jobs(text[tests.end() :], any_verb=True))
        if jobs:
            yield from ((job, Tier.PLAN) for job in jobs)
            return
    for pattern in (_ANNOUNCES, _PROMISES):
        said = pattern.search(text)
        if said is None or _OFF.search(text[: said.end()]):
            continue
        timed = pattern is _ANNOUNCES or _TIME.search(text) is not None
        jobs = list(cut.jobs(text[said.end() :], any_verb=True))
        later = bool(jobs) and jobs[0].split()[0] in gets
        if not timed and not later and sentence.from_end >= LAST:
            continue
        first = (timed or later) and not _AFTER.search(text[: said.start()])
        if jobs:
            yield from ((job, Tier.PLAN if first else Tier.LISTED) for job in jobs)
            return
    if (noun := _NOUN.match(text)) and not _OFF.search(text):
        yield f"do the {text[noun.end() :].split(',')[0].strip()}", Tier.PLAN


def _is_ours(step: str, known: frozenset[str], wording: Wording) -> bool:
    """Whether a job is one on this machine: on something that the log speaks of, or a try of the whole."""
    told = set(object_of(step)) - set(wording.lists.get("no_things", ()))
    return step.split()[0].lower() in TRIES or not known.isdisjoint(told)


def _named(job: str, sentence: Sentence, log: Log) -> str:
    """The job with the thing that it, them or that stand for; empty where nothing tells."""
    if object_of(job):
        return job
    last = _thing_before(log, sentence)
    return with_thing(job, last) if last else ""


def _thing_before(log: Log, sentence: Sentence) -> str:
    """The last thing spoken of before, in this note or the one before it."""
    here = [e for e in log.events if sentence.order - 1 <= e.when <= sentence.order + 0.003]
    for event in reversed(here):
        fact: object = event.fact
        if isinstance(fact, (Finding, Work)) and fact.name and tokens(fact.part):
            return fact.part
    return ""


def known_words(log: Log) -> frozenset[str]:
    """The words that belong to this machine: what facts are about, and what was said in several notes."""
    counted: Counter[str] = Counter()
    for note in log.last_notes:
        counted.update(set(tokens(note.words)))
    often = {w for w, n in counted.items() if n >= OFTEN and len(w) > 3}
    return frozenset(often | {w for e in log.events for w in (*tokens(e.fact.about), *tokens(e.name))})


def _done(log: Log, step: str, sentence: Sentence) -> bool:
    """Whether work on the same thing was told in a later note."""
    thing = object_of(step)[-1:]
    return any(_works_on(e, thing) for e in log.works if e.when > int(sentence.order) + 1)


def _works_on(event: Event, thing: tuple[str, ...]) -> bool:
    return bool(thing) and isinstance(event.fact, Work) and thing[0] in tokens(event.fact.part)[-1:]
