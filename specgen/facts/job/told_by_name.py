"""Whether a rule of its own tells already what a text says: the rules that read every sentence by a table give way to it here, so that
one fault is told once. Called by the facts that read sentences by tables."""

from __future__ import annotations

from specgen.facts.job.air_wording import explosion_alone
from specgen.facts.job.circumstances import circumstances
from specgen.facts.job.goes_on import evades, lets_stand
from specgen.facts.job.ignition import burning_let, extraction_stopped, ignition_let
from specgen.facts.job.iron_named import iron_named
from specgen.facts.job.times_in_words import released_too_early
from specgen.facts.layer.late_coats import unprepared
from specgen.facts.texts import CLAUSE
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.model.preparation import Preparation
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.model.walk import Path

_OF_THE_AIR = frozenset({"scope", "statement", "ventilation", "before_next"})  # leaves that the rule on flames reads


def told_by_name(record: Node, spec: Spec, path: Path, text: str, said: str) -> bool:
    """`said` is what a table finds in the text at `path` of a job, preparation, system or product."""
    leaf = path[-1]
    if leaf == "if_failed":
        return lets_stand(text) or evades(text)
    if leaf == "if_exceeded":
        return isinstance(record, System) and path[1] in {layer for layer, _ in unprepared(record, spec)}
    if leaf == "text" and isinstance(record, Preparation):
        met = circumstances(record, spec) if iron_named(said) else frozenset[str]()
        return not met.isdisjoint({"aluminium", "stainless"})
    if leaf == "statement" and explosion_alone(text):
        return True
    if leaf == "scope" and isinstance(record, Job) and _of_times(record, spec, text, said):
        return True
    return leaf in _OF_THE_AIR and _of_flames(record, spec, text, said)


def _of_times(job: Job, spec: Spec, text: str, said: str) -> bool:
    """True where the rule on limits in words tells the clause."""
    systems = list(spec.systems_of(job))
    return any(
        said.strip().lower() in clause.lower() and any(released_too_early(clause, systems))
        for clause in CLAUSE.split(text)
    )


def _of_flames(record: Node, spec: Spec, text: str, said: str) -> bool:
    stopped = extraction_stopped(text)
    stops = [stopped] if stopped is not None else []
    lights = [*stops, *ignition_let(text)]  # the whole text: `until` or `never` beside the words may excuse them
    if not _one_thing(lights, said) or not _in_a_job(record, spec):
        return False
    met = circumstances(record, spec)
    return "burns" in met or ("confined" in met and _one_thing([*stops, *burning_let(text)], said))


def _one_thing(told: list[str], said: str) -> bool:
    """True where what the rule tells is what the table found, or a part of it."""
    return any(one.lower() in said.lower() or said.lower() in one.lower() for one in told)


def _in_a_job(record: Node, spec: Spec) -> bool:
    """True where a job is done with it, which is what the rule on flames goes out from."""
    return isinstance(record, Job) or any(
        any(record is one for one in (*spec.products_of(job), *spec.systems_of(job))) for job in spec.jobs.values()
    )
