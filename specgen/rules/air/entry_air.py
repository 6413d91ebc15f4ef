"""AIR010 A confined space is entered in air that can be breathed and cannot burn

Checks
    The atmosphere test of a confined space, the scope of the job, and each inspection point of it that names oxygen or the explosive limit: shares of oxygen below 19.5 % or above 23.5 %, and a share of the lower explosive limit above 10 %, as limits of entry. A sentence on alarms, breathing sets or purging is not read, nor one on the air during spraying. Where the test and a point state other figures, that is a note.
Why
    Below 19.5 % of oxygen the mind fails before the body warns; above 23.5 % clothes burn like tinder. Air above a tenth of the explosive limit in one corner is explosive in another.
Passes
    jobs.refit.workplace: confined-space
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.refit.confined_space: {permit: safety office, atmosphere_test: "Oxygen 19.5 to 23.5 %, below 10 % of the lower explosive limit; before each entry.", standby: one person at the manhole, rescue: Tripod and winch in place.}
    jobs.refit.inspection.gas: {id: gas, check: Entry permit, at: receipt, criterion: {text: "Between 19.5 % and 23.5 % oxygen, LEL below 10 %."}, hold_point: yes}

    jobs.refit.workplace: confined-space
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.refit.confined_space: {permit: safety office, atmosphere_test: "Out below 20 % oxygen; at 17 % of oxygen with breathing sets alone; up to 25 % of the LEL while spraying.", standby: one person at the manhole, rescue: Tripod and winch in place.}

    jobs.refit.workplace: confined-space
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.refit.confined_space: {permit: safety office, atmosphere_test: "Less than 10 % of the LEL and between 19.5 % and 23.5 % oxygen before each entry; in the log oxygen and explosive limit as 20.9 % and 0 %.", standby: one person at the manhole, rescue: Tripod and winch in place.}

    jobs.refit.inspection.moist: {id: moist, check: Moisture, at: receipt, criterion: {text: at most 15 %}}
Fails
    jobs.refit.workplace: confined-space
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.refit.confined_space: {permit: safety office, atmosphere_test: "Oxygen above 19.4 %, below 11 % of the lower explosive limit; before each entry.", standby: one person at the manhole, rescue: Tripod and winch in place.}    # at jobs.refit.confined_space.atmosphere_test    # at jobs.refit.confined_space.atmosphere_test

    jobs.refit.workplace: confined-space
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.refit.confined_space: {permit: safety office, atmosphere_test: "Entry from 16 % oxygen and 40 % of the lower explosion limit, before each entry.", standby: one person at the manhole, rescue: Tripod and winch in place.}    # at jobs.refit.confined_space.atmosphere_test    # at jobs.refit.confined_space.atmosphere_test

    jobs.refit.workplace: confined-space
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.refit.confined_space: {permit: safety office, atmosphere_test: "Oxygen 20 to 21 %, LEL below 5 %.", standby: one person at the manhole, rescue: Tripod and winch in place.}
    jobs.refit.inspection.gas: {id: gas, check: Entry permit, at: receipt, criterion: {text: "19.5 to 23.6 % oxygen and below 5 % of the LEL."}, hold_point: yes}    # warning at jobs.refit.inspection.gas.criterion.text    # note at jobs.refit.inspection.gas.criterion.text
To put right
    Write oxygen 19.5 to 23.5 % or narrower, and below 10 % of the lower explosive limit, once, and refer to it from the inspection point.
"""

import re
from collections.abc import Iterator
from fractions import Fraction

from specgen.facts.job.confined import is_confined
from specgen.rules.kit import NOTE, WARNING, Job, Path, Problem, Problems, Row, Spec, date, rule, table

_AIR = table("entry_air")
_CLAUSE = re.compile(r"[;\n]|[,.](?!\d)|\band (?=below|under|less|at most|max|LEL|LFL|no )", re.I)
_JOINS = re.compile(r"\b(?:and|or|with|but|while)\b", re.I)
# joins two limits, and cannot be within one, as in 19.5 % and 23.5 %
_JOINS_LIMITS = re.compile(rf"(?<!\d)(?<!\d%)(?<!\d %) {_JOINS.pattern}|{_JOINS.pattern}(?! ?\d)", re.I)
_EXPLOSIVE = re.compile(r"explosive|explosion limit|flammab|\bLEL\b|\bLFL\b", re.I)
_OXYGEN = re.compile(r"\boxygen\b|\bO2\b|\bO₂", re.I)
_NOT_ENTRY = re.compile(r"alarm|breathing|apparatus|air-fed|supplied air|purg|spray|\bfresh air\b|outside air", re.I)
_SHARE = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?)(?= ?%| ?(?:to|and|-|–|\.\.) ?\d+(?:\.\d+)? ?%)")


@rule("AIR010", on=Job, severity=WARNING, source=_AIR.citation)
def entry_air(job: Job, spec: Spec, on: date) -> Problems:
    if not is_confined(job):
        return
    stated = job.confined_space.atmosphere_test if job.confined_space is not None else None
    texts: list[tuple[str, Path]] = [(stated, ("confined_space", "atmosphere_test"))] if stated else []
    texts.append((job.scope, ("scope",)))
    texts += [
        (point.criterion.text, ("inspection", point.id, "criterion", "text"))
        for point in job.inspection
        if point.criterion.text
    ]
    test = dict(_shares(stated)) if stated else {}
    for text, path in texts:
        for subject, shares in _shares(text):
            least, most = _limits(subject)
            wrong = [share for share in shares if (least is not None and share < least) or share > most]
            if wrong:
                row = _row("oxygen_least" if subject == "oxygen" and wrong[0] < most else _most_of(subject))
                what = f"{_said(job, path)} lets people in at {_joined(wrong)} of {subject}; {_usual(subject)}"
                yield Problem(path, what, source=_AIR.row_citation(row))
            if text != stated and subject in test and _strictest(subject, shares) != _strictest(subject, test[subject]):
                what = f"{_said(job, path)} states {_joined(shares)} of {subject}, the atmosphere test {_joined(test[subject])}"
                yield Problem(path, what, "state the limits once", NOTE)


def _shares(text: str) -> Iterator[tuple[str, list[Fraction]]]:
    """The shares a text names of oxygen and of the explosive limit, clause by clause."""
    for clause in (part for whole in _CLAUSE.split(text) for part in _apart(whole)):
        found = [Fraction(digits) for digits in _SHARE.findall(clause)]
        oxygen, explosive = _OXYGEN.search(clause), _EXPLOSIVE.search(clause)
        if not found or _NOT_ENTRY.search(clause) or bool(oxygen) == bool(explosive):
            continue
        yield ("oxygen" if oxygen else "the lower explosive limit"), found


def _apart(clause: str) -> list[str]:
    """A clause on both oxygen and what burns as two, parted at the last word that joins them; any other as it is."""
    oxygen, explosive = _OXYGEN.search(clause), _EXPLOSIVE.search(clause)
    if oxygen is None or explosive is None or _NOT_ENTRY.search(clause):
        return [clause]
    first, second = sorted((oxygen, explosive), key=lambda one: one.start())
    joints = list(_JOINS_LIMITS.finditer(clause, first.end(), second.start()))
    if not joints and "between" not in clause:
        joints = list(_JOINS.finditer(clause, first.end(), second.start()))
    parts = [clause[: joints[-1].start()], clause[joints[-1].start() :]] if joints else [clause]
    return parts if all(map(_SHARE.search, parts)) else [clause]


def _strictest(subject: str, shares: list[Fraction]) -> Fraction:
    """The limit that decides: the least oxygen, the most of what burns."""
    return min(shares) if subject == "oxygen" else max(shares)


def _limits(subject: str) -> tuple[Fraction | None, Fraction]:
    least = Fraction(_row("oxygen_least")["value"]) if subject == "oxygen" else None
    return least, Fraction(_row(_most_of(subject))["value"])


def _most_of(subject: str) -> str:
    return "oxygen_most" if subject == "oxygen" else "explosive_most"


def _usual(subject: str) -> str:
    if subject == "oxygen":
        return f"air to breathe has {_row('oxygen_least')['value']} to {_row('oxygen_most')['value']} %"
    return f"at most {_row('explosive_most')['value']} % may be read"


def _said(job: Job, path: Path) -> str:
    if path[0] == "scope":
        return f"the scope of {job.id}"
    return f"the atmosphere test of {job.id}" if path[0] == "confined_space" else str(path[1])


def _joined(shares: list[Fraction]) -> str:
    return f"{' and '.join(f'{float(share):g}' for share in shares)} %"


def _row(name: str) -> Row:
    return _AIR.row("id", name)
