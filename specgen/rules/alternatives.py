"""A system whose coats may be met by several products is judged with each of them, and what depends on the choice is told as that.

What is found whichever is taken stands as it is. What is found with some alone is a warning that names them, unless every way
has an error of its own: then none is possible, and the errors stay. Called by `judge`.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date
from itertools import islice, product

from specgen.facts.graph import jobs_in, links_from, reach
from specgen.findings import Finding, Severity
from specgen.model.guarded import NotWholeError, every
from specgen.model.job import Job
from specgen.model.parse import Loaded
from specgen.model.preparation import Preparation
from specgen.model.requirement import Required
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.rules.declare import Rule
from specgen.rules.run import run_rules
from specgen.units.locale import phrase

MOST_WAYS = 24
"""So many combinations of alternatives of one system are judged."""

# What is judged by the products of its coats.
_BY_COAT = (System, Job, Preparation)
# The rules on a requirement itself, and on texts about it, look at all its alternatives.
_ITSELF = ("REQ", "DOC")
# The id of the alternative taken, by the coat; empty for the requirement itself.
Way = Mapping[str, str]
_Key = tuple[str, str, str]


def number_of_ways(system: System) -> int:
    """How many combinations of products the coats of a system leave open."""
    number = 1
    for layer in system.layers:
        number *= 1 + len(layer.required.alternatives) if layer.required is not None else 1
    return number


def by_every_way(loaded: Loaded, on: date, rules: Sequence[Rule]) -> dict[str, list[list[Finding]]]:
    """What some of the rules find on each open system, by its id: a list a way, in the order of the ways."""
    spec, told = loaded.judged, dict[str, list[list[Finding]]]()
    for _, system in every(spec.systems) if spec is not None else ():
        if spec is not None and number_of_ways(system) > 1:
            try:
                within = frozenset(concerned(system.id, spec))
            except NotWholeError:
                # what the system is used in was not read; the requirements themselves were judged
                continue
            told[system.id] = [
                judged_by_coats(spec.with_system(taken), loaded, on, within, rules)
                for _, taken in islice(_ways(system), MOST_WAYS)
            ]
    return told


def with_alternatives(
    found: Sequence[Finding], loaded: Loaded, told: Mapping[str, Sequence[Sequence[Finding]]]
) -> list[Finding]:
    """The findings of a folder, those of its open systems by what was told of every way to meet them."""
    merged, spec = list(found), loaded.judged
    for id, of_ways in told.items():
        if spec is not None:
            merged = _merged(merged, spec.systems[id], [{_key(one): one for one in each} for each in of_ways])
    return merged


def _merged(found: list[Finding], system: System, told: list[dict[_Key, Finding]]) -> list[Finding]:
    ways = [way for way, _ in islice(_ways(system), MOST_WAYS)]
    always = set.intersection(*({*each} for each in told))
    depends = {key: one for each in told for key, one in each.items() if key not in always}
    possible = any(all(depends[key].severity is not Severity.ERROR for key in each if key in depends) for each in told)
    kept = [one for one in found if _key(one) not in depends]
    for key, one in depends.items():
        with_it = [way for way, each in zip(ways, told, strict=True) if key in each]
        weight = Severity.WARNING if possible and one.severity is Severity.ERROR else one.severity
        what = phrase("{chosen}: {what}", chosen=_named(with_it, ways, system), what=one.what)
        kept.append(replace(one, severity=weight, what=what))
    return kept


def judged_by_coats(
    spec: Spec, loaded: Loaded, on: date, within: Container[Path], rules: Sequence[Rule]
) -> list[Finding]:
    """What those of the rules that go by the products of coats find on these records of a specification with other products."""
    concerning = [rule for rule in rules if rule.on in _BY_COAT and not rule.id.startswith(_ITSELF)]
    return run_rules(replace(loaded, judged=spec, findings=[]), on, concerning, within=within)


def concerned(system: str, spec: Spec) -> Iterator[Path]:
    """A system, the jobs with it, and the preparations beneath it."""
    yield ("systems", system)
    for job in jobs_in(spec, reach(spec, ("systems", system))):
        yield ("jobs", job)
        yield from (link.target for link in links_from(spec, ("jobs", job)) if link.target[0] == "preparations")


def _ways(system: System) -> Iterator[tuple[Way, System]]:
    """Each combination, the requirements themselves first, with the system as it then is."""
    for chosen in product(*(tuple(_taken(layer)) for layer in system.layers)):
        way = {layer.id: id for id, layer in chosen}
        yield way, system.model_copy(update={"layers": tuple(layer for _, layer in chosen)})


def _taken(layer: Layer) -> Iterator[tuple[str, Layer]]:
    if layer.required is None:
        yield "", layer
        return
    for id, requirement in layer.required.choices():
        stated = {name: getattr(requirement, name) for name in requirement.model_fields_set}
        yield id, layer.model_copy(update={"required": Required.model_construct(**stated)})


def _key(found: Finding) -> _Key:
    return found.id, found.path, found.what


def _named(with_it: Sequence[Way], ways: Sequence[Way], system: System) -> str:
    """`with the alternative siloxane of the coat top`: what the ways have in common that no other way has."""
    for layer in system.layers:
        of_layer = {way[layer.id] for way in with_it}
        if [way for way in ways if way[layer.id] in of_layer] == list(with_it):
            return _said([(layer.id, of_layer)])
    first = with_it[0]
    return _said((layer.id, {first[layer.id]}) for layer in system.layers if len({way[layer.id] for way in ways}) > 1)


def _said(chosen: Iterable[tuple[str, set[str]]]) -> str:
    told = []
    for layer, ids in chosen:
        named = sorted(id for id in ids if id)
        of_list = f"the alternative {' or '.join(named)}" if named else ""
        own = "the first requirement" if "" in ids else ""
        told.append(f"{' or '.join(part for part in (own, of_list) if part)} of the coat {layer}")
    return f"with {' and '.join(told)}"
