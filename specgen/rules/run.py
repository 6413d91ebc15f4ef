"""Run every rule over every record of its kind, and turn what they find into located findings.

A rule that crashes is an error finding of its own, never silence. Called by `specgen.checking`.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator
from datetime import date
from time import perf_counter
from typing import NamedTuple

from specgen.findings import Finding, Severity
from specgen.model.based_on import record_named
from specgen.model.cause import cause_of
from specgen.model.guarded import NotWholeError
from specgen.model.node import Node
from specgen.model.parse import Loaded
from specgen.model.project import Project
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import Path
from specgen.rules.declare import Problem, Rule, all_rules
from specgen.rules.one_unit import in_authors_unit
from specgen.standards.citations import Basis, Citation
from specgen.standards.reads import note

CRASH = "RUN001"

# Seconds by the id of a rule, or by the name of another part of the work.
Timings = dict[str, float]


class Stopped(NamedTuple):
    """A rule that could not judge the record at `path`, for what it looked up there, `missing`, is not whole."""

    rule: str
    path: Path
    missing: str


class Share(NamedTuple):
    """Part `number`, from 0, of `parts` that follow each other."""

    number: int
    parts: int

    def of_all(self, subjects: tuple[tuple[Path, Node], ...]) -> tuple[tuple[Path, Node], ...]:
        first, end = (len(subjects) * edge // self.parts for edge in (self.number, self.number + 1))
        return subjects[first:end]


ALL = Share(0, 1)


def run_rules(
    loaded: Loaded,
    on: date,
    rules: Iterable[Rule] | None = None,
    timings: Timings | None = None,
    stopped: list[Stopped] | None = None,
    within: Container[Path] | None = None,
) -> list[Finding]:
    """Findings of every rule on every record that is whole in itself, by the day `on`.

    A rule that looks up what is not whole is silent there, and `stopped` takes it. `timings` takes the seconds of each rule.
    `within` names the only records to judge.
    The first rule to ask for a figure that several need pays for it.
    """
    halted: list[Stopped] = [] if stopped is None else stopped
    asked = all_rules() if rules is None else rules
    return [one for found in found_by_rule(loaded, on, asked, timings, halted, within) for one in found]


def found_by_rule(
    loaded: Loaded,
    on: date,
    rules: Iterable[Rule],
    timings: Timings | None,
    stopped: list[Stopped],
    within: Container[Path] | None = None,
    share: Share = ALL,
) -> Iterator[list[Finding]]:
    """The findings of each rule, as `run_rules` gives them, on one share of the records; nothing where nothing can be judged."""
    spec = loaded.judged
    if spec is None:
        return
    of_kind: dict[type[Node], tuple[tuple[Path, Node], ...]] = {}
    for rule in rules:
        begun = perf_counter()
        if rule.on not in of_kind:
            of_kind[rule.on] = share.of_all(tuple(_subjects(loaded, spec, rule.on)))
        yield [
            one
            for path, subject in of_kind[rule.on]
            if within is None or path in within
            for one in _run(rule, path, subject, spec, loaded, on, stopped)
        ]
        if timings is not None:
            timings[rule.id] = perf_counter() - begun


def _subjects(loaded: Loaded, spec: Spec, kind: type[Node]) -> Iterator[tuple[Path, Node]]:
    if issubclass(Project, kind) and loaded.spec is not None:
        yield ("project",), spec.project
    for name, model in LIST_KINDS.items():
        if issubclass(model, kind):
            for records in (getattr(spec, name), loaded.partial.get(name, {})):
                for key, record in records.items():
                    yield (name, key), record


def _run(
    rule: Rule, path: Path, subject: Node, spec: Spec, loaded: Loaded, on: date, halted: list[Stopped]
) -> Iterator[Finding]:
    problems = rule.check(subject, spec, on)
    try:
        for problem in problems:
            yield _finding(rule, path, problem, spec, loaded)
    except NotWholeError as missing:
        halted.append(Stopped(rule.id, path, missing.address))
    except Exception as crash:  # noqa: BLE001  # a crash of a rule is reported as a finding, whatever it is
        if path[-1] in loaded.partial.get(path[0], {}):
            # facts take it that what a record rests on is there, and this one rests on something broken
            halted.append(Stopped(rule.id, path, ""))
            return
        what = f"the rule {rule.id} stopped with {type(crash).__name__}: {crash}"
        yield Finding(
            CRASH,
            Severity.ERROR,
            loaded.place(path),
            ".".join(path),
            what[:300],
            "A rule that did not finish has judged nothing.",
            "Report this with the source it happened on; until it is mended the document cannot be issued.",
            "",
        )


def _finding(rule: Rule, path: Path, problem: Problem, spec: Spec, loaded: Loaded) -> Finding:
    whole = _where_required(problem.path if problem.absolute else path + problem.path, spec)
    severity, source = _weight(rule, problem, spec)
    missing = loaded.missing(whole)
    # the address of the first thing that is missing; what it is missing in is one step above
    record = _record_at(whole, spec)
    said = in_authors_unit(problem.what, record, whole[2:])
    what = said if missing is None else f"{said} (missing in {missing.rpartition('.')[0]})"
    remedy = in_authors_unit(problem.remedy, record, whole[2:]) or rule.page.to_put_right
    place, address, base = loaded.place(whole), ".".join(whole), loaded.taken_from(whole)
    cause = cause_of(whole, problem.what, loaded.ids, base or ())
    if base is not None:
        what += f" (carried over from {record_named(base)})"
    elif missing is not None:
        remedy += loaded.stayed(whole)
    why, taken = rule.page.why, base is not None
    return Finding(rule.id, severity, place, address, what, why, remedy, str(source), cause, carried_over=taken)


def _where_required(path: Path, spec: Spec) -> Path:
    """The requirement on the product of a coat, where a rule speaks of its product and none is named."""
    if path[0] == "systems" and path[2:3] == ("layers",) and path[4:] == ("product",):
        layers = spec.systems[path[1]].layers
        if any(layer.id == path[3] and layer.product is None and layer.required is not None for layer in layers):
            return (*path[:-1], "required")
    return path


def _record_at(path: Path, spec: Spec) -> Node | None:
    """The record of a list that a path leads into, where it was read."""
    if path[0] not in LIST_KINDS or len(path) < 2:
        return None
    try:
        record: Node | None = getattr(spec, path[0]).get(path[1])
    except NotWholeError:
        return None
    return record


def _weight(rule: Rule, problem: Problem, spec: Spec) -> tuple[Severity, Citation]:
    severity = problem.severity or rule.severity
    source = problem.source or rule.source
    note(source.read_in)
    if severity is Severity.ERROR and not source.basis.confirmed:
        severity = Severity.WARNING
    if severity is Severity.WARNING and rule.id in _raised(spec):
        return Severity.ERROR, Citation(Basis.POLICY)
    return severity, source


def _raised(spec: Spec) -> tuple[str, ...]:
    try:
        policies = spec.project.policies
    except NotWholeError:
        # the project has findings of its own; until they are mended each rule weighs as it stands
        return ()
    return policies.raise_to_error if policies is not None else ()
